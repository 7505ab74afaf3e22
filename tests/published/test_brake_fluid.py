"""Brake fluid: FMVSS 116 (49 CFR 571.116) minima, DOT 3 against water, uptake, what mixes."""

import pytest

from inspector.quantities.fluids import (
    BOILING_MINIMA,
    WET_WATER,
    boiling_from_age,
    boiling_point,
    fluid_match,
    water_from_age,
)


@pytest.mark.parametrize(
    ("fluid", "dry_f", "wet_f"),
    [("dot 3", 401, 284), ("dot 4", 446, 311), ("dot 5.1", 500, 356), ("dot 5", 500, 356)],
)
def test_minima_in_both_scales(fluid, dry_f, wet_f):
    # FMVSS 116, degrees Fahrenheit as printed; DOT 4 wet 311 F also in a US regulator's letter
    dry, wet = BOILING_MINIMA[fluid]

    assert dry * 1.8 + 32 == pytest.approx(dry_f)
    assert wet * 1.8 + 32 == pytest.approx(wet_f)


@pytest.mark.parametrize(("water", "celsius"), [(0, 205), (1, 188), (2, 160), (3, 145), (WET_WATER, 140)])
def test_dot_3_against_water(water, celsius):
    # three agreeing pages; 369, 320 and 293 F at 1, 2 and 3 %
    assert boiling_point("dot 3", water) == pytest.approx(celsius)


def test_dot_3_at_one_percent_on_the_other_page():
    assert boiling_point("dot 3", 1.0) == pytest.approx((369 - 32) / 1.8, abs=1)


@pytest.mark.parametrize(
    ("fluid", "printed"),
    [
        ("dot 4", (230, 210, 178, 161, 155)),
        ("dot 5.1", (260, 239, 205, 186, 180)),
        ("iso class 6", (250, 228, 191, 172, 165)),
    ],
)
def test_other_classes_by_the_same_shape(fluid, printed):
    # calculated from the DOT 3 shape: an estimate
    found = [boiling_point(fluid, water) for water in (0.0, 1.0, 2.0, 3.0, WET_WATER)]

    assert found == pytest.approx(printed, abs=0.6)


@pytest.mark.parametrize("fluid", ["dot 3", "dot 4", "dot 5.1"])
def test_the_straight_line_promises_too_much(fluid):
    # up to 1 % the published points follow the line from dry to wet within 1 degree, above they lie well
    # under it
    dry, wet = BOILING_MINIMA[fluid]

    def above_the_line(water):
        return boiling_point(fluid, water) - (dry - (dry - wet) * water / WET_WATER)

    assert above_the_line(1.0) == pytest.approx(0, abs=1)
    assert above_the_line(2.0) < -9
    assert above_the_line(3.0) < -7


def test_more_water_than_the_test_has_promises_no_more_than_the_wet_point():
    assert boiling_point("dot 4", 8.0) == BOILING_MINIMA["dot 4"][1]


@pytest.mark.parametrize(
    ("years", "claimed"),
    [(1, 2), (1.5, 3), (2, 3.5), (2, 3), (2, 4), (8, 2.6), (8, 7.5)],
)
def test_the_band_of_uptake_holds_what_is_claimed(years, claimed):
    # trade pages, and a mean of 2.6 % in cars about eight years old
    slow, fast = water_from_age(years)

    assert slow <= claimed <= fast


def test_four_years_in_a_dot_4_circuit():
    worst, best = boiling_from_age("dot 4", 4.0)

    assert worst == 155
    assert 161 < best < 178


@pytest.mark.parametrize(
    ("filled", "required", "match"),
    [
        ("dot 4", "dot 4", "same"),
        ("dot 5", "dot 5", "same"),
        ("dot 3", "dot 4", "mixable"),
        ("dot 5.1", "dot 4", "mixable"),
        ("iso class 6", "dot 4", "mixable"),
        ("dot 5", "dot 5.1", "wrong"),
        ("dot 5.1", "dot 5", "wrong"),
        ("mineral oil", "dot 4", "wrong"),
        ("dot 4", "mineral oil", "wrong"),
    ],
)
def test_what_mixes(filled, required, match):
    # fluid makers' tables: 3, 4 and 5.1 mix, silicone mixes with none; mineral oil from memory
    assert fluid_match(filled, required) == match


@pytest.mark.parametrize(
    "call",
    [
        lambda: fluid_match("dot 6", "dot 4"),
        lambda: boiling_point("dot 5", 1.0),
        lambda: boiling_point("mineral oil", 1.0),
        lambda: boiling_point("dot 4", -0.1),
        lambda: boiling_point("dot 4", float("nan")),
        lambda: water_from_age(-1.0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match=r"no fluid class|takes up no water|must"):
        call()
