"""Files that are no photos, or too large: told in the report, never fatal, within memory."""

from __future__ import annotations

import os
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader

from inspector.knowledge.wording import words
from inspector.reporting import photos
from inspector.reporting.pdf import write_pdf
from inspector.reporting.photos import gallery
from tests.reporting.cases import squeezed
from tests.reporting.photo_cases import camera_photo, named, pictures


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
