"""Several readings of one thing with one tool: their mean, and how far it may be off.

A tool has a bias of its own that no repeating takes away, and that drops out where two of its readings are
subtracted. Any unit, kept throughout. Knows no part and no rule.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean, stdev

from inspector.quantities.arrays import finite, not_negative

BIAS_SHARE = 0.5
"""Share of a tool's standard uncertainty that is the same in each of its readings.

Half the limit of error over root three, where the tool's own uncertainty is that limit over root three. Own
choice.
"""


@dataclass(frozen=True)
class Repeated:
    """The mean of several readings with its standard uncertainty."""

    mean: float
    uncertainty: float


def mean_scatter(readings: Sequence[float]) -> tuple[float, float]:
    """Mean, and its standard uncertainty from the scatter alone: s / root n.

    Raises ValueError for fewer than two readings and for numbers that are not finite. Source: JCGM 100 (GUM),
    4.2, Type A.
    """
    values = [float(finite("A reading", reading)) for reading in readings]
    if len(values) < 2:
        raise ValueError(f"Scatter shows only in two readings or more, found {len(values)}.")
    return fmean(values), stdev(values) / math.sqrt(len(values))


def repeated(readings: Sequence[float], tool: float) -> Repeated:
    """Mean of readings with one tool whose single reading has the standard uncertainty `tool`.

    The scatter of the readings counts, and under it the share of the tool that does not average out. Raises
    ValueError for fewer than two readings, for numbers that are not finite and a negative `tool`.
    Source: JCGM 100 (GUM), 4.2 and 5.1.2; the share is an own choice.
    """
    mean, scatter = mean_scatter(readings)
    return Repeated(mean, math.hypot(scatter, BIAS_SHARE * float(not_negative("The tool's uncertainty", tool))))


def uncertainty_of_difference(first: float, second: float, *, same_tool: bool) -> float:
    """Standard uncertainty of one reading minus another; with one tool the shared bias drops out.

    Raises ValueError for a negative uncertainty. Source: JCGM 100 (GUM), 5.2.2, correlated inputs.
    """
    one = float(not_negative("The first uncertainty", first))
    other = float(not_negative("The second uncertainty", second))
    if not same_tool:
        return math.hypot(one, other)
    free = math.sqrt(1 - BIAS_SHARE**2)
    return math.hypot(free * one, free * other, BIAS_SHARE * (one - other))
