"""What the rules test of each part at its place, as flat words: read by the engine and by the answers alike.

Under a key stands the word that was found, or None where a look is missing or cannot decide. A key that is not
there satisfies no test.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from inspector.deriving.facts import Fact, Facts
from inspector.deriving.limits import Applied
from inspector.knowledge.kept import once
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import Test, Tests
from inspector.reading.inspection import Silent, Word

State = Mapping[str, str | None]
Item = tuple[str, str]


class Check(NamedTuple):
    """One test of a rule: the words it accepts under a key, and where it comes from."""

    key: str
    accepted: frozenset[str]
    name: str
    test: Test


Case = tuple[Check, ...]


def slug(text: str) -> str:
    """A word as part of a key."""
    return text.replace(" ", "_").replace("-", "_")


def checks(tests: Tests) -> Case:
    """The tests of a rule as checks of a state."""
    return tuple(Check(*key_of(name, test), name, test) for name, test in tests.items())


def key_of(name: str, test: Test) -> tuple[str, frozenset[str]]:
    """The key that a test reads and the words it accepts."""
    match test.word:
        case "is" | "one_of":
            return name, frozenset(test.values)
        case "beyond" | "within":
            return f"{name}__{slug(test.values[0])}", frozenset({test.word})
        case "reaches":
            return f"{name}__reaches_{slug(test.values[0])}", frozenset({"yes"})


def states(facts: Facts, knowledge: Knowledge) -> dict[Item, State]:
    """The state of every part at its place."""
    tested = tested_checks(knowledge)
    return {item: _state(looks, tested.get(item[0], {})) for item, looks in facts.items.items()}


def _state(looks: Mapping[str, Fact], tested: Mapping[str, Case]) -> State:
    state: dict[str, str | None] = {}
    for name, asked in tested.items():
        fact = looks[name]
        if not isinstance(fact.value, Silent):
            for check in asked:
                _found(check, fact, state)
        elif fact.value.state != "does not apply":
            for check in asked:
                state[check.key] = None
    return state


def _found(check: Check, fact: Fact, state: dict[str, str | None]) -> None:
    if check.test.word in ("is", "one_of"):
        if isinstance(fact.value, Word):
            state[check.key] = fact.value.word
    elif isinstance(fact.value, Word):  # unknown: it may be beyond or within
        state[check.key] = None
    else:
        state[check.key] = _against(fact.limits[check.test.values[0]], check.test.word)


def _against(limit: Applied, word: str) -> str | None:
    if limit.standing in ("cannot tell", "not known"):
        return None
    if word == "reaches":
        return "yes" if limit.reaches else "no"
    return limit.standing


@once
def tested_checks(knowledge: Knowledge) -> Mapping[str, Mapping[str, Case]]:
    """By part and property: one check for each key that any rule tests."""
    found: dict[str, dict[str, dict[str, Check]]] = {}
    for part, tests in _all_tests(knowledge):
        for check in checks(tests):
            found.setdefault(part, {}).setdefault(check.name, {}).setdefault(check.key, check)
    return {part: {name: tuple(keys.values()) for name, keys in names.items()} for part, names in found.items()}


@once
def accepted_words(knowledge: Knowledge) -> frozenset[tuple[str, str, str]]:
    """(part, key, word) for every word that some test accepts; no other can ever matter to the engine."""
    return frozenset(
        (part, check.key, word)
        for part, tests in _all_tests(knowledge)
        for check in checks(tests)
        for word in check.accepted
    )


def _all_tests(knowledge: Knowledge) -> Iterator[tuple[str, Tests]]:
    for rule in knowledge.rules.values():
        for tests in rule.cases():
            yield rule.about, tests
        for _, _, member in rule.members():
            for one in member.alternatives():
                if one.look is not None:
                    yield one.look.part, one.look.tests
