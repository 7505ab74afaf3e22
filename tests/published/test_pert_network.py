"""Cost ranges: a textbook PERT network, and three jobs of our own."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from inspector.quantities.costs import (
    Estimate,
    Spread,
    budget_for,
    chance_within,
    pert,
    pert_beta,
    quantiles,
    rounded_outward,
    total,
    triangular,
)

JOBS = [Estimate(40, 60, 110), Estimate(80, 120, 260), Estimate(150, 220, 400)]


def test_textbook_network():
    # critical path 1-3-5-7 in weeks: printed mean 24, variance 5, chance of 28 weeks 0.9633
    path = total([pert(Estimate(*weeks)) for weeks in ((5, 8, 17), (3, 5, 7), (4, 6, 8), (3, 4, 5))])

    assert path.mean == pytest.approx(24)
    assert path.sd**2 == pytest.approx(5)
    assert chance_within(path, 28) == pytest.approx(0.9633, abs=2e-4)
    assert budget_for(path, 0.9633) == pytest.approx(28, abs=0.01)


def test_one_job_three_ways():
    # calculated
    job = Estimate(5, 8, 17)

    assert (triangular(job).mean, triangular(job).sd ** 2) == pytest.approx((10.0, 6.5))
    assert (pert(job).mean, pert(job).sd ** 2) == pytest.approx((9.0, 4.0))
    assert (pert_beta(job).mean, pert_beta(job).sd ** 2) == pytest.approx((9.0, 4.571), abs=5e-4)


@given(st.floats(0, 1e4), st.floats(0, 1e4), st.floats(0.01, 1e4))
def test_deviations_equal_those_of_the_distributions(low, rise, fall):
    job = Estimate(low, low + rise, low + rise + fall)
    width = job.high - job.low
    left = (job.usual - job.low) / width
    straight = stats.triang(left, loc=low, scale=width)
    beta = stats.beta(1 + 4 * left, 5 - 4 * left, loc=low, scale=width)

    assert (triangular(job).mean, triangular(job).sd) == pytest.approx((straight.mean(), straight.std()), rel=1e-6)
    assert (pert_beta(job).mean, pert_beta(job).sd) == pytest.approx((beta.mean(), beta.std()), rel=1e-6)


@pytest.mark.parametrize(
    ("way", "correlation", "mean", "sd"),
    [
        (triangular, 0, 480, 66.92),
        (pert, 0, 440, 52.65),
        (pert_beta, 0, 440, 56.56),
        (triangular, 0.3, 480, 80.64),
    ],
)
def test_three_jobs(way, correlation, mean, sd):
    # calculated
    found = total([way(job) for job in JOBS], correlation=correlation)

    assert (found.mean, found.sd) == pytest.approx((mean, sd), abs=0.006)


def test_three_jobs_that_may_not_be_needed():
    # calculated: chances 0.9, 0.5, 0.2
    found = total([triangular(job) for job in JOBS], [0.9, 0.5, 0.2])

    assert (found.mean, found.sd) == pytest.approx((191.0, 135.47), abs=0.005)


@pytest.mark.parametrize(
    ("shares", "chances", "correlation", "totals"),
    [
        ((0.1, 0.9), None, 0.0, (395, 570)),
        ((0.1, 0.5, 0.9), None, 1.0, (351, 466, 634)),
        ((0.1, 0.5, 0.9), [0.9, 0.5, 0.2], 0.0, (55, 185, 392)),
    ],
)
def test_drawn_totals(shares, chances, correlation, totals):
    # another simulation gave these; two of them may differ by about a percent
    assert quantiles(JOBS, shares, chances=chances, correlation=correlation) == pytest.approx(totals, rel=0.012)


def test_one_job_drawn_has_the_quantiles_of_its_distribution():
    job = Estimate(80, 120, 260)
    exact = stats.triang((120 - 80) / 180, loc=80, scale=180)

    assert quantiles([job], (0.1, 0.5, 0.9)) == pytest.approx(exact.ppf([0.1, 0.5, 0.9]), rel=0.012)


def test_the_same_jobs_give_the_same_figures():
    assert quantiles(JOBS) == quantiles(JOBS)


def test_a_fixed_price_stays_fixed():
    job = Estimate(100, 100, 100)

    assert quantiles([job]) == [100, 100, 100]
    assert (triangular(job).sd, pert(job).sd, pert_beta(job).sd) == (0, 0, 0)
    assert chance_within(Spread(100, 0), 100) == 1
    assert chance_within(Spread(100, 0), 99.9) == 0


@pytest.mark.parametrize(
    ("low", "high", "rounded"),
    [
        (351, 634, (350, 640)),
        (55, 392, (55, 400)),
        (0, 0.0123, (0, 0.013)),
        (100, 100, (100, 100)),
        (9.9, 9.91, (9.9, 10)),
    ],
)
def test_ranges_are_rounded_outward(low, high, rounded):
    assert rounded_outward(low, high) == pytest.approx(rounded)


@pytest.mark.parametrize(
    "call",
    [
        lambda: Estimate(60, 40, 110),
        lambda: Estimate(-1, 40, 110),
        lambda: Estimate(1, 2, math.inf),
        lambda: total([Spread(1, 1)], [1.5]),
        lambda: total([Spread(1, 1)], [0.5, 0.5]),
        lambda: quantiles(JOBS, (0.0,)),
        lambda: quantiles(JOBS, correlation=2.0),
        lambda: rounded_outward(5, 4),
        lambda: chance_within(Spread(1, 1), math.nan),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match=r"must|argument"):
        call()
