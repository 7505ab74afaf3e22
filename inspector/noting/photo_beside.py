"""Photos that come from elsewhere find a place beside the record, under a name that is free there."""

from __future__ import annotations

from pathlib import Path

from inspector.reading.photos import NoPhoto, photo
from inspector.reporting.files import write_whole

FOLDER = "photos"
_MOST_BYTES = 50_000_000


def photo_beside(record: Path, typed: str) -> str:
    """The name, as the record holds it, of a photo that a person named; copied when it lies elsewhere.

    Raises NoPhoto, and OSError when it cannot be copied.
    """
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
    name = free_name(source, folder, {})
    copy_photos({name: source}, folder)
    return name


def free_name(source: Path, folder: Path, planned: dict[str, Path]) -> str:
    """Where below `folder` a photo may stand: no other picture has that name there or will have it."""
    content = source.read_bytes()
    number = 1
    while True:
        name = f"{FOLDER}/{source.stem}{f'_{number}' if number > 1 else ''}{source.suffix}"
        holder = planned.get(name, folder / name)
        if not holder.exists() or (holder.is_file() and holder.read_bytes() == content):
            return name
        number += 1


def copy_photos(photos: dict[str, Path], folder: Path) -> None:
    """Copy each photo to its name below `folder`. Raises OSError."""
    for name, source in photos.items():
        target = folder / name
        target.parent.mkdir(exist_ok=True)
        if not target.exists():
            write_whole(target, source.read_bytes())
