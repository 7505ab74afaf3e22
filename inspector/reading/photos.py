"""Find the picture that a record names; it must lie in the record's own folder."""

from __future__ import annotations

from pathlib import Path

from inspector.knowledge.faults import shown


class NoPhoto(ValueError):
    """What is named is no picture file of this record; the message says why."""


def photo(folder: Path | None, given: object) -> str | None:
    """Name of the picture below `folder` (None: not looked for). Raises NoPhoto."""
    if not isinstance(given, str) or not given.strip():
        raise NoPhoto(f"`photo` is the name of a picture file beside the record, not {shown(given)}")
    if folder is None:
        return given
    try:
        inside = folder.resolve()
        target = (inside / given).resolve()
        there = target.is_file()
    except (OSError, ValueError, RuntimeError):  # too long, a NUL, links in a circle
        raise NoPhoto(f"{shown(given)} is not a usable file name") from None
    if not target.is_relative_to(inside):
        raise NoPhoto(f"{shown(given)} lies outside the folder of the record; put the photo into it")
    if not there:
        reason = "is a folder, not a photo" if target.is_dir() else "is not a file beside the record"
        raise NoPhoto(f"{shown(given)} {reason}")
    return target.relative_to(inside).as_posix()
