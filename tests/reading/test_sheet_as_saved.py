"""The filled sheet as programs save it: values in other forms, and what was laid over the page instead."""

from __future__ import annotations

import io
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.annotations import FreeText
from pypdf.generic import (
    ArrayObject,
    ByteStringObject,
    DecodedStreamObject,
    DictionaryObject,
    FloatObject,
    NameObject,
    TextStringObject,
)

from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.reading.inspection import Inspection
from inspector.reading.opening import opened_record
from inspector.reading.sheet_fields import field_name
from inspector.reporting.sheet_paper import sheet_pdf
from inspector.reporting.sheet_plan import make_plan

TODAY = date(2026, 6, 1)
PAD = field_name("value", "brake pad", "rear inner", "friction_material_thickness", "mm")
FREE = field_name("word", "brake disc", "rear", "film", "clean")
LOOKS = {"brake pad/friction_material_thickness", "brake disc/film"}


@cache
def drawn() -> bytes:
    plan = make_plan(knowledge(), "shaft_drive", "before purchase", "core")
    stations = [
        replace(
            stop,
            blocks=tuple(
                replace(block, asks=tuple(one for one in block.asks if f"{one.part}/{one.name}" in LOOKS))
                for block in stop.blocks
            ),
        )
        for stop in plan.stations
        if stop.title == "rear"
    ]
    return sheet_pdf(replace(plan, stations=tuple(stations)), knowledge())


def written(tmp_path: Path, change: Callable[[PdfWriter, dict[str, Any]], None]) -> Path:
    writer = PdfWriter(clone_from=PdfReader(io.BytesIO(drawn())))
    widgets = {
        str(one.get_object()["/T"]): one.get_object() for page in writer.pages for one in page.get("/Annots", ())
    }
    widgets[field_name("inspection", "date")][NameObject("/V")] = TextStringObject("2026-05-01")
    change(writer, widgets)
    path = tmp_path / "sheet.pdf"
    writer.write(path)
    return path


def said(path: Path) -> Inspection:
    with opened_record(path, knowledge(), TODAY) as (inspection, _):
        return inspection


def stream(text: bytes) -> DecodedStreamObject:
    held = DecodedStreamObject()
    held.set_data(text)
    return held


@pytest.mark.parametrize(
    "form",
    [
        TextStringObject("3.5"),
        ByteStringObject(b"\xfe\xff" + "3.5".encode("utf-16-be")),
        NameObject("/3.5"),
        stream(b"3.5"),
        TextStringObject("3,5"),
        TextStringObject(" 3,5 mm\r"),
    ],
    ids=["text", "UTF-16", "a name", "a stream", "decimal comma", "comma, unit and line end"],
)
def test_a_number_is_read_in_every_form_that_programs_give_it(form: Any, tmp_path: Path) -> None:
    def fill(writer: PdfWriter, widgets: dict[str, Any]) -> None:
        widgets[PAD][NameObject("/V")] = (
            writer._add_object(form) if isinstance(form, DecodedStreamObject) else form
        )
        widgets[PAD].pop("/AP", None)  # many programs leave the drawing to the next one

    value: Any = (
        said(written(tmp_path, fill)).observations["brake pad", "rear inner", "friction_material_thickness"].value
    )
    assert value.amount.base == pytest.approx(3.5)


@pytest.mark.parametrize(
    ("state", "shown", "ticked"),
    [
        (NameObject("/on"), NameObject("/on"), True),
        (None, NameObject("/on"), True),
        (TextStringObject("on"), NameObject("/Off"), True),
        (TextStringObject("Off"), NameObject("/Off"), False),
        (NameObject("/Off"), NameObject("/Off"), False),
    ],
)
def test_a_tick_is_read_in_every_form(state: Any, shown: Any, ticked: bool, tmp_path: Path) -> None:
    def fill(writer: PdfWriter, widgets: dict[str, Any]) -> None:
        widgets[FREE][NameObject("/AS")] = shown
        widgets[FREE].pop("/V", None)
        if state is not None:
            widgets[FREE][NameObject("/V")] = state

    assert (("brake disc", "rear", "film") in said(written(tmp_path, fill)).observations) is ticked


def test_a_field_apart_from_its_box_is_read(tmp_path: Path) -> None:
    def fill(writer: PdfWriter, widgets: dict[str, Any]) -> None:
        box = widgets[PAD]
        parent = DictionaryObject({NameObject(key): box.pop(key) for key in ("/T", "/FT") if key in box})
        parent[NameObject("/V")] = TextStringObject("3.5")
        box.pop("/V", None)
        box[NameObject("/Parent")] = writer._add_object(parent)

    assert ("brake pad", "rear inner", "friction_material_thickness") in said(written(tmp_path, fill)).observations


def test_a_field_that_a_program_draws_anew_is_read(tmp_path: Path) -> None:
    def fill(writer: PdfWriter, widgets: dict[str, Any]) -> None:
        given = {field_name("machine", "name"): "Grüne, 2½"}
        writer.update_page_form_field_values(writer.pages[0], given, auto_regenerate=True)

    assert said(written(tmp_path, fill)).name == "Grüne, 2½"


def test_a_comma_that_may_part_thousands_is_not_guessed(tmp_path: Path) -> None:
    def fill(writer: PdfWriter, widgets: dict[str, Any]) -> None:
        widgets[PAD][NameObject("/V")] = TextStringObject("1,250")

    with pytest.raises(Faults, match="1 250 mm"):
        said(written(tmp_path, fill))


def ink(height: float) -> DictionaryObject:
    edges = ArrayObject(FloatObject(edge) for edge in (60, height, 160, height + 20))
    return DictionaryObject(
        {
            NameObject("/Type"): NameObject("/Annot"),
            NameObject("/Subtype"): NameObject("/Ink"),
            NameObject("/Rect"): edges,
        }
    )


def test_what_is_written_over_the_page_is_named_and_not_dropped(tmp_path: Path) -> None:
    def fill(writer: PdfWriter, widgets: dict[str, Any]) -> None:
        writer.add_annotation(0, FreeText(text="pads 2 mm", rect=(60, 500, 160, 520)))
        writer.add_annotation(1, ink(700))

    with pytest.raises(Faults) as refused:
        said(written(tmp_path, fill))
    found = [str(fault) for fault in refused.value.faults]
    assert len(found) == 2
    assert "page 1: text, “pads 2 mm”, was laid over the page" in found[0]
    assert "page 2: ink was laid over the page" in found[1]


def test_a_signature_below_the_last_field_is_let_be(tmp_path: Path) -> None:
    def fill(writer: PdfWriter, widgets: dict[str, Any]) -> None:
        lowest = min(float(edge) for edge in widgets[field_name("remarks")]["/Rect"][1::2])
        writer.add_annotation(len(writer.pages) - 1, ink(lowest - 60))
        widgets[FREE][NameObject("/V")] = widgets[FREE][NameObject("/AS")] = NameObject("/on")

    assert said(written(tmp_path, fill)).observations.keys() == {("brake disc", "rear", "film")}
