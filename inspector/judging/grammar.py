"""Our rules as plain productions: conjunctions of equality tests that conclude something. No engine in sight.

A rule about one part becomes one production for each way its tests can hold. A cause is judged once in each of
its places; each of its members becomes productions of its own, so that nothing has to be multiplied out.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from inspector.deriving.facts import Facts
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import Machine
from inspector.knowledge.rules import Member, Rule, Test, Tests
from inspector.reading.inspection import Word

ConclusionKind = Literal["finding", "member", "refuted"]
Payload = dict[str, str]
_HEAD = ("kind", "part", "place")


@dataclass(frozen=True, order=True)
class Conclusion:
    """Something a production concludes: a finding, a member of a cause, or that a cause is ruled out."""

    kind: ConclusionKind
    rule: str
    place: str
    slot: str = ""

    def payload(self) -> Payload:
        """The conclusion as a fact that other productions can match."""
        return {"kind": self.kind, "rule": self.rule, "place": self.place, "slot": self.slot}


@dataclass(frozen=True)
class Pattern:
    """A fact of a kind that holds all these values, tested in this order."""

    kind: str
    conditions: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Production:
    """When every pattern finds its fact, `concludes` holds (at the place of the first fact when it names none)."""

    patterns: tuple[Pattern, ...]
    kind: ConclusionKind
    rule: str
    place: str | None = None
    slot: str = ""


def slug(text: str) -> str:
    """A word as part of a fact's key."""
    return text.replace(" ", "_").replace("-", "_")


def key_of(name: str, test: Test) -> tuple[str, tuple[str, ...]]:
    """The key of a fact that a test reads and the values it accepts."""
    match test.word:
        case "is" | "one_of":
            return name, test.values
        case "beyond" | "within":
            return f"{name}__{slug(test.values[0])}", (test.word,)
        case "reaches":
            return f"{name}__reaches_{slug(test.values[0])}", ("yes",)


def payloads(facts: Facts) -> list[Payload]:
    """The facts as the productions see them: one flat fact a part and place, words only.

    A part of which nothing is known satisfies no test and is left out.
    """
    found = []
    for (part, place), looks in facts.items.items():
        payload = {"kind": "item", "part": part, "place": place}
        for name, fact in looks.items():
            if isinstance(fact.value, Word):
                payload[name] = fact.value.word
            for limit in fact.limits.values():
                payload[f"{name}__{slug(limit.name)}"] = limit.standing
                if limit.reaches:
                    payload[f"{name}__reaches_{slug(limit.name)}"] = "yes"
        if len(payload) > len(_HEAD):
            found.append(payload)
    return found


def compile_rules(knowledge: Knowledge, machine: Machine) -> list[Production]:
    """All productions for one machine kind."""
    productions: list[Production] = []
    for rule in knowledge.rules.values():
        if rule.about not in machine.parts:
            continue
        if rule.is_cause:
            for zone in machine.parts[rule.about]:
                productions += _cause(rule, zone, knowledge, machine)
        else:
            for tests in rule.cases():
                for pattern in _patterns(rule.about, tests):
                    productions.append(Production((pattern,), "finding", rule.id))
    return productions


def _patterns(part: str, tests: Tests, place: str | None = None) -> Iterator[Pattern]:
    """One pattern for each way the tests can hold, so that none needs an `or`."""
    head = (("part", part), *((("place", place),) if place is not None else ()))
    keys = [key_of(name, test) for name, test in tests.items()]
    for values in itertools.product(*(values for _, values in keys)):
        chosen = tuple((key, value) for (key, _), value in zip(keys, values, strict=True))
        yield Pattern("item", (*head, *chosen))


def _cause(rule: Rule, zone: str, knowledge: Knowledge, machine: Machine) -> Iterator[Production]:
    for heading, position, member in rule.members():
        slot = f"{heading} {position}"
        for pattern in _member_patterns(member, zone, knowledge, machine):
            yield Production((pattern,), "member", rule.id, zone, slot)
    needed = tuple(_slot(rule.id, zone, f"gathers {i}") for i in range(len(rule.gathers)))
    yield Production(needed, "finding", rule.id, zone)
    stands = Pattern("finding", (("rule", rule.id), ("place", zone)))
    for i in range(len(rule.refuted_by)):
        slot = f"refuted_by {i}"
        yield Production((stands, _slot(rule.id, zone, slot)), "refuted", rule.id, zone, slot)


def _slot(rule: str, zone: str, slot: str) -> Pattern:
    return Pattern("member", (("rule", rule), ("place", zone), ("slot", slot)))


def _member_patterns(member: Member, zone: str, knowledge: Knowledge, machine: Machine) -> Iterator[Pattern]:
    for one in member.alternatives():
        if one.look is not None:
            for place in machine.related_places(one.look.part, zone):
                yield from _patterns(one.look.part, one.look.tests, place)
        elif one.rule is not None:
            for place in machine.related_places(knowledge.rules[one.rule].about, zone):
                yield Pattern("finding", (("rule", one.rule), ("place", place)))
