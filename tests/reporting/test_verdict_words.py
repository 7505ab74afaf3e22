"""The sentence of the verdict, and fixed words for every word of the knowledge."""

from __future__ import annotations

from typing import get_args

import pytest

from inspector.knowledge.model import Known, Standing
from inspector.knowledge.rules import Certainty, Chance, Class, Effort
from inspector.knowledge.wording import words
from inspector.reading.inspection import PURPOSES
from inspector.reporting.words import READERS, verdict_sentence
from inspector.weighing.assessment import LEVELS, Assessment, UnseenBecause
from tests.reporting.cases import in_order


def levelled(level: str, critical_unseen: int = 0) -> Assessment:
    verdict = in_order().verdict.model_copy(
        update={
            "level": level,
            "leading": "1",
            "leading_title": "Thing",
            "leading_place": "rear",
            "critical_unseen": critical_unseen,
            "first_unseen": "tyre, rear: Is it?",
        }
    )
    return in_order().model_copy(update={"verdict": verdict})


@pytest.mark.parametrize("purpose", PURPOSES)
def test_only_a_sound_machine_is_said_to_have_nothing_against_it(purpose: str) -> None:
    for level in LEVELS:
        assessment = levelled(level, critical_unseen=3)
        visit = assessment.visit.model_copy(update={"purpose": purpose})
        sentence = verdict_sentence(assessment.model_copy(update={"visit": visit}))

        assert ("Nothing was found against it" in sentence) == (level == "sound")
        assert ("3 deciding things" in sentence) == (level == "unseen")
        assert ("Thing (rear)" in sentence) == (level in ("stop", "repair", "plan", "watch"))


def test_a_suspected_cause_that_leads_is_called_suspected() -> None:
    stop = levelled("stop")
    led = stop.model_copy(update={"verdict": stop.verdict.model_copy(update={"leading": "A"})})

    assert "suspected, not proved: Thing (rear)" in verdict_sentence(led)
    assert "suspected" not in verdict_sentence(stop)


def test_the_fixed_words_cover_every_word_of_the_knowledge() -> None:
    fixed = words()

    assert set(fixed["level"]) == set(fixed["level_means"]) == set(fixed["level_when"]) == set(LEVELS)
    for reader in READERS:
        assert set(fixed["ride"][reader]) - {"repair_property"} == {"question", *LEVELS}
    for purpose in PURPOSES:
        assert set(fixed["verdict"][purpose.replace(" ", "_")]) - {"repair_property"} == set(LEVELS)
    assert set(fixed["because"]) == set(get_args(UnseenBecause))
    assert set(fixed["chance"]) == set(get_args(Chance))
    assert set(fixed["class"]) == set(get_args(Class))
    assert set(fixed["effort"]) == set(get_args(Effort))
    assert set(fixed["standing"]) == set(get_args(Standing))
    assert set(fixed["known"]) == set(fixed["known_means"]) == set(get_args(Known))
    assert set(fixed["strength"]) <= set(get_args(Certainty))
