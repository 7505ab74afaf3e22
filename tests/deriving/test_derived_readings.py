"""Repeated readings and one tool's own bias; and that every function in the list exists."""

from __future__ import annotations

import pytest

from inspector.deriving.derived import POSITIONAL
from inspector.deriving.named import NAMED
from inspector.knowledge.derivations import FUNCTIONS
from inspector.quantities.readings import mean_scatter, repeated, uncertainty_of_difference
from tests.deriving.looks import fact, measured

# JCGM 100 (GUM), 4.4.3, table 1: twenty readings of a temperature; from memory, and they give the printed figures
GUM_TABLE_1 = (
    *(96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07),
    *(100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72),
)


def test_the_twenty_temperatures_of_the_guide() -> None:
    mean, uncertainty = mean_scatter(GUM_TABLE_1)

    assert mean == pytest.approx(100.145, abs=0.0005)
    assert uncertainty == pytest.approx(0.333, abs=0.0005)


# the same, H.2, table H.2: five readings each of volts, milliamperes and radians; from memory, as above
@pytest.mark.parametrize(
    ("readings", "mean", "uncertainty"),
    [
        ((5.007, 4.994, 5.005, 4.990, 4.999), 4.9990, 0.0032),
        ((19.663, 19.639, 19.640, 19.685, 19.678), 19.6610, 0.0095),
        ((1.0456, 1.0438, 1.0468, 1.0428, 1.0433), 1.04446, 0.00075),
    ],
)
def test_the_three_quantities_of_the_guide(readings: tuple[float, ...], mean: float, uncertainty: float) -> None:
    found, scatter = mean_scatter(readings)

    assert found == pytest.approx(mean, abs=5e-5)
    assert scatter == pytest.approx(uncertainty, rel=0.02)


def test_repeating_does_not_take_away_what_the_tool_is_off_by() -> None:
    """A caliper of 0.1 mm: readings that agree to the last digit leave half of it."""
    assert repeated([2.6, 2.6, 2.6], 0.1).uncertainty == pytest.approx(0.05)
    three = repeated([2.6, 2.7, 2.5], 0.1)
    assert three.mean == pytest.approx(2.6)
    assert three.uncertainty == pytest.approx((0.01 / 3 + 0.05**2) ** 0.5)  # s = 0.1 mm
    assert repeated([2.6, 2.7, 2.5] * 400, 0.1).uncertainty == pytest.approx(0.05, abs=0.001)


def test_one_reading_shows_no_scatter() -> None:
    with pytest.raises(ValueError, match="two readings"):
        repeated([2.6], 0.1)


def test_the_bias_of_one_tool_drops_out_of_a_difference() -> None:
    assert uncertainty_of_difference(0.3, 0.4, same_tool=False) == pytest.approx(0.5)
    assert uncertainty_of_difference(0.1, 0.1, same_tool=True) == pytest.approx(0.1 * 1.5**0.5)


@pytest.mark.parametrize(
    ("outer_tool", "expected"), [("caliper", 0.1 * 1.5**0.5), ("steel rule", (0.1**2 + 0.3**2) ** 0.5)]
)
def test_two_pads_measured_with_one_caliper_compare_better(outer_tool: str, expected: float) -> None:
    pads = {
        "brake pad @ rear inner": {"friction_material_thickness": "2.0 mm with caliper"},
        "brake pad @ rear outer": {"friction_material_thickness": f"3.5 mm with {outer_tool}"},
    }

    assert measured(fact("brake caliper @ rear", "pad_difference", pads)).uncertainty == pytest.approx(expected)


def test_every_function_the_knowledge_may_name_exists() -> None:
    assert {*POSITIONAL, *NAMED, "wear_story"} == set(FUNCTIONS)
    assert {name for name, function in FUNCTIONS.items() if function.named} == set(NAMED)
