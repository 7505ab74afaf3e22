"""What was not looked at or could not be told, what it could show, and what to look at next."""

from __future__ import annotations

from collections.abc import Iterable

from inspector.deriving.facts import Fact
from inspector.deriving.limits import Applied
from inspector.judging.judge import Judgement, Key, OpenRule
from inspector.knowledge.library import Knowledge
from inspector.reading.inspection import Silent
from inspector.weighing.assessment import SystemCoverage, UnseenBecause, UnseenEntry
from inspector.weighing.risk import combine_classes

MOST_NEXT = 8
# severity weights of the European roadside risk rating: COM(2012) 382, Annex I (later Directive 2014/47/EU)
WEIGHTS = {"dangerous": 40, "major": 10, "minor": 1, "none": 0}


def unseen_entries(judgement: Judgement, knowledge: Knowledge) -> tuple[UnseenEntry, ...]:
    """Every expected look without a value, and every look that cannot decide an open rule."""
    reading: dict[Key, list[OpenRule]] = {}
    for opened in judgement.open:
        for key in opened.missing:
            reading.setdefault(key, []).append(opened)
    entries = []
    for fact in judgement.facts.all():
        key = (fact.part, fact.place, fact.name)
        because = _because(fact, judgement, reading.get(key, []))
        if because is not None:
            entries.append(_entry(fact, because, reading.get(key, []), knowledge))
    return tuple(sorted(entries, key=_value, reverse=True))


def _because(fact: Fact, judgement: Judgement, opened: list[OpenRule]) -> UnseenBecause | None:
    if isinstance(fact.value, Silent):
        if not fact.unseen:
            return None
        return "could not see" if fact.value.state == "could not see" else "not looked at"
    standings = {limit.standing for limit in _limits(fact, judgement)}
    if opened and "cannot tell" in standings:
        return "cannot tell"
    return "limit not known" if opened and "not known" in standings else None


def _limits(fact: Fact, judgement: Judgement) -> Iterable[Applied]:
    """Limits of the fact itself and of whatever is derived from it."""
    yield from fact.limits.values()
    key = (fact.part, fact.place, fact.name)
    for other in judgement.facts.all():
        if key in other.derived_from and not other.partial:
            yield from other.limits.values()


def _entry(fact: Fact, because: UnseenBecause, opened: list[OpenRule], knowledge: Knowledge) -> UnseenEntry:
    prop = knowledge.properties[fact.part][fact.name]
    return UnseenEntry(
        part=fact.part,
        place=fact.place,
        name=fact.name,
        because=because,
        reason=fact.value.reason if isinstance(fact.value, Silent) else None,
        critical=prop.critical,
        ask=prop.ask or "",
        look=prop.look or "",
        tools=prop.tools,
        minutes=prop.minutes,
        could_show=tuple(dict.fromkeys(one.rule.title for one in opened if one.rule.class_ != "none")),
        worst=combine_classes([one.rule.class_ for one in opened] or ["none"]),
    )


def _value(entry: UnseenEntry) -> tuple[bool, float]:
    """What the answer could change, for each minute it takes."""
    weight = WEIGHTS[entry.worst] + len(entry.could_show)
    return entry.critical, weight / max(entry.minutes, 0.5)


def look_next(entries: Iterable[UnseenEntry]) -> tuple[UnseenEntry, ...]:
    """The looks that are worth most for their minutes; one that changes nothing is not asked for."""
    return tuple(entry for entry in entries if entry.critical or entry.worst != "none")[:MOST_NEXT]


def coverage(judgement: Judgement, knowledge: Knowledge) -> tuple[SystemCoverage, ...]:
    """By system: how many of the expected looks gave a value, and how many of the critical ones."""
    counts: dict[str, list[int]] = {}
    for fact in judgement.facts.all():
        if not fact.expected or (isinstance(fact.value, Silent) and fact.value.state == "does not apply"):
            continue
        critical = knowledge.properties[fact.part][fact.name].critical
        row = counts.setdefault(knowledge.systems[fact.part, fact.name], [0, 0, 0, 0])
        row[0] += fact.seen
        row[1] += 1
        row[2] += fact.seen and critical
        row[3] += critical
    return tuple(
        SystemCoverage(
            system=system,
            looked=row[0],
            expected=row[1],
            critical_looked=row[2],
            critical_expected=row[3],
        )
        for system, row in counts.items()
    )
