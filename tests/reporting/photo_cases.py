"""Photos to print, as a phone writes them, and a record that names them."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw
from pypdf import PdfReader

from inspector.weighing.assessment import Assessment
from tests.reporting.cases import worn

ORIENTATION, MAKER, PLACE = 0x0112, 0x010F, 0x8825
SECRET = "Kamerawerk Nowhere 7"
CORNER = (200, 20, 20)


def camera_photo(path: Path, size: tuple[int, int] = (800, 600), orientation: int = 1, kind: str = "JPEG") -> None:
    """A photo as a phone writes it: maker, place and position noted, a red corner where its top left is."""
    image = Image.new("RGB", size, "white")
    ImageDraw.Draw(image).rectangle((0, 0, size[0] // 2, size[1] // 2), fill=CORNER)
    exif = Image.Exif()
    exif[ORIENTATION] = orientation
    exif[MAKER] = SECRET
    exif.get_ifd(PLACE).update({1: "N", 2: (51.0, 30.0, 0.0), 3: "W", 4: (0.0, 7.0, 0.0)})
    extra: dict[str, Any] = {"comment": SECRET.encode()} if kind == "JPEG" else {}
    image.save(path, kind, exif=exif, **extra)


def red_corner(content: bytes) -> str:
    image = Image.open(BytesIO(content)).convert("RGB")
    wide, high = image.size
    places = {
        "top left": (0.1, 0.1),
        "top right": (0.9, 0.1),
        "bottom left": (0.1, 0.9),
        "bottom right": (0.9, 0.9),
    }
    for name, (x, y) in places.items():
        red, green, _ = image.getpixel((int(x * wide), int(y * high)))  # type: ignore[misc]
        if red > 150 and green < 90:
            return name
    return "nowhere"


def pictures(path: Path) -> dict[str, bytes]:
    """Every picture of a PDF once; its pages share them."""
    return {image.name: image.data for page in PdfReader(path).pages for image in page.images}


def named(*names: str) -> Assessment:
    """The worn machine, whose first findings name these photos, one each look."""
    plain = worn()
    first = plain.findings[0]
    looks = [
        first.evidence[0].model_copy(update={"photo": name, "note": f"note {i}"}) for i, name in enumerate(names)
    ]
    finding = first.model_copy(update={"evidence": tuple(looks)})
    return plain.model_copy(update={"findings": (finding, *plain.findings[1:])})
