"""Photos in the report: upright, small, without hidden data; a bad file is named and stops nothing."""

from __future__ import annotations

import os
import subprocess
import sys
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from PIL import Image, ImageDraw
from pypdf import PdfReader

from inspector.reporting import photos
from inspector.reporting.html import to_html, to_paper
from inspector.reporting.pdf import to_pdf, write_pdf
from inspector.reporting.photos import DOTS_PER_INCH, HIGH_MM, WIDE_MM, gallery, ready
from inspector.reporting.words import words
from inspector.weighing.assessment import Assessment
from tests.reporting.cases import squeezed, worn

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


def write_bad_files(folder: Path) -> dict[str, str]:
    """Files that are no photos, by the reason that the report gives."""
    camera_photo(folder / "good.jpg")
    whole = (folder / "good.jpg").read_bytes()
    (folder / "empty.jpg").write_bytes(b"")
    (folder / "page.jpg").write_text("<svg xmlns='x'><image href='file:page'/></svg>")
    (folder / "script.png").write_bytes(b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n(x) run\n")
    (folder / "half.jpg").write_bytes(whole[: len(whole) // 2])
    Image.effect_noise((60, 60), 90).save(folder / "spoiled.png")
    spoiled = bytearray((folder / "spoiled.png").read_bytes())
    spoiled[500:700] = bytes(200)
    (folder / "spoiled.png").write_bytes(spoiled)
    Image.new("RGB", (30, 30)).save(folder / "moving.gif")
    (folder / "folder.jpg").mkdir()
    (folder / "away.jpg").symlink_to("/etc/hostname")
    (folder / "circle.jpg").symlink_to(folder / "circle.jpg")
    return {
        "gone.jpg": "missing",
        "folder.jpg": "missing",
        "circle.jpg": "missing",
        "nul\0.jpg": "missing",
        "../good.jpg": "outside",
        "/etc/hostname": "outside",
        "away.jpg": "outside",
        "empty.jpg": "no_photo",
        "page.jpg": "no_photo",
        "script.png": "no_photo",
        "moving.gif": "no_photo",
        "half.jpg": "broken",
        "spoiled.png": "broken",
    }


def test_files_that_are_no_photos_are_named_with_their_reason_and_stop_nothing(tmp_path: Path) -> None:
    bad = write_bad_files(tmp_path)
    found = gallery(named("good.jpg", *bad), tmp_path)

    assert found.not_shown == {n: words()["photo"][w] for n, w in bad.items()}
    assert list(found.addresses) == ["good.jpg"]
    write_pdf(named("good.jpg", *bad), "mechanic", tmp_path / "r.pdf", tmp_path)
    document = PdfReader(tmp_path / "r.pdf")
    text = squeezed("".join(page.extract_text() for page in document.pages))
    assert squeezed(words()["photo"]["heading_not_shown"]) in text
    for name, why in bad.items():
        if "\0" not in name:
            assert squeezed(f"{name}: {words()['photo'][why]}") in text
    assert len(pictures(tmp_path / "r.pdf")) == 1


def test_a_cut_off_photo_is_told_whether_the_page_maker_is_loaded_or_not(tmp_path: Path) -> None:
    import weasyprint.images  # it changes how Pillow treats such files

    assert weasyprint.images
    write_bad_files(tmp_path)

    assert gallery(named("half.jpg"), tmp_path).not_shown == {"half.jpg": words()["photo"]["broken"]}


@pytest.mark.skipif(os.geteuid() == 0, reason="for the superuser every file may be read")
def test_a_file_that_may_not_be_read_is_named(tmp_path: Path) -> None:
    camera_photo(tmp_path / "a.jpg")
    (tmp_path / "a.jpg").chmod(0)

    assert gallery(named("a.jpg"), tmp_path).not_shown == {"a.jpg": words()["photo"]["not_allowed"]}


def test_a_picture_that_claims_to_be_huge_is_refused_before_it_is_read(tmp_path: Path) -> None:
    Image.new("1", (9000, 6000)).save(tmp_path / "a.png")
    Image.new("L", (9000, 6000)).save(tmp_path / "slow.jpg", progressive=True)
    Image.new("1", (40_000, 30_000)).save(tmp_path / "bomb.png")

    found = gallery(named("a.png", "slow.jpg", "bomb.png"), tmp_path)
    assert set(found.not_shown.values()) == {words()["photo"]["too_large"]}
    assert len(found.not_shown) == 3


def test_a_file_of_many_bytes_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    camera_photo(tmp_path / "a.jpg")
    monkeypatch.setattr(photos, "_MOST_BYTES", 100)

    assert gallery(named("a.jpg"), tmp_path).not_shown == {"a.jpg": words()["photo"]["too_large"]}


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


_MEASURED = """
import sys
from pathlib import Path
from inspector.reporting.pdf import write_pdf
from inspector.weighing.assessment import Assessment
folder = Path(sys.argv[1])
assessment = Assessment.model_validate_json((folder / "a.json").read_text())
write_pdf(assessment, "owner", folder / "r.pdf", folder)
print(next(line for line in open("/proc/self/status") if line.startswith("VmHWM")).split()[1])
"""


def megabytes(folder: Path, *names: str) -> tuple[float, float]:
    """Most memory that making the report takes, and the size of the report, in MB."""
    (folder / "a.json").write_text(named(*names).model_dump_json())
    run = subprocess.run(
        [sys.executable, "-c", _MEASURED, str(folder)], capture_output=True, text=True, check=True
    )
    return int(run.stdout) / 1024, (folder / "r.pdf").stat().st_size / 1e6


@cache
def noise() -> Image.Image:
    return Image.effect_noise((500, 375), 90).convert("RGB")


@pytest.mark.slow
def test_forty_photos_of_twelve_megapixels_stay_within_memory_and_size(tmp_path: Path) -> None:
    names = [f"{number}.jpg" for number in range(40)]
    for number, name in enumerate(names):
        image = noise().rotate(number).resize((4000, 3000), Image.Resampling.NEAREST)
        image.save(tmp_path / name, quality=70)
    memory, size = megabytes(tmp_path, *names)

    assert len(set(pictures(tmp_path / "r.pdf").values())) == 40
    print(f"{memory:.0f} MB of memory, {size:.1f} MB of PDF")
    assert memory < 500
    assert size < 15


@pytest.mark.slow
def test_a_photo_of_a_hundred_and_eight_megapixels_is_shown_within_memory(tmp_path: Path) -> None:
    noise().resize((12_000, 9000), Image.Resampling.NEAREST).save(tmp_path / "huge.jpg", quality=60)
    memory, _ = megabytes(tmp_path, "huge.jpg")
    print(f"{memory:.0f} MB of memory")

    assert len(pictures(tmp_path / "r.pdf")) == 1
    assert memory < 500
