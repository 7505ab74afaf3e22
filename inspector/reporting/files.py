"""Write a file so that a crash at any moment leaves the old or the new one whole."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path


def write_whole(path: Path, content: bytes) -> None:
    """Write `content` to `path` by way of a temporary file beside it. Raises OSError.

    A link is followed; a device or pipe is written to, never replaced by a file.
    """
    path = path.resolve()
    if path.exists() and not path.is_file():
        path.write_bytes(content)
        return
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        umask = os.umask(0)
        os.umask(umask)
        os.chmod(temporary, 0o666 & ~umask)
        os.replace(temporary, path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise
