"""SAE J306 (Feb 2019) and SAE J300 (Jan 2015): the tables, as printed by reference pages."""

import pytest

from inspector.quantities.oils import (
    against_engine_grade,
    engine_band,
    engine_grade_match,
    gear_band,
    gear_cold_end,
)

INF = float("inf")


@pytest.mark.parametrize(
    ("grade", "low", "high"),
    [
        ("65", 3.8, 5.0),
        ("70", 5.0, 6.5),
        ("75", 6.5, 8.5),
        ("80", 8.5, 11.0),
        ("85", 11.0, 13.5),
        ("90", 13.5, 18.5),
        ("110", 18.5, 24.0),
        ("140", 24.0, 32.5),
        ("190", 32.5, 41.0),
        ("250", 41.0, INF),
        ("70W", 3.8, INF),
        ("75W", 3.8, INF),
        ("80W", 8.5, INF),
        ("85W", 11.0, INF),
        ("75W-90", 13.5, 18.5),
        ("SAE 85w-140", 24.0, 32.5),
    ],
)
def test_j306_bands(grade, low, high):
    band = gear_band(grade)

    assert (band.low, band.high) == (low, high)
    assert band.holds(low)
    assert not band.holds(low - 0.01)


@pytest.mark.parametrize(("grade", "celsius"), [("70W", -55), ("75W-90", -40), ("80W", -26), ("85W", -12)])
def test_j306_cold_ends(grade, celsius):
    assert gear_cold_end(grade) == celsius


def test_used_gear_oil_that_left_its_grade():
    # calculated: new 15.0, used 12.9 mm2/s at 100 degrees
    assert gear_band("75W-90").holds(15.0)
    assert not gear_band("75W-90").holds(12.9)


@pytest.mark.parametrize(
    ("grade", "low", "high"),
    [
        ("8", 4.0, 6.1),
        ("12", 5.0, 7.1),
        ("16", 6.1, 8.2),
        ("20", 6.9, 9.3),
        ("30", 9.3, 12.5),
        ("40", 12.5, 16.3),
        ("50", 16.3, 21.9),
        ("60", 21.9, 26.1),
        ("0W", 3.8, INF),
        ("5W", 3.8, INF),
        ("10W", 4.1, INF),
        ("15W", 5.6, INF),
        ("20W", 5.6, INF),
        ("25W", 9.3, INF),
        ("10W-40", 12.5, 16.3),
        ("25W-30", 9.3, 12.5),
    ],
)
def test_j300_bands(grade, low, high):
    band = engine_band(grade)

    assert (band.low, band.high) == (low, high)


def test_a_gear_90_lies_about_an_engine_40_to_50():
    gear = gear_band("90")

    assert engine_band("40").holds(gear.low)
    assert engine_band("50").holds(gear.high)


@pytest.mark.parametrize(
    "call",
    [
        lambda: gear_band("100"),
        lambda: gear_band("90-75W"),
        lambda: gear_band("75W-91"),
        lambda: gear_band(""),
        lambda: gear_cold_end("90"),
        lambda: engine_band("90"),
        lambda: engine_grade_match("10W-40", "90"),
        lambda: against_engine_grade(0.0, "10W-40"),
    ],
)
def test_unknown_grades_are_refused(call):
    with pytest.raises(ValueError, match=r"is no|must"):
        call()
