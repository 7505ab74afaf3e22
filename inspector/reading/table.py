"""Read a table (CSV or XLSX) into the same plain data as a YAML record, with the row and column of every cell.

Rows above the heading row (or a second sheet) hold the head, two cells each: `machine: kind`, and its text.
Below the heading row every row is one observation; with an odometer it is an earlier reading of the same thing.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from inspector.knowledge.faults import Fault, Faults, not_allowed, shown
from inspector.knowledge.yamlfile import Spot
from inspector.reading.addresses import plain
from inspector.reading.cells import Cell, Sheet, read_sheets
from inspector.reading.table_document import TableDocument, mark
from inspector.reading.values import read_silence, with_iso_day, with_point

COLUMNS = ("part", "place", "property", "value", "tool", "note", "photo", "odometer", "date", "new part")
TOLD = ("stop", "question", "how to look", "answers", "minutes")  # for the person who fills it; not read
LISTS = ("work done", "remarks", "machine: without", "inspection: tried")
SUFFIXES = (".csv", ".xlsx")
BETWEEN_READINGS = ";"
_BEFORE = ("odometer", "date", "new part")


def is_table(path: Path) -> bool:
    """Whether a file is read as a table, by its name."""
    return path.suffix.lower() in SUFFIXES


def read_table(raw: bytes, path: Path) -> TableDocument:
    """The table as a document. Raises Faults when it is no table; smaller faults are carried."""
    sheets = read_sheets(raw, path)
    builder = _Builder(str(path), len(sheets))
    for sheet in sheets:
        builder.sheet(sheet)
    if not builder.headed:
        first = sheets[0].name if sheets else ""
        builder.fault(Cell("", 1, 1, first), f"no row holds the headings {', '.join(COLUMNS[:4])}, ..")
        raise Faults(builder.faults)
    return TableDocument(str(path), builder.data, builder.spots, tuple(builder.faults), sheets=len(sheets))


@dataclass
class _Builder:
    name: str
    sheets: int
    data: dict[str, Any] = field(default_factory=dict)
    spots: Spot = (None, None, {})
    faults: list[Fault] = field(default_factory=list)
    headed: bool = False

    def fault(self, cell: Cell, text: str) -> None:
        name = f"{self.name} [{cell.sheet}]" if self.sheets > 1 else self.name
        self.faults.append(Fault(name, cell.row, cell.column, text))

    def sheet(self, sheet: Sheet) -> None:
        """Take the rows of one sheet: the head, and once the heading row was met, the observations."""
        headings: dict[int, str] | None = None
        for row in sheet.rows:
            filled = [cell for cell in row if cell.text]
            if not filled:
                continue
            names = {plain(cell.text) for cell in filled}
            if headings is None and {"part", "property"} <= names:
                headings = self._headings(filled)
                self.headed = True
            elif headings is None:
                self._head(filled)
            else:
                self._row(filled, headings)

    def _headings(self, row: list[Cell]) -> dict[int, str]:
        found: dict[int, str] = {}
        for cell in row:
            name = plain(cell.text)
            if name not in COLUMNS and name not in TOLD:
                self.fault(cell, not_allowed("the column", cell.text, COLUMNS))
            elif name in found.values():
                self.fault(cell, f"the column `{name}` stands here twice")
            else:
                found[cell.column] = name
        if "value" not in found.values():
            self.fault(row[0], "the column `value` is missing")
        return found

    def _head(self, row: list[Cell]) -> None:
        """`machine: kind` and its text; a list has one row for each entry."""
        key, *rest = row
        steps = [one.strip() for one in key.text.split(":") if one.strip()]
        if not steps or (len(steps) == 1 and plain(steps[0]) not in ("work done", "remarks", "invented")):
            self.fault(
                key,
                f"{shown(key.text)} is no line of the head; they look like `machine: kind`, with the kind beside",
            )
            return
        if len(rest) > 1:
            self.fault(rest[1], "a line of the head has two cells: what it is, and its text")
        if not rest:
            return
        steps = [plain(one) if number < 2 and steps[0] != "limits" else one for number, one in enumerate(steps)]
        if ": ".join(steps) in LISTS:
            self._add(steps, key, rest[0])
        else:
            self._put(self._below(steps[:-1], key), steps[-1], key, rest[0])

    def _add(self, steps: list[str], key: Cell, value: Cell) -> None:
        data, spots = self._below(steps[:-1], key)
        if steps[-1] not in data:
            data[steps[-1]], spots[steps[-1]] = [], (mark(key), mark(key), {})
        below = spots[steps[-1]][2]
        assert below is not None
        below[len(data[steps[-1]])] = (None, mark(value), None)
        data[steps[-1]].append(value.text)

    def _below(self, steps: Iterable[str], at: Cell) -> tuple[dict[str, Any], dict[str | int, Spot]]:
        """The table below these headings and the places in it, made when they are not there."""
        data, spots = self.data, self.spots[2]
        assert spots is not None
        for step in steps:
            if not isinstance(data.get(step), dict):
                data[step], spots[step] = {}, (mark(at), mark(at), {})
            below = spots[step][2]
            assert below is not None
            data, spots = data[step], below
        return data, spots

    def _put(self, where: tuple[dict[str, Any], dict[str | int, Spot]], name: str, key: Cell, value: Cell) -> None:
        data, spots = where
        if name in data:
            self.fault(key, f"`{name}` stands in row {spots[name][1].line + 1} already; keep one of them")
            return
        data[name], spots[name] = _told(name, value), (mark(key), mark(value), None)

    def _row(self, filled: list[Cell], headings: dict[int, str]) -> None:
        for cell in filled:
            if cell.column not in headings:
                self.fault(cell, "this cell stands below no heading")
        named = {headings[cell.column]: cell for cell in filled if cell.column in headings}
        cells = {name: cell for name, cell in named.items() if name not in TOLD}
        if not set(cells) - {"part", "place", "property"}:
            return  # a question nobody answered
        if "part" not in cells:
            self.fault(next(iter(cells.values())), "`part` is empty in this row")
            return
        part, place, name = (cells.get(one) for one in ("part", "place", "property"))
        assert part is not None
        address = f"{plain(part.text)} @ {plain(place.text)}" if place else plain(part.text)
        if name is None:
            self._whole_part(address, part, cells)
            return
        data, spots = self._below(("observations",), part)
        if isinstance(data.get(address), str):
            row = spots[address][1].line + 1
            self.fault(part, f"row {row} speaks of `{address}` as a whole; keep one of them")
            return
        looks = self._below(("observations", address), part)
        heading = plain(name.text).replace(" ", "_")
        if any(one in cells for one in _BEFORE):
            self._earlier(looks, heading, name, cells)
        else:
            self._look(looks, heading, name, cells)

    def _whole_part(self, address: str, part: Cell, cells: dict[str, Cell]) -> None:
        for one in cells:
            if one not in ("part", "place", "value"):
                self.fault(cells[one], f"`{one}` needs a `property` in the same row")
                return
        self._put(self._below(("observations",), part), address, part, cells["value"])

    def _look(
        self, looks: tuple[dict[str, Any], dict[str | int, Spot]], heading: str, name: Cell, cells: dict[str, Cell]
    ) -> None:
        data, spots = looks
        entry = data.get(heading)
        if entry is not None and set(entry) != {"earlier"}:
            self.fault(name, f"`{heading}` stands in row {spots[heading][1].line + 1} already; keep one of them")
            return
        mine, places = self._entry(looks, heading, name)
        for one in ("value", "tool", "note", "photo"):
            if one in cells:
                mine[one], places[one] = _told(one, cells[one]), (mark(cells[one]), mark(cells[one]), None)
        value = cells.get("value")
        if value is not None and BETWEEN_READINGS in value.text and read_silence(value.text) is None:
            self._readings(mine, places, value)

    def _readings(self, mine: dict[str, Any], places: dict[str | int, Spot], value: Cell) -> None:
        """Several readings in one cell, if each piece is one; a sentence with a semicolon stays a sentence."""
        pieces = [with_point(one.strip()) for one in value.text.split(BETWEEN_READINGS)]
        if not all(piece[:1].isdigit() for piece in pieces):
            return
        del mine["value"]
        del places["value"]
        here = mark(value)
        mine["readings"] = pieces
        places["readings"] = (here, here, dict.fromkeys(range(len(pieces)), (None, here, None)))

    def _earlier(
        self, looks: tuple[dict[str, Any], dict[str | int, Spot]], heading: str, name: Cell, cells: dict[str, Cell]
    ) -> None:
        for one in ("note", "photo"):
            if one in cells:
                self.fault(cells[one], f"an earlier reading takes no `{one}`")
        mine, places = self._entry(looks, heading, name)
        if "earlier" not in mine:
            mine["earlier"], places["earlier"] = [], (mark(name), mark(name), {})
        below = places["earlier"][2]
        assert below is not None
        kept = {one: cells[one] for one in ("value", "tool", *_BEFORE) if one in cells}
        below[len(mine["earlier"])] = (None, mark(name), {k: (mark(c), mark(c), None) for k, c in kept.items()})
        mine["earlier"].append({one: _told(one, cell) for one, cell in kept.items()})

    def _entry(
        self, looks: tuple[dict[str, Any], dict[str | int, Spot]], heading: str, name: Cell
    ) -> tuple[dict[str, Any], dict[str | int, Spot]]:
        data, spots = looks
        if heading not in data:
            data[heading], spots[heading] = {}, (mark(name), mark(name), {})
        below = spots[heading][2]
        assert below is not None
        return data[heading], below


def _told(column: str, cell: Cell) -> str:
    """What a cell says, with the decimal commas and the days that spreadsheets of some countries write."""
    return with_iso_day(with_point(cell.text)) if column in ("value", "odometer", "date") else cell.text
