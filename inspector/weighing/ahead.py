"""A forecast of wear in words: a range, never a figure surer than the readings it rests on."""

from __future__ import annotations

import math

from inspector.deriving.forecast import Forecast, round_down, round_outward
from inspector.quantities.units import convert

_NO_RANGE = {
    "one reading": "One reading cannot show how fast it wears",
    "no distance between": "Two readings without a ride between them cannot show how fast it wears",
}
# with two readings, "expected" is what such parts do; with more, what this one did
_FASTER = "It has worn much faster than expected. "
_THICKER = "One reading shows more left than a reading before it: most likely {guess}. "
_SETTLE = "No distance is told until the record says which; mark the first reading of a new part `new part: yes`"


def forecast_text(ahead: Forecast, unit: str, limit: str | None = None) -> str:
    """When the limit is reached and when to look again, in the unit of the odometer (`km` or `mi`)."""
    check = round_down(convert(ahead.check, "km", unit, "distance"))
    again = (
        f"measure again after {_figure(check)} {unit}" if check else "too little is left to wait for another look"
    )
    story = _FASTER if ahead.story == "faster than before" else ""
    if ahead.story == "thicker than before":
        story = _THICKER.format(guess=ahead.guess)
    if ahead.low is None or ahead.high is None:
        return f"{story}{_NO_RANGE.get(ahead.story, _SETTLE)}; {again}."
    return f"{story}{_reached(ahead, unit, f'The limit of {limit}' if limit else 'The limit')}; {again}."


def _reached(ahead: Forecast, unit: str, the_limit: str) -> str:
    assert ahead.low is not None
    assert ahead.high is not None
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
