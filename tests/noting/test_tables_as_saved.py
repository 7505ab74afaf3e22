"""Tables as spreadsheet programs save them: other signs, other days, cells that are no texts, formulas."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from inspector import read
from inspector.knowledge.faults import Faults
from inspector.knowledge.library import knowledge
from inspector.knowledge.walk_round import questions
from inspector.noting.table_rows import question_rows, write_table

HEAD = [
    ("machine: kind", "chain drive motorcycle"),
    ("machine: odometer", "41 200 km"),
    ("inspection: purpose", "before purchase"),
    ("inspection: date", "2026-05-01"),
]
PAD = ("brake pad", "rear inner", "friction_material_thickness")
CSV = """\
\ufeffmachine: kind;chain drive motorcycle;;;\r
machine: odometer;41200,5 km;;;\r
inspection: purpose;before purchase;;;\r
inspection: date;01.05.2026;;;\r
;;;;\r
part;place;property;value;note\r
brake pad;rear inner;friction material thickness;3,5 mm with caliper;"at the thin end; wet"\r
brake pad;rear outer;friction material thickness;2,6 mm; \r
engine;;oil changed;17.04.2026;\r
tyre;rear;cracks;none;\r
;;;;\r
;;;;\r
"""


def value(path: Path, key: tuple[str, str, str]) -> Any:
    return read(path).observations[key].value


def template(tmp_path: Path, cells: dict[tuple[str, str, str], Any], day: Any = "2026-05-01") -> Path:
    """The empty table of the program, filled in and saved by a spreadsheet."""
    path = tmp_path / "looks.xlsx"
    asked = questions(knowledge(), "chain_drive", "before purchase", "core")
    write_table(path, HEAD, question_rows(asked, knowledge()))
    book = openpyxl.load_workbook(path)
    looks, head = book["observations"], book["head"]
    for row in range(2, looks.max_row + 1):
        key = tuple(
            str(looks.cell(row, column).value).replace(" ", "_" if column == 3 else " ") for column in (1, 2, 3)
        )
        if key in cells:
            looks.cell(row, 4).number_format = "General"
            looks.cell(row, 4).value = cells[key]
    head.cell(4, 2).number_format = "DD.MM.YYYY"
    head.cell(4, 2).value = day
    for row in range(looks.max_row + 1, looks.max_row + 40):
        looks.cell(row, 1).value = " "  # rows that somebody touched and left
    book.save(path)
    return path


def test_semicolons_decimal_commas_dotted_days_and_rows_left_empty(tmp_path: Path) -> None:
    path = tmp_path / "looks.csv"
    path.write_bytes(CSV.encode())
    inspection = read(path)

    assert inspection.day == date(2026, 5, 1)
    assert inspection.odometer is not None
    assert inspection.odometer.base == 41200.5
    assert inspection.observations[PAD].value.amount.base == 3.5  # type: ignore[union-attr]
    assert inspection.observations[PAD].note == "at the thin end; wet"
    assert inspection.observations["brake pad", "rear outer", PAD[2]].value.amount.base == 2.6  # type: ignore[union-attr]
    assert inspection.observations["engine", "engine", "oil_changed"].value.day == date(2026, 4, 17)  # type: ignore[union-attr]
    assert len(inspection.observations) == 4


def test_a_comma_before_three_digits_is_asked_about(tmp_path: Path) -> None:
    path = tmp_path / "looks.csv"
    path.write_bytes(CSV.replace("3,5 mm", "1,250 mm").encode())
    with pytest.raises(Faults, match="1 250 mm"):
        read(path)


def test_cells_that_became_numbers_and_days_say_what_they_said(tmp_path: Path) -> None:
    codes = {("tyre", "front", "date_code"): 1416.0, ("tyre", "rear", "date_code"): 2222}
    path = template(tmp_path, codes, datetime(2026, 5, 1))

    assert read(path).day == date(2026, 5, 1)
    assert value(path, ("tyre", "front", "date_code")).code == "1416"
    assert value(path, ("tyre", "rear", "date_code")).code == "2222"


def test_a_bare_number_has_no_unit_here_and_is_not_guessed(tmp_path: Path) -> None:
    with pytest.raises(Faults, match=r"`2.5` has no unit"):
        read(template(tmp_path, {PAD: 2.5}))


def test_a_formula_without_a_result_is_named_and_not_taken_for_an_empty_cell(tmp_path: Path) -> None:
    path = template(tmp_path, {PAD: '=IF(1=1,"3.5 mm","")'})
    with pytest.raises(Faults) as refused:
        read(path)
    (fault,) = refused.value.faults
    assert fault.column == 4
    assert "the formula `=IF(1=1" in fault.text
