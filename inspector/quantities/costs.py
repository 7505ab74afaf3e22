"""What a list of jobs may cost, as a range: three figures for each, and the chance that it is needed at all.

Any one currency. Parts and hours are better kept apart. Knows no part and no rule.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from inspector.quantities.arrays import between, finite, inside, phi

_SEED = 20_000
_FINEST = -9  # no currency has smaller coins
_USUAL_CORRELATION = 0.3
"""Jobs share the hourly rate of one workshop (own choice)."""
_TOO_NARROW = 1.3
"""People's lowest and highest figures lie this much too near to the usual one (own choice; that they lie too near
is shown by the literature on overconfident estimates, second hand)."""


@dataclass(frozen=True)
class Estimate:
    """Lowest, most likely and highest cost of one job.

    Raises ValueError unless 0 <= low <= usual <= high.
    """

    low: float
    usual: float
    high: float

    def __post_init__(self) -> None:
        for figure in (self.low, self.usual, self.high):
            finite("A cost", figure)
        if not 0 <= self.low <= self.usual <= self.high:
            raise ValueError(f"Costs must rise from low to high, found {self.low}, {self.usual}, {self.high}.")


def widened(estimate: Estimate) -> Estimate:
    """The estimate with its ends 1.3 times as far from the usual figure, never below nothing."""
    return Estimate(
        max(estimate.usual - _TOO_NARROW * (estimate.usual - estimate.low), 0.0),
        estimate.usual,
        estimate.usual + _TOO_NARROW * (estimate.high - estimate.usual),
    )


def quantiles(
    jobs: Sequence[Estimate],
    shares: Sequence[float] = (0.1, 0.5, 0.9),
    *,
    chances: Sequence[float] | None = None,
    correlation: float = _USUAL_CORRELATION,
    draws: int = 20_000,
) -> list[float]:
    """Totals that are not passed with these chances, from draws of triangular costs with a fixed seed.

    `chances` that a job is needed (all for certain when not given); `correlation` of the costs of jobs that are.
    The same input gives the same output. Raises ValueError for chances, correlation and shares outside 0 to 1, and
    for unequal lengths.
    """
    import numpy as np

    needed = _chances(chances, len(jobs))
    shared = float(between("The correlation", correlation, 0.0, 1.0))
    chance = np.random.default_rng(_SEED)
    common = chance.standard_normal(draws)
    sums = np.zeros(draws)
    for job, p in zip(jobs, needed, strict=True):
        z = math.sqrt(shared) * common + math.sqrt(1 - shared) * chance.standard_normal(draws)
        sums += (chance.random(draws) < p) * _triangular_cost(job, phi(z))
    return [float(np.quantile(sums, float(inside("A share", share, 0.0, 1.0)))) for share in shares]


def rounded_outward(low: float, high: float, digits: int = 2) -> tuple[float, float]:
    """A range with so many significant figures, the lower end rounded down and the upper up.

    Raises ValueError for negative or falling ends.
    """
    if not 0 <= float(finite("The lower end", low)) <= float(finite("The upper end", high)):
        raise ValueError(f"A range must rise and not be negative, found {low} to {high}.")
    return _rounded(low, digits, math.floor), _rounded(high, digits, math.ceil)


def _chances(chances: Sequence[float] | None, jobs: int) -> list[float]:
    if chances is None:
        return [1.0] * jobs
    return [float(between("A chance", chance, 0.0, 1.0)) for chance in chances]


def _rounded(value: float, digits: int, way: Any) -> float:
    if value == 0:
        return 0.0
    step = 10.0 ** max(_FINEST, math.floor(math.log10(value)) - digits + 1)
    return float(round(way(round(value / step, 9)) * step, 9))


def _triangular_cost(job: Estimate, share: Any) -> Any:
    """Cost below which this share of the triangular distribution lies."""
    import numpy as np

    width = job.high - job.low
    if width == 0:
        return job.usual + 0 * share
    left = (job.usual - job.low) / width
    rising = job.low + np.sqrt(share * width * (job.usual - job.low))
    falling = job.high - np.sqrt((1 - share) * width * (job.high - job.usual))
    return np.where(share < left, rising, falling)
