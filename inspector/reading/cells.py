"""Cells of a CSV or XLSX file as texts with their row and column, read by pandas. Raises Faults."""

from __future__ import annotations

import io
import re
import zipfile
from dataclasses import dataclass
from datetime import date, datetime, time
from pathlib import Path
from typing import Any

from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.yamlfile import MOST_BYTES, decode, refuse_strange

MOST_ROWS = 20_000
MOST_UNPACKED = 60_000_000
_DELIMITERS = ",;\t"


@dataclass(frozen=True, slots=True)
class Cell:
    """The text of one cell; row and column counted from 1."""

    text: str
    row: int
    column: int
    sheet: str = ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """The rows of one sheet."""

    name: str
    rows: tuple[tuple[Cell, ...], ...]


def read_sheets(raw: bytes, path: Path) -> tuple[Sheet, ...]:
    """Every sheet of the file that is not empty. Raises Faults."""
    frames = _excel(raw, path) if path.suffix.lower() == ".xlsx" else {"": _csv(raw, path)}
    sheets = []
    for name, frame in frames.items():
        if len(frame) > MOST_ROWS:
            raise _fault(path, f"the table has {len(frame)} rows; at most {MOST_ROWS} are read")
        rows = tuple(
            tuple(Cell(_text(one), number, column, name) for column, one in enumerate(row, 1))
            for number, row in enumerate(frame.itertuples(index=False, name=None), 1)
        )
        if any(cell.text for row in rows for cell in row):
            sheets.append(Sheet(name, rows))
    if not sheets:
        raise _fault(path, "the table is empty")
    for sheet in sheets:
        for row in sheet.rows:
            for cell in row:
                refuse_strange(cell.text, f"{path}", (cell.row, cell.column))
    return tuple(sheets)


def _fault(path: Path, text: str, line: int = 1) -> Faults:
    return Faults([Fault(str(path), line, 1, text)])


def _csv(raw: bytes, path: Path) -> Any:
    import pandas as pd

    text = decode(raw, str(path))
    delimiter = _delimiter(text)
    columns = max(line.count(delimiter) for line in text.splitlines()) + 1
    if columns > 200:
        raise _fault(path, f"a line has {columns} cells; is this a table?")
    try:
        return pd.read_csv(
            io.StringIO(text),
            sep=delimiter,
            header=None,
            names=range(columns),
            index_col=False,
            dtype=str,
            keep_default_na=False,
            skip_blank_lines=False,
        )
    except pd.errors.ParserError:
        raise _fault(path, 'a cell that begins with " is never closed', _unclosed(text)) from None


def _delimiter(text: str) -> str:
    """The sign between the cells of the heading row: comma, semicolon or tab."""
    for line in text.splitlines():
        for sign in _DELIMITERS:
            cells = [cell.strip(' "').lower() for cell in line.split(sign)]
            if "part" in cells and "property" in cells:
                return sign
    return ","


def _unclosed(text: str) -> int:
    """The line of the last quote that opens."""
    return next((n for n, line in reversed(list(enumerate(text.splitlines(), 1))) if line.count('"') % 2), 1)


def _excel(raw: bytes, path: Path) -> dict[str, Any]:
    import pandas as pd

    if len(raw) > MOST_BYTES:
        raise _fault(path, f"the file is larger than {MOST_BYTES // 1_000_000} MB; that is too much")
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as packed:
            if sum(one.file_size for one in packed.infolist()) > MOST_UNPACKED:
                raise _fault(path, "the file unpacks to more than any table of looks needs")
            sheets = [one for one in packed.namelist() if one.startswith("xl/worksheets/")]
            formulas = any(re.search(rb"<f[ >/]", packed.read(one)) for one in sheets)
        frames: dict[str, Any] = pd.read_excel(
            io.BytesIO(raw), sheet_name=None, header=None, dtype=object, na_filter=False, engine="openpyxl"
        )
    except (zipfile.BadZipFile, KeyError, ValueError, TypeError, OSError, AttributeError, SyntaxError):
        # what the libraries say about a damaged file names their own insides only
        raise _fault(path, "this is no XLSX table that can be read; save it anew, or as CSV") from None
    if formulas:
        _refuse_unworked(raw, frames, path)
    return frames


def _refuse_unworked(raw: bytes, frames: dict[str, Any], path: Path) -> None:
    """A formula whose result is not in the file reads as an empty cell; an answer would be dropped in silence."""
    from openpyxl import load_workbook

    faults = []
    for sheet in load_workbook(io.BytesIO(raw), read_only=True):
        frame = frames.get(sheet.title)
        for number, row in enumerate(sheet.iter_rows(values_only=True)):
            for column, one in enumerate(row):
                known = frame is not None and number < frame.shape[0] and column < frame.shape[1]
                result = _text(frame.iat[number, column]) if frame is not None and known else ""
                if isinstance(one, str) and one.startswith("=") and not result:
                    text = f"the formula `{one[:40]}` holds no result in this file; write the value itself"
                    faults.append(Fault(f"{path} [{sheet.title}]", number + 1, column + 1, text))
    if faults:
        raise Faults(faults)


def _text(value: Any) -> str:
    """A cell as a person sees it: a whole number without `.0`, a day without a clock."""
    if value is None or (isinstance(value, float) and value != value):
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float) and value.is_integer():
        return str(int(value))
    if isinstance(value, datetime):
        return value.date().isoformat() if value.time() == time() else value.isoformat(" ")
    if isinstance(value, date):
        return value.isoformat()
    return str(value).strip()
