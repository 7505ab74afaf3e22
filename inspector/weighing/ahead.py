"""A forecast of wear in words: a range, never a figure surer than the readings it rests on."""

from __future__ import annotations

import math

from inspector.deriving.forecast import Forecast, round_down, round_outward
from inspector.quantities.units import Amount, base_unit, convert, number_text

_NO_RANGE = {
    "one reading": "One reading cannot show how fast it wears",
    "no distance between": "Two readings without a ride between them cannot show how fast it wears",
}
# with two readings, "expected" is what such parts do; with more, what this one did
_FASTER = "It has worn much faster than expected. "
_THICKER = "One reading shows more left than a reading before it: most likely {guess}. "
_SETTLE = "No distance is told until the record says which; mark the first reading of a new part `new part: yes`"


_UNSURE = 0.3  # a rate less sure than this deserves one figure only


def forecast_text(ahead: Forecast, unit: str, typed: Amount, limit: str | None = None) -> str:
    """How fast it wears, when the limit is reached and when to look again.

    Distances in the unit of the odometer (`km` or `mi`), wear in the unit of the reading as it was typed.
    """
    check = round_down(convert(ahead.check, "km", unit, "distance"))
    again = (
        f"measure again after {_figure(check)} {unit}" if check else "too little is left to wait for another look"
    )
    story = _FASTER if ahead.story == "faster than before" else ""
    if ahead.story == "thicker than before":
        story = _THICKER.format(guess=ahead.guess)
    if ahead.low is None or ahead.high is None:
        return f"{story}{_NO_RANGE.get(ahead.story, _SETTLE)}; {again}."
    reached = _reached(ahead, unit, f"The limit of {limit}" if limit else "The limit")
    return f"{story}{_rate(ahead, unit, typed)}{reached}{_by_then(ahead, unit)}; {again}."


def _rate(ahead: Forecast, unit: str, typed: Amount) -> str:
    """`It wears by about 0.24 mm in 1000 km. `; nothing where the rate cannot be told from none."""
    if ahead.rate is None or ahead.rate_spread is None or ahead.high is None or math.isinf(ahead.high):
        return ""
    of_km = convert(1, unit, "km", "distance")
    wear = abs(convert(ahead.rate * of_km, base_unit(typed.dimension), typed.unit, typed.dimension))
    figures = 1 if ahead.rate_spread > _UNSURE * ahead.rate else 2
    separator = "" if typed.unit == "%" else " "
    return f"It wears by about {number_text(wear, figures)}{separator}{typed.unit} in 1000 {unit}. "


def _by_then(ahead: Forecast, unit: str) -> str:
    """The chance of being at the limit by the horizon, in tenths; nothing where it is under one in twenty."""
    if ahead.by_horizon is None or ahead.horizon is None:
        return ""
    way, tenths = round_down(convert(ahead.horizon, "km", unit, "distance")), round(10 * ahead.by_horizon)
    if not way or not tenths:
        return ""
    words = "almost always" if tenths == 10 else f"in about {tenths} of 10 such cases"
    return f", within the next {_figure(way)} {unit} {words}"


def _reached(ahead: Forecast, unit: str, the_limit: str) -> str:
    assert ahead.low is not None
    assert ahead.high is not None
    if math.isinf(ahead.low):
        return f"The readings show no wear that can be told from none. {the_limit} is not in sight"
    low, high = round_outward(*(convert(way, "km", unit, "distance") for way in (ahead.low, ahead.high)))
    if not high:
        return f"{the_limit} is reached"
    if math.isinf(high):
        if not low:
            return f"{the_limit} may be reached already; how fast it wears cannot be told yet"
        return f"{the_limit} is reached after {_figure(low)} {unit} at the earliest"
    if not low:
        return f"{the_limit} may be reached already, and probably is within {_figure(high)} {unit}{_when(ahead)}"
    return f"{the_limit} is probably reached after {_figure(low)} to {_figure(high)} {unit}{_when(ahead)}"


def _when(ahead: Forecast) -> str:
    if ahead.per_month is None or ahead.low is None or ahead.high is None:
        return ""
    first, last = math.floor(ahead.low / ahead.per_month), math.ceil(ahead.high / ahead.per_month)
    if last > 60:
        return ""
    if last <= 1:
        return ", in about a month as it was ridden so far"
    return (
        f", in about {first} to {last} months as it was ridden so far"
        if first
        else (f", within about {last} months as it was ridden so far")
    )


def _figure(number: float) -> str:
    """`3000`, `10 000`: a space that never breaks a line, from five figures on."""
    return f"{number:.0f}" if number < 10_000 else f"{number:,.0f}".replace(",", "\u00a0")
