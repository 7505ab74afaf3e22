"""Read the printable sheet after it was filled in as a form: every field into the record, or told with its place.

Nothing is guessed: two ticks where one is wanted, a tick beside a value, a tool without a value are faults, each
with its page and its field.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path

from inspector.knowledge.faults import Fault
from inspector.knowledge.yamlfile import Document
from inspector.knowledge.yamlfile import Path as Where
from inspector.reading.pdf_fields import Filled, filled_fields
from inspector.reading.sheet_fields import PLACES_BETWEEN
from inspector.reading.values import with_point

Look = tuple[str, str, str]


@dataclass(frozen=True)
class SheetDocument(Document):
    """A record made from fields; what stands at a path came from a field on a page."""

    origins: dict[Where, Filled] = field(default_factory=dict)

    def origin(self, path: Where) -> Filled | None:
        """The field of what stands at `path`, or of the nearest thing around it."""
        for end in range(len(path), 0, -1):
            if path[:end] in self.origins:
                return self.origins[path[:end]]
        return None

    def place(self, path: Where, *, key: bool = False) -> tuple[int, int]:
        """The page, and the number of the field on it."""
        found = self.origin(path)
        return (found.page, found.number) if found else (1, 1)

    def fault(self, path: Where, text: str, *, key: bool = False) -> Fault:
        """A fault that names its field."""
        found = self.origin(path)
        return found.fault(self.name, text) if found else Fault(self.name, 1, 1, text)


def sheet_document(path: Path) -> SheetDocument:
    """The fields of a filled sheet as a record. Raises Faults when the file is no sheet that can be read."""
    collected = _Collected(str(path))
    for one in filled_fields(path):
        collected.take(one)
    return collected.document()


@dataclass
class _Row:
    """What was filled in about one look at one place."""

    value: list[tuple[str, Filled]] = field(default_factory=list)
    words: list[tuple[str, Filled]] = field(default_factory=list)
    unseen: list[tuple[str, Filled]] = field(default_factory=list)
    note: tuple[str, Filled] | None = None

    @property
    def answers(self) -> list[tuple[str, Filled]]:
        return [*self.value, *self.words, *self.unseen]


class _Collected:
    """Puts the fields together, look by look."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.faults: list[Fault] = []
        self.head: dict[str, dict[str, str]] = {"machine": {}, "inspection": {}}
        self.remarks: list[str] = []
        self.work: list[str] = []
        self.rows: dict[Look, _Row] = {}
        self.tools: dict[tuple[str, str, str], list[tuple[str, Filled]]] = {}
        self.limits: dict[Look, dict[str, tuple[str, Filled]]] = {}
        self.stamps: dict[Look, list[tuple[str, Filled]]] = {}
        self.origins: dict[Where, Filled] = {}

    def take(self, one: Filled) -> None:
        """Sort one filled field to where it belongs."""
        first, *steps = one.steps
        match first:
            case "machine" | "inspection":
                self.head[first][steps[0]] = one.text
                self.origins[first, steps[0]] = one
            case "remarks":
                self.origins["remarks", len(self.remarks)] = one
                self.remarks.append(one.text)
            case "work":
                self.origins["work done", len(self.work)] = one
                self.work.append(f"{steps[0]} @ {steps[1]}")
            case "tool":
                for place in steps[2].split(PLACES_BETWEEN):
                    self.tools.setdefault((steps[0], place, steps[1]), []).append((steps[3], one))
            case "limit":
                for place in steps[1].split(PLACES_BETWEEN):
                    given = self.limits.setdefault((steps[0], place, steps[2]), {})
                    given[steps[3]] = (_with_unit(one.text, steps[4]), one)
            case "origin":
                for place in steps[1].split(PLACES_BETWEEN):
                    self.stamps.setdefault((steps[0], place, steps[2]), []).append((steps[3], one))
            case _:
                self._row(first, steps, one)

    def _row(self, first: str, steps: list[str], one: Filled) -> None:
        row = self.rows.setdefault((steps[0], steps[1], steps[2]), _Row())
        if first == "value":
            row.value.append((_with_unit(one.text, steps[3]), one))
        elif first == "word":
            row.words.append((steps[3], one))
        elif first == "unseen":
            row.unseen.append((steps[3], one))
        else:
            row.note = (one.text, one)

    def document(self) -> SheetDocument:
        """The record, with the faults found while putting it together."""
        data: dict[str, object] = dict(self.head)
        if self.work:
            data["work done"] = self.work
        observations: dict[str, dict[str, object]] = {}
        for look, row in self.rows.items():
            entry = self._entry(look, row)
            if entry is not None:
                observations.setdefault(_address(look), {})[look[2]] = entry
        data["observations"] = observations
        self._leftover_tools()
        limits = self._limits()
        if limits:
            data["limits"] = limits
        if self.remarks:
            data["remarks"] = self.remarks
        return SheetDocument(self.name, data, faults=tuple(self.faults), origins=self.origins)

    def _entry(self, look: Look, row: _Row) -> dict[str, object] | None:
        path: Where = ("observations", _address(look), look[2])
        if len(row.answers) > 1:
            found = " and ".join(f"`{text}`" for text, _ in row.answers)
            self.faults.append(row.answers[1][1].fault(self.name, f"{found} are given together; keep one of them"))
            return None
        if row.note is not None and not row.answers:
            text = "a note stands here, but no answer beside it; fill in or tick one"
            self.faults.append(row.note[1].fault(self.name, text))
            return None
        ((answer, origin),) = row.answers
        entry: dict[str, object] = {answer: None} if row.unseen else {"value": answer}
        self.origins[path] = origin
        if row.note is not None:
            self.origins[(*path, "note")] = row.note[1]
            entry[answer if row.unseen else "note"] = row.note[0]
        if row.value:
            self._tool(path, look, answer, entry)
        return entry

    def _tool(self, path: Where, look: Look, answer: str, entry: dict[str, object]) -> None:
        ticked = self.tools.get(look, [])
        if len(ticked) > 1:
            found = " and ".join(f"`{tool}`" for tool, _ in ticked)
            text = f"{found} are ticked as the tool; keep one, or write `1.8 mm with caliper` beside each value"
            self.faults.append(ticked[1][1].fault(self.name, text))
        elif ticked and " with " not in answer and not answer.endswith("by eye"):
            entry["tool"] = ticked[0][0]
            self.origins[(*path, "tool")] = ticked[0][1]

    def _leftover_tools(self) -> None:
        """A tool that is ticked where no value stands measured nothing."""
        used = {one for look, ticked in self.tools.items() if look in self.rows for _, one in ticked}
        for one in dict.fromkeys(one for ticked in self.tools.values() for _, one in ticked):
            if one not in used:
                self.faults.append(one.fault(self.name, "a tool is ticked here, but no value stands beside it"))

    def _limits(self) -> dict[str, dict[str, str]]:
        limits: dict[str, dict[str, str]] = {}
        for look in dict.fromkeys((*self.limits, *self.stamps)):
            given, stamps = self.limits.get(look, {}), self.stamps.get(look, [])
            one = next(iter([*given.values(), *stamps]))[1]
            if not given or len(stamps) != 1:
                text = "a limit of your own needs a figure and one tick: stamped on the part, or from the manual"
                self.faults.append(one.fault(self.name, text))
                continue
            self.origins["limits", _address(look), look[2]] = one
            limits.setdefault(_address(look), {})[look[2]] = f"{_limit(given)} ({stamps[0][0]})"
        return limits


def _limit(given: dict[str, tuple[str, Filled]]) -> str:
    """`at least ..`, `at most ..`, or both ends as `from .. to ..`, whichever field came first."""
    if len(given) == 2:
        return f"from {given['at least'][0]} to {given['at most'][0]}"
    ((sense, (amount, _)),) = given.items()
    return f"{sense} {amount}"


def _address(look: Look) -> str:
    return f"{look[0]} @ {look[1]}"


def _with_unit(text: str, unit: str) -> str:
    """A bare number is meant in the unit that is printed beside its box; a comma may be its decimal point."""
    text = with_point(text) if unit else text
    return f"{text} {unit}" if unit and re.fullmatch(r"[-+−±\d\s.,/']+", text) else text
