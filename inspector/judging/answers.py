"""Yes, no or open: what a rule answers when some looks were not made (three-valued logic, Kleene)."""

from __future__ import annotations

from collections.abc import Iterable

from inspector.deriving.facts import Fact
from inspector.knowledge.rules import Test, Tests
from inspector.reading.inspection import Silent, Word

Answer = bool | None


def all_of(answers: Iterable[Answer]) -> Answer:
    """No when any is no, else open when any is open, else yes."""
    result: Answer = True
    for answer in answers:
        if answer is False:
            return False
        if answer is None:
            result = None
    return result


def any_of(answers: Iterable[Answer]) -> Answer:
    """Yes when any is yes, else open when any is open, else no."""
    result: Answer = False
    for answer in answers:
        if answer is True:
            return True
        if answer is None:
            result = None
    return result


def answer_tests(tests: Tests, looks: dict[str, Fact]) -> Answer:
    """Whether all tests hold of one part at one place."""
    return all_of(answer_test(test, looks[name]) for name, test in tests.items())


def answer_test(test: Test, fact: Fact) -> Answer:
    """Whether one test holds of one fact."""
    if isinstance(fact.value, Silent):
        return False if fact.value.state == "does not apply" else None
    if test.word in ("is", "one_of"):
        return isinstance(fact.value, Word) and fact.value.word in test.values
    if isinstance(fact.value, Word):  # unknown: it may be beyond or within
        return None
    limit = fact.limits[test.values[0]]
    if test.word == "reaches":
        return None if limit.standing in ("not known", "cannot tell") else limit.reaches
    if limit.standing in ("cannot tell", "not known"):
        return None
    return limit.standing == test.word
