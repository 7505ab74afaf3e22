"""What a look is worth before it is taken: how much it lowers the expected loss. Knows no part, no rule.

Two actions on one doubtful part: put it right at `cost`, or leave it and lose `loss` if it is bad, which it
is with the chance `bad`. Money, or any other one unit. A look whose answer changes no action is worth
nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from inspector.quantities.arrays import Number, as_given, between, not_negative, positive, where


def loss_now(bad: Number, loss: Number | float, cost: Number | float) -> Number:
    """Expected loss when the better of both actions is taken without a look.

    Raises ValueError for a chance outside 0 to 1 and for negative money.
    """
    chance, lost, spent = _checked(bad, loss, cost)
    return as_given(_smaller(chance * lost, spent), bad)


def perfect_look(bad: Number, loss: Number | float, cost: Number | float) -> Number:
    """Worth of a look that never errs; no look at this part can be worth more. Raises as `loss_now`.

    Source: expected value of perfect information.
    """
    chance, lost, spent = _checked(bad, loss, cost)
    return as_given(_smaller(chance * lost, spent) - chance * _smaller(lost, spent), bad)


def look_worth(
    bad: Number,
    loss: Number | float,
    cost: Number | float,
    sensitivity: Number | float,
    specificity: Number | float,
) -> Number:
    """Worth of a look that finds a bad part with `sensitivity` and passes a good one with `specificity`.

    Never negative, never more than `perfect_look`. Raises ValueError for chances outside 0 to 1 and
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
    gained = _smaller(chance * lost, spent) - left
    return as_given(where(gained > 0, gained, 0.0), bad)


def after_look(bad: Number, sensitivity: Number | float, specificity: Number | float, *, seen_bad: bool) -> Number:
    """Chance that the part is bad after one look. A second look by the same eyes is no new evidence.

    Raises ValueError outside 0 to 1 and for an answer that could not come. Source: Bayes' rule.
    """
    chance = between("The chance of being bad", bad, 0.0, 1.0)
    seen = between("The sensitivity", sensitivity, 0.0, 1.0)
    passed = between("The specificity", specificity, 0.0, 1.0)
    if_bad, if_good = (seen, 1 - passed) if seen_bad else (1 - seen, passed)
    total = positive("The chance of this answer", chance * if_bad + (1 - chance) * if_good)
    return as_given(chance * if_bad / total, bad)


def joint_looks(bad: Sequence[float], loss: float, cost: float) -> list[float]:
    """Worth of a perfect look at each of several independent parts, when one decision hangs on all of them.

    `loss` is lost once if any is bad and the machine is ridden or bought; `cost` is what the other choice
    costs. Raises ValueError without a part and for nonsense. Source: enumeration of the two answers.
    """
    if not bad:
        raise ValueError("At least one part is needed.")
    chances = [float(between("A chance of being bad", chance, 0.0, 1.0)) for chance in bad]
    now = loss_now(_any(chances), loss, cost)
    worth = []
    for place, chance in enumerate(chances):
        others = _any(chances[:place] + chances[place + 1 :])
        left = chance * loss_now(1.0, loss, cost) + (1 - chance) * loss_now(others, loss, cost)
        worth.append(max(0.0, now - left))
    return worth


def order_of_looks(worth: Sequence[float], expense: Sequence[float], minutes: Sequence[float]) -> list[int]:
    """Places of the looks that pay, best worth a minute first: (worth - expense) / minutes.

    Looks that do not pay are left out; ties keep their order. Raises ValueError for lists of unequal
    length, minutes that are not positive, and negative figures.
    """
    gains = []
    for value, price, time in zip(worth, expense, minutes, strict=True):
        net = not_negative("The worth", value) - not_negative("The expense", price)
        gains.append(net / positive("The minutes", time))
    return sorted((place for place, gain in enumerate(gains) if gain > 0), key=lambda place: -gains[place])


def _checked(bad: Any, loss: Any, cost: Any) -> tuple[Any, Any, Any]:
    chance = between("The chance of being bad", bad, 0.0, 1.0)
    return chance, not_negative("The loss", loss), not_negative("The cost", cost)


def _smaller(one: Any, other: Any) -> Any:
    return where(one < other, one, other)


def _any(chances: Sequence[float]) -> float:
    none = 1.0
    for chance in chances:
        none *= 1 - chance
    return 1 - none
