"""Read the earlier readings of a measured property, and several readings taken one after the other."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import Any

from inspector.knowledge.library import Knowledge
from inspector.knowledge.observables import Property
from inspector.knowledge.yamlfile import Path
from inspector.quantities.readings import repeated
from inspector.quantities.units import NotAnAmount, number_text
from inspector.reading.collector import Collector
from inspector.reading.inspection import Earlier, Measured
from inspector.reading.values import NotAValue, in_unit, read_day, read_measured, read_odometer, tool_uncertainty

_HEADINGS = ("value", "tool", "odometer", "date", "new part")


class HistoryReader:
    """Reads `earlier` and `readings` of one property, collecting every fault."""

    def __init__(self, notes: Collector, knowledge: Knowledge, today: date) -> None:
        self.notes = notes
        self.known = knowledge
        self.today = today

    def earlier(self, path: Path, prop: Property, data: Any) -> tuple[Earlier, ...]:
        """A list of readings from before, each with the odometer of that day."""
        if prop.kind != "quantity":
            self.notes.fault(path, "earlier readings go only with a measured amount", key=True)
            return ()
        if not isinstance(data, list) or not data:
            text = "write a list, each as `{value: 3.4 mm, odometer: 34 200 km, date: 2025-04-10}`"
            self.notes.fault(path, text)
            return ()
        found = [self._one((*path, i), prop, entry) for i, entry in enumerate(data)]
        return tuple(one for one in found if one is not None)

    def _one(self, path: Path, prop: Property, data: Any) -> Earlier | None:
        entry = self.notes.mapping(path, data) if data is not None else {}
        self.notes.headings(path, entry, _HEADINGS)
        value, odometer = (self.notes.text((*path, name), entry.get(name)) for name in ("value", "odometer"))
        if value is None or odometer is None:
            self.notes.fault(path, "an earlier reading has a `value` and the `odometer` of that day")
            return None
        tool = self.notes.text((*path, "tool"), entry.get("tool"))
        day = self.notes.text((*path, "date"), entry.get("date"))
        try:
            return Earlier(
                read_measured(f"{value} with {tool}" if tool else value, prop, self.known),
                read_odometer(odometer),
                read_day(day, self.today) if day else None,
                new_part=self._yes((*path, "new part"), entry.get("new part")),
            )
        except (NotAValue, NotAnAmount) as error:
            self.notes.fault(path, str(error))
            return None

    def _yes(self, path: Path, data: Any) -> bool:
        word = (self.notes.text(path, data) or "no").lower()
        if word not in ("yes", "no", "true", "false"):
            self.notes.fault(path, f"`{word}` must be yes (the part was new then) or no")
        return word in ("yes", "true")

    def mean(self, path: Path, prop: Property, data: Any, tool: str | None) -> Measured | None:
        """Several readings of the same thing with one tool: their mean and how far it may be off."""
        if prop.kind != "quantity" or not isinstance(data, list) or len(data) < 2:
            self.notes.fault(path, "`readings` is a list of two or more amounts, such as [2.6 mm, 2.7 mm]")
            return None
        found = []
        for i, entry in enumerate(data):
            text = self.notes.text((*path, i), entry)
            try:
                found.append(read_measured(f"{text} with {tool}" if tool else f"{text}", prop, self.known))
            except (NotAValue, NotAnAmount) as error:
                self.notes.fault((*path, i), str(error))
        if len(found) < len(data):
            return None
        return self._together(found, tool or next((t for t in prop.tools if t in self.known.tools), None))

    def _together(self, found: list[Measured], tool: str | None) -> Measured:
        first = found[0]
        single = tool_uncertainty(first.amount, tool, self.known) if tool else 0.0
        result = repeated([one.amount.base for one in found], single)
        number = in_unit(result.mean, first.amount)
        typed = f"{number_text(number, 3)} {first.amount.unit} (mean of {len(found)})"
        amount = replace(first.amount, typed=typed, number=number, base=result.mean)
        return Measured(amount, result.uncertainty, first.tool, stated=True)
