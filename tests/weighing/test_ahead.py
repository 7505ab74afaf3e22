"""What the report says about wear: a range, an open end, a question to the owner, never more than is known."""

from __future__ import annotations

import math

import pytest

from inspector.deriving.forecast import Forecast
from inspector.quantities.units import parse_amount
from inspector.weighing.ahead import forecast_text

LIMIT = "wear limit"
TYPED = parse_amount("2.6 mm", "length")
RANGE = (3130.0, 3130.0, 4510.0, 6650.0)


@pytest.mark.parametrize(
    ("ahead", "text"),
    [
        (
            Forecast(LIMIT, "one reading", 1500.0),
            "One reading cannot show how fast it wears; measure again after 1000 km.",
        ),
        (
            Forecast(LIMIT, "no distance between", 1500.0),
            "Two readings without a ride between them cannot show how fast it wears; measure again after 1000 km.",
        ),
        (
            Forecast(LIMIT, "as before", 3130.0, 3130.0, 4510.0, 6650.0),
            "The limit of 1.5 mm is probably reached after 3000 to 7000 km; measure again after 3000 km.",
        ),
        (  # 417 km a month: 7.5 to 15.9 months
            Forecast(LIMIT, "as before", 3130.0, 3130.0, 4510.0, 6650.0, per_month=417.0),
            "The limit of 1.5 mm is probably reached after 3000 to 7000 km, in about 7 to 16 months as it was"
            " ridden so far; measure again after 3000 km.",
        ),
        (
            Forecast(LIMIT, "as before", 900.0, 900.0, 9000.0, math.inf),
            "The limit of 1.5 mm is reached after 900 km at the earliest; measure again after 900 km.",
        ),
        (  # growing readings: even the fastest believable wear is none
            Forecast(LIMIT, "as before", 20_000.0, math.inf, math.inf, math.inf),
            "The readings show no wear that can be told from none. The limit of 1.5 mm is not in sight;"
            " measure again after 20\u00a0000 km.",
        ),
        (
            Forecast(LIMIT, "as before", 0.0, 0.0, 300.0, 1800.0),
            "The limit of 1.5 mm may be reached already, and probably is within 2000 km;"
            " too little is left to wait for another look.",
        ),
        (
            Forecast(LIMIT, "as before", 0.0, 0.0, 0.0, 0.0),
            "The limit of 1.5 mm is reached; too little is left to wait for another look.",
        ),
        (
            Forecast(LIMIT, "faster than before", 500.0, 600.0, 900.0, 1300.0),
            "It has worn much faster than expected. The limit of 1.5 mm is probably reached after 600 to 1300 km;"
            " measure again after 500 km.",
        ),
        (
            Forecast(LIMIT, "thicker than before", 2000.0, guess="a new part"),
            "One reading shows more left than a reading before it: most likely a new part. No distance is told"
            " until the record says which; mark the first reading of a new part `new part: yes`; measure again"
            " after 2000 km.",
        ),
    ],
)
def test_a_forecast_in_words(ahead: Forecast, text: str) -> None:
    assert forecast_text(ahead, "km", TYPED, "1.5 mm") == text


def test_a_distance_is_told_in_the_unit_of_the_odometer() -> None:
    """3130 to 6650 km are 1945 to 4132 miles."""
    ahead = Forecast(LIMIT, "as before", 3130.0, 3130.0, 4510.0, 6650.0)

    assert forecast_text(ahead, "mi", TYPED) == (
        "The limit is probably reached after 1000 to 5000 mi; measure again after 1000 mi."
    )


def test_a_rate_is_told_in_the_units_of_reading_and_odometer() -> None:
    """0.2412 mm in 1000 km, known to an eighth, are 0.388 mm or 0.0153 in in 1000 miles."""
    ahead = Forecast(LIMIT, "as before", *RANGE, rate=0.2412, rate_spread=0.0308)

    assert forecast_text(ahead, "km", TYPED).startswith("It wears by about 0.24 mm in 1000 km. The limit")
    assert forecast_text(ahead, "mi", TYPED).startswith("It wears by about 0.39 mm in 1000 mi. The limit")
    inches = parse_amount("0.1 in", "length")
    assert forecast_text(ahead, "mi", inches).startswith("It wears by about 0.015 in in 1000 mi. The limit")


@pytest.mark.parametrize(("spread", "rate"), [(0.07, "0.24 mm"), (0.08, "0.2 mm")])
def test_a_doubtful_rate_keeps_one_figure(spread: float, rate: str) -> None:
    """One figure when the doubt is more than 30 %, two otherwise."""
    ahead = Forecast(LIMIT, "as before", *RANGE, rate=0.2412, rate_spread=spread)

    assert f"by about {rate} in 1000 km" in forecast_text(ahead, "km", TYPED)


def test_no_rate_is_told_where_it_cannot_be_told_from_none() -> None:
    ahead = Forecast(LIMIT, "as before", 900.0, 900.0, 9000.0, math.inf, rate=0.1, rate_spread=0.1)

    assert "in 1000 km" not in forecast_text(ahead, "km", TYPED)


@pytest.mark.parametrize(
    ("chance", "words"),
    [
        (0.04, ""),
        (0.26, ", within the next 5000 km in about 3 of 10 such cases"),
        (0.97, ", within the next 5000 km almost always"),
    ],
)
def test_the_chance_by_the_horizon_is_told_in_tenths(chance: float, words: str) -> None:
    ahead = Forecast(LIMIT, "as before", *RANGE, horizon=5400.0, by_horizon=chance)

    assert forecast_text(ahead, "km", TYPED) == (
        f"The limit is probably reached after 3000 to 7000 km{words}; measure again after 3000 km."
    )


def test_a_long_figure_never_breaks_over_two_lines() -> None:
    from inspector.reporting.lines import paragraph

    text = forecast_text(Forecast(LIMIT, "as before", 9000.0, 10_600.0, 15_000.0, 21_200.0), "km", TYPED, "1.5 mm")
    lines = [line for width in range(30, 80) for line in paragraph(text, width)]

    assert "10\u00a0000 to 25\u00a0000 km" in text
    assert not any(line.startswith("000") or line.endswith((" 10", " 25")) for line in lines)
