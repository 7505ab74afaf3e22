"""Conformity: what must hold for every reading and every limit."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from inspector.quantities.conformity import chance_beyond, guard_band, outcome

VALUES = st.floats(-100, 100)
SPREADS = st.floats(1e-6, 50)
RATIOS = st.floats(0.001, 0.5)


@given(VALUES, VALUES, SPREADS, VALUES)
def test_a_thicker_pad_is_never_more_likely_beyond(value, other, spread, limit):
    thin, thick = sorted((value, other))

    assert chance_beyond(thick, spread, at_least=limit) <= chance_beyond(thin, spread, at_least=limit)


@given(VALUES, SPREADS, VALUES)
def test_both_sides_of_one_limit_add_up_to_certainty(value, spread, limit):
    under, over = chance_beyond(value, spread, at_least=limit), chance_beyond(value, spread, at_most=limit)

    assert under + over == pytest.approx(1)


@given(VALUES, st.floats(0, 50), VALUES, st.floats(0, 50))
def test_a_chance_is_a_chance(value, spread, low, width):
    assert 0 <= chance_beyond(value, spread, at_least=low, at_most=low + width) <= 1


@given(VALUES, VALUES)
def test_an_exact_value_is_a_step_and_the_limit_itself_is_within(value, limit):
    assert chance_beyond(value, 0.0, at_least=limit) == (1 if value < limit else 0)
    assert chance_beyond(limit, 0.0, at_least=limit) == 0
    assert chance_beyond(limit, 0.0, at_most=limit) == 0


@given(VALUES, VALUES)
def test_a_very_good_tool_comes_near_the_step(value, limit):
    assume(abs(value - limit) > 1e-3)

    assert chance_beyond(value, 1e-5, at_least=limit) == pytest.approx(chance_beyond(value, 0.0, at_least=limit))


@given(VALUES, SPREADS, VALUES, RATIOS)
def test_within_begins_where_the_guard_band_ends(value, spread, limit, ratio):
    band = guard_band(spread, ratio)
    assume(abs(value - limit - band) > 1e-6)

    assert (outcome(value, spread, at_least=limit, act_over_loss=ratio) == "within") == (value > limit + band)


@given(VALUES, SPREADS, VALUES, RATIOS)
def test_a_reading_on_the_bad_side_is_never_within(value, spread, limit, ratio):
    assume(limit - value > 1e-9 * spread)

    assert outcome(value, spread, at_least=limit, act_over_loss=ratio) != "within"


@given(VALUES, VALUES, RATIOS)
def test_an_exact_value_always_can_tell(value, limit, ratio):
    assert outcome(value, 0.0, at_least=limit, act_over_loss=ratio) == ("beyond" if value < limit else "within")


@given(st.floats(0.01, 0.99), SPREADS, SPREADS, VALUES)
def test_a_poorer_tool_never_turns_cannot_tell_into_within(share_of_band, spread, other, limit):
    good, poor = sorted((spread, other))
    value = limit + share_of_band * guard_band(good, 0.05)
    assume(outcome(value, good, at_least=limit) == "cannot tell")

    assert outcome(value, poor, at_least=limit) == "cannot tell"


@given(st.floats(0, 50), RATIOS, RATIOS)
def test_a_costlier_mistake_wants_a_wider_band(spread, ratio, other):
    dear, cheap = sorted((ratio, other))

    assert guard_band(spread, dear) >= guard_band(spread, cheap) >= 0


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: chance_beyond(1.0, 0.1), "A limit is needed"),
        (lambda: chance_beyond(1.0, -0.1, at_least=1.5), "uncertainty must not be negative"),
        (lambda: chance_beyond(float("nan"), 0.1, at_least=1.5), "value must be a finite number"),
        (lambda: chance_beyond(1.0, 0.1, at_least=float("nan")), "at_least must be a finite number"),
        (lambda: chance_beyond(1.0, 0.1, at_least=3.0, at_most=2.0), "must not be negative"),
        (lambda: guard_band(0.1, 0.0), "between 0 and 1"),
        (lambda: guard_band(0.1, 1.0), "between 0 and 1"),
        (lambda: outcome(1.0, 0.1, at_least=1.5, act_over_loss=0.0), "above 0 and up to 0.5"),
        (lambda: outcome(1.0, 0.1, at_least=1.5, act_over_loss=0.6), "above 0 and up to 0.5"),
        (lambda: outcome(1.0, 0.1, at_least=1.5, act_over_loss=float("nan")), "above 0 and up to 0.5"),
    ],
)
def test_nonsense_is_refused_in_words(call, words):
    with pytest.raises(ValueError, match=words):
        call()
