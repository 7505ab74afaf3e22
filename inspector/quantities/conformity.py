"""Conformity of one reading to one limit, given how well the reading was taken. Knows no part, no rule.

The true value is taken as normally spread round the reading (JCGM 106:2012, clause 7; seen second hand). A
limit itself is still within. Arrays broadcast. All lengths, torques, ... of one call are in one unit.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

from inspector.quantities.arrays import (
    Number,
    as_given,
    finite,
    inside,
    is_number,
    not_negative,
    phi,
    phi_inverse,
    where,
)

if TYPE_CHECKING:
    from typing import Any

Outcome = Literal["within", "beyond", "cannot tell"]
_ROUNDING = 1e-9  # a reading right at its limit stays there when its unit is converted


def chance_beyond(
    value: Number,
    uncertainty: Number | float,
    at_least: Number | float | None = None,
    at_most: Number | float | None = None,
) -> Number:
    """Chance that the true value is beyond its limit: under `at_least` or over `at_most`.

    `uncertainty` is one standard uncertainty in the unit of the value. Zero means an exact value: the
    answer is then 0 or 1, and a value that equals its limit is within (0). Raises ValueError without any
    limit, with limits in the wrong order, with a negative uncertainty, and for numbers that are not finite.
    Source: JCGM 106:2012, clause 7, normal case.
    """
    value = finite("The value", value)
    spread = not_negative("The uncertainty", uncertainty)
    if at_least is None and at_most is None:
        raise ValueError("A limit is needed: at_least, at_most or both.")
    if at_least is not None and at_most is not None:
        not_negative("at_most minus at_least", at_most - at_least)
    chance: Any = 0.0
    if at_least is not None:
        chance = chance + _chance_over(finite("at_least", at_least) - value, spread)
    if at_most is not None:
        chance = chance + _chance_over(value - finite("at_most", at_most), spread)
    return as_given(where(chance > 1.0, 1.0, chance), value)


def _chance_over(excess: Any, spread: Any) -> Any:
    exact = spread == 0
    return where(exact, where(excess > 0, 1.0, 0.0), phi(excess / where(exact, 1.0, spread)))


def guard_band(uncertainty: Number, act_over_loss: Number | float) -> Number:
    """How far inside the limit a reading must lie before it is taken as within.

    `act_over_loss` is what it costs to act divided by what is lost when a bad part is left (strictly
    between 0 and 1): the chance of being beyond that is borne. Half gives no band; more than half gives a
    negative one. Same unit as the uncertainty. Raises ValueError outside the domain. Source: cost-optimal
    decision, act when chance x loss > cost of acting; calculated here.
    """
    spread = not_negative("The uncertainty", uncertainty)
    ratio = inside("The cost of acting over the loss", act_over_loss, 0.0, 1.0)
    return as_given(spread * phi_inverse(1.0 - ratio), uncertainty)


def outcome(
    value: float,
    uncertainty: float,
    *,
    at_least: float | None = None,
    at_most: float | None = None,
    act_over_loss: float = 0.05,
) -> Outcome:
    """Say whether one reading is within its limit, beyond it, or cannot tell.

    Within: the chance of being beyond is at most `act_over_loss` (more than 0, at most 0.5). Beyond: that
    chance is more than one half: a reading right at its limit cannot tell. One reading only, no arrays. Raises
    ValueError as `chance_beyond` does. Source: decision with a guard band as in JCGM 106:2012, clause 8.
    """
    return outcome_of(chance_beyond(value, uncertainty, at_least, at_most), act_over_loss)


def outcome_of(chance: float, act_over_loss: float) -> Outcome:
    """The same from the chance of being beyond, where that is known. Raises ValueError as `outcome` does."""
    if not is_number(act_over_loss) or not 0.0 < act_over_loss <= 0.5:
        raise ValueError(
            f"The cost of acting over the loss must lie above 0 and up to 0.5, found {act_over_loss}."
        )
    if chance <= act_over_loss:
        return "within"
    return "beyond" if chance > 0.5 + _ROUNDING else "cannot tell"
