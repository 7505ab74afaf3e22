"""The blank sheet: what it asks for, in which order, and that what is filled in comes back as a record."""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import NameObject, TextStringObject

from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.knowledge.observables import Property
from inspector.knowledge.yamlfile import Document
from inspector.reading.opening import opened_record
from inspector.reading.record import read_document
from inspector.reading.sheet_fields import field_name, field_steps
from inspector.reporting.sheet_paper import sheet_pdf
from inspector.reporting.sheet_plan import Plan, make_plan
from tests.records import good_value

TODAY = date(2026, 6, 1)
# looks of every kind between them
LOOKS = {
    "brake pad/friction_material_thickness",
    "brake pad/wear_mark",
    "brake disc/surface",
    "brake disc/film",
    "brake caliper/springs_and_shims",
    "tyre/date_code",
    "tyre/fitted_at",
    "tyre/cold_pressure",
    "final drive/oil_changed",
    "final drive/oil_changed_at",
    "final drive/pieces",
    "odometer record/readings_list",
    "odometer record/first_registered",
    "keys/how_many",
}
MARGIN = 15.0


def some_of(plan: Plan, looks: set[str]) -> Plan:
    """The plan with some looks only, so that it is drawn in a second."""
    stations = []
    for stop in plan.stations:
        blocks = [replace(b, asks=tuple(a for a in b.asks if f"{a.part}/{a.name}" in looks)) for b in stop.blocks]
        stations.append(replace(stop, blocks=tuple(block for block in blocks if block.asks)))
    return replace(plan, stations=tuple(stations))


@cache
def drawn() -> tuple[Plan, bytes]:
    plan = some_of(make_plan(knowledge(), "shaft_drive", "after own service", "full"), LOOKS)
    return plan, sheet_pdf(plan, knowledge())


Fill = Callable[[dict[str, str]], Path]


@pytest.fixture
def filled(tmp_path: Path) -> Fill:
    """A copy of the sheet with fields filled in, as a program that shows PDFs does it."""

    def fill(fields: dict[str, str]) -> Path:
        writer = PdfWriter(clone_from=PdfReader(io.BytesIO(drawn()[1])))
        left = dict(fields)
        for page in writer.pages:
            for annotation in page.get("/Annots", ()):
                widget = annotation.get_object()
                value = left.pop(str(widget.get("/T")), None)
                if value is not None and widget["/FT"] == "/Btn":
                    widget[NameObject("/V")] = widget[NameObject("/AS")] = NameObject(value)
                elif value is not None:
                    widget[NameObject("/V")] = TextStringObject(value)
        assert left == {}, "no such field on the sheet"
        path = tmp_path / "sheet.pdf"
        writer.write(path)
        return path

    return fill


def faults_of(path: Path) -> list[str]:
    with pytest.raises(Faults) as raised, opened_record(path, knowledge(), TODAY):
        pass
    return [str(fault) for fault in raised.value.faults]


DAY = {field_name("inspection", "date"): "2026-05-01"}


def field_and_entry(part: str, place: str, name: str, prop: Property, turn: int) -> tuple[dict[str, str], Any]:
    """One look filled in, a different way each time, and what a record says for it."""
    ticked, note = "/on", field_name("note", part, place, name)
    if turn % 7 == 5:
        return {field_name("unseen", part, place, name, "could not see"): ticked, note: "in the dark"}, {
            "could not see": "in the dark"
        }
    if prop.kind in ("choice", "yes_no"):
        word = prop.words()[turn % len(prop.words())]
        return {field_name("word", part, place, name, word): ticked, note: f"no. {turn}"}, {
            "value": word,
            "note": f"no. {turn}",
        }
    value = good_value(prop) if prop.good else "some words"
    if prop.kind in ("date", "odometer") and turn % 2:
        return {field_name("word", part, place, name, "unknown"): ticked}, "unknown"
    if prop.kind == "quantity":
        usual = prop.amount((prop.plausible or "").partition(" to ")[0]).unit
        typed = value.removesuffix(f" {usual}") if turn % 2 else value
        return {field_name("value", part, place, name, usual): typed}, value
    unit = "km" if prop.kind == "odometer" else ""
    return {field_name("value", part, place, name, unit): value}, value


def test_every_value_that_is_filled_in_comes_back(filled: Fill) -> None:
    plan, _ = drawn()
    fields = {field_name("machine", "name"): "the blue one", field_name("machine", "odometer"): "40 000 km", **DAY}
    fields |= {field_name("remarks"): "first line\nsecond line", field_name("work", "brake_pads", "front"): "/on"}
    by_hand: dict[str, Any] = {
        "machine": {"kind": "shaft drive motorcycle", "name": "the blue one", "odometer": "40 000 km"},
        "inspection": {"purpose": "after own service", "date": "2026-05-01"},
        "work done": ["brake pads @ front"],
        "remarks": ["first line\nsecond line"],
        "observations": {},
    }
    kinds, turn = set(), 0
    for ask in (ask for stop in plan.stations for block in stop.blocks for ask in block.asks):
        for place in ask.places:
            turn += 1
            found, entry = field_and_entry(ask.part, place, ask.name, ask.prop, turn)
            fields |= found
            by_hand["observations"].setdefault(f"{ask.part} @ {place}", {})[ask.name] = entry
            kinds.add(ask.prop.kind)
    assert kinds == {"quantity", "count", "choice", "yes_no", "date", "odometer", "tyre_code", "text"}
    assert turn > 25

    expected = read_document(Document("by hand", by_hand), None, knowledge(), TODAY)
    with opened_record(filled(fields), knowledge(), TODAY) as (inspection, _):
        key = ("brake pad", "front left inner", "friction_material_thickness")
        assert inspection.observations.keys() == expected.observations.keys()
        for look, one in expected.observations.items():
            assert replace(inspection.observations[look], line=0) == replace(one, line=0)
        assert replace(inspection, observations={}) == replace(expected, observations={})
        assert inspection.observations[key].value.typed.endswith(" mm")


def test_a_tool_and_an_own_limit_hold_for_all_the_places_they_are_printed_under(filled: Fill) -> None:
    places = ("front left inner", "front left outer", "front right inner", "front right outer")
    look, together = ("brake pad", "friction_material_thickness"), ", ".join(places)
    value = {field_name("value", look[0], place, look[1], "mm"): "2,4".replace(",", ".") for place in places[:2]}
    marks = {
        field_name("tool", look[0], look[1], together, "caliper"): "/on",
        field_name("limit", look[0], together, look[1], "at least", "mm"): "1",
        field_name("origin", look[0], together, look[1], "stamped"): "/on",
    }
    with opened_record(filled({**DAY, **value, **marks}), knowledge(), TODAY) as (inspection, _):
        read = [inspection.observations[look[0], place, look[1]].value for place in places[:2]]
        assert [getattr(one, "tool", None) for one in read] == ["caliper", "caliper"]
        assert {(one.place, str(one.at_least), one.origin) for one in inspection.limits} == {
            (place, "1 mm", "stamped on the part") for place in places
        }


def test_what_cannot_be_read_is_listed_with_its_page_and_field_and_not_guessed(filled: Fill) -> None:
    pad, disc = ("brake pad", "rear inner"), ("brake disc", "rear")
    thickness = field_name("value", *pad, "friction_material_thickness", "mm")
    path = filled(
        {
            **DAY,
            thickness: "two or so",
            field_name("value", "brake pad", "rear outer", "friction_material_thickness", "mm"): "2",
            field_name("unseen", "brake pad", "rear outer", "friction_material_thickness", "could not see"): "/on",
            field_name("word", *disc, "surface", "smooth"): "/on",
            field_name("word", *disc, "surface", "cracked"): "/on",
            field_name("note", *disc, "film"): "looks dirty",
            field_name("machine", "year"): "'09",
        }
    )
    found = faults_of(path)
    assert len(found) == 5
    assert all(re.search(r"page \d+, field “.+”: ", fault) for fault in found)
    together = "\n".join(found)
    assert "`two or so" in together
    assert "`2 mm` and `could not see` are given together" in together
    assert "`smooth` and `cracked` are given together" in together
    assert "a note stands here, but no answer beside it" in together
    assert "Brake pad".lower() in together.lower()


def test_an_empty_sheet_lacks_only_its_day(filled: Fill) -> None:
    assert [fault.partition(": ")[2] for fault in faults_of(filled({}))] == [
        "`date` is missing or empty. Write year-month-day, such as 2026-05-17"
    ]


def test_a_pdf_that_is_no_sheet_is_refused_with_the_reason(tmp_path: Path) -> None:
    path = tmp_path / "other.pdf"
    blank = PdfWriter()
    blank.add_blank_page(100, 100)
    blank.write(path)
    assert "has no fields of a sheet" in faults_of(path)[0]
    locked = PdfWriter(clone_from=PdfReader(io.BytesIO(drawn()[1])))
    locked.encrypt("secret", algorithm="RC4-128")
    locked.write(path)
    assert "is locked" in faults_of(path)[0]
    for broken in (drawn()[1][: len(drawn()[1]) // 2], b"%PDF-1.7\n" + b"\0" * 300):
        path.write_bytes(broken)
        assert re.search("damaged|no fields of a sheet", faults_of(path)[0])


def test_every_field_has_a_name_of_its_own_that_can_be_read_and_a_label() -> None:
    reader = PdfReader(io.BytesIO(drawn()[1]))
    widgets = [one.get_object() for page in reader.pages for one in page.get("/Annots", ())]
    fields = [one for one in widgets if one.get("/Subtype") == NameObject("/Widget")]
    names = [str(one["/T"]) for one in fields]
    assert len(names) == len(set(names)) > 200
    assert [name for name in names if field_steps(name) is None] == []
    assert [one["/T"] for one in fields if not str(one.get("/TU", "")).strip() or one["/TU"] == one["/T"]] == []
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]


def test_boxes_are_large_enough_for_a_glove_and_lie_on_the_page_apart_from_each_other() -> None:
    for page in PdfReader(io.BytesIO(drawn()[1])).pages:
        boxes = []
        for one in (annotation.get_object() for annotation in page.get("/Annots", ())):
            x0, x1 = sorted((float(one["/Rect"][0]), float(one["/Rect"][2])))
            y0, y1 = sorted((float(one["/Rect"][1]), float(one["/Rect"][3])))
            assert y1 - y0 >= 19  # points; a box to tick is 7.4 mm high with its edge
            if one["/T"] in (field_name("machine", "vin"), field_name("machine", "name")):
                assert x1 - x0 > 200  # seventeen letters by hand
            assert MARGIN < x0 < x1 < float(page.mediabox.width) - MARGIN
            boxes.append((x0, y0, x1, y1))
        for number, (x0, y0, x1, y1) in enumerate(boxes):
            for a0, b0, a1, b1 in boxes[:number]:
                assert not (x0 < a1 - 0.5 and a0 < x1 - 0.5 and y0 < b1 - 0.5 and b0 < y1 - 0.5)


def test_the_same_sheet_has_the_same_bytes_on_one_day() -> None:
    plan, before = drawn()
    assert sheet_pdf(plan, knowledge()) == before
