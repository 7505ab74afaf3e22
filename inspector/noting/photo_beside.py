"""A photo that is named in the interview: copied beside the record when it lies elsewhere."""

from __future__ import annotations

from pathlib import Path

from inspector.reading.photos import NoPhoto, photo
from inspector.reporting.files import write_whole

_FOLDER = "photos"
_MOST_BYTES = 50_000_000


def photo_beside(record: Path, typed: str) -> str:
    """The name of the photo as the record holds it. Raises NoPhoto, and OSError when it cannot be copied."""
    folder = record.parent
    given = typed.strip("\"'")  # a file that is dragged into a terminal comes with quotes
    try:
        places = [place for place in (Path(given).expanduser(), folder / given) if place.is_file()]
    except (OSError, ValueError, RuntimeError):  # too long, a NUL, nobody's home
        places = []
    if not places:
        raise NoPhoto(f"there is no file `{given}` here or beside the record")
    source = places[0].resolve()
    if source.is_relative_to(folder.resolve()):
        return str(photo(folder, str(source.relative_to(folder.resolve()))))
    if source.stat().st_size > _MOST_BYTES:
        raise NoPhoto(f"`{given}` is larger than {_MOST_BYTES // 1_000_000} MB")
    return _copied(source, folder)


def _copied(source: Path, folder: Path) -> str:
    """Copy to the folder for photos; a name that is taken by another picture gets a number."""
    content = source.read_bytes()
    (folder / _FOLDER).mkdir(exist_ok=True)
    number = 1
    while True:
        name = f"{source.stem}{f'_{number}' if number > 1 else ''}{source.suffix}"
        target = folder / _FOLDER / name
        if not target.exists():
            write_whole(target, content)
        if target.is_file() and target.read_bytes() == content:
            return f"{_FOLDER}/{name}"
        number += 1
