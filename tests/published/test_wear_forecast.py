"""Wear forecast: worked pad, first passage by simulation and by closed form, thicker readings.

All values calculated for this tool; scipy's inverse Gaussian and a simulation are the oracles.
"""

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import invgauss, norm

from inspector.quantities.thicker import Readings, which_story
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

JITTER = 0.005
LIMIT = 1.5
ROWS = ["by eye", "with a caliper", "four readings"]


def pad(row: str, jitter: float = JITTER) -> WearState[float]:
    """New pad of 5.0 mm, 0.30 mm per 1000 km, and the readings up to a row of the worked table."""
    state = look(after(start(5.0, 0.2, 0.30, 0.15), 6.0, jitter), 3.4, 0.3)
    if row == "by eye":
        return state
    state = look(after(state, 4.0, jitter), 2.6, 0.1)
    if row == "with a caliper":
        return state
    return look(after(look(after(state, 2.0, jitter), 2.15, 0.1), 1.5, jitter), 1.9, 0.1)


@pytest.mark.parametrize(
    ("row", "thickness", "its_sd", "rate", "rate_sd"),
    [
        ("by eye", 3.3814, 0.2857, 0.2722, 0.0609),
        ("with a caliper", 2.5887, 0.0981, 0.2412, 0.0308),
        ("four readings", 1.8589, 0.0808, 0.2301, 0.0246),
    ],
)
def test_worked_pad_today(row, thickness, its_sd, rate, rate_sd):
    state = pad(row)
    found = (state.thickness, state.thickness_variance**0.5, state.rate, state.rate_variance**0.5)

    assert found == pytest.approx((thickness, its_sd, rate, rate_sd), abs=6e-5)


@pytest.mark.parametrize(
    ("row", "early", "middle", "late"),
    [
        ("by eye", 3.87, 6.91, 13.39),
        ("with a caliper", 3.13, 4.51, 6.65),
        ("four readings", 0.78, 1.56, 2.77),
    ],
)
def test_worked_pad_distances(row, early, middle, late):
    left = [distance_left(pad(row), LIMIT, share, JITTER) for share in (0.05, 0.5, 0.95)]

    assert left == pytest.approx([early, middle, late], abs=0.006)


@pytest.mark.parametrize("row", ROWS)
def test_first_passage_by_simulation_agrees(row):
    # paths with their own rate and start, thickness followed in steps of 20 km
    state, step, paths = pad(row), 0.02, 20_000
    spread = np.array([[state.thickness_variance, state.covariance], [state.covariance, state.rate_variance]])
    chance = np.random.default_rng(20251125)
    thickness, rate = chance.multivariate_normal([state.thickness, state.rate], spread, paths).T
    reached = np.full(paths, np.inf)
    for number in range(1, 900):
        thickness = thickness - rate * step + chance.normal(0, (JITTER * step) ** 0.5, paths)
        reached[(thickness <= LIMIT) & np.isinf(reached)] = number * step

    for share in (0.05, 0.5, 0.95):
        assert distance_left(state, LIMIT, share, JITTER) == pytest.approx(np.quantile(reached, share), abs=0.25)


@pytest.mark.parametrize(("time", "share"), [(3, 0.225459), (3.3333333, 0.525646), (3.5, 0.671142), (4, 0.930746)])
def test_inverse_gaussian_first_passage(time, share):
    # margin 1, rate 0.3, jitter 0.005: printed values, scipy, and the filter's chance nearly the same
    exact = invgauss(mu=(1 / 0.3) / (1 / 0.005), scale=1 / 0.005).cdf(time)
    ours = chance_at_limit(start(1.0, 0.0, 0.3, 0.0), 0.0, time, 0.005)

    assert exact == pytest.approx(share, abs=2e-6)
    assert ours == pytest.approx(exact, abs=0.03)
    assert ours < exact


@pytest.mark.parametrize("share", [0.05, 0.1, 0.5, 0.95])
def test_first_passage_with_an_uncertain_rate(share):
    # mixture of inverse Gaussians over the rate by quadrature; margin as of the second row, taken as exact
    state = start(2.5887, 0.0, 0.2412, 0.0308)
    margin = state.thickness - LIMIT

    def reached_before(distance):
        def passage(rate):
            return invgauss(mu=JITTER / (margin * rate), scale=margin**2 / JITTER).cdf(distance)

        return quad(lambda r: norm.pdf(r, 0.2412, 0.0308) * passage(r), 0.05, 0.45)[0]

    exact = brentq(lambda distance: reached_before(distance) - share, 0.5, 15, xtol=1e-3)

    assert distance_left(state, LIMIT, share, JITTER) == pytest.approx(exact, abs=0.12)


def test_without_jitter_the_filter_is_bayesian_regression():
    # normal equations in thickness when new and rate, two readings, as the independent way
    state = look(after(look(after(start(5.0, 0.2, 0.30, 0.15), 6.0), 3.4, 0.3), 4.0), 2.6, 0.1)
    rows = np.array([[1, 0], [0, 1], [1, -6], [1, -10]], dtype=float)
    weights = np.diag([1 / 0.2**2, 1 / 0.15**2, 1 / 0.3**2, 1 / 0.1**2])
    spread = np.linalg.inv(rows.T @ weights @ rows)
    new, rate = spread @ rows.T @ weights @ np.array([5.0, 0.30, 3.4, 2.6])
    way = np.array([1, -10])

    assert state.thickness == pytest.approx(new - 10 * rate, abs=1e-9)
    assert state.rate == pytest.approx(rate, abs=1e-9)
    assert state.thickness_variance**0.5 == pytest.approx((way @ spread @ way) ** 0.5, abs=1e-9)
    assert state.thickness == pytest.approx(2.587560, abs=1e-6)
    assert state.thickness_variance**0.5 == pytest.approx(0.097934, abs=1e-6)
    assert (state.rate, state.rate_variance**0.5) == pytest.approx((0.239713, 0.021899), abs=1e-6)


def test_prior_rate_known_to_a_factor_of_three():
    assert prior_rate(0.25, 3.0) == pytest.approx((0.2925, 0.1777), abs=6e-5)


@pytest.mark.parametrize(
    ("second", "same", "replaced", "misread"),
    [
        (3.0, 0.98, 0.0, 0.02),
        (3.6, 0.47, 0.27, 0.26),
        (4.2, 0.0, 0.93, 0.07),
        (4.8, 0.0, 0.92, 0.08),
        (6.0, 0.0, 0.0, 1.0),
    ],
)
def test_a_reading_thicker_than_the_last(second, same, replaced, misread):
    readings = Readings(3.4, 0.3, second, 0.1, distance=4.0)
    stories = which_story(readings, rate=0.27, rate_sd=0.06, new=5.0, new_sd=0.2, jitter=JITTER)

    assert (stories.same_part, stories.replaced, stories.misread) == pytest.approx(
        (same, replaced, misread), abs=0.006
    )


def test_at_its_limit_already():
    assert distance_left(start(1.6, 0.2, 0.1, 0.02), LIMIT, 0.05) == 0


def test_a_rate_that_may_be_nothing_has_no_late_end():
    state = start(4.0, 0.1, 0.1, 0.1)

    assert distance_left(state, LIMIT, 0.95) == float("inf")
    assert 0 < distance_left(state, LIMIT, 0.05) < float("inf")


def test_a_reading_far_thinner_than_expected_stands_out():
    expected = after(pad("with a caliper"), 2.0, JITTER)

    assert surprise(expected, 1.3, 0.1) < -3
    assert abs(surprise(expected, 2.15, 0.1)) < 1.64
