"""Unpack the file that the page on the phone saves: a record and its photos in a zip.

Nothing in it is trusted: only plain names are taken, sizes are counted while unpacking, and no name leads out of
the folder.
"""

from __future__ import annotations

import re
import stat
import zipfile
import zlib
from pathlib import Path

from inspector.knowledge.faults import Fault, Faults, shown
from inspector.knowledge.yamlfile import MOST_BYTES

MOST_FILES = 1000
MOST_PHOTO_BYTES = 30_000_000
MOST_TOTAL_BYTES = 500_000_000
RECORDS = ("record.json", "record.yaml", "record.yml")
_PHOTO = re.compile(r"(?:photos/)?[A-Za-z0-9][A-Za-z0-9 _-]{0,150}\.(?:jpe?g|png)", re.IGNORECASE)
_CHUNK = 1 << 16


class Unusable(ValueError):
    """An archive that is not unpacked; the message says why."""


def unpack(archive: Path, folder: Path) -> Path:
    """Unpack `archive` into the empty `folder`; the path of the record in it. Raises Faults, and OSError."""
    try:
        with zipfile.ZipFile(archive) as opened:
            return _unpack(opened, folder)
    except Unusable as error:
        reason = str(error)
    except (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, RuntimeError, ValueError):
        reason = "this zip file is damaged, locked or of a kind that cannot be read; save the record once more"
    raise Faults([Fault(str(archive), 1, 1, reason)])


def _unpack(opened: zipfile.ZipFile, folder: Path) -> Path:
    entries = [entry for entry in opened.infolist() if not entry.is_dir()]
    if len(entries) > MOST_FILES:
        raise Unusable(f"there are {len(entries)} files in this zip file; at most {MOST_FILES} are taken")
    names = [entry.filename for entry in entries]
    _check_names(entries)
    records = [name for name in names if name in RECORDS]
    if len(records) != 1:
        found = f"it holds {', '.join(records)}" if records else "it holds none"
        raise Unusable(f"a zip file with a record holds one file {' or '.join(RECORDS)}; {found}")
    total = 0
    for entry in entries:
        most = MOST_BYTES if entry.filename in RECORDS else MOST_PHOTO_BYTES
        total += _write(opened, entry, folder / entry.filename, min(most, MOST_TOTAL_BYTES - total))
    return folder / records[0]


def _check_names(entries: list[zipfile.ZipInfo]) -> None:
    seen: set[str] = set()
    for entry in entries:
        name = entry.filename
        kind = stat.S_IFMT(entry.external_attr >> 16)
        plain = name in RECORDS or _PHOTO.fullmatch(name)
        if not plain or kind not in (0, stat.S_IFREG):
            raise Unusable(f"{shown(name)} in this zip file is neither the record nor a photo (jpg or png) of it")
        if name.casefold() in seen:
            raise Unusable(f"{shown(name)} is in this zip file twice")
        seen.add(name.casefold())


def _write(opened: zipfile.ZipFile, entry: zipfile.ZipInfo, target: Path, most: int) -> int:
    """Unpack one file of at most `most` bytes, whatever its heading says; the number of its bytes."""
    target.parent.mkdir(exist_ok=True)
    size = 0
    with opened.open(entry) as source, target.open("xb") as file:
        while chunk := source.read(_CHUNK):
            size += len(chunk)
            if size > most:
                raise Unusable(f"{shown(entry.filename)} in this zip file is too large")
            file.write(chunk)
    return size
