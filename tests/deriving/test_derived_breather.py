"""The height of the breather against water: cooling draws harder than a ford is deep."""

from __future__ import annotations

import pytest

from inspector.quantities.breather import stronger_push
from tests.deriving.looks import fact, measured, sentences, word

DRIVE = "final drive @ rear"
HEIGHTS = {"axle_height": "310 mm ± 10 mm", "breather_height": "100 mm ± 10 mm"}


def test_the_water_is_compared_with_axle_and_breather_one_on_the_other() -> None:
    found = fact(DRIVE, "water_over_breather", {DRIVE: {**HEIGHTS, "deepest_water_depth": "600 mm ± 50 mm"}})

    assert measured(found).amount.base == pytest.approx(190)
    assert measured(found).uncertainty == pytest.approx((10**2 + 10**2 + 50**2) ** 0.5)
    assert found.limits["above the water"].standing == "beyond"


def test_a_case_cooled_from_80_to_15_degrees_draws_like_1_90_m_of_water() -> None:
    """Gas law at constant volume: 101.325 kPa x (1 - 288.15 / 353.15) = 18.65 kPa."""
    assert stronger_push(0.3) == "cooling"
    assert stronger_push(1.89) == "cooling"
    assert stronger_push(1.92) == "depth"


def test_a_ford_draws_and_a_flood_pushes() -> None:
    ford = {DRIVE: {**HEIGHTS, "deepest_water_depth": "600 mm ± 50 mm"}}
    flood = {DRIVE: {**HEIGHTS, "deepest_water_depth": "3000 mm ± 100 mm"}}

    assert word(fact(DRIVE, "stronger_push", ford)) == "cooling"
    assert sentences(ford)["final_drive/breather_was_under_water"] == (
        "Rear: the end of the breather was 190 mm under water."
    )
    assert "final_drive/drive_was_deep_under_water" in sentences(flood)


def test_the_water_that_is_to_be_ridden_through() -> None:
    observations = {DRIVE: HEIGHTS, "use": {"wading_depth": "500 mm"}}

    assert "90 mm below the surface" in sentences(observations)["final_drive/breather_below_wading_line"]
    assert "final_drive/breather_below_wading_line" not in sentences(
        {DRIVE: HEIGHTS, "use": {"wading_depth": "300 mm"}}
    )


def test_without_a_word_about_wading_the_height_is_judged_by_nothing() -> None:
    found = fact(DRIVE, "wading_over_breather", {DRIVE: HEIGHTS})

    assert not found.seen
    assert not found.unseen


def test_what_one_cooling_may_bring_into_the_oil() -> None:
    """80 ml of air over 180 ml of oil draw 14.7 ml of water, 9 % of the oil by mass; damp air brings 2 ppm."""
    known = {DRIVE: {**HEIGHTS, "oil_specified": "180 ml"}, "use": {"wading_depth": "500 mm"}}
    above = {**known, "use": {"wading_depth": "300 mm"}}

    assert "one cooling may bring 9% of water into the oil; 400 ppm" in sentences(known)[
        "final_drive/wading_would_spoil_oil"
    ].replace(" (0.04 %)", "")
    assert "final_drive/breather_below_wading_line" not in sentences(known)
    assert measured(fact(DRIVE, "water_at_cooling", above)).typed == "2 ppm"
    assert "final_drive/wading_would_spoil_oil" not in sentences(above)
