"""The facts about every part at its place: what was seen, what was derived, how it stands to each limit.

A look that was expected and not made is a fact like any other, so that nothing later has to judge absence.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from types import MappingProxyType
from typing import NamedTuple

from inspector.deriving.amounts import DOES_NOT_APPLY, NOT_LOOKED_AT, Derived
from inspector.deriving.derived import derive
from inspector.deriving.earlier import earlier_values
from inspector.deriving.forecast import MAY_REACH, Forecast, forecast
from inspector.deriving.limits import Applied, apply_limits, limit_here
from inspector.knowledge.kept import lately, once
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import Machine, contains, related
from inspector.knowledge.walk_round import Purpose, asked_after_work
from inspector.reading.inspection import Earlier, Inspection, Measured, Observation, Silent, Value, Word

_NO_LIMITS: Mapping[str, Applied] = MappingProxyType({})
_ABSENT = Derived(Silent("does not apply", "this machine has none"))


class Fact(NamedTuple):
    """One property of one part at one place."""

    part: str
    place: str
    name: str
    value: Value | Silent
    expected: bool
    observation: Observation | None = None
    derived_from: tuple[tuple[str, str, str], ...] = ()
    partial: bool = False
    earlier: tuple[Earlier, ...] = ()
    limits: Mapping[str, Applied] = _NO_LIMITS
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

    @cached_property
    def all(self) -> tuple[Fact, ...]:
        """Every fact, part by part."""
        return tuple(fact for facts in self.items.values() for fact in facts.values())


def derive_facts(inspection: Inspection, knowledge: Knowledge) -> Facts:
    """Turn an inspection into facts for the judging step."""
    machine = knowledge.machines[inspection.kind]
    builder = _Builder(inspection, knowledge, machine)
    items = {
        (part, place): builder.item(part, place) for part, places in machine.parts.items() for place in places
    }
    return Facts(inspection, machine, items)


@lately
def _unlooked(
    knowledge: Knowledge, part: str, place: str, purpose: Purpose, work: tuple[tuple[str, str], ...]
) -> Mapping[str, Fact]:
    """What is known of a part of which nothing was noted: the same in every record of such a visit.

    Derived properties have their place here and get their value from the record.
    """
    facts = {}
    for name, prop in knowledge.properties[part].items():
        value: Value | Silent = NOT_LOOKED_AT
        if prop.work:
            done = any(what == name and related(where, place) for what, where in work)
            value = Word("yes" if done else "no")
        elif prop.moment == "service" and not asked_after_work(prop, place, purpose, work):
            value = DOES_NOT_APPLY
        counts = value is NOT_LOOKED_AT and prop.asked and not prop.optional and not prop.record_only
        facts[name] = Fact(part, place, name, value, expected=counts)
    return facts


@once
def _derived_names(knowledge: Knowledge, part: str) -> tuple[str, ...]:
    return tuple(name for name, prop in knowledge.properties[part].items() if prop.derive is not None)


class _Builder:
    def __init__(self, inspection: Inspection, knowledge: Knowledge, machine: Machine) -> None:
        self.inspection = inspection
        self.known = knowledge
        self.machine = machine
        self.observed: dict[tuple[str, str], list[str]] = {}
        for part, place, name in inspection.observations:
            self.observed.setdefault((part, place), []).append(name)
        self.observed_parts = {part for part, _ in self.observed}
        self.cache: dict[tuple[str, str, str], Derived] = {}
        self.absent: dict[tuple[str, str], bool] = {}

    def item(self, part: str, place: str) -> dict[str, Fact]:
        facts = dict(self.unlooked(part, place))
        if self._absent(part, place):
            return {name: fact._replace(value=_ABSENT.value, expected=False) for name, fact in facts.items()}
        names = dict.fromkeys((*self.observed.get((part, place), ()), *_derived_names(self.known, part)))
        found = {name: self.value(part, place, name) for name in names}
        values = {**{name: fact.value for name, fact in facts.items()}, **{n: f.value for n, f in found.items()}}
        words = {name: value.word for name, value in values.items() if isinstance(value, Word)}
        for name, one in found.items():
            facts[name] = self._fact(facts[name], one, words)
        return facts

    def unlooked(self, part: str, place: str) -> Mapping[str, Fact]:
        return _unlooked(self.known, part, place, self.inspection.purpose, self.inspection.work)

    def _fact(self, plain: Fact, found: Derived, words: dict[str, str]) -> Fact:
        """A fact with its value, and how that stands to its limits."""
        part, place, name, _, expected, *_ = plain
        observation = self.inspection.observations.get((part, place, name))
        if isinstance(found.value, Silent):
            return Fact(part, place, name, found.value, expected, observation, found.sources, found.partial)
        limits = apply_limits(found, part, place, name, self.known, self.inspection, words)
        ahead = self.forecast(part, place, name)
        if ahead is not None and ahead.limit in limits:
            limits[ahead.limit] = self._reaching(limits[ahead.limit], ahead)
        return Fact(
            part,
            place,
            name,
            found.value,
            expected,
            observation,
            derived_from=found.sources,
            partial=found.partial,
            earlier=self.earlier(part, place, name),
            limits=limits,
            forecast=ahead,
        )

    def earlier(self, part: str, place: str, name: str) -> tuple[Earlier, ...]:
        """What a property showed before."""
        return earlier_values(self, part, place, name)

    def forecast(self, part: str, place: str, name: str) -> Forecast | None:
        """When the part reaches the limit of its wear, as far as its readings tell."""
        prior = self.known.wear.get((part, name))
        if prior is None:
            return None
        found = self.value(part, place, name)
        if not isinstance(found.value, Measured):
            return None
        band = limit_here(part, place, name, prior.limit, self.known, self.inspection)
        history = self.earlier(part, place, name)
        return None if band is None else forecast(found.value, history, prior, band, self.inspection)

    @staticmethod
    def _reaching(limit: Applied, ahead: Forecast) -> Applied:
        """A limit that wear may reach before the horizon (one chance in ten) is reached within it."""
        reaches = limit.standing == "within" and ahead.by_horizon is not None and ahead.by_horizon >= MAY_REACH
        return replace(limit, reaches=limit.reaches or reaches)

    def value(self, part: str, place: str, name: str) -> Derived:
        """The value of a property, observed, derived or silent; memoised."""
        key = (part, place, name)
        found = self.cache.get(key)
        if found is None:
            found = self.cache[key] = self._value(part, place, name)
        return found

    def _value(self, part: str, place: str, name: str) -> Derived:
        if self._absent(part, place):
            return _ABSENT
        prop = self.known.properties[part][name]
        if prop.derive is not None:
            return derive(self, part, place, name)
        observation = self.inspection.observations.get((part, place, name))
        return Derived(observation.value if observation is not None else self.unlooked(part, place)[name].value)

    def _absent(self, part: str, place: str) -> bool:
        """Whether this machine lacks the part here; memoised."""
        key = (part, place)
        if key not in self.absent:
            without = any(p == part and contains(where, place) for p, where in self.inspection.without)
            lacks = part in self.machine.optional_parts and part not in self.observed_parts
            self.absent[key] = without or lacks
        return self.absent[key]
