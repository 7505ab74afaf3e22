"""What was not looked at or could not be told, what it could show, and what to look at next."""

from __future__ import annotations

from collections.abc import Iterable

from inspector.deriving.facts import Fact
from inspector.deriving.limits import Standing
from inspector.judging.judge import Judgement, Key, OpenRule
from inspector.knowledge.library import Knowledge
from inspector.knowledge.observables import Eyes, Property
from inspector.knowledge.rules import Class, Effort, Rule
from inspector.quantities.conformity import outcome
from inspector.quantities.value_of_information import look_worth
from inspector.reading.inspection import Measured, Silent
from inspector.reading.values import tool_uncertainty
from inspector.weighing.assessment import SystemCoverage, UnseenBecause, UnseenEntry
from inspector.weighing.risk import combine_classes

MOST_NEXT = 8


def unseen_entries(judgement: Judgement, knowledge: Knowledge) -> tuple[UnseenEntry, ...]:
    """Every expected look without a value, every look that cannot decide, and what would settle a suspicion.

    Critical looks come first (in a handover those that settle a suspicion), then what is worth most a minute.
    """
    settling = _settling_looks(judgement)
    reading: dict[Key, list[OpenRule]] = {}
    for opened in judgement.open:
        for key in opened.missing:
            reading.setdefault(key, []).append(opened)
    standings = _standings(judgement)
    ranked: list[tuple[tuple[bool, bool, float], UnseenEntry]] = []
    handover = judgement.facts.inspection.purpose == "handover"
    for fact in judgement.facts.all():
        key = (fact.part, fact.place, fact.name)
        because = _because(fact, standings.get(key, set()), bool(reading.get(key)))
        if because is None and key in settling:
            because = "not looked at"
        if because is not None:
            rules = [*(one.rule for one in reading.get(key, [])), *settling.get(key, [])]
            entry = _entry(fact, because, rules, knowledge)
            settles = key in settling
            rank = (not (settles and handover), not entry.critical, -_worth(entry, rules, knowledge))
            ranked.append((rank, entry))
    return tuple(entry for _, entry in sorted(ranked, key=lambda pair: pair[0]))


def _settling_looks(judgement: Judgement) -> dict[Key, list[Rule]]:
    """Looks that would make a standing suspicion surer or rule it out, with the causes they settle."""
    found: dict[Key, list[Rule]] = {}
    for finding in judgement.findings:
        if finding.rule.is_suspicion and finding.hidden_by is None:
            for key in finding.settling:
                found.setdefault(key, []).append(finding.rule)
    return found


def _because(fact: Fact, standings: set[Standing], opened: bool) -> UnseenBecause | None:
    if isinstance(fact.value, Silent):
        if not fact.unseen:
            return None
        return "could not see" if fact.value.state == "could not see" else "not looked at"
    if opened and "cannot tell" in standings:
        return "cannot tell"
    return "limit not known" if opened and "not known" in standings else None


def _standings(judgement: Judgement) -> dict[Key, set[Standing]]:
    """How each look stands to the limits of its own and of whatever is derived from it."""
    found: dict[Key, set[Standing]] = {}
    for fact in judgement.facts.all():
        for limit in fact.limits.values():
            found.setdefault((fact.part, fact.place, fact.name), set()).add(limit.standing)
            for key in () if fact.partial else fact.derived_from:
                found.setdefault(key, set()).add(limit.standing)
    return found


def _entry(fact: Fact, because: UnseenBecause, rules: list[Rule], knowledge: Knowledge) -> UnseenEntry:
    prop = knowledge.properties[fact.part][fact.name]
    silent = isinstance(fact.value, Silent)
    worst = combine_classes([rule.class_ for rule in rules] or ["none"])
    return UnseenEntry(
        part=fact.part,
        place=fact.place,
        name=fact.name,
        because=because,
        reason=fact.value.reason if isinstance(fact.value, Silent) else None,
        critical=prop.critical and (silent or worst in ("major", "dangerous")),
        ask=prop.ask or "",
        look=prop.look or "",
        tools=_settling(fact, prop, knowledge) if because == "cannot tell" else prop.tools,
        minutes=prop.minutes,
        could_show=tuple(dict.fromkeys(rule.title for rule in rules if rule.class_ != "none")),
        worst=worst,
    )


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


def _worth(entry: UnseenEntry, rules: list[Rule], knowledge: Knowledge) -> float:
    """What the look is worth for each minute it takes: how much it lowers the expected loss."""
    eyes = knowledge.properties[entry.part][entry.name].eyes
    could_be = {(rule.class_, rule.effort) for rule in rules}
    worth = max((_worth_of(knowledge, class_, effort, eyes) for class_, effort in could_be), default=0.0)
    return worth / max(entry.minutes, 0.5)


_worths: dict[tuple[int, Class, Effort, Eyes], tuple[Knowledge, float]] = {}


def _worth_of(knowledge: Knowledge, class_: Class, effort: Effort, eyes: Eyes) -> float:
    """Worth of one look at a trouble of a class, worked out once for each body of knowledge."""
    key = (id(knowledge), class_, effort, eyes)
    if class_ == "none":
        return 0.0
    if key not in _worths:
        stakes, finds = knowledge.stakes, knowledge.stakes.look_finds[eyes]
        chance, loss, cost = stakes.chance_hidden[class_], stakes.loss_if_wrong[class_], stakes.cost_to_act[effort]
        _worths[key] = (knowledge, look_worth(chance, loss, cost, finds.sensitivity, finds.specificity))
    return _worths[key][1]


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
    }
    return group[0].model_copy(update=update)


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
