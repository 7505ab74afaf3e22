"""What is to come: ages and distances with a limit, second looks, ways to go gently, wear to be measured again.

Nothing is counted from a day or a reading that nobody noted.
"""

from __future__ import annotations

import calendar
import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from inspector.deriving.facts import Fact, Facts
from inspector.deriving.forecast import round_down, round_outward
from inspector.deriving.limits import Band
from inspector.knowledge.kept import once
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import Action, Rule, Tests
from inspector.quantities.tyres import tyre_date
from inspector.quantities.units import convert
from inspector.reading.inspection import Day, Inspection, Measured, TyreCode, Word
from inspector.weighing.upkeep import DueKind

DAYS_A_MONTH = 365.2425 / 12
_NOT_PARTS = ("papers",)  # nothing about them comes due


@dataclass(frozen=True)
class Coming:
    """One thing to come, in days and kilometres."""

    fact: Fact
    stem: str
    kind: DueKind
    limits: tuple[Band, ...]
    action: Action | None = None
    on: date | None = None
    at: float | None = None
    between: tuple[float, float] | None = None


def all_coming(facts: Facts, knowledge: Knowledge) -> list[Coming]:
    """Everything that is to come, in no order."""
    return [*_merged(_limits(facts, knowledge)), *_wear(facts)]


def _limits(facts: Facts, knowledge: Knowledge) -> Iterator[Coming]:
    """Ages and distances with a day or a reading they count from."""
    for fact in facts.all:
        if not isinstance(fact.value, Measured) or not fact.derived_from or fact.part in _NOT_PARTS:
            continue
        derive = knowledge.properties[fact.part][fact.name].derive
        if derive is not None and derive.function in ("age", "travelled"):
            found = _first_limit(fact, facts, knowledge)
            if found is not None:
                yield found


def _first_limit(fact: Fact, facts: Facts, knowledge: Knowledge) -> Coming | None:
    """The next limit of this age or distance that a rule calls a piece of work; the last one that is passed."""
    assert isinstance(fact.value, Measured)
    best: Coming | None = None
    for applied in fact.limits.values():
        rule, band = _rule_about(fact, applied.name, facts, knowledge), applied.band
        if rule is None or band is None:
            continue
        if band.at_least is not None:  # so far to go gently; nothing once it is ridden
            if fact.value.amount.base >= band.at_least:
                continue
            one = _placed(fact, band.at_least, facts)
        else:
            assert band.at_most is not None
            one = _placed(fact, band.at_most, facts)
        if one is not None and (best is None or _rather(one, best, facts.inspection)):
            kind: DueKind = "work" if band.at_least is None else "gently until"
            best = replace(one, kind=kind, limits=(band,), action=rule.do[0])
    return best


def _rather(one: Coming, other: Coming, inspection: Inspection) -> bool:
    """Whether one limit of a kind says more than another: the later of two passed ones, else the sooner."""
    passed, sooner = _passed(one, inspection), _order(one) < _order(other)
    if passed != _passed(other, inspection):
        return passed
    return not sooner if passed else sooner


def _order(one: Coming) -> tuple[date, float]:
    return (one.on or date.max, math.inf if one.at is None else one.at)


def _passed(one: Coming, inspection: Inspection) -> bool:
    if one.on is not None:
        return one.on <= inspection.day
    return one.at is not None and inspection.odometer is not None and one.at <= inspection.odometer.base


def _rule_about(fact: Fact, limit: str, facts: Facts, knowledge: Knowledge) -> Rule | None:
    """The rule that stands when this limit is passed and asks for work; due work before defects."""
    asking = _asking_for_work(knowledge, fact.part, fact.name, limit)
    if not asking:
        return None
    words = {name: one.value.word for name, one in facts.items[fact.part, fact.place].items()
             if isinstance(one.value, Word)}  # fmt: skip
    fitting = [rule for rule, cases in asking if any(not _contradicted(tests, words) for tests in cases)]
    return min(fitting, key=lambda rule: (not rule.due, rule.class_ != "none"), default=None)


@once
def _asking_for_work(
    knowledge: Knowledge, part: str, name: str, limit: str
) -> tuple[tuple[Rule, tuple[Tests, ...]], ...]:
    """The rules that ask for something when this limit is passed, with their cases that test it."""
    found = []
    for rule in knowledge.rules.values():
        if rule.about == part and (rule.due or rule.class_ != "none"):
            cases = tuple(tests for tests in rule.cases() if _tests_limit(tests, name, limit))
            if cases:
                found.append((rule, cases))
    return tuple(found)


def _tests_limit(tests: Tests, name: str, limit: str) -> bool:
    test = tests.get(name)
    return test is not None and test.word in ("beyond", "reaches") and test.values[0] == limit


def _contradicted(tests: Tests, words: dict[str, str]) -> bool:
    """Whether another test of the rule is answered with no: a second look that was made is not due."""
    return any(
        test.word in ("is", "one_of") and name in words and words[name] not in test.values
        for name, test in tests.items()
    )


def _placed(fact: Fact, bound: float, facts: Facts) -> Coming | None:
    """The day or the reading of the distance counter at which the limit is reached."""
    part, place, name = fact.derived_from[0]
    source = facts.items[part, place][name].value
    plain = Coming(fact, name.removesuffix("_at"), "work", ())
    match source:
        case Day(day):
            return replace(plain, on=add_months(day, bound))
        case TyreCode(code):
            return replace(plain, on=add_months(tyre_date(code, facts.inspection.day).latest, bound))
        case Measured():
            return replace(plain, at=source.amount.base + bound)
        case _:
            return None


def _merged(found: Iterator[Coming]) -> list[Coming]:
    """A time and a distance of the same work as one line."""
    kept: dict[tuple[str, str, str, DueKind], Coming] = {}
    for one in found:
        key = (one.fact.part, one.fact.place, one.stem, one.kind)
        before = kept.get(key)
        if before is None:
            kept[key] = one
        else:
            on, at = before.on or one.on, before.at if before.at is not None else one.at
            kept[key] = replace(before, on=on, at=at, limits=(*before.limits, *one.limits))
    return list(kept.values())


def _wear(facts: Facts) -> Iterator[Coming]:
    """Wear that is to be measured again, and between which readings its limit is probably reached."""
    odometer = facts.inspection.odometer
    for fact in facts.all:
        ahead = fact.forecast
        if ahead is None or odometer is None:
            continue
        limit = fact.limits.get(ahead.limit)
        if limit is None or limit.band is None or limit.standing == "beyond":
            continue  # worn out: a finding says so, and there is nothing to wait for
        between = None
        if ahead.low is not None and ahead.high is not None and not math.isinf(ahead.high):
            low, high = round_outward(*(_in(odometer.unit, way) for way in (ahead.low, ahead.high)))
            between = (odometer.base + _km(odometer.unit, low), odometer.base + _km(odometer.unit, high))
        check = _km(odometer.unit, round_down(_in(odometer.unit, ahead.check)))
        yield Coming(fact, fact.name, "measure again", (limit.band,), at=odometer.base + check, between=between)


def _in(unit: str, km: float) -> float:
    return convert(km, "km", unit, "distance")


def _km(unit: str, distance: float) -> float:
    return convert(distance, unit, "km", "distance")


def add_months(day: date, months: float) -> date:
    """The same day so many months later, or the last day of that month; parts of a month in days."""
    whole = math.floor(months)
    place = day.year * 12 + day.month - 1 + whole
    year, month = place // 12, place % 12 + 1
    if year > date.max.year:
        return date.max
    last = calendar.monthrange(year, month)[1]
    then = date(year, month, min(day.day, last))
    return date.fromordinal(min(then.toordinal() + round((months - whole) * DAYS_A_MONTH), date.max.toordinal()))
