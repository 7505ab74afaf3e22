"""Wear looked forward: from the readings of one part over distance to the distance at which its limit is reached.

A part may be read by eye today and by caliper next year; the two-state filter weighs each reading by its
uncertainty. One reading alone gives no distance, only how far to go before the next look. A reading thicker than
an earlier one is a question to the owner: unless it looks like the same part it is left out, and no distance is
given, until the record says which part it was.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass
from datetime import date
from typing import Literal

from inspector.deriving.limits import Band
from inspector.knowledge.wear import WearPrior
from inspector.quantities.thicker import Readings, which_story
from inspector.quantities.units import parse_amount
from inspector.quantities.wear import (
    WearState,
    after,
    chance_at_limit,
    distance_left,
    look,
    prior_rate,
    start,
    surprise,
)
from inspector.reading.inspection import Earlier, Inspection, Measured

Story = Literal["one reading", "as before", "faster than before", "thicker than before", "no distance between"]
_NOISE = 1.64  # a reading this many standard deviations off is still noise
_FAST = 3.0
_LOW, _MIDDLE, _HIGH = 0.10, 0.50, 0.90
SAME_PART = "the same part"
MAY_REACH = _LOW
"""The chance of being at its limit by the horizon from which on wear is planned for."""


@dataclass(frozen=True)
class Forecast:
    """When a limit is reached: a range in km that holds with eight in ten, and the next look before it.

    `low` to `high` are None with a single reading and while a thicker one is unexplained; `high` is infinite when
    the part may not wear at all.
    `per_month` is the distance ridden a month between the first and the last reading, when dates are known.
    `rate` and `rate_spread` are wear per 1000 km in base units; `by_horizon` is the chance of being at the limit
    once `horizon` km are ridden.
    """

    limit: str
    story: Story
    check: float
    low: float | None = None
    middle: float | None = None
    high: float | None = None
    per_month: float | None = None
    guess: str | None = None
    rate: float | None = None
    rate_spread: float | None = None
    horizon: float | None = None
    by_horizon: float | None = None


@dataclass(frozen=True)
class _Point:
    """One reading as the filter sees it: remaining height over an arbitrary zero, 1000 km, uncertainty."""

    height: float
    spread: float
    distance: float
    new_part: bool


class _Scale:
    """Turns readings that fall or grow towards a limit into heights that fall, and back again."""

    def __init__(self, prior: WearPrior, band: Band, dimension: str) -> None:
        bound = band.at_least if prior.sense == "falls" else band.at_most
        assert bound is not None
        self.dimension = dimension
        self.top = 0.0 if prior.sense == "falls" else 10 * abs(bound) + 1000
        self.sign = 1.0 if prior.sense == "falls" else -1.0
        self.limit = self.height(bound)

    def height(self, base: float) -> float:
        return self.top + self.sign * base

    def amount(self, text: str) -> float:
        return parse_amount(text, self.dimension).base


def forecast(
    value: Measured, history: tuple[Earlier, ...], prior: WearPrior, band: Band, inspection: Inspection
) -> Forecast | None:
    """Look forward from the readings of one part. None when no odometer tells how far it went."""
    if inspection.odometer is None or (band.at_least if prior.sense == "falls" else band.at_most) is None:
        return None
    scale = _Scale(prior, band, value.amount.dimension)
    points = _points(value, history, scale, inspection.odometer.base)
    state, story, guess = _follow(points, prior, scale)
    check = _check(state, prior, scale)
    if story in ("one reading", "no distance between") or guess not in (None, SAME_PART):
        return Forecast(prior.limit, story, check, guess=guess)
    jitter, per_month = scale.amount(prior.jitter), _per_month(history, inspection)
    low, middle, high = (
        1000 * float(distance_left(state, scale.limit, share, jitter)) for share in (_LOW, _MIDDLE, _HIGH)
    )
    horizon = _horizon(inspection, per_month)
    return Forecast(
        *(prior.limit, story, check, low, middle, high, per_month, guess),
        rate=state.rate,
        rate_spread=math.sqrt(max(state.rate_variance, 0.0)),
        horizon=horizon,
        by_horizon=float(chance_at_limit(state, scale.limit, horizon / 1000, jitter)),
    )


def _horizon(inspection: Inspection, per_month: float | None) -> float:
    """How far is looked ahead, in km: the distance of the record, or its months as it was ridden so far."""
    if per_month is None:
        return inspection.horizon_km
    return min(inspection.horizon_km, per_month * inspection.horizon_months)


def _points(value: Measured, history: tuple[Earlier, ...], scale: _Scale, odometer: float) -> list[_Point]:
    earlier = sorted(history, key=lambda one: one.odometer.base)
    points = [_Point(scale.height(e.value.amount.base), e.value.uncertainty, e.odometer.base / 1000, e.new_part)
              for e in earlier]  # fmt: skip
    points.append(_Point(scale.height(value.amount.base), value.uncertainty, odometer / 1000, False))
    newest = max((i for i, point in enumerate(points) if point.new_part), default=0)
    return points[newest:]  # wear of a part that was replaced says nothing about the new one


def _follow(points: list[_Point], prior: WearPrior, scale: _Scale) -> tuple[WearState[float], Story, str | None]:
    mean, sd = prior_rate(scale.amount(prior.per_1000_km), prior.factor)
    state = start(points[0].height, max(points[0].spread, 1e-6), mean, sd)
    story: Story = "one reading" if len(points) == 1 else "no distance between"
    guess = None
    jitter = scale.amount(prior.jitter)
    last = points[0]  # the last reading that was believed
    for before, point in itertools.pairwise(points):
        way = point.distance - before.distance
        spread = max(point.spread, 1e-6)
        if way > 0:
            state = after(state, way, jitter)
            # a question to the owner stands until the record answers it
            story = "as before" if guess is None else "thicker than before"
            off = surprise(state, point.height, spread)
            if point.height > last.height and off > _NOISE:
                found = _guess(last, point, point.distance - last.distance, state, prior, scale)
                story, guess = "thicker than before", found if guess in (None, SAME_PART) else guess
                if found != SAME_PART:
                    continue
            elif off < -_FAST and guess is None:
                story = "faster than before"
        state, last = look(state, point.height, spread), point
    return state, story, guess


def _guess(
    before: _Point, point: _Point, way: float, state: WearState[float], prior: WearPrior, scale: _Scale
) -> str:
    stories = which_story(
        Readings(before.height, before.spread, point.height, max(point.spread, 1e-6), way),
        rate=max(state.rate, 1e-9),
        rate_sd=math.sqrt(max(state.rate_variance, 0.0)),
        new=scale.height(scale.amount(prior.new)),
        new_sd=scale.amount(prior.new_spread),
        jitter=scale.amount(prior.jitter),
    )
    chances = {SAME_PART: stories.same_part, "a new part": stories.replaced, "a slip": stories.misread}
    return max(chances, key=lambda name: chances[name])


def _check(state: WearState[float], prior: WearPrior, scale: _Scale) -> float:
    """The next look: the distance at which the chance of being at the limit is still small, rounded down."""
    share = parse_amount(prior.check_at, "percent").base / 100
    left = 1000 * float(distance_left(state, scale.limit, share, scale.amount(prior.jitter)))
    return round_down(min(left, 20_000.0))


def round_down(distance: float) -> float:
    """A distance rounded down to one significant figure, at least to tens of km."""
    if distance < 10:
        return 0.0
    step = 10 ** math.floor(math.log10(distance))
    return float(math.floor(distance / step + 1e-9) * step)


def round_outward(low: float, high: float) -> tuple[float, float]:
    """A range of distances rounded outward, no finer than its width, and `high` to two figures at most."""
    if math.isinf(high):
        return round_down(low), high
    finest = 10 ** (math.floor(math.log10(max(high, 10))) - 1)
    width = max(high - low, 10)
    step = 10 ** math.floor(math.log10(width))
    step = max(step / 2 if width < 2 * step else step, finest)
    least = math.floor(low / step + 1e-9) * step
    return max(least, round_down(low)), math.ceil(high / step - 1e-9) * step


def _per_month(history: tuple[Earlier, ...], inspection: Inspection) -> float | None:
    dated = [(e.day, e.odometer.base) for e in history if e.day is not None]
    if not dated or inspection.odometer is None:
        return None
    first_day, first_km = min(dated)
    months = _months(first_day, inspection.day)
    ridden = inspection.odometer.base - first_km
    return ridden / months if months >= 1 and ridden > 0 else None


def _months(then: date, now: date) -> float:
    return (now - then).days / (365.2425 / 12)
