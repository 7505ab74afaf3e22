"""What a look is worth before it is taken: how much it lowers the expected loss. Knows no part, no rule.

Two actions on one doubtful part: put it right at `cost`, or leave it and lose `loss` if it is bad, which it
is with the chance `bad`. Money, or any other one unit. A look whose answer changes no action is worth
nothing.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from inspector.quantities.arrays import Number, as_given, between, not_negative, where


def loss_now(bad: Number, loss: Number | float, cost: Number | float) -> Number:
    """Expected loss when the better of both actions is taken without a look.

    Raises ValueError for a chance outside 0 to 1 and for negative money.
    """
    chance, lost, spent = _checked(bad, loss, cost)
    return as_given(_smaller(chance * lost, spent), bad)


def look_worth(
    bad: Number,
    loss: Number | float,
    cost: Number | float,
    sensitivity: Number | float,
    specificity: Number | float,
) -> Number:
    """Worth of a look that finds a bad part with `sensitivity` and passes a good one with `specificity`.

    Never negative, never more than a look that never errs. Raises ValueError for chances outside 0 to 1 and
    negative money. Source: expected value of sample information.
    """
    seen = between("The sensitivity", sensitivity, 0.0, 1.0)
    passed = between("The specificity", specificity, 0.0, 1.0)
    return signals_worth(bad, loss, cost, [(seen, 1 - passed), (1 - seen, passed)])


def signals_worth(
    bad: Number, loss: Number | float, cost: Number | float, signals: Iterable[tuple[Any, Any]]
) -> Number:
    """Worth of a look with any number of answers, each with its chance on a bad and on a good part.

    The chances of all answers add up to one on either. Raises ValueError when they do not, and for
    nonsense.
    """
    chance, lost, spent = _checked(bad, loss, cost)
    left: Any = 0.0
    of_bad: Any = 0.0
    of_good: Any = 0.0
    for if_bad, if_good in signals:
        when_bad, when_good = between("A chance", if_bad, 0.0, 1.0), between("A chance", if_good, 0.0, 1.0)
        of_bad, of_good = of_bad + when_bad, of_good + when_good
        both = chance * when_bad + (1 - chance) * when_good
        left = left + _smaller(chance * when_bad * lost, both * spent)
    for total in (of_bad, of_good):
        between("The sum of the chances of all answers", total, 1 - 1e-9, 1 + 1e-9)
    gained = loss_now(bad, loss, cost) - left
    return as_given(where(gained > 0, gained, 0.0), bad)


def _checked(bad: Any, loss: Any, cost: Any) -> tuple[Any, Any, Any]:
    chance = between("The chance of being bad", bad, 0.0, 1.0)
    return chance, not_negative("The loss", loss), not_negative("The cost", cost)


def _smaller(one: Any, other: Any) -> Any:
    return where(one < other, one, other)
