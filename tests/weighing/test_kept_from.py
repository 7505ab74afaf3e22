"""A reading that does not decide: what it would have to show, with the same tool, to count as kept."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.deriving.facts import Fact, derive_facts
from inspector.knowledge.library import knowledge
from inspector.quantities.conformity import guard_band, outcome
from inspector.weighing.kept_from import kept_from
from tests.records import assessed, record

PAD = "brake pad @ rear inner"
RUNOUT = "brake disc @ front left"


def pad(value: str) -> Fact:
    inspection = record({PAD: {"friction_material_thickness": value}})
    return derive_facts(inspection, knowledge()).items["brake pad", "rear inner"]["friction_material_thickness"]


@pytest.mark.parametrize(
    ("value", "words"),
    [
        # limit 1.5 mm, one chance in twenty borne: 1.5 + 1.645 u, rounded up to the first figure of u
        ("1.7 mm ± 0.3 mm", "read this well, it counts as kept from 2 mm on"),
        ("1.52 mm ± 0.05 mm", "read this well, it counts as kept from 1.59 mm on"),
        ("0.065 in ± 0.01 in", "read this well, it counts as kept from 0.08 in on"),
        ("1.4 mm ± 0.01 mm", None),  # beyond
        ("3.0 mm ± 0.1 mm", None),  # within
    ],
)
def test_what_a_pad_would_have_to_show(value: str, words: str | None) -> None:
    assert kept_from(pad(value), knowledge()) == words


@given(st.floats(0.01, 0.6))
def test_a_reading_at_the_edge_is_within_and_one_just_short_of_it_cannot_tell(uncertainty: float) -> None:
    edge = 1.5 + guard_band(uncertainty, 0.05)

    assert outcome(edge + 1e-9, uncertainty, at_least=1.5, act_over_loss=0.05) == "within"
    assert outcome(edge - 1e-6, uncertainty, at_least=1.5, act_over_loss=0.05) == "cannot tell"


def test_an_upper_limit_is_kept_up_to_a_figure() -> None:
    """Chain: 2.0 % at most, one chance in ten borne: 2.0 - 1.28 x 0.3."""
    looks: dict[str, Any] = {"chain @ rear": {"measured_length": "323.6 mm ± 0.3 mm", "new_length": "317.5 mm"}}
    facts = derive_facts(record(looks, kind="chain drive motorcycle"), knowledge())

    assert kept_from(facts.items["chain", "rear"]["elongation"], knowledge()) == (
        "read this well, it counts as kept up to 1.87 %"
    )


def test_the_owner_reads_it_where_the_next_looks_are_listed() -> None:
    assessment = assessed({PAD: {"friction_material_thickness": "1.7 mm ± 0.3 mm"}})
    reasons = [one.reason for one in assessment.unseen if one.because == "cannot tell"]

    assert "read this well, it counts as kept from 2 mm on" in reasons
