"""Tables: a record written as one and read again says the same; faults name their row and column."""

from __future__ import annotations

import zipfile
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import openpyxl
import pandas as pd
import pytest
from click.testing import CliRunner, Result
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from inspector import assess, read
from inspector.cli import cli
from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.knowledge.walk_round import questions
from inspector.noting.plain_record import record_yaml
from inspector.noting.table_rows import head_rows, look_rows, write_table
from inspector.reading.addresses import Addresses
from inspector.reading.inspection import Inspection
from tests.records import good_observations, photos_beside

KNOWN = knowledge()
SAMPLES = sorted((Path(__file__).resolve().parents[2] / "samples").glob("*/record.yaml"))
HEAD = "machine: kind,shaft drive motorcycle\ninspection: purpose,before purchase\ninspection: date,2026-05-01\n\n"
COLUMNS = "part,place,property,value,tool,note,photo,odometer,date,new part\n"


def run(*arguments: str | Path) -> Result:
    return CliRunner().invoke(cli, [str(one) for one in arguments], catch_exceptions=False)


def same(inspection: Inspection) -> Inspection:
    """The inspection without the lines, which differ between a record and a table."""
    looks = {key: replace(one, line=0) for key, one in inspection.observations.items()}
    return replace(inspection, observations=looks)


def table(tmp_path: Path, rows: str, head: str = HEAD) -> Path:
    path = tmp_path / "looks.csv"
    path.write_text(head + COLUMNS + rows, encoding="utf-8")
    return path


def said(path: Path) -> list[str]:
    with pytest.raises(Faults) as refused:
        read(path)
    return [str(fault).removeprefix(f"{path}") for fault in refused.value.faults]


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
def test_every_sample_as_a_table_says_the_same(sample: Path, ending: str, tmp_path: Path) -> None:
    target = tmp_path / f"looks.{ending}"
    assert run("table", sample, target).exit_code == 0
    photos_beside(sample, tmp_path)

    assert same(read(target)) == same(read(sample))


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_the_findings_of_a_table_are_those_of_its_record(ending: str, tmp_path: Path) -> None:
    target = tmp_path / f"looks.{ending}"
    for sample in SAMPLES[:4]:
        run("table", sample, target)
        of_record, of_table = assess(read(sample)), assess(read(target))
        assert of_table.findings == of_record.findings
        assert of_table.causes == of_record.causes
        assert of_table.verdict == of_record.verdict
    assert run("assess", target).stdout == run("assess", sample).stdout


notes = st.text(st.characters(codec="utf-8", exclude_categories=["C"]), min_size=1, max_size=30).filter(
    lambda text: text.strip() == text and text
)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data(), ending=st.sampled_from(["csv", "xlsx"]))
def test_any_answers_survive_the_table(data: st.DataObject, ending: str, tmp_path: Path) -> None:
    looks: dict[str, Any] = {}
    good = [(a, n, v) for a, found in good_observations(KNOWN, "chain_drive").items() for n, v in found.items()]
    for address, name, value in data.draw(
        st.lists(st.sampled_from(good), max_size=8, unique_by=lambda one: one[:2])
    ):
        entry: Any = data.draw(st.sampled_from([value, "not checked", "could not see: dirt; rust"]))
        if data.draw(st.booleans()):
            entry = {"value": entry, "note": data.draw(notes)}
        looks.setdefault(address, {})[name] = entry
    pads = {"readings": ["2.6 mm", "2.7 mm"], "tool": "caliper", "earlier": [
        {"value": "3.4 mm", "odometer": "34 200 km", "date": "2025-04-10"},
        {"value": "4 mm", "odometer": "30 000 km"},
    ]}  # fmt: skip
    if data.draw(st.booleans()):
        looks["brake pad @ rear inner"] = {"friction_material_thickness": pads}
    record = {
        "machine": {"kind": "chain drive motorcycle", "odometer": "40 000 km", "without": ["abs", "rack"]},
        "inspection": {"purpose": "before purchase", "date": "2026-05-01"},
        "limits": {"brake disc @ front": {"thickness": "at least 4.5 mm (stamped)"}},
        "observations": looks,
        "remarks": [data.draw(notes), "one, two; three"],
    }
    as_record, as_table = tmp_path / "r.yaml", tmp_path / f"t.{ending}"
    as_record.write_text(record_yaml(record), encoding="utf-8")
    rows = look_rows(record, Addresses(KNOWN, KNOWN.machines["chain_drive"]))
    write_table(as_table, head_rows(record), rows)

    assert same(read(as_table)) == same(read(as_record))


def test_a_fault_of_a_cell_has_its_row_and_column_and_the_words_of_the_record_reader(tmp_path: Path) -> None:
    found = said(table(tmp_path, "brake pad,rear inner,friction material thickness,12 kg\ntyre,rear,craks,none\n"))
    record = tmp_path / "r.yaml"
    record.write_text(
        "machine: {kind: shaft drive motorcycle}\ninspection: {purpose: before purchase, date: 2026-05-01}\n"
        "observations:\n  brake pad @ rear inner: {friction material thickness: 12 kg}\n"
        "  tyre @ rear: {craks: none}\n"
    )

    assert [one[:7] for one in found] == [":6:4: `", ":7:3: `"]
    assert [one.split(": ", 1)[1] for one in found] == [one.split(": ", 1)[1] for one in said(record)]


def test_rows_that_contradict_one_another_are_told_with_both_rows(tmp_path: Path) -> None:
    rows = "tyre,rear,cracks,none\ntyre,rear,cracks,deep\nvalve,rear,,could not see\nvalve,rear,cap,yes\n"
    found = said(table(tmp_path, rows))

    assert ":7:3: `cracks` stands in row 6 already; keep one of them" in found
    assert ":9:1: row 8 speaks of `valve @ rear` as a whole; keep one of them" in found


def test_a_table_with_a_wrong_column_head_or_place_is_told_what_is_allowed(tmp_path: Path) -> None:
    path = tmp_path / "looks.csv"
    path.write_text(HEAD + "engine,nothing\npart,place,property,vlaue\n,,oil leak,dry\n")
    found = said(path)

    assert any("no line of the head" in one for one in found)
    assert any("the column `vlaue` is not known. Did you mean `value`?" in one for one in found)
    path.write_text("part;property\n")
    assert any("the column `value` is missing" in one for one in said(path))
    path.write_text("what,where\n1,2\n")
    assert any("no row holds the headings part, place, property, value" in one for one in said(path))


def test_semicolons_and_tabs_divide_cells_as_well(tmp_path: Path) -> None:
    text = HEAD + COLUMNS + "tyre,rear,tread centre,4.1 mm,tread gauge,three times\n"
    paths = []
    for number, sign in enumerate(",;\t"):
        paths.append(tmp_path / f"{number}.csv")
        paths[-1].write_text(text.replace(",", sign))

    assert same(read(paths[0])) == same(read(paths[1])) == same(read(paths[2]))
    assert read(paths[1]).observations["tyre", "rear", "tread_centre"].note == "three times"


def test_a_spreadsheet_may_turn_texts_into_numbers_and_days(tmp_path: Path) -> None:
    path = tmp_path / "looks.xlsx"
    book = openpyxl.Workbook()
    sheet = book.active
    for row in (
        ["machine: kind", "shaft drive motorcycle"], ["machine: year", 2009.0],
        ["inspection: purpose", "before purchase"], ["inspection: date", date(2026, 5, 1)], [],
        ["part", "property", "place", "value"],
        ["tyre", "date code", "rear", 1416], ["brake circuit", "fluid changed", "front", date(2021, 5, 3)],
    ):  # fmt: skip
        sheet.append(row)
    book.save(path)
    found = read(path)

    assert (found.day, found.year) == (date(2026, 5, 1), 2009)
    assert found.observations["tyre", "rear", "date_code"].value.typed == "1416"  # type: ignore[union-attr]
    assert found.observations["brake circuit", "front", "fluid_changed"].value.typed == "2021-05-03"  # type: ignore[union-attr]


def test_a_note_that_looks_like_a_formula_stays_a_note(tmp_path: Path) -> None:
    path = tmp_path / "looks.xlsx"
    row = {"part": "tyre", "place": "rear", "property": "cracks", "value": "none", "note": "=1+1"}
    write_table(path, [("machine: kind", "shaft drive motorcycle")], [row])
    sheet = openpyxl.load_workbook(path)["observations"]

    assert sheet["F2"].value == "=1+1"
    assert sheet["F2"].data_type == "s"


def test_a_damaged_table_gives_one_fault(tmp_path: Path) -> None:
    path = tmp_path / "looks.xlsx"
    path.write_bytes(b"PK\x03\x04 nothing")
    assert "this is no XLSX table that can be read" in said(path)[0]
    with zipfile.ZipFile(path, "w") as packed:
        packed.writestr("xl/workbook.xml", "<a")
    assert "this is no XLSX table that can be read" in said(path)[0]
    unclosed = table(tmp_path, 'tyre,rear,cracks,none,,"never closed\n')
    assert 'a cell that begins with " is never closed' in said(unclosed)[0]
    empty = tmp_path / "empty.csv"
    empty.write_text(",,\n,,\n")
    assert said(empty) == [":1:1: the table is empty"]


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_the_empty_table_holds_every_question_in_walk_round_order_and_can_be_filled(
    tmp_path: Path, ending: str
) -> None:
    path = tmp_path / f"empty.{ending}"
    result = run("table", "--template", path, "--machine", "belt_drive", "--for", "handover", "--depth", "short")
    assert result.exit_code == 0
    frame = (
        pd.read_excel(path, sheet_name="observations", dtype=str, na_filter=False)
        if ending == "xlsx"
        else pd.read_csv(path, skiprows=8, skip_blank_lines=False, dtype=str, na_filter=False)
    )
    walk = questions(KNOWN, "belt_drive", "handover", "short")

    assert list(zip(frame["part"], frame["place"], frame["property"], strict=True)) == [
        (one.part, one.place, one.name.replace("_", " ")) for one in walk
    ]
    assert read(path).observations == {}
    assert all(frame["answers"].str.startswith("Write "))


def test_an_empty_table_that_was_filled_is_a_record(tmp_path: Path) -> None:
    path = tmp_path / "t.xlsx"
    run("table", "--template", path, "--machine", "shaft_drive", "--for", "before purchase", "--depth", "core")
    book = openpyxl.load_workbook(path)
    sheet = book["observations"]
    for row in sheet.iter_rows(min_row=2):
        if row[2].value == "cracks":
            row[3].value, row[5].value = "deep", "both sides"
    book.save(path)
    looks = read(path).observations

    assert {key: one.note for key, one in looks.items()} == {
        ("tyre", "front", "cracks"): "both sides",
        ("tyre", "rear", "cracks"): "both sides",
    }
    assert assess(read(path)).verdict.level in ("stop", "repair")


def test_a_template_needs_a_kind_and_a_purpose_and_a_table_a_known_ending(tmp_path: Path) -> None:
    assert run("table", "--template", tmp_path / "t.csv").exit_code == 2
    wrong = run("table", "--template", tmp_path / "t.csv", "--machine", "shaft", "--for", "handover")
    assert (wrong.exit_code, "`shaft` is not known" in wrong.stderr) == (2, True)
    other = run("table", SAMPLES[0], tmp_path / "t.ods")
    assert (other.exit_code, "ends in .csv or .xlsx" in other.stderr) == (2, True)
    assert list(tmp_path.iterdir()) == []
