"""One derived fact from a record as written, for the tests of this folder."""

from __future__ import annotations

from typing import Any

from inspector.deriving.facts import Fact, derive_facts
from inspector.knowledge.library import knowledge
from inspector.reading.inspection import Measured, Word
from inspector.weighing.assessment import Assessment
from tests.records import assessed, record


def fact(address: str, name: str, observations: dict[str, dict[str, Any]], **more: Any) -> Fact:
    """The fact of `part @ place` and property that a record with these observations gives."""
    part, _, place = address.partition(" @ ")
    return derive_facts(record(observations, **more), knowledge()).items[part, place][name]


def word(found: Fact) -> str:
    """The word of a choice."""
    assert isinstance(found.value, Word), found.value
    return found.value.word


def measured(found: Fact) -> Measured:
    """The amount of a quantity."""
    assert isinstance(found.value, Measured), found.value
    return found.value


def sentences(observations: dict[str, dict[str, Any]], **more: Any) -> dict[str, str]:
    """What the findings of a record say, by rule."""
    assessment: Assessment = assessed(observations, **more)
    return {entry.rule: entry.says for entry in (*assessment.findings, *assessment.causes)}
