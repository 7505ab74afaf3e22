"""What a list of jobs may cost, as a range: three figures for each, and the chance that it is needed at all.

Any one currency. Parts and hours are better kept apart. Knows no part and no rule.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from inspector.quantities.arrays import between, finite, inside, phi, phi_inverse

_SEED = 20_000
_FINEST = -9  # no currency has smaller coins
_USUAL_CORRELATION = 0.3
"""Jobs share the hourly rate of one workshop (own choice)."""


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


@dataclass(frozen=True)
class Spread:
    """Mean and standard deviation."""

    mean: float
    sd: float


def triangular(job: Estimate) -> Spread:
    """Mean and deviation when the chance falls in straight lines from the usual cost to both ends."""
    rise, width = job.usual - job.low, job.high - job.low
    variance = (rise * rise + width * width - rise * width) / 18
    return Spread(job.low + (rise + width) / 3, math.sqrt(variance))


def pert(job: Estimate) -> Spread:
    """Mean and deviation of the project planners' rule (PERT), which trusts the usual cost more.

    Source: (a + 4 m + b) / 6 and (b - a) / 6.
    """
    return Spread((job.low + 4 * job.usual + job.high) / 6, (job.high - job.low) / 6)


def pert_beta(job: Estimate) -> Spread:
    """Mean of PERT with the deviation of the beta distribution that has this mean. A fixed price has none."""
    width = job.high - job.low
    if width == 0:
        return Spread(job.usual, 0.0)
    alpha, beta = 1 + 4 * (job.usual - job.low) / width, 1 + 4 * (job.high - job.usual) / width
    sd = width * math.sqrt(alpha * beta / (7 * 36))
    return Spread(pert(job).mean, sd)


def total(spreads: Sequence[Spread], chances: Sequence[float] | None = None, correlation: float = 0.0) -> Spread:
    """Mean and deviation of a sum of jobs, each needed with its chance (all for certain when not given).

    `correlation`, 0 to 1, of the costs of jobs that are needed. Raises ValueError for chances outside 0 to
    1 and for unequal lengths. A sum of jobs that may fall away is lopsided: print `quantiles`, not mean and
    deviation.
    """
    needed = _chances(chances, len(spreads))
    shared = float(between("The correlation", correlation, 0.0, 1.0))
    pairs = list(zip(spreads, needed, strict=True))
    mean = sum(p * job.mean for job, p in pairs)
    own = sum(p * job.sd**2 + p * (1 - p) * job.mean**2 for job, p in pairs)
    together = sum(p * job.sd for job, p in pairs) ** 2 - sum((p * job.sd) ** 2 for job, p in pairs)
    return Spread(mean, math.sqrt(own + shared * together))


def quantiles(
    jobs: Sequence[Estimate],
    shares: Sequence[float] = (0.1, 0.5, 0.9),
    *,
    chances: Sequence[float] | None = None,
    correlation: float = _USUAL_CORRELATION,
    draws: int = 20_000,
) -> list[float]:
    """Totals that are not passed with these chances, from draws of triangular costs with a fixed seed.

    The same input gives the same output. Raises ValueError as `total`, and for shares outside 0 to 1.
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


def chance_within(spread: Spread, budget: float) -> float:
    """Chance that a sum of many jobs stays within a budget, taken as normal; a step without spread."""
    room = float(finite("The budget", budget)) - spread.mean
    if spread.sd == 0:
        return 1.0 if room >= 0 else 0.0
    return float(phi(room / spread.sd))


def budget_for(spread: Spread, share: float) -> float:
    """Budget that suffices with a chance, 0 to 1 without its ends, taken as normal."""
    return spread.mean + spread.sd * float(phi_inverse(inside("The chance", share, 0.0, 1.0)))


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
