"""Value of information and costs: what must hold for every price."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities.costs import (
    Estimate,
    pert,
    pert_beta,
    quantiles,
    rounded_outward,
    total,
    triangular,
)
from inspector.quantities.value_of_information import (
    after_look,
    joint_looks,
    look_worth,
    loss_now,
    order_of_looks,
    perfect_look,
)

CHANCE = st.floats(0, 1)
MONEY = st.floats(0, 10_000)


@st.composite
def estimates(draw) -> Estimate:
    return Estimate(*sorted((draw(MONEY), draw(MONEY), draw(MONEY))))


@given(CHANCE, MONEY, MONEY, CHANCE, CHANCE)
def test_a_look_is_worth_nothing_at_least_and_never_more_than_a_perfect_one(bad, loss, cost, seen, passed):
    worth = look_worth(bad, loss, cost, seen, passed)

    assert 0 <= worth <= perfect_look(bad, loss, cost) + 1e-6


@given(CHANCE, MONEY, MONEY)
def test_a_look_that_never_errs_is_the_perfect_one(bad, loss, cost):
    assert look_worth(bad, loss, cost, 1.0, 1.0) == pytest.approx(perfect_look(bad, loss, cost), abs=1e-6)


@given(CHANCE, MONEY, MONEY, CHANCE)
def test_a_coin_is_worth_nothing(bad, loss, cost, heads):
    assert look_worth(bad, loss, cost, heads, 1 - heads) == pytest.approx(0, abs=1e-6)


@given(CHANCE, MONEY)
def test_an_answer_that_cannot_change_the_action_is_worth_nothing(bad, cost):
    # leaving the bad part costs less than putting it right
    assert perfect_look(bad, cost / 2, cost) == pytest.approx(0, abs=1e-9)
    assert perfect_look(1.0, 1000.0, 80.0) == 0
    assert perfect_look(0.0, 1000.0, 80.0) == 0


@given(CHANCE, MONEY, MONEY, CHANCE, CHANCE, CHANCE)
def test_sharper_eyes_are_never_worth_less(bad, loss, cost, seen, other, passed):
    dull, sharp = sorted((seen, other))
    low = max(dull, 1 - passed)  # below, the answer means its opposite
    high = max(sharp, 1 - passed)

    assert look_worth(bad, loss, cost, low, passed) <= look_worth(bad, loss, cost, high, passed) + 1e-6


@given(st.floats(0.001, 0.999), st.floats(0.001, 0.999), st.floats(0.001, 0.999))
def test_what_was_believed_is_the_mean_of_what_will_be(bad, seen, passed):
    says_bad = bad * seen + (1 - bad) * (1 - passed)
    mean = says_bad * after_look(bad, seen, passed, seen_bad=True)
    mean += (1 - says_bad) * after_look(bad, seen, passed, seen_bad=False)

    assert mean == pytest.approx(bad)


@given(CHANCE, MONEY, MONEY)
def test_one_part_alone_is_the_single_decision(bad, loss, cost):
    assert joint_looks([bad], loss, cost) == pytest.approx([perfect_look(bad, loss, cost)], abs=1e-6)


@given(st.lists(CHANCE, min_size=1, max_size=6), MONEY, MONEY)
def test_no_joint_look_is_worth_more_than_what_is_at_stake(bad, loss, cost):
    none_bad = 1.0
    for chance in bad:
        none_bad *= 1 - chance
    stake = loss_now(min(1.0, max(0.0, 1 - none_bad)), loss, cost)

    assert all(0 <= worth <= stake + 1e-6 for worth in joint_looks(bad, loss, cost))


@given(st.lists(st.tuples(MONEY, MONEY, st.floats(0.1, 100)), max_size=8))
def test_looks_that_do_not_pay_are_left_out_and_the_rest_falls(rows):
    worth, expense, minutes = ([row[i] for row in rows] for i in range(3))
    order = order_of_looks(worth, expense, minutes)
    rates = [(worth[i] - expense[i]) / minutes[i] for i in order]

    assert rates == sorted(rates, reverse=True)
    assert set(order) == {i for i in range(len(rows)) if worth[i] > expense[i]}


@given(estimates())
def test_every_mean_lies_between_the_ends(job):
    for way in (triangular, pert, pert_beta):
        spread = way(job)
        assert job.low - 1e-6 <= spread.mean <= job.high + 1e-6
        assert 0 <= spread.sd <= job.high - job.low


@given(st.lists(estimates(), max_size=5), CHANCE, CHANCE)
def test_shared_prices_widen_the_sum_and_keep_its_mean(jobs, correlation, other):
    less, more = sorted((correlation, other))
    spreads = [triangular(job) for job in jobs]

    assert total(spreads, correlation=less).sd <= total(spreads, correlation=more).sd * (1 + 1e-9)
    assert total(spreads, correlation=less).mean == pytest.approx(sum(one.mean for one in spreads))


@given(st.lists(estimates(), min_size=1, max_size=4))
def test_drawn_totals_rise_and_stay_between_the_ends(jobs):
    found = quantiles(jobs, (0.1, 0.5, 0.9), draws=500)

    assert found == sorted(found)
    assert sum(job.low for job in jobs) - 1e-6 <= found[0]
    assert found[-1] <= sum(job.high for job in jobs) + 1e-6


def test_jobs_that_are_never_needed_cost_nothing():
    assert quantiles([Estimate(10, 20, 30)], chances=[0.0]) == [0, 0, 0]
    assert total([triangular(Estimate(10, 20, 30))], [0.0]).mean == 0


@given(st.floats(0, 1e6), st.floats(0, 1e6))
def test_rounding_outward_never_loses_anything(one, other):
    low, high = sorted((one, other))
    rounded_low, rounded_high = rounded_outward(low, high)

    assert rounded_low <= low * (1 + 1e-8) + 1e-8
    assert rounded_high >= high * (1 - 1e-8) - 1e-8
    assert rounded_low >= 0.9 * low - 1e-8
    assert rounded_high <= 1.1 * high + 1e-8
