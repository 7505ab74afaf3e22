"""A record as rows of a table, and the empty table with every question; `write_table` saves them by pandas."""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.library import Knowledge
from inspector.knowledge.walk_round import Question
from inspector.reading.addresses import Addresses
from inspector.reading.table import BETWEEN_READINGS, COLUMNS, TOLD
from inspector.reading.values import SILENCE_HEADINGS
from inspector.reporting.files import write_whole
from inspector.reporting.knowledge_text import answer_form

Row = dict[str, str]
Head = list[tuple[str, str]]
_TEXTS = ("part", "place", "property", *TOLD)  # columns that a spreadsheet may show wider
_HEAD_SHEET, _LOOKS_SHEET = "head", "observations"


def head_rows(data: Mapping[str, Any]) -> Head:
    """Everything of a record but the observations, one line each: `machine: kind`, and its text."""
    rows: Head = []
    for section, below in data.items():
        if section != "observations":
            rows += _lines(section, below)
    return rows


def _lines(name: str, value: Any) -> Iterator[tuple[str, str]]:
    if isinstance(value, dict):
        for heading, below in value.items():
            yield from _lines(f"{name}: {heading}", below)
    elif isinstance(value, list):
        for one in value:
            yield from _lines(name, one)
    elif value is not None:
        yield name, str(value)


def look_rows(data: Mapping[str, Any], addresses: Addresses) -> list[Row]:
    """One row for each observation, and one for each earlier reading below it. The record has been read before."""
    rows: list[Row] = []
    for address, looks in (data.get("observations") or {}).items():
        part, place = addresses.part_and_place(address)
        here = {"part": part, "place": place}
        if not isinstance(looks, dict):
            rows.append({**here, "value": str(looks)})
        elif len(looks) == 1 and next(iter(looks)) in SILENCE_HEADINGS:
            rows.append({**here, "value": _silence(looks)})
        else:
            for heading, entry in looks.items():
                rows += _rows({**here, "property": addresses.property(part, heading)[0].replace("_", " ")}, entry)
    return rows


def _rows(here: Row, entry: Any) -> Iterator[Row]:
    if not isinstance(entry, dict):
        yield {**here, "value": str(entry)}
        return
    row = {**here, **{one: str(entry[one]) for one in ("value", "tool", "note", "photo") if entry.get(one)}}
    if "readings" in entry:
        row["value"] = f"{BETWEEN_READINGS} ".join(str(one) for one in entry["readings"])
    elif "value" not in entry:
        row["value"] = _silence(entry)
    yield row
    for before in entry.get("earlier") or ():
        yield {**here, **{name: str(one) for name, one in before.items() if one is not None}}


def _silence(entry: Mapping[str, Any]) -> str:
    heading = next(one for one in SILENCE_HEADINGS if one in entry)
    reason = entry[heading]
    return heading if reason is None or str(reason).lower() in ("yes", "true") else f"{heading}: {reason}"


def question_rows(asked: Iterable[Question], knowledge: Knowledge) -> list[Row]:
    """The rows of an empty table: every question with its stop, how to look and what may be written."""
    return [
        {
            "part": one.part,
            "place": one.place,
            "property": one.name.replace("_", " "),
            "stop": knowledge.walk_round.stops[one.stop].stop,
            "question": one.prop.ask or "",
            "how to look": one.prop.look or "",
            "answers": answer_form(one.prop),
            "minutes": f"{one.minutes:g}",
        }
        for one in asked
    ]


def write_table(path: Path, head: Head, rows: list[Row]) -> None:
    """Save as CSV or XLSX, by the name of the file. Raises OSError, and Faults for another ending."""
    columns = [*COLUMNS, *(one for one in TOLD if any(one in row for row in rows))]
    table = [columns, *([row.get(one, "") for one in columns] for row in rows)]
    if path.suffix.lower() == ".csv":
        write_whole(path, _csv([*(list(line) for line in head), [], *table]))
    elif path.suffix.lower() == ".xlsx":
        write_whole(path, _excel([list(line) for line in head], table))
    else:
        raise Faults([Fault(str(path), 1, 1, "a table is a file that ends in .csv or .xlsx")])


def _csv(rows: list[list[str]]) -> bytes:
    import pandas as pd

    columns = max(len(row) for row in rows)
    frame = pd.DataFrame([row + [""] * (columns - len(row)) for row in rows], dtype=str)
    text = str(frame.to_csv(None, header=False, index=False, lineterminator="\n"))
    return ("\ufeff" + text).encode()  # without the mark a spreadsheet takes it for another alphabet


def _excel(head: list[list[str]], table: list[list[str]]) -> bytes:
    import pandas as pd

    out = io.BytesIO()
    with pd.ExcelWriter(out, engine="openpyxl") as writer:
        for name, rows in ((_LOOKS_SHEET, table), (_HEAD_SHEET, head)):
            pd.DataFrame(rows, dtype=str).to_excel(writer, sheet_name=name, header=False, index=False)
            _as_texts(writer.sheets[name])
        writer.sheets[_LOOKS_SHEET].freeze_panes = "A2"
    return out.getvalue()


def _as_texts(sheet: Any) -> None:
    """Every cell is a text: a date code keeps its nought, and a note that begins with = is no formula."""
    from openpyxl.utils import get_column_letter

    for number, column in enumerate(sheet.iter_cols(), 1):
        longest = 0
        for cell in column:
            cell.number_format = "@"
            if cell.value is not None:
                cell.data_type = "s"
                longest = max(longest, len(str(cell.value)))
        sheet.column_dimensions[get_column_letter(number)].width = max(8, min(longest + 2, 48))
