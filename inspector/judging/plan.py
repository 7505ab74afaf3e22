"""The rules laid out over the parts and places of a machine kind, so that judging only has to look things up."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from inspector.judging.states import Case, Item, checks, tested_checks
from inspector.knowledge.kept import once
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import Machine
from inspector.knowledge.rules import Member, Rule


class Alternative(NamedTuple):
    """What a member of a cause may be at one place: a look (`case`) or the finding of another rule."""

    item: Item
    case: Case | None
    rule: str | None


class Single(NamedTuple):
    """A rule about one part at one of its places, and its number among all of them."""

    number: int
    rule: Rule
    key: tuple[str, str]
    item: Item
    cases: tuple[Case, ...]


Members = tuple[tuple[Alternative, ...], ...]


class Cause(NamedTuple):
    """A rule that gathers, at one of its zones."""

    rule: Rule
    key: tuple[str, str]
    gathers: Members
    backed_by: Members
    refuted_by: Members


@dataclass(frozen=True)
class Plan:
    """All rules at all their places: those about one part by part and place, then the causes in their order.

    `worked_out` names for each part the derived properties that rules test, with the keys they are tested under.
    """

    by_item: Mapping[Item, tuple[Single, ...]]
    causes: Mapping[tuple[str, str], Cause]
    worked_out: Mapping[str, tuple[tuple[str, tuple[str, ...]], ...]]


@once
def plan_for(knowledge: Knowledge, kind: str) -> Plan:
    """The plan of a machine kind."""
    machine = knowledge.machines[kind]
    by_item: dict[Item, list[Single]] = {}
    numbers = itertools.count()
    causes: dict[tuple[str, str], Cause] = {}
    for rule in knowledge.rules.values():
        for place in machine.parts.get(rule.about, ()):
            key = (rule.id, place)
            if rule.is_cause:
                groups = (rule.gathers, rule.backed_by, rule.refuted_by)
                causes[key] = Cause(rule, key, *(_members(group, place, knowledge, machine) for group in groups))
            else:
                cases = tuple(checks(tests) for tests in rule.cases())
                item = (rule.about, place)
                by_item.setdefault(item, []).append(Single(next(numbers), rule, key, item, cases))
    return Plan({item: tuple(found) for item, found in by_item.items()}, causes, _worked_out(knowledge))


def _worked_out(knowledge: Knowledge) -> dict[str, tuple[tuple[str, tuple[str, ...]], ...]]:
    return {
        part: tuple(
            (name, tuple(check.key for check in asked))
            for name, asked in tested.items()
            if knowledge.properties[part][name].derive is not None
        )
        for part, tested in tested_checks(knowledge).items()
    }


def _members(members: tuple[Member, ...], zone: str, knowledge: Knowledge, machine: Machine) -> Members:
    return tuple(tuple(_alternatives(member, zone, knowledge, machine)) for member in members)


def _alternatives(member: Member, zone: str, knowledge: Knowledge, machine: Machine) -> list[Alternative]:
    found = []
    for one in member.alternatives():
        part = one.look.part if one.look else knowledge.rules[str(one.rule)].about
        case = checks(one.look.tests) if one.look else None
        found += [Alternative((part, place), case, one.rule) for place in machine.related_places(part, zone)]
    return found
