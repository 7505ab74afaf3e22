"""Value of information and costs: what must hold for every price."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities.costs import Estimate, quantiles, rounded_outward
from inspector.quantities.value_of_information import look_worth, loss_now

CHANCE = st.floats(0, 1)
MONEY = st.floats(0, 10_000)


def perfect(bad: float, loss: float, cost: float) -> float:
    """Expected value of perfect information: what is lost now, less what is lost when it is known."""
    return loss_now(bad, loss, cost) - bad * min(loss, cost)


@st.composite
def estimates(draw) -> Estimate:
    return Estimate(*sorted((draw(MONEY), draw(MONEY), draw(MONEY))))


@given(CHANCE, MONEY, MONEY, CHANCE, CHANCE)
def test_a_look_is_worth_nothing_at_least_and_never_more_than_a_perfect_one(bad, loss, cost, seen, passed):
    worth = look_worth(bad, loss, cost, seen, passed)

    assert 0 <= worth <= perfect(bad, loss, cost) + 1e-6
    assert look_worth(bad, loss, cost, 1.0, 1.0) == pytest.approx(perfect(bad, loss, cost), abs=1e-6)


@given(CHANCE, MONEY, MONEY, CHANCE)
def test_a_coin_is_worth_nothing(bad, loss, cost, heads):
    assert look_worth(bad, loss, cost, heads, 1 - heads) == pytest.approx(0, abs=1e-6)


@given(CHANCE, MONEY)
def test_an_answer_that_cannot_change_the_action_is_worth_nothing(bad, cost):
    # leaving the bad part costs less than putting it right
    assert look_worth(bad, cost / 2, cost, 1.0, 1.0) == pytest.approx(0, abs=1e-9)
    assert look_worth(1.0, 1000.0, 80.0, 1.0, 1.0) == 0
    assert look_worth(0.0, 1000.0, 80.0, 1.0, 1.0) == 0


@given(CHANCE, MONEY, MONEY, CHANCE, CHANCE, CHANCE)
def test_sharper_eyes_are_never_worth_less(bad, loss, cost, seen, other, passed):
    dull, sharp = sorted((seen, other))
    low = max(dull, 1 - passed)  # below, the answer means its opposite
    high = max(sharp, 1 - passed)

    assert look_worth(bad, loss, cost, low, passed) <= look_worth(bad, loss, cost, high, passed) + 1e-6


@given(st.lists(estimates(), min_size=1, max_size=4))
def test_drawn_totals_rise_and_stay_between_the_ends(jobs):
    found = quantiles(jobs, (0.1, 0.5, 0.9), draws=500)

    assert found == sorted(found)
    assert sum(job.low for job in jobs) - 1e-6 <= found[0]
    assert found[-1] <= sum(job.high for job in jobs) + 1e-6


def test_jobs_that_are_never_needed_cost_nothing():
    assert quantiles([Estimate(10, 20, 30)], chances=[0.0]) == [0, 0, 0]


@given(st.floats(0, 1e6), st.floats(0, 1e6))
def test_rounding_outward_never_loses_anything(one, other):
    low, high = sorted((one, other))
    rounded_low, rounded_high = rounded_outward(low, high)

    assert rounded_low <= low * (1 + 1e-8) + 1e-8
    assert rounded_high >= high * (1 - 1e-8) - 1e-8
    assert rounded_low >= 0.9 * low - 1e-8
    assert rounded_high <= 1.1 * high + 1e-8
