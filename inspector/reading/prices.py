"""Read the user's own price file: what parts, hours and an hour of work cost, each as lowest, usual and highest.

The tool knows no price; without such a file no sum of money is told.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any, get_args

from inspector.knowledge.faults import not_allowed, shown
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import Effort
from inspector.knowledge.yamlfile import Path as Where
from inspector.knowledge.yamlfile import decode, parse
from inspector.quantities.costs import Estimate
from inspector.quantities.money import MOST
from inspector.quantities.units import NotAnAmount, parse_number
from inspector.reading.collector import Collector
from inspector.reading.record import read_bytes
from inspector.reading.values import NotAValue, read_day

EFFORTS = tuple(word for word in get_args(Effort) if word != "none")
_HEADINGS = ("invented", "note", "currency", "date", "hourly rate", "effort", "rules")
_PRICE = ("parts", "hours")
_MOST_HOURS = 1000.0
NOTHING = Estimate(0.0, 0.0, 0.0)


@dataclass(frozen=True)
class Price:
    """What a piece of work takes: parts in money, work in hours."""

    parts: Estimate
    hours: Estimate


@dataclass(frozen=True)
class Prices:
    """A price file, read."""

    currency: str
    day: date
    rate: Estimate
    effort: dict[str, Price]
    rules: dict[str, Price]
    invented: bool


def read_prices(path: Path, knowledge: Knowledge) -> tuple[Prices, str]:
    """The prices in the file at `path`, and its text. Raises Faults."""
    text = decode(read_bytes(path), str(path))
    return read_price_text(text, str(path), knowledge, date.today()), text


def read_price_text(text: str, name: str, knowledge: Knowledge, today: date) -> Prices:
    """The prices in a text. Raises Faults with all faults."""
    notes = Collector(parse(text, name, keep_faults=True))
    if not isinstance(notes.document.data, dict):
        notes.fault((), f"a price file has the headings {', '.join(_HEADINGS)}")
        notes.finish()
    reader = _Reader(notes, notes.document.data)
    notes.headings((), reader.data, _HEADINGS)
    prices = Prices(
        currency=reader.currency(),
        day=reader.day(today),
        rate=reader.estimate(("hourly rate",), reader.data.get("hourly rate"), MOST, wanted=True),
        effort=reader.table("effort", "the size of job", EFFORTS),
        rules=reader.table("rules", "the rule", tuple(knowledge.rules)),
        invented=reader.invented(),
    )
    if not (prices.effort or prices.rules):
        notes.fault((), "there is no price: `effort` or `rules` must hold at least one")
    notes.finish()
    return prices


class _Reader:
    def __init__(self, notes: Collector, data: dict[str, Any]) -> None:
        self.notes = notes
        self.data = data

    def currency(self) -> str:
        """Three letters."""
        given = self.notes.text(("currency",), self.data.get("currency"))
        if given is None or not re.fullmatch("[A-Za-z]{3}", given):
            text = "`currency` is three letters, such as EUR or GBP" + (f", not {shown(given)}" if given else "")
            self.notes.fault(("currency",), text)
        return (given or "").upper()

    def day(self, today: date) -> date:
        """The day the prices are of."""
        given = self.notes.text(("date",), self.data.get("date"))
        try:
            return read_day(given or "", today)
        except NotAValue as error:
            wrong = str(error) if given else "`date` is missing: the day of the prices, such as 2026-05-17"
            self.notes.fault(("date",), wrong)
            return today

    def invented(self) -> bool:
        """Whether the prices are those of an example."""
        given = self.notes.text(("invented",), self.data.get("invented")) or "no"
        if given.lower() not in ("yes", "no"):
            self.notes.fault(("invented",), f"{shown(given)} must be yes or no")
        return given.lower() == "yes"

    def table(self, heading: str, what: str, allowed: tuple[str, ...]) -> dict[str, Price]:
        """Prices below a heading, by a word that is allowed there."""
        found = {}
        for name, entry in self.notes.mapping((heading,), self.data.get(heading)).items():
            path: Where = (heading, name)
            if name not in allowed:
                self.notes.fault(path, not_allowed(what, name, allowed), key=True)
                continue
            section = self.notes.mapping(path, entry)
            self.notes.headings(path, section, _PRICE)
            if not section:
                self.notes.fault(path, f"a price has {' and '.join(_PRICE)} below it", key=True)
            found[name] = Price(
                self.estimate((*path, "parts"), section.get("parts"), MOST),
                self.estimate((*path, "hours"), section.get("hours"), _MOST_HOURS),
            )
        return found

    def estimate(self, path: Where, given: Any, most: float, *, wanted: bool = False) -> Estimate:
        """`40 to 60 to 110`, or one figure that is certain; nothing when it is left out."""
        text = self.notes.text(path, given)
        if text is None:
            if wanted:
                self.notes.fault(
                    path, f"`{path[-1]}` is missing: lowest, usual and highest, such as 40 to 60 to 90"
                )
            return NOTHING
        parts = re.split(r"\s+to\s+", text)
        try:
            figures = [parse_number(part) for part in parts]
            if len(figures) not in (1, 3):
                raise NotAnAmount(f"{shown(text)} has {len(figures)} figures")
            found = Estimate(figures[0], figures[len(figures) // 2], figures[-1])
        except (NotAnAmount, ValueError) as error:
            wanted_text = "Write lowest, usual and highest, such as `40 to 60 to 110`, or one figure"
            self.notes.fault(path, f"{str(error).rstrip('.')}. {wanted_text}")
            return NOTHING
        if found.high > most:
            self.notes.fault(path, f"{shown(text)} is not believable; at most {most:g}")
        return found
