"""The facts about every part at its place: what was seen, what was derived, how it stands to each limit.

A look that was expected and not made is a fact like any other, so that nothing later has to judge absence.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from inspector.deriving.amounts import Derived
from inspector.deriving.derived import derive
from inspector.deriving.forecast import Forecast, forecast
from inspector.deriving.limits import Applied, apply_limits
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import Machine, contains, related
from inspector.knowledge.observables import Property
from inspector.knowledge.walk_round import asked_after_work
from inspector.reading.inspection import Inspection, Measured, Observation, Silent, Value, Word


@dataclass(frozen=True)
class Fact:
    """One property of one part at one place."""

    part: str
    place: str
    name: str
    value: Value | Silent
    expected: bool
    observation: Observation | None = None
    derived_from: tuple[tuple[str, str, str], ...] = ()
    partial: bool = False
    limits: dict[str, Applied] = field(default_factory=dict)
    forecast: Forecast | None = None

    @property
    def seen(self) -> bool:
        """Whether there is a value."""
        return not isinstance(self.value, Silent)

    @property
    def unseen(self) -> bool:
        """Whether a look was expected here and gave no value."""
        return self.expected and isinstance(self.value, Silent) and self.value.state != "does not apply"


@dataclass(frozen=True)
class Facts:
    """All facts of one inspection, by part, place and property."""

    inspection: Inspection
    machine: Machine
    items: dict[tuple[str, str], dict[str, Fact]]

    def all(self) -> Iterator[Fact]:
        """Every fact, part by part."""
        for facts in self.items.values():
            yield from facts.values()


def derive_facts(inspection: Inspection, knowledge: Knowledge) -> Facts:
    """Turn an inspection into facts for the judging step."""
    machine = knowledge.machines[inspection.kind]
    builder = _Builder(inspection, knowledge, machine)
    items = {
        (part, place): builder.item(part, place) for part, places in machine.parts.items() for place in places
    }
    return Facts(inspection, machine, items)


class _Builder:
    def __init__(self, inspection: Inspection, knowledge: Knowledge, machine: Machine) -> None:
        self.inspection = inspection
        self.known = knowledge
        self.machine = machine
        self.observed_parts = {part for part, _, _ in inspection.observations}
        self.cache: dict[tuple[str, str, str], Derived] = {}

    def item(self, part: str, place: str) -> dict[str, Fact]:
        values = {name: self.value(part, place, name) for name in self.known.properties[part]}
        words = {name: found.value.word for name, found in values.items() if isinstance(found.value, Word)}
        return {name: self._fact(part, place, name, found, words) for name, found in values.items()}

    def _fact(self, part: str, place: str, name: str, found: Derived, words: dict[str, str]) -> Fact:
        prop = self.known.properties[part][name]
        limits = apply_limits(found, part, place, name, self.known, self.inspection, words)
        ahead = self.forecast(part, place, name)
        if ahead is not None and ahead.limit in limits:
            limits[ahead.limit] = self._reaching(limits[ahead.limit], ahead)
        return Fact(
            part=part,
            place=place,
            name=name,
            value=found.value,
            expected=self._expected(part, place, prop),
            observation=self.inspection.observations.get((part, place, name)),
            derived_from=found.sources,
            partial=found.partial,
            limits=limits,
            forecast=ahead,
        )

    def forecast(self, part: str, place: str, name: str) -> Forecast | None:
        """When the part reaches the limit of its wear, as far as its readings tell."""
        prior, found = self.known.wear.get((part, name)), self.value(part, place, name)
        if prior is None or not isinstance(found.value, Measured):
            return None
        limits = apply_limits(found, part, place, name, self.known, self.inspection, {})
        band = limits[prior.limit].band
        observation = self.inspection.observations.get((part, place, name))
        history = observation.earlier if observation else ()
        return None if band is None else forecast(found.value, history, prior, band, self.inspection)

    def _reaching(self, limit: Applied, ahead: Forecast) -> Applied:
        """A limit that wear may reach before the horizon (one chance in ten) is reached within it."""
        horizon = self.inspection.horizon_km
        if ahead.per_month is not None:
            horizon = min(horizon, ahead.per_month * self.inspection.horizon_months)
        reaches = limit.standing == "within" and ahead.low is not None and ahead.low <= horizon
        return replace(limit, reaches=limit.reaches or reaches)

    def value(self, part: str, place: str, name: str) -> Derived:
        """The value of a property, observed, derived or silent; memoised."""
        key = (part, place, name)
        if key not in self.cache:
            self.cache[key] = self._value(part, place, name)
        return self.cache[key]

    def _value(self, part: str, place: str, name: str) -> Derived:
        prop = self.known.properties[part][name]
        if self._absent(part, place):
            return Derived(Silent("does not apply", "this machine has none"))
        if prop.derive is not None:
            return derive(self, part, place, prop)
        observation = self.inspection.observations.get((part, place, name))
        if observation is not None:
            return Derived(observation.value)
        if prop.work:
            done = any(what == name and related(where, place) for what, where in self.inspection.work)
            return Derived(Word("yes" if done else "no"))
        if prop.moment == "service" and not self._asked_after_work(place, prop):
            return Derived(Silent("does not apply"))
        return Derived(Silent("not looked at"))

    def _absent(self, part: str, place: str) -> bool:
        if any(p == part and contains(where, place) for p, where in self.inspection.without):
            return True
        return part in self.machine.optional_parts and part not in self.observed_parts

    def _asked_after_work(self, place: str, prop: Property) -> bool:
        return asked_after_work(prop, place, self.inspection.purpose, self.inspection.work)

    def _expected(self, part: str, place: str, prop: Property) -> bool:
        if not prop.asked or prop.optional or prop.record_only or prop.work or self._absent(part, place):
            return False
        return prop.moment != "service" or self._asked_after_work(place, prop)
