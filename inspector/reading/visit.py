"""Read the headings `machine` and `inspection`: what machine, which day, why, and how far to look ahead."""

from __future__ import annotations

import re
from datetime import date
from typing import Any

from inspector.knowledge.faults import not_allowed, shown
from inspector.knowledge.library import Knowledge
from inspector.knowledge.yamlfile import Path as Where
from inspector.quantities.money import Money, parse_money
from inspector.quantities.units import Amount, NotAnAmount, parse_amount
from inspector.reading.addresses import plain
from inspector.reading.collector import Collector
from inspector.reading.inspection import PURPOSES, Purpose
from inspector.reading.values import NotAValue, read_day, read_odometer

HEADINGS = {
    "machine": ("kind", "name", "year", "odometer", "vin", "without"),
    "inspection": ("purpose", "date", "odometer", "horizon", "country", "request", "tried", "asking price"),
}
_COUNTRY = re.compile(r"[A-Z]{2}")
_MOST_MONTHS, _MOST_KM = 120.0, 100_000.0


def machine_kinds(knowledge: Knowledge) -> dict[str, str]:
    """What each machine kind is called -> its name in the knowledge."""
    return {entry.called: kind for kind, entry in knowledge.machines.items() if not entry.abstract}


def machine_kind(given: str, knowledge: Knowledge) -> str:
    """The machine kind that is meant, by either name. Raises NotAValue."""
    kinds = machine_kinds(knowledge)
    found = {plain(name): kind for called, kind in kinds.items() for name in (called, kind)}.get(plain(given))
    if found is None:
        raise NotAValue(not_allowed("the machine kind", given, kinds))
    return found


def visit_purpose(given: str) -> Purpose:
    """The purpose that is meant. Raises NotAValue."""
    for purpose in PURPOSES:
        if plain(given) == purpose:
            return purpose
    raise NotAValue(not_allowed("the purpose", given, PURPOSES))


class VisitReader:
    """Reads the two sections that stand at the head of a record."""

    def __init__(self, notes: Collector, knowledge: Knowledge, today: date) -> None:
        self.notes = notes
        self.known = knowledge
        self.today = today
        self.machine = self._section("machine")
        self.visit = self._section("inspection")

    def _section(self, name: str) -> dict[str, Any]:
        section = self.notes.document.data.get(name)
        wanted = ", ".join(HEADINGS[name])
        if section is None:
            text = f"the heading `{name}` is missing or empty; below it stand: {wanted}"
            self.notes.fault((name,), text, key=True)
            return {}
        if not isinstance(section, dict):
            self.notes.fault((name,), f"`{name}` must have headings below it, not {shown(section)}: {wanted}")
            return {}
        self.notes.headings((name,), section, HEADINGS[name])
        return section

    def _given(self, section: str, name: str) -> tuple[Where, str | None]:
        """Where a heading stands, and its text if there is any."""
        table = self.machine if section == "machine" else self.visit
        return (section, name), self.notes.text((section, name), table.get(name))

    def _missing(self, section: str, name: str, wanted: str) -> None:
        table = self.machine if section == "machine" else self.visit
        if table.get(name) in (None, "") and table:
            self.notes.fault((section,), f"`{name}` is missing or empty. {wanted}", key=True)

    def text(self, section: str, name: str) -> str | None:
        """A free text."""
        return self._given(section, name)[1]

    def tried(self) -> tuple[str, ...]:
        """What was tried before."""
        return tuple(text for _, text in self.notes.texts(("inspection", "tried"), self.visit.get("tried")))

    def kind(self) -> str | None:
        """The machine kind, or None when it cannot be told."""
        path, given = self._given("machine", "kind")
        if given is None:
            self._missing("machine", "kind", f"Allowed: {', '.join(machine_kinds(self.known))}")
            return None
        try:
            return machine_kind(given, self.known)
        except NotAValue as error:
            self.notes.fault(path, str(error))
            return None

    def day(self) -> date:
        """The day of the inspection; today when it cannot be told."""
        path, given = self._given("inspection", "date")
        if given is None:
            self._missing("inspection", "date", "Write year-month-day, such as 2026-05-17")
            return self.today
        try:
            return read_day(given, self.today)
        except NotAValue as error:
            self.notes.fault(path, str(error))
            return self.today

    def purpose(self) -> Purpose:
        """Why the machine was looked at."""
        path, given = self._given("inspection", "purpose")
        if given is None:
            self._missing("inspection", "purpose", f"Allowed: {', '.join(PURPOSES)}")
            return PURPOSES[0]
        try:
            return visit_purpose(given)
        except NotAValue as error:
            self.notes.fault(path, str(error))
            return PURPOSES[0]

    def odometer(self) -> Amount | None:
        """The reading of the distance counter, under either heading."""
        found: list[Amount] = []
        for section in ("machine", "inspection"):
            path, given = self._given(section, "odometer")
            if given is None or plain(given) in ("unknown", "not known"):
                continue
            try:
                found.append(read_odometer(given))
            except NotAnAmount as error:
                self.notes.fault(path, str(error))
        if len(found) == 2 and abs(found[0].base - found[1].base) > 0.5:
            text = f"`machine` says {found[0]}, `inspection` says {found[1]}; give the reading once"
            self.notes.fault(("inspection", "odometer"), text)
        return found[0] if found else None

    def horizon(self) -> tuple[float, float]:
        """How many months and kilometres to look ahead."""
        path: Where = ("inspection", "horizon")
        found: dict[str, float] = {}
        for where, text in self.notes.texts(path, self.visit.get("horizon")):
            for part in re.split(r",| and | or ", text):
                dimension, amount = self._time_or_distance(part)
                if amount is None:
                    wrong = f"{shown(part)} is neither a time nor a distance, such as `6 months, 4000 km`"
                    self.notes.fault(where, wrong)
                elif dimension in found:
                    self.notes.fault(
                        where, f"`{amount}`: a {dimension} stands before it already; keep one of them"
                    )
                else:
                    found[dimension] = amount.base
        months, km = found.get("time", 12.0), found.get("distance", 5000.0)
        if not (0 < months <= _MOST_MONTHS and 1 <= km <= _MOST_KM):
            self.notes.fault(path, "the horizon lies within 10 years and between 1 km and 100 000 km")
        return months, km

    @staticmethod
    def _time_or_distance(text: str) -> tuple[str, Amount | None]:
        for dimension in ("time", "distance"):
            try:
                return dimension, parse_amount(text, dimension)
            except NotAnAmount:
                continue
        return "", None

    def asking_price(self) -> Money | None:
        """What the seller asks."""
        path, given = self._given("inspection", "asking price")
        try:
            return parse_money(given) if given is not None else None
        except NotAnAmount as error:
            self.notes.fault(path, str(error))
            return None

    def country(self) -> str | None:
        """The country whose law holds, as two letters."""
        path, given = self._given("inspection", "country")
        if given is None:
            return None
        code = "GB" if given.upper() == "UK" else given.upper()
        if not _COUNTRY.fullmatch(code):
            text = f"{shown(given)} is not a country code of two letters, such as GB or DE"
            self.notes.fault(path, text)
        return code

    def year(self, day: date) -> int | None:
        """The year the machine was built."""
        path, given = self._given("machine", "year")
        if given is None:
            return None
        if not re.fullmatch(r"[0-9]{4}", given) or not 1900 <= int(given) <= day.year + 1:
            self.notes.fault(path, f"{shown(given)} is not a year from 1900 to {day.year + 1}")
            return None
        return int(given)

    def vin(self) -> str | None:
        """The frame number."""
        path, given = self._given("machine", "vin")
        if given is None:
            return None
        vin = given.upper().replace(" ", "")
        if not re.fullmatch(r"[A-Z0-9*-]{5,20}", vin):
            self.notes.fault(path, f"{shown(given)} is not a frame number: 5 to 20 letters and figures")
        elif len(vin) == 17 and re.search("[IOQ]", vin):
            self.notes.fault(path, f"{shown(given)}: the letters I, O and Q are never used in a VIN (ISO 3779)")
        return vin
