"""Judge facts: run the engine, then tell for every rule at every place whether it stands, or is open and why."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from inspector.deriving.facts import Fact, Facts
from inspector.judging.answers import Answer, all_of, answer_test, answer_tests, any_of
from inspector.judging.engine import Engine, RuleError
from inspector.judging.engine_limits import checked_productions
from inspector.judging.grammar import Conclusion, payloads
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import Member, Rule, Test
from inspector.reading.inspection import Word

Key = tuple[str, str, str]


@dataclass(frozen=True)
class Ground:
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
class OpenRule:
    """A rule that cannot be answered at a place, and the looks that would answer it."""

    rule: Rule
    place: str
    missing: tuple[Key, ...]


@dataclass(frozen=True)
class Judgement:
    """All answers: findings that stand, suspicions ruled out, and what is open."""

    facts: Facts
    findings: tuple[Finding, ...]
    ruled_out: tuple[Finding, ...]
    open: tuple[OpenRule, ...]


_engines: dict[tuple[int, str], tuple[Knowledge, Engine]] = {}


def engine_for(knowledge: Knowledge, kind: str) -> Engine:
    """The engine of a machine kind, made once for each body of knowledge. Raises Faults beyond its limits."""
    key = (id(knowledge), kind)  # holding the knowledge keeps its id from being used again
    if key not in _engines:
        _engines[key] = (knowledge, Engine(checked_productions(knowledge, kind)))
    return _engines[key][1]


def judge(facts: Facts, knowledge: Knowledge) -> Judgement:
    """Judge one inspection. Raises RuleError, naming the rule, when the engine fails."""
    conclusions = engine_for(knowledge, facts.machine.id).run(payloads(facts))
    judge_ = _Judge(facts, knowledge, conclusions)
    findings, opened = judge_.rules()
    kept = _yielding(findings, knowledge)
    return Judgement(
        facts=facts,
        findings=tuple(f for f in kept if not f.refuted),
        ruled_out=tuple(f for f in kept if f.refuted),
        open=tuple(opened),
    )


def _yielding(findings: list[Finding], knowledge: Knowledge) -> list[Finding]:
    """Mark a milder finding where the worse one it gives way to stands at the same place."""
    standing = {finding.key for finding in findings if not finding.refuted}
    result = []
    for finding in findings:
        worse = [other for other in finding.rule.gives_way_to if (other, finding.place) in standing]
        result.append(replace(finding, hidden_by=worse[0]) if worse else finding)
    return result


class _Judge:
    def __init__(self, facts: Facts, knowledge: Knowledge, conclusions: Iterable[Conclusion]) -> None:
        self.facts = facts
        self.known = knowledge
        self.conclusions = frozenset(conclusions)
        self.answers: dict[tuple[str, str], Answer] = {}

    def rules(self) -> tuple[list[Finding], list[OpenRule]]:
        findings: list[Finding] = []
        opened: list[OpenRule] = []
        ordered = sorted(self.known.rules.values(), key=lambda rule: rule.is_cause)
        for rule in ordered:
            for place in self.facts.machine.parts.get(rule.about, ()):
                answer = self._checked(rule, place)
                if answer is True:
                    findings.append(self._finding(rule, place, findings))
                elif answer is None:
                    opened.append(OpenRule(rule, place, tuple(self._missing(rule, place))))
        return findings, opened

    def _checked(self, rule: Rule, place: str) -> Answer:
        """The engine says yes; no and open are told apart here; both must agree on every yes."""
        stands = Conclusion("finding", rule.id, place) in self.conclusions
        answer = self._cause(rule, place) if rule.is_cause else self._single(rule, place)
        self.answers[rule.id, place] = answer
        if stands != (answer is True):
            said = "stands" if stands else "does not stand"
            raise RuleError(rule.id, ValueError(f"the engine says it {said} at {place}, the facts say {answer}"))
        return answer

    def _single(self, rule: Rule, place: str) -> Answer:
        looks = self.facts.items[rule.about, place]
        return any_of(answer_tests(tests, looks) for tests in rule.cases())

    def _cause(self, rule: Rule, zone: str) -> Answer:
        return all_of(self._member(member, zone) for member in rule.gathers)

    def _member(self, member: Member, zone: str) -> Answer:
        return any_of(answer for _, answer in self._alternatives(member, zone))

    def _alternatives(self, member: Member, zone: str) -> list[tuple[tuple[Member, str], Answer]]:
        found: list[tuple[tuple[Member, str], Answer]] = []
        for one in member.alternatives():
            part = one.look.part if one.look else self.known.rules[str(one.rule)].about
            for place in self.facts.machine.related_places(part, zone):
                if one.look is not None:
                    answer = answer_tests(one.look.tests, self.facts.items[part, place])
                else:
                    answer = self.answers.get((str(one.rule), place), False)
                found.append(((one, place), answer))
        return found

    def _finding(self, rule: Rule, place: str, earlier: list[Finding]) -> Finding:
        if not rule.is_cause:
            looks = self.facts.items[rule.about, place]
            holding = next(tests for tests in rule.cases() if answer_tests(tests, looks) is True)
            return Finding(rule, place, tuple(Ground(looks[name], test) for name, test in holding.items()))
        grounds, symptoms = self._gathered(rule, place, earlier)
        slots = {c.slot for c in self.conclusions if c.kind != "finding" and (c.rule, c.place) == (rule.id, place)}
        return Finding(
            rule,
            place,
            tuple(grounds),
            tuple(symptoms),
            backed=sum(slot.startswith("backed_by") for slot in slots),
            refuters=tuple(self._refuters(rule, place)),
            settling=tuple(self._settling(rule, place)),
            refuted=any(slot.startswith("refuted_by") for slot in slots),
        )

    def _settling(self, rule: Rule, zone: str) -> Iterator[Key]:
        """The looks not yet made that would make a cause surer or rule it out."""
        for member in (*rule.refuted_by, *rule.backed_by):
            for (one, place), answer in self._alternatives(member, zone):
                if answer is None and one.look is not None:
                    yield from self._open_looks(one.look.part, place, one.look.tests)

    def _refuters(self, rule: Rule, zone: str) -> Iterator[Ground]:
        """The looks that rule a cause out; a finding that does so stands with its own looks."""
        for member in rule.refuted_by:
            for (one, place), answer in self._alternatives(member, zone):
                if answer is True and one.look is not None:
                    looks = self.facts.items[one.look.part, place]
                    yield from (Ground(looks[name], test) for name, test in one.look.tests.items())
                elif answer is True and one.rule is not None:
                    other = self.known.rules[one.rule]
                    yield from self._finding(other, place, []).grounds

    def _gathered(
        self, rule: Rule, zone: str, earlier: list[Finding]
    ) -> tuple[list[Ground], list[tuple[str, str]]]:
        grounds: list[Ground] = []
        symptoms: list[tuple[str, str]] = []
        for member in (*rule.gathers, *rule.backed_by):
            for (one, place), answer in self._alternatives(member, zone):
                if answer is not True:
                    continue
                if one.rule is not None:
                    symptoms.append((one.rule, place))
                elif one.look is not None:
                    looks = self.facts.items[one.look.part, place]
                    grounds += [Ground(looks[name], test) for name, test in one.look.tests.items()]
        read = {(g.fact.part, g.fact.place, g.fact.name) for g in grounds}
        for finding in earlier:
            rests_on = {(g.fact.part, g.fact.place, g.fact.name) for g in finding.grounds}
            if not finding.rule.is_cause and rests_on and rests_on <= read:
                symptoms.append(finding.key)
        return grounds, list(dict.fromkeys(symptoms))

    def _missing(self, rule: Rule, place: str) -> list[Key]:
        """The looks that keep a rule open, without repeats."""
        missing: list[Key] = []
        if not rule.is_cause:
            for tests in rule.cases():
                if answer_tests(tests, self.facts.items[rule.about, place]) is None:
                    missing += self._open_looks(rule.about, place, tests)
        for member in rule.gathers:
            if self._member(member, place) is not None:
                continue
            for (one, where), answer in self._alternatives(member, place):
                if answer is None and one.look is not None:
                    missing += self._open_looks(one.look.part, where, one.look.tests)
                elif answer is None and one.rule is not None:
                    missing += self._missing(self.known.rules[one.rule], where)
        return list(dict.fromkeys(missing))

    def _open_looks(self, part: str, place: str, tests: dict[str, Test]) -> list[Key]:
        found: list[Key] = []
        for name, test in tests.items():
            fact = self.facts.items[part, place][name]
            if answer_test(test, fact) is None:
                found += self._asked(fact)
        return found

    def _asked(self, fact: Fact) -> list[Key]:
        """A derived fact is closed by the looks it comes from; one that nobody knows is closed by none."""
        if isinstance(fact.value, Word):
            return []
        if not fact.derived_from:
            return [(fact.part, fact.place, fact.name)]
        keys: list[Key] = []
        for part, place, name in fact.derived_from:
            source = self.facts.items[part, place][name]
            if source.derived_from:
                keys += self._asked(source)
            elif not source.seen or not fact.partial:
                keys.append((part, place, name))
        return keys
