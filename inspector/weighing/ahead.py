"""A forecast of wear in words: a range, never a figure surer than the readings it rests on."""

from __future__ import annotations

import math

from inspector.deriving.forecast import Forecast, round_down, round_outward
from inspector.knowledge.wording import words
from inspector.quantities.units import Amount, base_unit, convert, number_text

_UNSURE = 0.3  # a rate less sure than this deserves one figure only


def forecast_text(ahead: Forecast, unit: str, typed: Amount, limit: str | None = None) -> str:
    """How fast it wears, when the limit is reached and when to look again.

    Distances in the unit of the odometer (`km` or `mi`), wear in the unit of the reading as it was typed.
    """
    check = round_down(convert(ahead.check, "km", unit, "distance"))
    again = _say("again", distance=_figure(check), unit=unit) if check else _say("no_waiting")
    story = ""
    if ahead.story in ("faster than before", "thicker than before"):
        story = _say(ahead.story.partition(" ")[0], guess=ahead.guess)
    if ahead.low is None or ahead.high is None:
        no_range = {"one reading": "one_reading", "no distance between": "no_distance"}
        return f"{story}{_say(no_range.get(ahead.story, 'settle'))}; {again}."
    reached = _reached(ahead, unit, _say("the_limit_of", limit=limit) if limit else _say("the_limit"))
    return f"{story}{_rate(ahead, unit, typed)}{reached}{_by_then(ahead, unit)}; {again}."


def _say(key: str, **filled: object) -> str:
    """A fixed phrase of the section `forecast`."""
    return str(words()["forecast"][key].format(**filled))


def _rate(ahead: Forecast, unit: str, typed: Amount) -> str:
    """`It wears by about 0.24 mm in 1000 km. `; nothing where the rate cannot be told from none."""
    if ahead.rate is None or ahead.rate_spread is None or ahead.high is None or math.isinf(ahead.high):
        return ""
    of_km = convert(1, unit, "km", "distance")
    wear = abs(convert(ahead.rate * of_km, base_unit(typed.dimension), typed.unit, typed.dimension))
    figures = 1 if ahead.rate_spread > _UNSURE * ahead.rate else 2
    separator = "" if typed.unit == "%" else " "
    return _say("rate", wear=f"{number_text(wear, figures)}{separator}{typed.unit}", unit=unit)


def _by_then(ahead: Forecast, unit: str) -> str:
    """The chance of being at the limit by the horizon, in tenths; nothing where it is under one in twenty."""
    if ahead.by_horizon is None or ahead.horizon is None:
        return ""
    way, tenths = round_down(convert(ahead.horizon, "km", unit, "distance")), round(10 * ahead.by_horizon)
    if not way or not tenths:
        return ""
    return _say("by_then_always" if tenths == 10 else "by_then", distance=_figure(way), unit=unit, tenths=tenths)


def _reached(ahead: Forecast, unit: str, the_limit: str) -> str:
    assert ahead.low is not None
    assert ahead.high is not None
    if math.isinf(ahead.low):
        return _say("no_wear", the_limit=the_limit)
    low, high = round_outward(*(convert(way, "km", unit, "distance") for way in (ahead.low, ahead.high)))
    if not high:
        key = "reached"
    elif math.isinf(high):
        key = "at_the_earliest" if low else "perhaps_already"
    else:
        key = "between" if low else "within"
    when = _when(ahead) if key in ("between", "within") else ""
    low_words, high_words = _figure(low), "" if math.isinf(high) else _figure(high)
    return _say(key, the_limit=the_limit, low=low_words, high=high_words, unit=unit) + when


def _when(ahead: Forecast) -> str:
    if ahead.per_month is None or ahead.low is None or ahead.high is None:
        return ""
    first, last = math.floor(ahead.low / ahead.per_month), math.ceil(ahead.high / ahead.per_month)
    if last > 60:
        return ""
    if last <= 1:
        return _say("in_a_month")
    return _say("in_months" if first else "within_months", first=first, last=last)


def _figure(number: float) -> str:
    """`3000`, `10 000`: a space that never breaks a line, from five figures on."""
    return f"{number:.0f}" if number < 10_000 else f"{number:,.0f}".replace(",", "\u00a0")
