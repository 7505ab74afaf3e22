"""Rules beyond what the engine can bear are refused when loaded (limits found by experiment)."""

from __future__ import annotations

import pytest

from inspector.judging.engine_limits import check_engine, over_the_limits
from inspector.judging.grammar import Pattern, Production
from inspector.knowledge.library import knowledge


def look(*conditions: tuple[str, str]) -> Pattern:
    return Pattern("item", tuple((key, (word,)) for key, word in conditions))


def single(rule: str, *conditions: tuple[str, str]) -> Production:
    return Production((look(*conditions),), "finding", rule)


def test_the_rules_that_ship_are_within_the_limits() -> None:
    check_engine(knowledge())


@pytest.mark.parametrize(
    ("productions", "reason"),
    [
        ([single(f"r{i}", ("part", f"p{i}")) for i in range(512)], "beside one another"),
        ([single(f"r{i}", ("part", "pad")) for i in range(256)], "exactly the same"),
        ([single(f"r{i}", ("part", "pad"), (f"k{i}", "x")) for i in range(65)], "satisfy more than"),
        ([Production((Pattern("item", ()),) * 17, "finding", "wide")], "joins 16"),
        (
            [Production((look(("a", "x")), look(("b", "y"))), "finding", "twin")],
            "could be the same fact",
        ),
        (
            [Production((Pattern("item", tuple((f"k{i}", ("a", "b")) for i in range(15))),), "finding", "choosy")],
            "with several words each",
        ),
        ([single(f"r{i}", ("part", f"p{i % 400}"), ("k", f"{i}")) for i in range(4097)], "productions"),
    ],
)
def test_a_rule_beyond_a_limit_is_named_with_the_reason(productions: list[Production], reason: str) -> None:
    found = list(over_the_limits(productions))
    assert any(reason in text for _, text in found), found[:3]
