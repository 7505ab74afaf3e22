"""What was not looked at or could not be told, what it could show, and what to look at next."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from inspector.deriving.facts import Fact
from inspector.deriving.limits import Standing
from inspector.judging.items import Key
from inspector.judging.judge import Judgement
from inspector.knowledge.kept import lately, once
from inspector.knowledge.library import Knowledge
from inspector.knowledge.observables import Eyes, Property
from inspector.knowledge.rules import Class, Effort
from inspector.quantities.conformity import outcome
from inspector.quantities.value_of_information import look_worth
from inspector.reading.inspection import Measured, Silent
from inspector.reading.values import tool_uncertainty
from inspector.weighing.assessment import EFFORTS, SystemCoverage, UnseenBecause, UnseenEntry
from inspector.weighing.kept_from import kept_from
from inspector.weighing.risk import combine_classes

MOST_NEXT = 8


def unseen_entries(judgement: Judgement, knowledge: Knowledge) -> tuple[UnseenEntry, ...]:
    """Every expected look without a value, every look that cannot decide, and what would settle a suspicion.

    Critical looks come first (in a handover those that settle a suspicion), then what is worth most a minute.
    """
    settling = _settling_looks(judgement)
    reading: dict[Key, list[str]] = {}
    for rule, _, missing in judgement.open:
        for key in missing:
            reading.setdefault(key, []).append(rule.id)
    standings = _Standings(judgement)
    ranked: list[tuple[tuple[bool, bool, float], UnseenEntry]] = []
    handover = judgement.facts.inspection.purpose == "handover"
    for fact in judgement.facts.all:
        key = fact[:3]
        because = _because(fact, standings, key in reading)
        if because is None and key in settling:
            because = "not looked at"
        if because is not None:
            entry, worth = _entry(fact, because, (*reading.get(key, ()), *settling.get(key, ())), knowledge)
            settles = key in settling
            ranked.append(((not (settles and handover), not entry.critical, -worth), entry))
    return tuple(entry for _, entry in sorted(ranked, key=lambda pair: pair[0]))


def _settling_looks(judgement: Judgement) -> dict[Key, list[str]]:
    """Looks that would make a standing suspicion surer or rule it out, with the causes they settle."""
    found: dict[Key, list[str]] = {}
    for finding in judgement.findings:
        if finding.rule.is_suspicion and finding.hidden_by is None:
            for key in finding.settling:
                found.setdefault(key, []).append(finding.rule.id)
    return found


def _because(fact: Fact, standings: _Standings, opened: bool) -> UnseenBecause | None:
    if isinstance(fact.value, Silent):
        if not fact.unseen:
            return None
        return "could not see" if fact.value.state == "could not see" else "not looked at"
    if not opened:
        return None
    found = standings.of(fact)
    if "cannot tell" in found:
        # what was measured can be measured better; a word or a day beside it is as good as it gets
        return "cannot tell" if isinstance(fact.value, Measured) else None
    return "limit not known" if "not known" in found else None


class _Standings:
    """How each look stands to the limits of its own and of whatever is derived from it."""

    def __init__(self, judgement: Judgement) -> None:
        self.facts = judgement.facts

    @cached_property
    def _all(self) -> dict[Key, set[Standing]]:
        found: dict[Key, set[Standing]] = {}
        for fact in self.facts.all:
            for limit in fact.limits.values():
                found.setdefault((fact.part, fact.place, fact.name), set()).add(limit.standing)
                for key in () if fact.partial else fact.derived_from:
                    found.setdefault(key, set()).add(limit.standing)
        return found

    def of(self, fact: Fact) -> set[Standing]:
        return self._all.get((fact.part, fact.place, fact.name), set())


def _entry(
    fact: Fact, because: UnseenBecause, rules: tuple[str, ...], knowledge: Knowledge
) -> tuple[UnseenEntry, float]:
    """What a look could show, and what it is worth for each minute it takes."""
    silent = isinstance(fact.value, Silent)
    entry, worth = _unlooked(knowledge, fact.part, fact.place, fact.name, because, rules, silent)
    if isinstance(fact.value, Silent):
        return (entry.model_copy(update={"reason": fact.value.reason}) if fact.value.reason else entry), worth
    if because == "cannot tell":
        prop = knowledge.properties[fact.part][fact.name]
        told = {"tools": _settling(fact, prop, knowledge), "reason": kept_from(fact, knowledge)}
        entry = entry.model_copy(update=told)
    return entry, worth


@lately
def _unlooked(
    knowledge: Knowledge,
    part: str,
    place: str,
    name: str,
    because: UnseenBecause,
    rules: tuple[str, ...],
    silent: bool,
) -> tuple[UnseenEntry, float]:
    """The entry as it is for every record in which the same rules are left open by this look."""
    prop = knowledge.properties[part][name]
    waiting = [knowledge.rules[rule] for rule in rules]
    worst = combine_classes([rule.class_ for rule in waiting] or ["none"])
    entry = UnseenEntry(
        part=part,
        place=place,
        name=name,
        because=because,
        reason=None,
        critical=prop.critical and (silent or worst in ("major", "dangerous")),
        ask=prop.ask or "",
        look=prop.look or "",
        tools=prop.tools,
        minutes=prop.minutes,
        could_show=tuple(dict.fromkeys(rule.title for rule in waiting if rule.class_ != "none")),
        worst=worst,
        effort=max((rule.effort for rule in waiting), key=EFFORTS.index, default="none"),
    )
    worth = max((_worth(knowledge, rule.class_, rule.effort, prop.eyes) for rule in waiting), default=0.0)
    return entry, worth / max(prop.minutes, 0.5)


def _settling(fact: Fact, prop: Property, knowledge: Knowledge) -> tuple[str, ...]:
    """The tools of this look with which the same reading would be told from its limits."""
    value = fact.value
    assert isinstance(value, Measured)
    finer = [
        tool
        for tool in prop.tools
        if tool in knowledge.tools and tool_uncertainty(value.amount, tool, knowledge) < value.uncertainty
    ]
    deciding = [
        tool for tool in finer if _decides(fact, tool_uncertainty(value.amount, tool, knowledge), knowledge)
    ]
    return tuple(deciding or finer or prop.tools)


def _decides(fact: Fact, spread: float, knowledge: Knowledge) -> bool:
    assert isinstance(fact.value, Measured)
    limits = knowledge.limits_of(fact.part, fact.name)
    return all(
        outcome(
            fact.value.amount.base,
            spread,
            at_least=limit.band.at_least,
            at_most=limit.band.at_most,
            act_over_loss=limits[limit.name].act_over_loss,
        )
        != "cannot tell"
        for limit in fact.limits.values()
        if limit.band is not None
    )


@once
def _worth(knowledge: Knowledge, class_: Class, effort: Effort, eyes: Eyes) -> float:
    """Worth of one look at a trouble of a class: how much it lowers the expected loss."""
    if class_ == "none":
        return 0.0
    stakes, finds = knowledge.stakes, knowledge.stakes.look_finds[eyes]
    chance, loss, cost = stakes.chance_hidden[class_], stakes.loss_if_wrong[class_], stakes.cost_to_act[effort]
    return look_worth(chance, loss, cost, finds.sensitivity, finds.specificity)


def look_next(entries: Iterable[UnseenEntry]) -> tuple[UnseenEntry, ...]:
    """The looks that are worth most for their minutes, the same look at several places as one.

    A look that changes nothing is not asked for.
    """
    alike: dict[tuple[str, str, str], list[UnseenEntry]] = {}
    for entry in entries:
        if entry.critical or entry.worst != "none":
            alike.setdefault((entry.part, entry.name, entry.because), []).append(entry)
    return tuple(_together(group) for group in list(alike.values())[:MOST_NEXT])


def _together(group: list[UnseenEntry]) -> UnseenEntry:
    places = ", ".join(entry.place for entry in group)
    reasons = dict.fromkeys(entry.reason for entry in group if entry.reason)
    update = {
        "place": places,
        "minutes": sum(entry.minutes for entry in group),
        "reason": "; ".join(reasons) or None,
        "could_show": tuple(dict.fromkeys(title for entry in group for title in entry.could_show)),
        "worst": combine_classes([entry.worst for entry in group]),
        "effort": max((entry.effort for entry in group), key=EFFORTS.index),
    }
    return group[0].model_copy(update=update)


def coverage(judgement: Judgement, knowledge: Knowledge) -> tuple[SystemCoverage, ...]:
    """By system: how many of the expected looks gave a value, and how many of the critical ones."""
    counts: dict[str, list[int]] = {}
    for fact in judgement.facts.all:
        if not fact.expected:
            continue
        seen = not isinstance(fact.value, Silent)
        if seen or fact.unseen:
            critical = knowledge.properties[fact.part][fact.name].critical
            row = counts.setdefault(knowledge.systems[fact.part, fact.name], [0, 0, 0, 0])
            row[0] += seen
            row[1] += 1
            row[2] += seen and critical
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
