"""Cost ranges: three jobs of our own, against other simulations and the triangular distribution."""

import math

import pytest
from scipy import stats

from inspector.quantities.costs import Estimate, quantiles, rounded_outward, widened

JOBS = [Estimate(40, 60, 110), Estimate(80, 120, 260), Estimate(150, 220, 400)]


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


@pytest.mark.parametrize(
    ("noted", "taken"),
    [((80, 120, 260), (68, 120, 302)), ((0, 30, 60), (0, 30, 69)), ((100, 100, 100), (100, 100, 100))],
)
def test_ends_are_taken_a_third_farther_apart(noted, taken):
    wide = widened(Estimate(*noted))

    assert (wide.low, wide.usual, wide.high) == pytest.approx(taken)


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
        lambda: quantiles(JOBS, chances=[1.5, 0.5, 0.5]),
        lambda: quantiles(JOBS, chances=[0.5, 0.5]),
        lambda: quantiles(JOBS, (0.0,)),
        lambda: quantiles(JOBS, correlation=2.0),
        lambda: rounded_outward(5, 4),
        lambda: rounded_outward(math.nan, 4),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match=r"must|argument"):
        call()
