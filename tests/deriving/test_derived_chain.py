"""The chain by its number, by the rollers, and against the handbook; its wear looked forward."""

from __future__ import annotations

import pytest

from tests.deriving.looks import fact, measured, sentences, word

CHAIN = "chain @ rear"
KIND = "chain drive motorcycle"


def longer(**looks: str) -> float:
    return measured(fact(CHAIN, "elongation", {CHAIN: looks}, kind=KIND)).amount.base


@pytest.mark.parametrize(
    ("series", "pitches", "length", "percent"),
    [
        ("525", "20", "319.4 mm", 0.60),  # limit of a road manual
        ("520", "15", "242.9 mm", 2.0),  # limit of an off-road manual, new 238.1
        ("525", "17", "272.0 mm", 0.8),  # 18 rollers under 15 kg
        ("428", "20", "259.1 mm", 2.0),
        ("630", "20", "384.8 mm", 1.0),
    ],
)
def test_a_known_number_needs_no_new_chain_beside_it(
    series: str, pitches: str, length: str, percent: float
) -> None:
    assert longer(series=series, pitches=pitches, measured_length=length) == pytest.approx(percent, abs=0.05)


def test_twenty_links_are_taken_when_nothing_is_said() -> None:
    assert longer(series="525", measured_length="323.9 mm") == pytest.approx(2.0, abs=0.05)


def test_a_new_chain_that_was_measured_counts_before_the_number() -> None:
    assert longer(series="525", new_length="320 mm", measured_length="320 mm") == pytest.approx(0)


def test_over_the_rollers_their_clearance_drops_out() -> None:
    """Handbook: half way between inside and outside lies the length; here 317.5 mm and rollers of 10.16 mm."""
    found = longer(series="525", rollers_inside="307.34 mm", rollers_outside="327.66 mm")

    assert found == pytest.approx(0, abs=1e-9)


def test_half_a_millimetre_of_rule_is_a_sixth_of_a_percent() -> None:
    looks = {"series": "525", "measured_length": "320 mm ± 0.5 mm"}

    assert measured(fact(CHAIN, "elongation", {CHAIN: looks}, kind=KIND)).uncertainty == pytest.approx(
        0.157, abs=0.001
    )


@pytest.mark.parametrize(("teeth", "answer"), [("42", "within"), ("67", "within"), ("80", "beyond")])
def test_a_large_sprocket_bears_less(teeth: str, answer: str) -> None:
    """Chain handbook: 3 % up to 67 teeth, above that 200 / teeth; 80 teeth bear 2.5 %, here are 2.7 %."""
    observations = {
        CHAIN: {"series": "420", "measured_length": "260.9 mm"},
        "sprockets @ rear": {"rear_teeth": teeth},
    }

    assert word(fact(CHAIN, "against_handbook", observations, kind=KIND)) == answer


def test_one_worn_chain_is_told_once() -> None:
    observations = {CHAIN: {"series": "420", "measured_length": "260.9 mm ± 0.3 mm"},
                    "sprockets @ rear": {"rear_teeth": "80"}}  # fmt: skip
    says = sentences(observations, kind=KIND)

    assert [rule for rule in says if "worn" in rule] == ["chain_and_belt/worn_for_large_sprocket"]


def test_a_chain_with_some_wear_is_looked_at_again_in_time() -> None:
    """One reading gives the next look; a longer chain has to be looked at sooner."""
    checks = []
    for length in ("318.5 mm ± 0.1 mm", "322 mm ± 0.1 mm"):
        found = fact(CHAIN, "elongation", {CHAIN: {"series": "525", "measured_length": length}}, kind=KIND)
        assert found.forecast is not None
        checks.append(found.forecast.check)

    assert checks[0] > checks[1] > 0
