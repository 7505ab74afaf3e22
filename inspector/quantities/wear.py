"""Wear looked forward: thickness and wear rate as one state, corrected by each reading, in closed form.

Thickness in mm, distances in 1000 km, rates in mm per 1000 km. Any other pair of units works as well if it
is kept throughout (months for what ages). `jitter` is how unevenly the part wears: variance of thickness
per unit of distance. Arrays broadcast, one member for each part. Knows no part, no rule and no limit by
name. Model: linear wear with normal noise, the two-state linear filter; first passage is taken as the
chance at a distance.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any, Generic

from inspector.quantities.arrays import (
    Number,
    as_given,
    between,
    exp,
    inside,
    log,
    not_negative,
    phi,
    phi_inverse,
    positive,
    sqrt,
    where,
)

_Z_OF_95_PERCENT = 1.96


@dataclass(frozen=True)
class WearState(Generic[Number]):
    """What is believed about one part: thickness and rate, their variances and covariance."""

    thickness: Number
    rate: Number
    thickness_variance: Number
    covariance: Number
    rate_variance: Number


def prior_rate(median: Number, factor: Number | float) -> tuple[Number, Number]:
    """Mean and standard deviation of a rate known as "about `median`, within `factor` times either way".

    `factor` is meant at 95 %, more than 1 and up to 100. A lognormal spread. Raises ValueError outside the
    domain.
    """
    middle = positive("The median rate", median)
    known_to = between("The factor", positive("The factor minus one", factor - 1) + 1, 1.0, 100.0)
    spread = log(known_to) / _Z_OF_95_PERCENT
    mean = middle * exp(spread * spread / 2)
    return as_given(mean, median), as_given(mean * sqrt(exp(spread * spread) - 1), median)


def start(thickness: Number, thickness_sd: Number, rate: Number, rate_sd: Number) -> WearState[Number]:
    """State of a part when fitted or first read: thickness and rate with their standard deviations.

    Raises ValueError for negative or not finite input.
    """
    first = not_negative("The thickness", thickness)
    spread = not_negative("The uncertainty of the thickness", thickness_sd)
    speed = not_negative("The wear rate", rate)
    doubt = not_negative("The uncertainty of the rate", rate_sd)
    variance = as_given(spread * spread, thickness)
    return WearState(first, speed, variance, as_given(variance * 0.0, thickness), as_given(doubt * doubt, rate))


def after(state: WearState[Number], distance: Number | float, jitter: Number | float = 0.0) -> WearState[Number]:
    """State after a further distance without a reading. Raises ValueError for negative input."""
    way = not_negative("The distance", distance)
    noise = not_negative("The jitter", jitter)
    like = state.thickness
    return WearState(
        as_given(state.thickness - state.rate * way, like),
        as_given(state.rate + way * 0.0, like),
        as_given(_variance_after(state, way, noise), like),
        as_given(state.covariance - way * state.rate_variance, like),
        as_given(state.rate_variance + way * 0.0, like),
    )


def look(state: WearState[Number], reading: Number | float, uncertainty: Number | float) -> WearState[Number]:
    """State after a reading with its standard uncertainty.

    Raises ValueError for a negative reading, and for a reading said to be exact of a part known exactly.
    """
    seen = not_negative("The reading", reading)
    spread = not_negative("The uncertainty of the reading", uncertainty)
    total = positive("The uncertainty of state and reading together", state.thickness_variance + spread * spread)
    surprise = seen - state.thickness
    to_thickness, to_rate = state.thickness_variance / total, state.covariance / total
    like = state.thickness
    return WearState(
        as_given(state.thickness + to_thickness * surprise, like),
        as_given(state.rate + to_rate * surprise, like),
        as_given(state.thickness_variance * (1 - to_thickness), like),
        as_given(state.covariance * (1 - to_thickness), like),
        as_given(state.rate_variance - to_rate * state.covariance, like),
    )


def surprise(state: WearState[Number], reading: Number | float, uncertainty: Number | float) -> Number:
    """How far a reading lies from what was expected, in standard deviations; negative: thinner than expected.

    Up to about 1.6 either way is noise; beyond 3 the part did not wear as before. Raises ValueError as
    `look`.
    """
    seen = not_negative("The reading", reading)
    spread = not_negative("The uncertainty of the reading", uncertainty)
    total = positive("The uncertainty of state and reading together", state.thickness_variance + spread * spread)
    return as_given((seen - state.thickness) / sqrt(total), state.thickness)


def chance_at_limit(
    state: WearState[Number], limit: Number | float, distance: Number | float, jitter: Number | float = 0.0
) -> Number:
    """Chance that the part is at or under its limit after a further distance.

    A state without any doubt gives a step. Raises ValueError for negative or not finite input.
    """
    edge = not_negative("The limit", limit)
    way = not_negative("The distance", distance)
    excess = edge - state.thickness + state.rate * way
    variance = _variance_after(state, way, not_negative("The jitter", jitter))
    exact = variance <= 0
    step = where(excess >= 0, 1.0, 0.0)
    return as_given(where(exact, step, phi(excess / sqrt(where(exact, 1.0, variance)))), state.thickness)


def distance_left(
    state: WearState[Number], limit: Number | float, share: Number | float, jitter: Number | float = 0.0
) -> Number:
    """Distance by which the part has reached its limit with the chance `share` (strictly between 0 and 1).

    0 when that chance is there already; infinity when no distance reaches it, as when a rate of nothing
    cannot be ruled out and `share` is high. Raises ValueError outside the domain.
    """
    edge = not_negative("The limit", limit)
    z = phi_inverse(inside("The chance", share, 0.0, 1.0))
    noise = not_negative("The jitter", jitter)
    margin = state.thickness - edge
    best = _first_crossing(state, margin, z, noise)
    return as_given(where(-margin >= z * sqrt(state.thickness_variance), 0.0, best), state.thickness)


def _first_crossing(state: WearState[Number], margin: Any, z: Any, noise: Any) -> Any:
    """Smallest positive root of (rate x distance - margin)^2 = z^2 x variance that lies on the side of z."""
    z2 = z * z
    a = state.rate * state.rate - z2 * state.rate_variance
    b = 2 * (z2 * state.covariance - state.rate * margin) - z2 * noise
    c = margin * margin - z2 * state.thickness_variance
    inner = b * b - 4 * a * c
    # exact states have a double root, which rounding may push below zero
    real = inner >= -1e-9 * b * b
    half = -(b + where(b < 0, -1.0, 1.0) * sqrt(where(inner > 0, inner, 0.0))) / 2
    best: Any = math.inf
    for root in (_ratio(half, a), _ratio(c, half)):
        side = (state.rate * root - margin) * z >= -1e-9 * abs(margin)
        best = where(real & (root > 0) & side & (root < best), root, best)
    return best


def _variance_after(state: WearState[Number], way: Any, noise: Any) -> Any:
    return state.thickness_variance - 2 * way * state.covariance + way * way * state.rate_variance + noise * way


def _ratio(above: Any, below: Any) -> Any:
    """Quotient, and 0 where there is none."""
    none = below == 0
    return where(none, 0.0, above / where(none, 1.0, below))
