"""JCGM 106:2012 and its guard bands. Values seen second hand unless a line says otherwise."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats
from scipy.integrate import quad

from inspector.quantities.conformity import chance_beyond, guard_band, outcome


@given(st.floats(-10, 10), st.floats(0.01, 5), st.floats(-5, 5), st.floats(0, 5))
def test_chance_beyond_equals_the_normal_distribution_of_a_library(value, uncertainty, low, width):
    true_value = stats.norm(value, uncertainty)
    outside = true_value.cdf(low) + true_value.sf(low + width)

    assert chance_beyond(value, uncertainty, at_least=low, at_most=low + width) == pytest.approx(
        outside, abs=1e-12
    )
    assert guard_band(uncertainty, 0.05) == pytest.approx(uncertainty * stats.norm.isf(0.05), rel=1e-9)


def test_oil_of_grade_40_is_in_its_band_with_two_chances_in_three():
    # 7.4: reading 13.6 mm2/s, u = 1.8, band 12.5 to 16.3; printed 0.66
    inside = 1 - chance_beyond(13.6, 1.8, at_least=12.5, at_most=16.3)

    assert inside == pytest.approx(0.66, abs=0.005)
    assert inside == pytest.approx(0.662630, abs=5e-7)


@pytest.mark.parametrize(("chance", "z"), [(0.80, 0.84), (0.90, 1.28), (0.95, 1.64), (0.99, 2.33), (0.999, 3.09)])
def test_one_sided_table(chance, z):
    # the table of coverage for one limit, from memory; checked here against the same distribution
    assert guard_band(1.0, 1 - chance) == pytest.approx(z, abs=0.006)


@pytest.mark.parametrize(
    ("ratio", "z"), [(0.5, 0), (0.2, 0.842), (0.1, 1.282), (0.05, 1.645), (0.02, 2.054), (0.01, 2.326)]
)
def test_guard_band_from_cost_of_acting_over_loss(ratio, z):
    # calculated: act when chance x loss exceeds the cost
    assert guard_band(1.0, ratio) == pytest.approx(z, abs=5e-4)


# 9.5.4, ball bearings: true run-out is a gamma variable, shape 4, scale 1/4 micrometre; limit 2 micrometre
BALL_BEARING = stats.gamma(4, scale=0.25)
LIMIT = 2.0
MEASURING = 0.25


def chance_rejected(true_value: float, accepted_up_to: float) -> float:
    """A reading falls round the true value as the true value round a reading: the same function serves."""
    return chance_beyond(true_value, MEASURING, at_most=accepted_up_to)


def test_ball_bearings_without_inspection():
    assert BALL_BEARING.sf(LIMIT) == pytest.approx(0.042380, abs=5e-7)


@pytest.mark.parametrize(
    ("band", "consumer", "producer"), [(0.0, 0.008019, 0.017445), (0.328171, 0.001000, 0.0755)]
)
def test_ball_bearings_with_inspection(band, consumer, producer):
    # the producer's figures are calculated here, the consumer's are published
    def pdf(true_value):
        return BALL_BEARING.pdf(true_value)

    bad_let_through = quad(lambda x: pdf(x) * (1 - chance_rejected(x, LIMIT - band)), LIMIT, 8)[0]
    good_sent_back = quad(lambda x: pdf(x) * chance_rejected(x, LIMIT - band), 0, LIMIT)[0]

    assert bad_let_through == pytest.approx(consumer, abs=1e-6)
    assert good_sent_back == pytest.approx(producer, abs=6e-5)


@pytest.mark.parametrize(
    ("acceptance", "consumer", "producer"), [(0.20, 0.01894, 0.03721), (0.12, 0.000469, 0.24767)]
)
def test_resistors(acceptance, consumer, producer):
    # 1500 ohm resistors: spread 0.12, measured to 0.04, tolerance 0.2; inputs from memory, results
    # calculated
    made = stats.norm(0, 0.12)

    def accepted(true_value):
        return 1 - chance_beyond(true_value, 0.04, at_least=-acceptance, at_most=acceptance)

    bad_let_through = 2 * quad(lambda x: made.pdf(x) * accepted(x), 0.2, 0.8)[0]
    good_sent_back = quad(lambda x: made.pdf(x) * (1 - accepted(x)), -0.2, 0.2)[0]

    assert made.cdf(0.2) - made.cdf(-0.2) == pytest.approx(0.9044, abs=5e-5)
    assert bad_let_through == pytest.approx(consumer, abs=6e-6)
    assert good_sent_back == pytest.approx(producer, abs=6e-6)


@pytest.mark.parametrize(
    ("reliability", "percent"),
    [
        (0.60, 4.838603),
        (0.70, 3.922341),
        (0.80, 2.855830),
        (0.90, 1.599953),
        (0.95, 0.871009),
        (0.99, 0.199917),
    ],
)
def test_false_accepts_at_a_ratio_of_four(reliability, percent):
    # metrology practice RP-19 (draft): limits of 1 either way, test spread a quarter of the process spread,
    # which follows from the share found in tolerance
    process = 1 / stats.norm.ppf((1 + reliability) / 2)
    test = process / 4

    def accepted(true_value):
        return 1 - chance_beyond(true_value, test, at_least=-1.0, at_most=1.0)

    risk = 2 * quad(lambda x: stats.norm.pdf(x, 0, process) * accepted(x), 1, 1 + 8 * process)[0]

    assert 100 * risk == pytest.approx(percent, abs=1e-4)


@pytest.mark.parametrize(
    ("reading", "chance_within", "words"),
    [
        (1.75, 0.9938, "within"),
        (1.60, 0.8413, "cannot tell"),
        (1.45, 0.3085, "beyond"),
        (1.25, 0.0062, "beyond"),
    ],
)
def test_pad_of_one_and_a_half_millimetres_four_ways(reading, chance_within, words):
    # limit 1.5 mm, u = 0.1 mm; calculated
    assert 1 - chance_beyond(reading, 0.1, at_least=1.5) == pytest.approx(chance_within, abs=5e-5)
    assert outcome(reading, 0.1, at_least=1.5, act_over_loss=0.05) == words


def test_guard_band_of_the_old_expanded_uncertainty_lets_two_in_a_hundred_pass():
    # ILAC-G8:09/2019: band of U = 2 u gives less than 2.5 % false accepts; no band up to 50 %
    assert chance_beyond(0.2, 0.1, at_least=0.0) < 0.025
    assert chance_beyond(0.0, 0.1, at_least=0.0) == pytest.approx(0.5)
