"""Our rules as plain productions: conjunctions of equality tests that conclude something. No engine in sight.

A rule about one part becomes one production for each of its cases. A cause is judged once in each of its places.
What it gathers is matched as it is where it can be one thing only; else each way becomes a production that
concludes a member, so that nothing has to be multiplied out.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple

from inspector.judging.plan import Alternative, Cause, plan_for
from inspector.judging.states import Case, Item, State, checks
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import Machine

ConclusionKind = Literal["finding", "member"]
Payload = dict[str, str]


class Conclusion(NamedTuple):
    """Something a production concludes: a finding, or a member of a cause."""

    kind: ConclusionKind
    rule: str
    place: str
    slot: str = ""

    def payload(self) -> Payload:
        """The conclusion as a fact that other productions can match."""
        return {"kind": self.kind, "rule": self.rule, "place": self.place, "slot": self.slot}


class Pattern(NamedTuple):
    """A fact of a kind that holds, under each of these keys, one of these words; tested in this order."""

    kind: str
    conditions: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True)
class Production:
    """When every pattern finds its fact, `concludes` holds (at the place of the first fact when it names none)."""

    patterns: tuple[Pattern, ...]
    kind: ConclusionKind
    rule: str
    place: str | None = None
    slot: str = ""

    @property
    def stage(self) -> int:
        """When it has its turn: parts by themselves first, then causes, then what backs or refutes them.

        A session of the engine costs memory for each production, needed or not; so none holds more than it must.
        """
        if self.kind == "finding" and self.place is None:
            return 0
        return 1 if self.kind == "finding" or self.slot.startswith("gathers") else 2


def payloads(found: Mapping[Item, State], accepted: Container[tuple[str, str, str]]) -> list[Payload]:
    """The states as the productions see them: one flat fact a part and place.

    A word that no test accepts satisfies no pattern and is left out, and so is a fact without any other.
    """
    facts = []
    for (part, place), state in found.items():
        words = {key: word for key, word in state.items() if word is not None and (part, key, word) in accepted}
        if words:
            facts.append({"kind": "item", "part": part, "place": place, **words})
    return facts


def compile_rules(knowledge: Knowledge, machine: Machine) -> list[Production]:
    """All productions for one machine kind."""
    productions: list[Production] = []
    plan = plan_for(knowledge, machine.id)
    for rule in knowledge.rules.values():
        if not rule.is_cause and rule.about in machine.parts:
            productions += [
                Production((_look(rule.about, None, checks(tests)),), "finding", rule.id) for tests in rule.cases()
            ]
    for cause in plan.causes.values():
        productions += _cause(cause)
    return productions


def _cause(cause: Cause) -> Iterator[Production]:
    rule, zone = cause.key
    needed: list[Pattern] = []
    for position, member in enumerate(cause.gathers):
        direct = _pattern(member[0]) if len(member) == 1 else None
        if direct is not None and not any(one.kind == direct.kind == "item" for one in needed):
            needed.append(direct)
        else:
            slot = f"gathers {position}"
            needed.append(Pattern("member", (("rule", (rule,)), ("place", (zone,)), ("slot", (slot,)))))
            yield from _ways(member, cause.key, slot)
    for position, member in enumerate(cause.backed_by):
        yield from _ways(member, cause.key, f"backed_by {position}")
    for position, member in enumerate(cause.refuted_by):
        yield from _ways(member, cause.key, f"refuted_by {position}")
    yield Production(tuple(needed), "finding", rule, zone)


def _ways(member: tuple[Alternative, ...], key: tuple[str, str], slot: str) -> Iterator[Production]:
    rule, zone = key
    for one in member:
        yield Production((_pattern(one),), "member", rule, zone, slot)


def _pattern(one: Alternative) -> Pattern:
    if one.case is not None:
        return _look(*one.item, one.case)
    return Pattern("finding", (("rule", (str(one.rule),)), ("place", (one.item[1],))))


def _look(part: str, place: str | None, case: Case) -> Pattern:
    where = (("place", (place,)),) if place is not None else ()
    return Pattern("item", (("part", (part,)), *where, *((c.key, tuple(sorted(c.accepted))) for c in case)))
