"""What the report says about wear: a range, an open end, a question to the owner, never more than is known."""

from __future__ import annotations

import math

import pytest

from inspector.deriving.forecast import Forecast
from inspector.weighing.ahead import forecast_text

LIMIT = "wear limit"


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
    assert forecast_text(ahead, "km", "1.5 mm") == text


def test_a_distance_is_told_in_the_unit_of_the_odometer() -> None:
    """3130 to 6650 km are 1945 to 4132 miles."""
    ahead = Forecast(LIMIT, "as before", 3130.0, 3130.0, 4510.0, 6650.0)

    assert forecast_text(ahead, "mi") == (
        "The limit is probably reached after 1000 to 5000 mi; measure again after 1000 mi."
    )


def test_a_long_figure_never_breaks_over_two_lines() -> None:
    from inspector.reporting.lines import paragraph

    text = forecast_text(Forecast(LIMIT, "as before", 9000.0, 10_600.0, 15_000.0, 21_200.0), "km", "1.5 mm")
    lines = [line for width in range(30, 80) for line in paragraph(text, width)]

    assert "10\u00a0000 to 25\u00a0000 km" in text
    assert not any(line.startswith("000") or line.endswith((" 10", " 25")) for line in lines)
