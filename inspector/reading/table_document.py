"""A table as a document: what stands at a path is found by sheet, row and column."""

from __future__ import annotations

from dataclasses import dataclass

from inspector.knowledge.faults import Fault
from inspector.knowledge.yamlfile import Document, Path, Spot
from inspector.reading.cells import Cell


@dataclass
class Mark:
    """Where a cell stands, counted from 0 as in a YAML text."""

    line: int
    column: int
    sheet: str


@dataclass(frozen=True)
class TableDocument(Document):
    """A document whose places are rows and columns, of several sheets perhaps."""

    sheets: int = 1

    def fault(self, path: Path, text: str, *, key: bool = False) -> Fault:
        """A fault at the row and column of what stands at `path`."""
        line, column = self.place(path, key=key)
        spot = self._nearest(path)
        mark = spot[1] if spot else None
        name = f"{self.name} [{mark.sheet}]" if mark is not None and self.sheets > 1 else self.name
        return Fault(name, line, column, text)

    def _nearest(self, path: Path) -> Spot | None:
        spot = self.spots
        for step in path:
            if spot is None or spot[2] is None or step not in spot[2]:
                break
            spot = spot[2][step]
        return spot


def mark(cell: Cell) -> Mark:
    """Where a cell stands."""
    return Mark(cell.row - 1, cell.column - 1, cell.sheet)
