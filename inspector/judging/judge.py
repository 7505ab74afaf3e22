"""Judge facts: run the engine, then tell for every rule at every place whether it stands, or is open and why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from operator import itemgetter
from typing import NamedTuple

from inspector.deriving.facts import Fact, Facts
from inspector.judging.answers import Answer, all_of, answer_case, any_of
from inspector.judging.engine import RuleError
from inspector.judging.grammar import Conclusion, payloads
from inspector.judging.items import Key, OpenRule, answer_item, open_looks
from inspector.judging.plan import Alternative, Cause, Single, plan_for
from inspector.judging.stages import conclude, engines_for
from inspector.judging.states import Case, Item, State, accepted_words, states
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import Rule, Test
from inspector.reading.inspection import Word


class Ground(NamedTuple):
    """A fact that a finding rests on, and the test it passed."""

    fact: Fact
    test: Test


@dataclass(frozen=True)
class Finding:
    """A rule that stands at a place, with what it rests on."""

    rule: Rule
    place: str
    grounds: tuple[Ground, ...] = ()
    symptoms: tuple[tuple[str, str], ...] = ()
    backed: int = 0
    refuters: tuple[Ground, ...] = ()
    settling: tuple[Key, ...] = ()
    hidden_by: str | None = None
    refuted: bool = False

    @property
    def key(self) -> tuple[str, str]:
        """Rule and place."""
        return self.rule.id, self.place


@dataclass(frozen=True)
class Judgement:
    """All answers: findings that stand, suspicions ruled out, and what is open."""

    facts: Facts
    findings: tuple[Finding, ...]
    ruled_out: tuple[Finding, ...]
    open: tuple[OpenRule, ...]


def judge(facts: Facts, knowledge: Knowledge) -> Judgement:
    """Judge one inspection. Raises RuleError, naming the rule, when the engine fails."""
    kind = facts.machine.id
    found = states(facts, knowledge)
    conclusions = conclude(payloads(found, accepted_words(knowledge)), engines_for(knowledge, kind))
    findings, opened = _Judge(facts, knowledge, found, conclusions).rules()
    kept = _yielding(findings)
    return Judgement(
        facts=facts,
        findings=tuple(f for f in kept if not f.refuted),
        ruled_out=tuple(f for f in kept if f.refuted),
        open=tuple(opened),
    )


def _yielding(findings: list[Finding]) -> list[Finding]:
    """Mark a milder finding where the worse one it gives way to stands at the same place."""
    standing = {finding.key for finding in findings if not finding.refuted}
    result = []
    for finding in findings:
        worse = [other for other in finding.rule.gives_way_to if (other, finding.place) in standing]
        result.append(replace(finding, hidden_by=worse[0]) if worse else finding)
    return result


class _Judge:
    def __init__(
        self, facts: Facts, knowledge: Knowledge, found: Mapping[Item, State], conclusions: Iterable[Conclusion]
    ) -> None:
        self.facts = facts
        self.known = knowledge
        self.plan = plan_for(knowledge, facts.machine.id)
        self.states = found
        self.conclusions = frozenset(conclusions)
        self.answers: dict[tuple[str, str], Answer] = {}
        self.singles: dict[tuple[str, str], Finding] = {}
        self.missing: dict[tuple[str, str], tuple[Key, ...]] = {}
        self.asked: dict[Item, tuple[tuple[str, tuple[Key, ...]], ...]] = {}

    def rules(self) -> tuple[list[Finding], list[OpenRule]]:
        standing, numbered = self._items()
        self.singles = {
            one.key: Finding(one.rule, one.key[1], self._grounds(one.item, case)) for one, case in standing
        }
        findings = list(self.singles.values())
        opened = [one for _, one in numbered]
        self.missing = {(one.rule.id, one.place): one.missing for one in opened}
        for cause in self.plan.causes.values():
            answer = self.answers[cause.key] = all_of(self._member(member) for member in cause.gathers)
            if answer is True:
                findings.append(self._cause(cause, findings))
            elif answer is None:
                opened.append(OpenRule(cause.rule, cause.key[1], self._missing_of(cause)))
        self._compare({finding.key for finding in findings})
        return findings, opened

    def _items(self) -> tuple[list[tuple[Single, Case]], list[tuple[int, OpenRule]]]:
        """The rules about one part that stand and that are open, each in the order of the rules."""
        standing: list[tuple[int, Single, Case]] = []
        opened: list[tuple[int, OpenRule]] = []
        kind = self.facts.machine.id
        for item in self.plan.by_item:
            words = tuple(self.states[item].items())
            found = answer_item(self.known, kind, item, words, self._asked_at(item))
            self.answers.update(found.answers)
            standing += found.standing
            opened += found.opened
        standing.sort(key=itemgetter(0))
        opened.sort(key=itemgetter(0))
        return [(single, case) for _, single, case in standing], opened

    def _compare(self, standing: set[tuple[str, str]]) -> None:
        """The engine says yes; no and open are told apart here; both must agree on every yes."""
        concluded = {(one.rule, one.place) for one in self.conclusions if one.kind == "finding"}
        for rule, place in sorted(concluded ^ standing):
            said = "stands" if (rule, place) in concluded else "does not stand"
            answer = self.answers.get((rule, place))
            raise RuleError(rule, ValueError(f"the engine says it {said} at {place}, the facts say {answer}"))

    def _answer(self, one: Alternative) -> Answer:
        if one.case is not None:
            return answer_case(one.case, self.states[one.item])
        return self.answers.get((str(one.rule), one.item[1]), False)

    def _member(self, member: tuple[Alternative, ...]) -> Answer:
        return any_of(self._answer(one) for one in member)

    def _grounds(self, item: Item, case: Case) -> tuple[Ground, ...]:
        looks = self.facts.items[item]
        return tuple(Ground(looks[check.name], check.test) for check in case)

    def _cause(self, cause: Cause, earlier: list[Finding]) -> Finding:
        grounds, symptoms = self._gathered(cause, earlier)
        slots = {c.slot for c in self.conclusions if c.kind != "finding" and (c.rule, c.place) == cause.key}
        return Finding(
            cause.rule,
            cause.key[1],
            tuple(grounds),
            tuple(symptoms),
            backed=sum(slot.startswith("backed_by") for slot in slots),
            refuters=tuple(self._refuters(cause)),
            settling=tuple(self._settling(cause)),
            refuted=any(slot.startswith("refuted_by") for slot in slots),
        )

    def _settling(self, cause: Cause) -> Iterator[Key]:
        """The looks not yet made that would make a cause surer or rule it out."""
        for member in (*cause.refuted_by, *cause.backed_by):
            for one in member:
                if one.case is not None and self._answer(one) is None:
                    yield from self._open_looks(one.item, one.case)

    def _refuters(self, cause: Cause) -> Iterator[Ground]:
        """The looks that rule a cause out; a finding that does so stands with its own looks."""
        for member in cause.refuted_by:
            for one in member:
                if self._answer(one) is not True:
                    continue
                if one.case is not None:
                    yield from self._grounds(one.item, one.case)
                elif (str(one.rule), one.item[1]) in self.singles:
                    yield from self.singles[str(one.rule), one.item[1]].grounds

    def _gathered(self, cause: Cause, earlier: list[Finding]) -> tuple[list[Ground], list[tuple[str, str]]]:
        grounds: list[Ground] = []
        symptoms: list[tuple[str, str]] = []
        for member in (*cause.gathers, *cause.backed_by):
            for one in member:
                if self._answer(one) is not True:
                    continue
                if one.case is not None:
                    grounds += self._grounds(one.item, one.case)
                else:
                    symptoms.append((str(one.rule), one.item[1]))
        read = {ground.fact[:3] for ground in grounds}
        for finding in earlier if read else ():
            rests_on = [ground.fact[:3] for ground in finding.grounds]
            if rests_on and not finding.rule.is_cause and read.issuperset(rests_on):
                symptoms.append(finding.key)
        return grounds, list(dict.fromkeys(symptoms))

    def _missing_of(self, cause: Cause) -> tuple[Key, ...]:
        """The looks that keep a cause open, without repeats."""
        missing: list[Key] = []
        for member in cause.gathers:
            if self._member(member) is not None:
                continue
            for one in member:
                if self._answer(one) is not None:
                    continue
                if one.case is not None:
                    missing += self._open_looks(one.item, one.case)
                else:
                    missing += self.missing[str(one.rule), one.item[1]]
        return tuple(dict.fromkeys(missing))

    def _open_looks(self, item: Item, case: Case) -> list[Key]:
        return open_looks(item, case, self.states[item], dict(self._asked_at(item)))

    def _asked_at(self, item: Item) -> tuple[tuple[str, tuple[Key, ...]], ...]:
        """For each worked-out property of a part that is open: the looks that would settle it."""
        found = self.asked.get(item)
        if found is None:
            looks, state = self.facts.items[item], self.states[item]
            found = self.asked[item] = tuple(
                (name, tuple(dict.fromkeys(self._sources(looks[name]))))
                for name, keys in self.plan.worked_out.get(item[0], ())
                if any(state.get(key, "") is None for key in keys)
            )
        return found

    def _sources(self, fact: Fact) -> Iterator[Key]:
        """A derived fact is closed by the looks it comes from; one that nobody knows is closed by none."""
        if isinstance(fact.value, Word):
            return
        if not fact.derived_from:
            yield fact.part, fact.place, fact.name
        for part, place, name in fact.derived_from:
            source = self.facts.items[part, place][name]
            if source.derived_from:
                yield from self._sources(source)
            elif not source.seen or not fact.partial:
                yield part, place, name
