"""Wear: what must hold for every history."""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

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

THICKNESS = st.floats(0.5, 10)
SPREAD = st.floats(0.01, 1)
RATE = st.floats(0.01, 1)
DISTANCE = st.floats(0, 30)
JITTER = st.floats(0, 0.05)
SHARE = st.floats(0.01, 0.99)


@st.composite
def states(draw) -> WearState[float]:
    state = start(draw(THICKNESS), draw(SPREAD), draw(RATE), draw(RATE) / 2)
    for _ in range(draw(st.integers(0, 3))):
        state = look(after(state, draw(DISTANCE), draw(JITTER)), draw(THICKNESS), draw(SPREAD))
    return state


@given(states(), SHARE, JITTER)
def test_the_chance_at_the_distance_left_is_the_chance_asked_for(state, share, jitter):
    distance = distance_left(state, 0.4, share, jitter)
    assume(0 < distance < 1e6)

    assert chance_at_limit(state, 0.4, distance, jitter) == pytest.approx(share, abs=1e-6)


@given(states(), SHARE, st.floats(-0.5, 0.5), JITTER)
def test_nothing_is_left_exactly_when_the_chance_is_there_today(state, share, off, jitter):
    limit = max(0.0, state.thickness + off)
    today = chance_at_limit(state, limit, 0.0, jitter)
    assume(abs(today - share) > 1e-6)

    assert (distance_left(state, limit, share, jitter) == 0) == (today >= share)


@given(states(), SHARE, JITTER)
def test_no_end_means_no_distance_reaches_the_chance(state, share, jitter):
    assume(distance_left(state, 0.4, share, jitter) == math.inf)

    for distance in (0.0, 1.0, 10.0, 100.0, 1e4, 1e7):
        assert chance_at_limit(state, 0.4, distance, jitter) < share + 1e-6


@given(states(), SHARE, SHARE, JITTER)
def test_a_higher_chance_lies_no_nearer(state, share, other, jitter):
    less, more = sorted((share, other))

    assert distance_left(state, 0.4, less, jitter) <= distance_left(state, 0.4, more, jitter) * (1 + 1e-9) + 1e-9


@given(THICKNESS, SPREAD, RATE, SHARE)
def test_a_stricter_limit_comes_no_later(thickness, spread, rate, share):
    state = start(thickness, spread, rate, rate / 10)

    assert distance_left(state, 0.4, share) >= distance_left(state, 0.3 + 0.2, share) * (1 - 1e-9)


@given(states(), DISTANCE, DISTANCE, JITTER)
def test_two_ways_in_a_row_are_one_way(state, first, second, jitter):
    apart, at_once = after(after(state, first, jitter), second, jitter), after(state, first + second, jitter)

    for name in ("thickness", "rate", "thickness_variance", "covariance", "rate_variance"):
        assert getattr(apart, name) == pytest.approx(getattr(at_once, name), rel=1e-9, abs=1e-9)


@given(states(), THICKNESS, SPREAD)
def test_a_reading_never_adds_doubt(state, reading, spread):
    seen = look(state, reading, spread)

    assert seen.thickness_variance <= state.thickness_variance * (1 + 1e-12)
    assert seen.rate_variance <= state.rate_variance * (1 + 1e-12)
    assert seen.thickness_variance >= 0
    assert seen.rate_variance >= -1e-12
    assert seen.covariance**2 <= seen.thickness_variance * seen.rate_variance + 1e-12


@given(states(), THICKNESS, SPREAD)
def test_the_estimate_lies_between_expectation_and_reading(state, reading, spread):
    seen = look(state, reading, spread)

    low, high = sorted((state.thickness, reading))
    assert low - 1e-9 <= seen.thickness <= high + 1e-9


@given(states(), SPREAD)
def test_the_expected_reading_is_no_surprise(state, spread):
    assume(state.thickness >= 0)

    assert surprise(state, state.thickness, spread) == 0


@given(THICKNESS, RATE)
def test_a_part_known_exactly_has_one_distance(thickness, rate):
    state = start(thickness, 0.0, rate, 0.0)
    for share in (0.05, 0.5, 0.95):
        assert distance_left(state, 0.3, share) == pytest.approx((thickness - 0.3) / rate, rel=1e-6)


@given(st.floats(0.01, 10), st.floats(1.05, 10))
def test_a_rate_known_to_a_factor_lies_within_it(median, factor):
    mean, sd = prior_rate(median, factor)

    assert median < mean < median * factor
    assert sd > 0


@given(THICKNESS, SPREAD, THICKNESS, SPREAD, st.floats(0.1, 30), RATE)
def test_three_stories_share_one_whole(first, u_first, second, u_second, distance, rate):
    readings = Readings(first, u_first, second, u_second, distance)
    stories = which_story(readings, rate=rate, rate_sd=rate / 3, new=6.0, new_sd=0.2)
    chances = (stories.same_part, stories.replaced, stories.misread)

    assert sum(chances) == pytest.approx(1)
    assert all(0 <= chance <= 1 for chance in chances)


@pytest.mark.parametrize(
    "call",
    [
        lambda: start(-1.0, 0.1, 0.3, 0.1),
        lambda: start(5.0, -0.1, 0.3, 0.1),
        lambda: start(5.0, 0.1, -0.3, 0.1),
        lambda: after(start(5.0, 0.1, 0.3, 0.1), -1.0),
        lambda: look(start(5.0, 0.0, 0.3, 0.1), 4.0, 0.0),
        lambda: look(start(5.0, 0.1, 0.3, 0.1), -4.0, 0.1),
        lambda: distance_left(start(5.0, 0.1, 0.3, 0.1), 1.5, 0.0),
        lambda: distance_left(start(5.0, 0.1, 0.3, 0.1), -1.5, 0.5),
        lambda: chance_at_limit(start(5.0, 0.1, 0.3, 0.1), 1.5, -1.0),
        lambda: prior_rate(0.25, 1.0),
        lambda: which_story(Readings(3.4, 0.3, 3.6, 0.1, 0.0), rate=0.3, rate_sd=0.1, new=5, new_sd=0.2),
        lambda: which_story(Readings(3.4, 0.3, 3.6, 0.0, 4.0), rate=0.3, rate_sd=0.1, new=5, new_sd=0.2),
        lambda: which_story(Readings(3.4, 0.3, 3.6, 0.1, 4.0), rate=0.0, rate_sd=0.1, new=5, new_sd=0.2),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match="must"):
        call()
