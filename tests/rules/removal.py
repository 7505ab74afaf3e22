"""Take one condition out of a rule: some example must then get another answer, or the condition is idle."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from inspector.deriving.facts import Facts
from inspector.judging.judge import judge
from inspector.knowledge.faults import Faults
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import Example, Member, Rule, Test, Tests
from tests.rules.example_runner import examples, facts, strength_in, variants


def mutants(rule: Rule) -> Iterator[tuple[str, Rule]]:
    """Every rule that has one condition, one word or one member less."""
    if rule.when:
        yield from ((what, rule.model_copy(update={"when": less})) for what, less in _less_tests(rule.when))
    for i, tests in enumerate(rule.when_any):
        rest = rule.when_any[:i] + rule.when_any[i + 1 :]
        if rest:
            yield f"when_any {i}", rule.model_copy(update={"when_any": rest})
        for what, less in _less_tests(tests):
            changed = (*rule.when_any[:i], less, *rule.when_any[i + 1 :])
            yield f"when_any {i} {what}", rule.model_copy(update={"when_any": changed})
    for heading in ("gathers", "backed_by", "refuted_by"):
        members: tuple[Member, ...] = getattr(rule, heading)
        for i, member in enumerate(members):
            rest = members[:i] + members[i + 1 :]
            if rest or heading != "gathers":
                yield f"{heading} {i}", rule.model_copy(update={heading: rest})
            for what, less in _less_member(member):
                changed = (*members[:i], less, *members[i + 1 :])
                yield f"{heading} {i} {what}", rule.model_copy(update={heading: changed})


def _less_tests(tests: Tests) -> Iterator[tuple[str, Tests]]:
    for name, test in tests.items():
        if len(tests) > 1:
            yield name, {key: value for key, value in tests.items() if key != name}
        if len(test.values) > 1:
            for word in test.values:
                fewer = Test(word="one_of", values=tuple(v for v in test.values if v != word))
                yield f"{name}: {word}", {**tests, name: fewer}


def _less_member(member: Member) -> Iterator[tuple[str, Member]]:
    for i, one in enumerate(member.any_of):
        rest = member.any_of[:i] + member.any_of[i + 1 :]
        yield f"any {i}", Member(any_of=rest)
        for what, less in _less_member(one):
            yield f"any {i} {what}", Member(any_of=(*member.any_of[:i], less, *member.any_of[i + 1 :]))
    if member.look is not None:
        for what, less_tests in _less_tests(member.look.tests):
            yield what, Member(look=member.look.model_copy(update={"tests": less_tests}))


def idle_conditions(knowledge: Knowledge, rule: Rule) -> list[str]:
    """The conditions of a rule that no example needs."""
    rules = _needed_rules(knowledge, rule)
    told = [
        (example, facts(knowledge, rule, example, seen))
        for _, example in examples(rule)
        for seen in variants(example)
    ]
    base = _answers(replace(knowledge, rules=rules), rule, told)
    idle = []
    for what, mutant in mutants(rule):
        changed = replace(knowledge, rules={**rules, rule.id: mutant})
        if _answers(changed, mutant, told) == base:
            idle.append(what)
    return idle


def _needed_rules(knowledge: Knowledge, rule: Rule) -> dict[str, Rule]:
    """The rule, those it gathers and those it gives way to: the others cannot change its answer."""
    needed = {rule.id: rule, **{worse: knowledge.rules[worse] for worse in rule.gives_way_to}}
    for _, _, member in rule.members():
        for one in member.alternatives():
            if one.rule is not None:
                needed[one.rule] = knowledge.rules[one.rule]
    return needed


def _answers(knowledge: Knowledge, rule: Rule, told: list[tuple[Example, Facts]]) -> list[object]:
    """What the rule answers to each example; its facts do not hang on the rules and are derived only once."""
    found: list[object] = []
    for example, known in told:
        try:
            found.append(strength_in(judge(known, knowledge), rule, example))
        except Faults as faults:  # without this condition the engine could not bear the rule
            found.append(str(faults))
    return found
