"""Every example in the rule files gets the answer it stands under, through the real engine."""

from __future__ import annotations

import pytest

from inspector.knowledge.library import knowledge
from inspector.knowledge.rules import Example, Rule
from tests.rules.example_runner import answer, examples, variants

CASES = [
    pytest.param(rule, wanted, example, id=f"{rule.id}: {wanted}: {example.case}")
    for rule in knowledge().rules.values()
    for wanted, example in examples(rule)
]


@pytest.mark.parametrize(("rule", "wanted", "example"), CASES)
def test_the_example_gets_its_answer(rule: Rule, wanted: str, example: Example) -> None:
    for seen in variants(example):
        assert answer(knowledge(), rule, example, seen) == wanted, seen
