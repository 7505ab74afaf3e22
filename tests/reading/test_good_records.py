"""What a record may be: units as typed, doubt and tools, JSON, every way to say that nothing was seen."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from inspector.knowledge.library import knowledge
from inspector.quantities.units import parse_amount
from inspector.reading.inspection import (
    Counted,
    Day,
    FreeText,
    Inspection,
    Measured,
    Observation,
    Silent,
    TyreCode,
    Word,
)
from inspector.reading.record import read_record
from tests.records import photos_beside

TODAY = date(2026, 11, 1)
HEAD = "machine: {kind: shaft drive motorcycle}\ninspection: {purpose: handover, date: 2026-05-01}\n"
SAMPLES = Path(__file__).resolve().parents[2] / "samples"


def read(text: str, folder: Path, name: str = "record.yaml") -> Inspection:
    path = folder / name
    path.write_bytes(text.encode())
    return read_record(path, knowledge(), TODAY)


def look(line: str, folder: Path, part: str = "tyre", place: str = "front") -> Observation:
    """The one observation that a record with this line holds."""
    found = read(f"{HEAD}observations:\n  {part} @ {place}:\n    {line}\n", folder).observations
    assert len(found) == 1
    return next(iter(found.values()))


@pytest.mark.parametrize(
    ("typed", "in_mm"),
    [
        ("3.1 mm", 3.1),
        ("0.31 cm", 3.1),
        ("1/8 in", 3.175),
        ('1/8"', 3.175),
        ("125 thou", 3.175),
        ("3100 µm", 3.1),
        ("3mm", 3.0),
    ],
)
def test_an_amount_keeps_the_unit_it_was_typed_in(tmp_path: Path, typed: str, in_mm: float) -> None:
    value = look(f"tread_left: '{typed}'", tmp_path).value
    assert isinstance(value, Measured)
    assert value.typed == typed
    assert value.amount.base == pytest.approx(in_mm)


@pytest.mark.parametrize(
    ("line", "doubt_in_mm", "tool", "stated"),
    [
        ("3.1 mm ± 0.2 mm", 0.2, None, True),
        ("3.1 mm ± 0.2", 0.2, None, True),
        ("3.1 mm +/- 0.2 mm", 0.2, None, True),
        ("3.1 mm + / - 0.02 cm", 0.2, None, True),
        ("3.1 ± 0.2 mm", 0.2, None, True),
        ("3.1 mm ± 0.2 mm with caliper", 0.2, "caliper", True),
        ("{value: 3.1 mm ± 0 mm, tool: caliper}", 0.0, "caliper", True),
    ],
)
def test_doubt_that_is_stated_counts(
    tmp_path: Path, line: str, doubt_in_mm: float, tool: str | None, stated: bool
) -> None:
    value = look(f"tread_left: {line}", tmp_path).value
    assert isinstance(value, Measured)
    assert value.amount.base == pytest.approx(3.1)
    assert (value.uncertainty, value.tool, value.stated) == (pytest.approx(doubt_in_mm), tool, stated)


@pytest.mark.parametrize("tool", ["caliper", "steel rule", "tread gauge", "by eye"])
@pytest.mark.parametrize("line", ["3.1 mm with {}", "3.1 mm  WITH a {}", "{{value: 3.1 mm, tool: {}}}"])
def test_a_tool_brings_the_doubt_it_is_known_for(tmp_path: Path, line: str, tool: str) -> None:
    value = look(f"tread_left: {line.format(tool)}", tmp_path).value
    assert isinstance(value, Measured)
    assert value.tool == tool
    assert not value.stated
    stated = knowledge().tools[tool].gives.get("length", "25 %")
    shares = [
        parse_amount(one, "percent").base / 100 * 3.1 if "%" in one else parse_amount(one, "length").base
        for one in stated.split(" or ")
    ]
    assert value.uncertainty == pytest.approx(max(shares))
    assert value.uncertainty > 0


def test_a_finer_tool_leaves_less_doubt(tmp_path: Path) -> None:
    caliper = look("tread_left: 3.1 mm with caliper", tmp_path).value
    by_eye = look("tread_left: 3.1 mm with by eye", tmp_path).value
    assert isinstance(caliper, Measured)
    assert isinstance(by_eye, Measured)
    assert caliper.uncertainty < by_eye.uncertainty


def test_a_temperature_in_fahrenheit_has_its_doubt_as_a_difference(tmp_path: Path) -> None:
    warm = [
        (part, name)
        for part, entries in knowledge().properties.items()
        for name, entry in entries.items()
        if entry.dimension == "temperature" and entry.asked
    ]
    part, name = warm[0]
    place = next(m for m in knowledge().machines.values() if part in m.parts and not m.abstract).parts[part][0]
    value = look(f"{name}: 212 °F ± 9 °F", tmp_path, part, place).value
    assert isinstance(value, Measured)
    assert value.amount.base == pytest.approx(100)
    assert value.uncertainty == pytest.approx(5)


SILENCES = [
    ("not checked", "not looked at", None),
    ('"not checked: no stand"', "not looked at", "no stand"),
    ("not checked, no stand", "not looked at", "no stand"),
    ("not checked (no stand)", "not looked at", "no stand"),
    ("not checked - no stand", "not looked at", "no stand"),
    ("not checked because the seller was in a hurry", "not looked at", "because the seller was in a hurry"),
    ("Not  Checked", "not looked at", None),
    ("not_checked", "not looked at", None),
    ("not looked at", "not looked at", None),
    ("could not see", "could not see", None),
    ("could not see, hidden (behind the wheel)", "could not see", "hidden (behind the wheel)"),
    ("does not apply", "does not apply", None),
    ("{not checked: no stand}", "not looked at", "no stand"),
    ("{not checked: }", "not looked at", None),
    ("{not checked: yes}", "not looked at", None),
    ('{could not see: "mud, thick", note: n}', "could not see", "mud, thick"),
    ("{value: could not see}", "could not see", None),
]


@pytest.mark.parametrize(("written", "state", "reason"), SILENCES)
def test_every_way_to_say_that_nothing_was_seen(
    tmp_path: Path, written: str, state: str, reason: str | None
) -> None:
    for name in ("cracks", "tread_left", "date_code"):
        value = look(f"{name}: {written}", tmp_path).value
        assert isinstance(value, Silent)
        assert (value.state, value.reason) == (state, reason)


@pytest.mark.parametrize(
    "written",
    [
        "'not checked: the wheel stayed in'",
        "{not checked: the wheel stayed in}",
        "{not_checked: the wheel stayed in}",
    ],
)
def test_silence_about_a_whole_part_is_silence_about_all_of_it(tmp_path: Path, written: str) -> None:
    found = read(f"{HEAD}observations:\n  splines @ rear wheel side: {written}\n", tmp_path).observations
    asked = {name for name, entry in knowledge().properties["splines"].items() if entry.asked}
    assert {name for _, _, name in found} == asked
    assert {one.value for one in found.values()} == {Silent("not looked at", "the wheel stayed in")}


@pytest.mark.parametrize(
    ("line", "value"),
    [
        ("cracks: fine", Word("fine")),
        ("Cracks: FINE", Word("fine")),
        ("rotation_right: yes", Word("yes")),
        ("rotation right: true", Word("yes")),
        ("date_code: 0119", TyreCode("0119")),  # a leading nought is no octal number
        ("date_code: 319", TyreCode("319")),
    ],
)
def test_words_and_codes_are_what_was_typed(tmp_path: Path, line: str, value: object) -> None:
    assert look(line, tmp_path).value == value


def test_dates_may_be_a_day_a_month_or_unknown(tmp_path: Path) -> None:
    def changed(text: str) -> object:
        return look(f"fluid_changed: {text}", tmp_path, "brake circuit").value

    assert changed("2024-05-17") == Day(date(2024, 5, 17))
    assert changed("2024-5") == Day(date(2024, 5, 1))
    assert changed("not known") == Word("unknown")


def test_counts_and_free_texts(tmp_path: Path) -> None:
    kinds = {
        entry.kind: (part, name)
        for part, entries in knowledge().properties.items()
        for name, entry in entries.items()
        if entry.asked
    }
    machine = knowledge().machines["shaft_drive"]
    if "count" in kinds:
        part, name = kinds["count"]
        assert look(f"{name}: 2", tmp_path, part, machine.parts[part][0]).value == Counted(2)
    if "text" in kinds:
        part, name = kinds["text"]
        value = look(f"{name}: 'Rust, and more'", tmp_path, part, machine.parts[part][0]).value
        assert value == FreeText("Rust, and more")
    assert {"quantity", "choice", "yes_no", "date"} <= kinds.keys()


def test_spelling_of_addresses_is_free(tmp_path: Path) -> None:
    text = f"{HEAD}observations:\n  Brake_Pad@front  left_inner: {{Friction material thickness: 3 mm}}\n"
    keys = list(read(text, tmp_path).observations)
    assert keys == [("brake pad", "front left inner", "friction_material_thickness")]


def test_notes_in_any_script_are_kept_as_they_are(tmp_path: Path) -> None:
    note = 'قديم 轮胎 🏍️ it\'s "old": #3, [x] {y}'
    one = look(f"cracks: {json.dumps({'value': 'fine', 'note': note}, ensure_ascii=False)}", tmp_path)
    assert one.note == note


def test_a_photo_in_the_folder_is_kept_by_its_name(tmp_path: Path) -> None:
    (tmp_path / "photos").mkdir()
    (tmp_path / "photos" / "tyre 1.jpg").write_bytes(b"picture")
    (tmp_path / "link.jpg").symlink_to("photos/tyre 1.jpg")
    assert look("cracks: {value: fine, photo: photos/tyre 1.jpg}", tmp_path).photo == "photos/tyre 1.jpg"
    assert look("cracks: {value: fine, photo: ./photos/../link.jpg}", tmp_path).photo == "photos/tyre 1.jpg"


def test_limits_of_the_machine_itself(tmp_path: Path) -> None:
    body = """\
limits:
  brake disc:
    thickness: at least 4.5 mm (stamped)
  brake disc @ front left:
    thickness: At Least 4.6 mm
  tyre @ rear:
    cold_pressure: from 2.4 bar to 2.9 bar (manual)
"""
    known = knowledge()
    if known.given_limit("tyre", "cold_pressure") is None:
        body = body[: body.index("  tyre")]
    whole, left, *rest = read(HEAD + body, tmp_path).limits
    assert (whole.place, str(whole.at_least), whole.at_most, whole.origin) == (
        None, "4.5 mm", None, "stamped on the part")  # fmt: skip
    assert (left.place, str(left.at_least), left.origin) == ("front left", "4.6 mm", "the machine's manual")
    assert all((str(one.at_least), str(one.at_most)) == ("2.4 bar", "2.9 bar") for one in rest)


def test_the_head_of_a_record(tmp_path: Path) -> None:
    text = """\
machine:
  kind: Shaft_Drive Motorcycle
  name: the blue tourer
  year: 2009
  odometer: 41 200 km
  vin: abc 123-45
  without: brake disc @ front right
inspection:
  purpose: After own service
  date: 2026-5-1
  horizon: 2 years and 1000 mi
  country: uk
  request: |
    Two lines
    of it
  tried: [new pads, bled it]
work done: [Brake_pads @ Front, brake fluid @ rear]
remarks: one
invented: yes
"""
    one = read(text, tmp_path)
    assert (one.kind, one.name, one.year, one.vin) == ("shaft_drive", "the blue tourer", 2009, "ABC123-45")
    assert (one.purpose, one.day, one.country) == ("after own service", date(2026, 5, 1), "GB")
    assert (one.horizon_months, one.horizon_km) == (24, pytest.approx(1609.344))
    assert str(one.odometer) == "41 200 km"
    assert one.without == (("brake disc", "front right"),)
    assert one.work == (("brake_pads", "front"), ("brake_fluid", "rear"))
    assert (one.request, one.tried, one.remarks) == ("Two lines\nof it", ("new pads", "bled it"), ("one",))
    assert one.invented


def test_what_is_left_out_has_its_default(tmp_path: Path) -> None:
    one = read(HEAD, tmp_path)
    assert (one.horizon_months, one.horizon_km, one.odometer, one.country) == (12, 5000, None, None)
    assert not one.invented
    assert not one.observations


def test_json_reads_like_yaml_tabs_escapes_and_all(tmp_path: Path) -> None:
    data: dict[str, Any] = {
        "machine": {"kind": "shaft_drive", "name": 'a "b" \\ / 😀 é', "year": 2009},
        "inspection": {"purpose": "handover", "date": "2026-05-01"},
        "observations": {
            "tyre @ front": {"cracks": "fine", "rotation_right": True, "damage": {"value": "none", "note": "😀"}}
        },
        "remarks": ["one\ntwo", None],
    }
    found = [
        read(json.dumps(data, indent=indent, ensure_ascii=escaped).replace("/", "\\/"), tmp_path, "record.json")
        for indent in (None, "\t", 2)
        for escaped in (True, False)
    ]
    assert found[0].name == 'a "b" \\ / 😀 é'
    assert found[0].remarks == ("one\ntwo",)
    assert found[0].observations["tyre", "front", "damage"].note == "😀"
    assert found[0].observations["tyre", "front", "rotation_right"].value == Word("yes")
    for one in found[1:]:
        assert (one.name, one.remarks, one.year) == (found[0].name, found[0].remarks, 2009)
        values = {key: (o.value, o.note) for key, o in one.observations.items()}
        assert values == {key: (o.value, o.note) for key, o in found[0].observations.items()}


@pytest.mark.parametrize("sample", sorted(p.parent.name for p in SAMPLES.glob("*/record.yaml")))
@pytest.mark.parametrize("change", ["as it is", "CRLF", "BOM"])
def test_the_samples_read_the_same_however_they_were_saved(tmp_path: Path, sample: str, change: str) -> None:
    path = SAMPLES / sample / "record.yaml"
    plain = read_record(path, knowledge(), TODAY)
    copy = {
        "as it is": path.read_bytes(),
        "CRLF": path.read_bytes().replace(b"\n", b"\r\n"),
        "BOM": b"\xef\xbb\xbf" + path.read_bytes(),
    }[change]
    (tmp_path / "record.yaml").write_bytes(copy)
    photos_beside(path, tmp_path)
    assert read_record(tmp_path / "record.yaml", knowledge(), TODAY) == plain
