"""Photos for print: upright, scaled to the paper, without place, camera or any other hidden data.

A photo comes from a stranger's folder. Whatever is wrong with a file is told in the report and stops nothing.
"""

from __future__ import annotations

import warnings
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from inspector.knowledge.wording import words
from inspector.weighing.assessment import Assessment, FindingEntry

if TYPE_CHECKING:
    from PIL.Image import Image

WIDE_MM, HIGH_MM, DOTS_PER_INCH = 58, 44, 150
_QUALITY = 82
_KINDS = ("JPEG", "PNG", "WEBP")  # never a kind whose reader runs another program
_MOST_BYTES = 80_000_000
_MOST_JPEG = 220_000_000  # pixels; it is read at an eighth of its size
_MOST_WHOLE = 40_000_000  # pixels of a picture that can only be read whole


class NotShown(ValueError):
    """A file that cannot be printed as a photo; the message is its name in the words of the report."""


@dataclass(frozen=True)
class Gallery:
    """Photos as they are printed, by the name in the record, and why the others are not."""

    files: dict[str, bytes] = field(default_factory=dict)
    addresses: dict[str, str] = field(default_factory=dict)
    not_shown: dict[str, str] = field(default_factory=dict)
    belongs_to: dict[str, str] = field(default_factory=dict)

    def shown_at(self, name: str, label: str) -> bool:
        """Whether the photo is printed at the entry with this label (or title): the first one that names it."""
        return name in self.addresses and self.belongs_to[name] == label


def gallery(assessment: Assessment, folder: Path | None) -> Gallery:
    """Every photo that a finding or a cause names, made ready for print. Without a folder none is looked for."""
    found = Gallery()
    if folder is None:
        return found
    entries = (*assessment.findings, *assessment.causes, *assessment.ruled_out)
    for name, label in _named(entries).items():
        try:
            content = ready(folder, name)
        except NotShown as problem:
            found.not_shown[name] = words()["photo"][str(problem)]
            continue
        file = f"photo-{len(found.files) + 1}.jpg"
        found.files[file] = content
        found.addresses[name] = f"asset:{file}"
        found.belongs_to[name] = label
    return found


def _named(entries: Iterable[FindingEntry]) -> dict[str, str]:
    """Photos in the order of print, each with the first entry that names it."""
    found: dict[str, str] = {}
    for entry in entries:
        for one in (*entry.evidence, *entry.ruled_out_by):
            if one.photo:
                found.setdefault(one.photo, entry.label or entry.title)
    return found


def ready(folder: Path, name: str) -> bytes:
    """The photo as a small JPEG without hidden data. Raises NotShown for whatever is wrong with it."""
    path = _inside(folder, name)
    try:
        if path.stat().st_size > _MOST_BYTES:
            raise NotShown("too_large")
        with warnings.catch_warnings(), _whole_files_only():
            warnings.simplefilter("ignore")  # Pillow warns of the size that is judged below
            return _scaled(path)
    except NotShown:
        raise
    except FileNotFoundError:
        raise NotShown("missing") from None
    except PermissionError:
        raise NotShown("not_allowed") from None
    except MemoryError:
        raise NotShown("too_large") from None
    except Exception as error:  # Pillow's readers raise whatever a broken file leads them to
        raise NotShown(_reason(error)) from error


@contextmanager
def _whole_files_only() -> Iterator[None]:
    """WeasyPrint, once loaded, tells Pillow to fill in what a cut off file lacks; such a photo must be told."""
    from PIL import ImageFile

    before = ImageFile.LOAD_TRUNCATED_IMAGES
    ImageFile.LOAD_TRUNCATED_IMAGES = False
    try:
        yield
    finally:
        ImageFile.LOAD_TRUNCATED_IMAGES = before


def _reason(error: Exception) -> str:
    from PIL import Image, UnidentifiedImageError

    if isinstance(error, Image.DecompressionBombError):
        return "too_large"
    return "no_photo" if isinstance(error, UnidentifiedImageError) else "broken"


def _inside(folder: Path, name: str) -> Path:
    """The file below the folder of the record; a link may not lead out of it."""
    try:
        inside = folder.resolve()
        path = (inside / name).resolve()
    except (OSError, ValueError, RuntimeError):  # too long, a NUL, links in a circle
        raise NotShown("missing") from None
    if not path.is_relative_to(inside):
        raise NotShown("outside")
    if not path.is_file():
        raise NotShown("missing")
    return path


def _scaled(path: Path) -> bytes:
    from PIL import Image, ImageOps

    wide, high = (round(mm / 25.4 * DOTS_PER_INCH) for mm in (WIDE_MM, HIGH_MM))
    with Image.open(path, formats=_KINDS) as opened:
        _not_too_large(opened)
        longest = max(wide, high)  # a phone notes that a photo lies on its side instead of turning it
        opened.draft("RGB", (longest, longest))
        opened.thumbnail((2 * longest, 2 * longest), Image.Resampling.BOX, reducing_gap=None)
        upright = ImageOps.exif_transpose(opened)
        picture = _on_white(upright)
    picture.thumbnail((wide, high), Image.Resampling.LANCZOS)
    clean = Image.frombytes("RGB", picture.size, picture.tobytes())  # pixels and nothing else
    target = BytesIO()
    clean.save(target, "JPEG", quality=_QUALITY)
    return target.getvalue()


def _not_too_large(opened: Image) -> None:
    """A plain JPEG is read at a part of its size; every other picture takes memory for all its pixels."""
    pixels = opened.size[0] * opened.size[1]
    in_parts = opened.format == "JPEG" and not opened.info.get("progressive")
    if pixels > (_MOST_JPEG if in_parts else _MOST_WHOLE):
        raise NotShown("too_large")


def _on_white(image: Image) -> Image:
    """Without transparency, and in the three colours of a print."""
    from PIL import Image as Images

    if image.mode in ("RGBA", "LA", "PA") or "transparency" in image.info:
        layered = image.convert("RGBA")
        white = Images.new("RGBA", layered.size, "white")
        return Images.alpha_composite(white, layered).convert("RGB")
    return image.convert("RGB")
