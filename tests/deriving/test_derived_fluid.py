"""Brake fluid and the passes it will ride: words, and never a temperature."""

from __future__ import annotations

import pytest

from tests.deriving.looks import fact, sentences, word


def bears(**looks: str) -> str:
    return word(fact("brake circuit @ front", "fluid_for_hard_use", {"brake circuit @ front": looks}))


@pytest.mark.parametrize(
    ("fluid", "changed", "answer"),
    [
        # least boiling points of FMVSS 116, uptake 1 to 2 % a year, replaced by the trade at 180 degrees
        ("dot 4", "2026-03", "fit"),  # 0.5 % of water at most
        ("dot 4", "2025-01", "expect strong heat"),  # up to 2.8 %: between 204 and 163 degrees
        ("dot 4", "2023-12", "not fit for mountains"),  # two and a half percent at best
        ("dot 3", "2025-01", "not fit for mountains"),  # the lowest class is through sooner
        ("dot 5.1", "2025-01", "fit"),  # its wet point is 180 degrees
        ("dot 5.1", "2023-12", "expect strong heat"),  # more than the 3.7 % of the wet point cannot be ruled out
        ("dot 4", "unknown", "not fit for mountains"),  # unknown age counts as wet: 155 degrees
        ("dot 5", "2023-12", "not known"),  # silicone takes up no water
        ("mineral oil", "2023-12", "not known"),
    ],
)
def test_the_age_and_class_tell_whether_the_fluid_bears_long_descents(
    fluid: str, changed: str, answer: str
) -> None:
    assert bears(fluid_class_filled=fluid, fluid_changed=changed) == answer


def test_a_test_of_the_fluid_counts_more_than_its_age() -> None:
    old = {"fluid_class_filled": "dot 4", "fluid_changed": "2023-12"}

    assert bears(**old, boiling_point="235 °C ± 5 °C") == "fit"
    assert bears(**old, boiling_point="183 °C ± 5 °C") == "expect strong heat"
    assert bears(**old, boiling_point="170 °C ± 5 °C") == "not fit for mountains"
    assert bears(**old, water_share="0.5 % ± 0.5 %") == "fit"
    assert bears(**old, water_share="1.5 % ± 0.7 %") == "expect strong heat"
    assert bears(**old, water_share="3 % ± 0.5 %") == "not fit for mountains"  # DOT 4 at 3 %: 161 degrees


def test_the_class_on_the_cap_stands_in_for_the_one_filled() -> None:
    assert bears(fluid_class_required="dot 4", fluid_changed="2026-03") == "fit"


def test_without_class_or_age_nothing_is_said() -> None:
    found = fact(
        "brake circuit @ front", "fluid_for_hard_use", {"brake circuit @ front": {"fluid_level": "empty"}}
    )

    assert not found.seen
    assert not found.expected


def test_old_fluid_is_named_for_the_passes_and_no_temperature_is_printed() -> None:
    observations = {
        "brake circuit @ front": {"fluid_class_filled": "dot 4", "fluid_changed": "unknown"},
        "use": {"mountain_passes": "yes"},
    }
    says = sentences(observations)

    assert "not fit for long descents" in says["hydraulics/fluid_unfit_for_passes"]
    assert "°" not in says["hydraulics/fluid_unfit_for_passes"]
    assert "hydraulics/fluid_unfit_for_passes" not in sentences({**observations, "use": {"mountain_passes": "no"}})
