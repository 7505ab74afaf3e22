"""The page pictures of the README are small, named there, and show what the program prints now."""

from __future__ import annotations

import shutil
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from tests.samples.draw_pages import FOLDER, PAGES, first_page

README = (Path(__file__).resolve().parents[2] / "README.md").read_text(encoding="utf-8")
AGAIN = "run: python tests/samples/draw_pages.py"


def test_every_picture_is_small_and_stands_in_the_readme() -> None:
    names = [f"{name}_{reader}.png" for name, reader in PAGES]

    assert sorted(file.name for file in FOLDER.iterdir()) == sorted(names)
    for name in names:
        assert f"(samples/pages/{name})" in README
        assert (FOLDER / name).stat().st_size <= 60_000


@pytest.mark.skipif(shutil.which("pdftoppm") is None, reason="pdftoppm is not installed here")
def test_a_picture_shows_the_page_of_today() -> None:
    name, reader = PAGES[2]
    kept = np.asarray(Image.open(FOLDER / f"{name}_{reader}.png").convert("L"), dtype=float)
    drawn = np.asarray(first_page(name, reader).convert("L"), dtype=float)

    assert kept.shape == drawn.shape, AGAIN
    assert abs(kept - drawn).mean() < 3, AGAIN  # of 255; another version of the renderer shades edges otherwise
