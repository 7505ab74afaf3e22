"""The conditions of a rule in words, with the figures of the limits they name."""

from __future__ import annotations

from collections.abc import Iterator

from inspector.knowledge.library import Knowledge
from inspector.knowledge.limits import Limit
from inspector.knowledge.rules import LIMIT_TESTS, Member, Rule, Test, Tests
from inspector.knowledge.wording import words


def condition_lines(rule: Rule, knowledge: Knowledge) -> Iterator[tuple[str, str]]:
    """Each condition with the words before it: any one set of looks, or what a cause gathers."""
    wording, cases = words()["rulebook"], rule.cases()
    for number, tests in enumerate(cases):
        yield wording["when" if not number else "or_when"], tests_text(rule.about, tests, knowledge)
    for where, _, member in rule.members():
        yield wording[where], member_text(member, knowledge)


def tests_text(part: str, tests: Tests, knowledge: Knowledge) -> str:
    """All tests on one part, joined by `and`."""
    and_ = words()["rulebook"]["and"]
    return f" {and_} ".join(_test(part, name, test, knowledge) for name, test in tests.items())


def _test(part: str, name: str, test: Test, knowledge: Knowledge) -> str:
    wording = words()["rulebook"]
    called, joined = name.replace("_", " "), f" {wording['or']} ".join(test.values)
    if test.word not in LIMIT_TESTS:
        return str(wording["is"].format(name=called, value=joined))
    limit = knowledge.limits_of(part, name).get(test.values[0])
    figure = f" ({limit_text(limit)})" if limit is not None else ""
    return str(wording[test.word].format(name=called, limit=test.values[0] + figure))


def member_text(member: Member, knowledge: Knowledge) -> str:
    """A finding by its title, or looks at a part; alternatives joined by `or`."""
    texts = []
    for one in member.alternatives():
        if one.look is not None:
            texts.append(f"{one.look.part}: {tests_text(one.look.part, one.look.tests, knowledge)}")
        elif one.rule is not None:
            texts.append(f"“{knowledge.rules[one.rule].title}” [{one.rule}]")
    return f" {words()['rulebook']['or']} ".join(texts)


def limit_text(limit: Limit) -> str:
    """The figures of a limit, with their cases and what it is counted from."""
    wording = words()["rulebook"]
    texts = [_bounds(limit.at_least, limit.at_most)]
    if limit.below is not None or limit.above is not None:
        offset = limit.below or limit.above
        assert offset is not None
        side = "below" if limit.below is not None else "above"
        texts.append(wording[side].format(by=offset.by, limit=offset.limit))
    texts += [f"{case}: {_bounds(b.at_least, b.at_most)}" for case, b in limit.cases.items()]
    if limit.given_by_machine:
        texts.append(wording["own_wins"])
    return "; ".join(text for text in texts if text)


def _bounds(least: str | None, most: str | None) -> str:
    wording = words()["rulebook"]
    if least and most:
        return str(wording["from_to"].format(least=least, most=most))
    if least:
        return str(wording["at_least"].format(least=least))
    return str(wording["at_most"].format(most=most)) if most else ""
