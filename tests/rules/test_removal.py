"""No condition without an example that needs it (each condition of each rule taken away in turn)."""

from __future__ import annotations

import pytest

from inspector.knowledge.library import knowledge
from inspector.knowledge.rules import Rule
from tests.rules.removal import idle_conditions


@pytest.mark.parametrize("rule", [pytest.param(rule, id=rule.id) for rule in knowledge().rules.values()])
def test_every_condition_is_needed_by_an_example(rule: Rule) -> None:
    assert idle_conditions(knowledge(), rule) == []
