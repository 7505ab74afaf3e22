"""Photos in the report: upright, small, without hidden data; a bad file is named and stops nothing."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from inspector.knowledge.wording import words
from inspector.reporting.html import to_html, to_paper
from inspector.reporting.pdf import to_pdf, write_pdf
from inspector.reporting.photos import DOTS_PER_INCH, HIGH_MM, WIDE_MM, gallery, ready
from tests.reporting.photo_cases import SECRET, camera_photo, named, pictures, red_corner


@pytest.mark.parametrize(
    ("orientation", "corner", "lying"),
    [(1, "top left", False), (3, "bottom right", False), (6, "top right", True), (8, "bottom left", True)],
)
def test_a_photo_is_turned_upright(tmp_path: Path, orientation: int, corner: str, lying: bool) -> None:
    camera_photo(tmp_path / "a.jpg", orientation=orientation)
    content = ready(tmp_path, "a.jpg")
    wide, high = Image.open(BytesIO(content)).size

    assert red_corner(content) == corner
    assert (high > wide) == lying


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_place_camera_and_comment_are_gone(tmp_path: Path, kind: str) -> None:
    camera_photo(tmp_path / "a", kind=kind)
    assert SECRET.encode() in (tmp_path / "a").read_bytes()

    content = ready(tmp_path, "a")
    clean = Image.open(BytesIO(content))
    assert SECRET.encode() not in content
    assert dict(clean.getexif()) == {}
    assert not {"exif", "comment", "icc_profile", "xmp", "photoshop"} & set(clean.info)


def test_nothing_hidden_comes_into_the_pdf_by_way_of_a_photo(tmp_path: Path) -> None:
    camera_photo(tmp_path / "a.jpg", orientation=6)
    write_pdf(named("a.jpg"), "owner", tmp_path / "r.pdf", tmp_path)
    [picture] = pictures(tmp_path / "r.pdf").values()

    assert dict(Image.open(BytesIO(picture)).getexif()) == {}
    assert red_corner(picture) == "top right"
    assert SECRET.encode() not in (tmp_path / "r.pdf").read_bytes()


@pytest.mark.parametrize("size", [(4000, 3000), (3000, 4000), (8000, 500), (100, 80)])
def test_a_photo_is_as_large_as_its_print_needs_and_no_larger(tmp_path: Path, size: tuple[int, int]) -> None:
    camera_photo(tmp_path / "a.jpg", size)
    wide, high = Image.open(BytesIO(ready(tmp_path, "a.jpg"))).size
    most = [mm / 25.4 * DOTS_PER_INCH + 1 for mm in (WIDE_MM, HIGH_MM)]

    assert wide <= most[0]
    assert high <= most[1]
    assert wide <= size[0]
    assert wide / high == pytest.approx(size[0] / size[1], rel=0.05)
    if size[0] > 3000:
        assert wide > most[0] - 3 or high > most[1] - 3


@pytest.mark.parametrize("mode", ["L", "1", "P", "RGBA", "LA", "CMYK", "I;16"])
def test_every_kind_of_colour_can_be_printed(tmp_path: Path, mode: str) -> None:
    kind = "JPEG" if mode == "CMYK" else "PNG"
    Image.new(mode, (40, 30)).save(tmp_path / "a", kind)

    assert Image.open(BytesIO(ready(tmp_path, "a"))).mode == "RGB"


def test_what_is_clear_in_a_picture_is_white_on_paper(tmp_path: Path) -> None:
    Image.new("RGBA", (40, 30), (0, 0, 0, 0)).save(tmp_path / "a.png")

    assert Image.open(BytesIO(ready(tmp_path, "a.png"))).getpixel((5, 5)) == (255, 255, 255)


def test_a_photo_stands_at_its_finding_with_words_and_once_only(tmp_path: Path) -> None:
    camera_photo(tmp_path / "a.jpg")
    plain = named("a.jpg")
    second = plain.findings[1]
    again = second.evidence[0].model_copy(update={"photo": "a.jpg"})
    twice = plain.model_copy(
        update={
            "findings": (plain.findings[0], second.model_copy(update={"evidence": (again,)}), *plain.findings[2:])
        }
    )
    page = to_paper(twice, "owner", photos=gallery(twice, tmp_path))
    look = plain.findings[0].evidence[0]

    assert page.count("<img") == 1
    alt = words()["photo"]["alt"].format(
        part=look.part, place=look.place, name=look.name.replace("_", " "), value=look.value
    )
    assert f'alt="{alt} Noted: note 0"' in page
    assert words()["photo"]["elsewhere"].format(label=plain.findings[0].label) in page
    assert page.index("<img") < page.index(f'id="entry-{second.label}"')


def test_hostile_names_and_notes_stay_text(tmp_path: Path) -> None:
    name = 'a"><script>x<'
    camera_photo(tmp_path / "b.jpg")
    (tmp_path / "b.jpg").rename(tmp_path / name)
    plain = named(name)
    look = plain.findings[0].evidence[0].model_copy(update={"note": '" onerror="x'})
    entry = plain.findings[0].model_copy(update={"evidence": (look,)})
    hostile = plain.model_copy(update={"findings": (entry, *plain.findings[1:])})
    page = to_paper(hostile, "owner", photos=gallery(hostile, tmp_path))

    assert '<img class="photo" src="asset:photo-1.jpg"' in page
    assert "<script" not in page
    assert 'onerror="' not in page


def test_without_a_folder_photos_are_only_named() -> None:
    page = to_html(named("a.jpg"), "owner")

    assert "Photo: a.jpg" in page
    assert "<img" not in page


def test_the_same_photos_give_the_same_bytes(tmp_path: Path) -> None:
    camera_photo(tmp_path / "a.jpg")
    pdfs = {to_pdf(named("a.jpg"), "owner", photo_folder=tmp_path) for _ in range(2)}

    assert len(pdfs) == 1
