"""Make the small page pictures of the README anew: samples/pages/, the first page of three samples.

Run: python tests/samples/draw_pages.py (it needs pdftoppm, Debian's package poppler-utils)
"""

from __future__ import annotations

import subprocess
from io import BytesIO
from pathlib import Path

from PIL import Image

from inspector import assess, read
from inspector.reporting.pdf import to_pdf

SAMPLES = Path(__file__).resolve().parents[2] / "samples"
PAGES = (("before_purchase", "buyer"), ("after_service", "owner"), ("handover_brake", "mechanic"))
FOLDER = SAMPLES / "pages"
GREYS, DOTS_PER_INCH = 16, 62


def first_page(name: str, reader: str) -> Image.Image:
    """The first page of a sample's report, in greys: nothing on it leans on colour."""
    record = SAMPLES / name / "record.yaml"
    content = to_pdf(assess(read(record)), reader, photo_folder=record.parent)
    command = ["pdftoppm", "-r", str(DOTS_PER_INCH), "-f", "1", "-l", "1", "-png", "-gray"]
    drawn = subprocess.run(command, input=content, capture_output=True, check=True).stdout
    return Image.open(BytesIO(drawn)).quantize(GREYS)


def main() -> None:
    FOLDER.mkdir(exist_ok=True)
    for name, reader in PAGES:
        first_page(name, reader).save(FOLDER / f"{name}_{reader}.png", optimize=True)


if __name__ == "__main__":
    main()
