"""The zip that the page saves: unpacked with care, whatever somebody put into it."""

from __future__ import annotations

import json
import stat
import zipfile
from collections.abc import Iterable
from datetime import date
from pathlib import Path

import pytest

from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.reading import archive
from inspector.reading.opening import opened_record

RECORD = {
    "machine": {"kind": "shaft drive motorcycle"},
    "inspection": {"purpose": "before purchase", "date": "2026-05-01"},
    "observations": {"tyre @ rear": {"tread_centre": {"value": "4.2 mm", "photo": "photos/tyre.jpg"}}},
}
PHOTO = b"\xff\xd8\xff\xe0 a picture"
Entry = tuple[str | zipfile.ZipInfo, bytes]


def zipped(folder: Path, entries: Iterable[Entry]) -> Path:
    path = folder / "record.zip"
    with zipfile.ZipFile(path, "w") as made:
        for name, content in entries:
            made.writestr(name, content)
    return path


def good() -> list[Entry]:
    return [("record.json", json.dumps(RECORD).encode()), ("photos/tyre.jpg", PHOTO)]


def fault(path: Path) -> str:
    with pytest.raises(Faults) as raised, opened_record(path, knowledge(), date(2026, 6, 1)):
        pass
    return str(raised.value)


def test_the_record_and_its_photos_are_read_and_the_folder_is_gone_afterwards(tmp_path: Path) -> None:
    with opened_record(zipped(tmp_path, good()), knowledge(), date(2026, 6, 1)) as (inspection, folder):
        photo = inspection.observations["tyre", "rear", "tread_centre"].photo
        assert photo == "photos/tyre.jpg"
        assert (folder / photo).read_bytes() == PHOTO
    assert not folder.exists()
    assert sorted(one.name for one in tmp_path.iterdir()) == ["record.zip"]


@pytest.mark.parametrize(
    "name",
    [
        "../outside.jpg",
        "photos/../../outside.jpg",
        "/outside.jpg",
        "C:/outside.jpg",
        "photos\\..\\..\\outside.jpg",
        "photos/deeper/a.jpg",
        "photos/.hidden.jpg",
        "photos/a.html",
        "a\nb.jpg",
        "record.json/a.jpg",
    ],
)
def test_no_name_leads_out_of_the_folder_and_no_other_file_is_taken(tmp_path: Path, name: str) -> None:
    inside = tmp_path / "inside"
    inside.mkdir()
    assert "neither the record nor a photo" in fault(zipped(inside, [*good(), (name, b"x")]))
    assert sorted(one.name for one in tmp_path.iterdir()) == ["inside"]
    assert sorted(one.name for one in inside.iterdir()) == ["record.zip"]


def test_a_link_is_not_taken(tmp_path: Path) -> None:
    link = zipfile.ZipInfo("photos/link.jpg")
    link.create_system = 3
    link.external_attr = (stat.S_IFLNK | 0o777) << 16
    assert "neither the record nor a photo" in fault(zipped(tmp_path, [*good(), (link, b"/etc/hostname")]))


def test_what_unpacks_to_too_much_is_stopped_while_unpacking(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "record.zip"
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as made:
        made.writestr("record.json", json.dumps(RECORD))
        made.writestr("photos/tyre.jpg", b"\0" * 5_000_000)
    assert path.stat().st_size < 10_000
    monkeypatch.setattr(archive, "MOST_PHOTO_BYTES", 1_000_000)
    assert "photos/tyre.jpg` in this zip file is too large" in fault(path)
    monkeypatch.setattr(archive, "MOST_PHOTO_BYTES", 30_000_000)
    monkeypatch.setattr(archive, "MOST_TOTAL_BYTES", 1_000_000)
    assert "is too large" in fault(path)
    monkeypatch.setattr(archive, "MOST_FILES", 1)
    assert "2 files in this zip file" in fault(path)


def test_it_holds_one_record(tmp_path: Path) -> None:
    assert "it holds none" in fault(zipped(tmp_path, good()[1:]))
    assert "it holds record.json, record.yaml" in fault(zipped(tmp_path, [*good(), ("record.yaml", b"a: b")]))


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_a_name_stands_in_it_once(tmp_path: Path) -> None:
    assert "is in this zip file twice" in fault(zipped(tmp_path, [*good(), ("photos/TYRE.jpg", b"x")]))


def test_a_damaged_zip_is_told_as_such(tmp_path: Path) -> None:
    path = zipped(tmp_path, good())
    raw = path.read_bytes()
    path.write_bytes(raw[:-30])
    assert "damaged" in fault(path)
    path.write_bytes(raw.replace(b"a picture", b"b picture"))
    assert "damaged" in fault(path)  # its checksum does not fit


def test_a_fault_of_the_record_names_the_file_in_the_zip(tmp_path: Path) -> None:
    wrong = json.dumps({**RECORD, "machine": {"kind": "shaft drive motorcycl"}}).encode()
    assert f"{tmp_path}/record.zip/record.json:1:" in fault(
        zipped(tmp_path, [("record.json", wrong), *good()[1:]])
    )
