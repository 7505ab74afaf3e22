"""Value of information: the used-car buyer (published 1962; textbook of 1990, p. 373), looks of our own."""

import pytest

from inspector.quantities.value_of_information import look_worth, loss_now, signals_worth

# A good car is worth 60, a lemon -100, and one in five is a lemon. Not buying: 60 are forgone for certain.
LEMON, SPOILT, FORGONE = 0.2, 160.0, 60.0
BUY_UNTESTED = FORGONE - loss_now(LEMON, SPOILT, FORGONE)


def test_buying_untested():
    assert pytest.approx(28) == BUY_UNTESTED


def test_the_stranger_who_knows_is_too_dear_at_25():
    assert look_worth(LEMON, SPOILT, FORGONE, 1.0, 1.0) == pytest.approx(20)


def test_the_first_test_costs_9():
    # passes nine good cars in ten and four lemons in ten
    gross = BUY_UNTESTED + look_worth(LEMON, SPOILT, FORGONE, sensitivity=0.6, specificity=0.9)

    assert gross == pytest.approx(35.2)
    assert gross - 9 == pytest.approx(26.2)


def test_both_tests_cost_13():
    # the second passes 8/9 of good cars and 1/3 of lemons after a pass, all and 4/9 after a failure
    signals = [
        (0.4 * 1 / 3, 0.9 * 8 / 9),
        (0.4 * 2 / 3, 0.9 * 1 / 9),
        (0.6 * 4 / 9, 0.1 * 1.0),
        (0.6 * 5 / 9, 0.1 * 0.0),
    ]
    gross = BUY_UNTESTED + signals_worth(LEMON, SPOILT, FORGONE, signals)

    assert gross == pytest.approx(35.734, abs=0.002)
    assert gross - 13 == pytest.approx(22.73, abs=0.005)
    assert gross - 13 < 26.2 < 28  # so no test is best


@pytest.mark.parametrize(
    ("bad", "loss", "cost", "sensitivity", "specificity", "worth", "perfect"),
    [
        (0.30, 2000, 60, 0.95, 0.90, 8.7, 42),
        (0.10, 3000, 200, 0.98, 0.98, 170.8, 180),
        (0.05, 800, 150, 0.70, 0.94, 14.2, 32.5),
        (0.02, 800, 150, 0.70, 0.94, 0.28, 13),
    ],
)
def test_four_looks_at_a_motorcycle(bad, loss, cost, sensitivity, specificity, worth, perfect):
    # calculated: fluid age, tyre date, spline, belt
    assert look_worth(bad, loss, cost, sensitivity, specificity) == pytest.approx(worth)
    assert look_worth(bad, loss, cost, 1.0, 1.0) == pytest.approx(perfect)


@pytest.mark.parametrize(
    "call",
    [
        lambda: loss_now(1.1, 100, 10),
        lambda: loss_now(0.5, -100, 10),
        lambda: look_worth(0.5, 100, 10, 1.2, 0.9),
        lambda: signals_worth(0.5, 100, 10, [(0.5, 0.5)]),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match="must"):
        call()
