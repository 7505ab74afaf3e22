"""A forecast of wear in words: a range, never a figure surer than the readings it rests on."""

from __future__ import annotations

import math

from inspector.deriving.forecast import Forecast, round_down, round_outward
from inspector.quantities.units import convert

_STORIES = {
    "faster than before": "It wears much faster than before. ",
    "thicker than before": "It measures thicker than last time: most likely {guess}. Say which. ",
}


def forecast_text(ahead: Forecast, unit: str) -> str:
    """When the limit is reached and when to look again, in the unit of the odometer (`km` or `mi`)."""
    check = round_down(convert(ahead.check, "km", unit, "distance"))
    again = f"measure again after {_figure(check)} {unit}" if check else "measure again now"
    if ahead.low is None or ahead.high is None:
        return f"One reading cannot show how fast it wears; {again}."
    story = _STORIES.get(ahead.story, "").format(guess=ahead.guess)
    low, high = round_outward(*(convert(way, "km", unit, "distance") for way in (ahead.low, ahead.high)))
    if math.isinf(high):
        return f"{story}The limit is reached after {_figure(low)} {unit} at the earliest; {again}."
    when = _when(ahead)
    return f"{story}The limit is probably reached after {_figure(low)} to {_figure(high)} {unit}{when}; {again}."


def _when(ahead: Forecast) -> str:
    if ahead.per_month is None or ahead.low is None or ahead.high is None:
        return ""
    first, last = math.floor(ahead.low / ahead.per_month), math.ceil(ahead.high / ahead.per_month)
    return f", in about {first} to {last} months as it was ridden so far" if last <= 60 else ""


def _figure(number: float) -> str:
    return f"{number:,.0f}".replace(",", " ")
