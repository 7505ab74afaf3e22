"""Write a file so that a crash at any moment leaves the old or the new one whole."""

from __future__ import annotations

import os
import re
import tempfile
import time
from pathlib import Path

_STALE = 600.0  # seconds since it was last written to; nothing here takes so long


def write_whole(path: Path, content: bytes) -> None:
    """Write `content` to `path` by way of a temporary file beside it. Raises OSError.

    When it returns, the content is on the disk and not only on its way there. A link is followed; a device or
    pipe is written to, never replaced by a file. A file that is there keeps who may read it.
    """
    path = path.resolve()
    if path.exists() and not path.is_file():
        path.write_bytes(content)
        return
    _clear(path)
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(temporary, _mode(path))
        os.replace(temporary, path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise
    _sync_folder(path.parent)


def _mode(path: Path) -> int:
    if path.exists():
        return path.stat().st_mode & 0o777
    umask = os.umask(0)
    os.umask(umask)
    return 0o666 & ~umask


def _clear(path: Path) -> None:
    """Take away what a killed program left of saving this file before; a younger one may still be in use."""
    left = re.compile(rf"\.{re.escape(path.name)}\.[a-z0-9_]{{8}}")
    with os.scandir(path.parent) as entries:
        old = [one for one in entries if left.fullmatch(one.name) and one.is_file(follow_symlinks=False)]
    for one in old:
        if time.time() - one.stat(follow_symlinks=False).st_mtime > _STALE:
            Path(one.path).unlink(missing_ok=True)


def _sync_folder(folder: Path) -> None:
    """The new name, too, is to outlast a flat battery; some systems cannot open a folder for this."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return
    try:
        os.fsync(handle)
    except OSError:
        pass
    finally:
        os.close(handle)
