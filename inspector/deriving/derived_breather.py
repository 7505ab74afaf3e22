"""Breather of a gear case: how far its end is under water, and what would drive the water in."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.breather import stronger_push
from inspector.reading.inspection import Measured, Silent, Word

_MM_A_METRE = 1000.0


def water_over(looks: Looks) -> Measured | Silent:
    """A depth of water less two heights, one on the other: how far the water stands over the end."""
    values = [value for value in looks.by_position() if isinstance(value, Measured)]
    if len(values) != 3:
        return NOT_LOOKED_AT
    low, high, water = values
    over = water.amount.base - low.amount.base - high.amount.base
    return worked_out(over, "length", "mm", math.hypot(*(one.uncertainty for one in values)))


def push(looks: Looks) -> Word | Silent:
    """Whether cooling or the depth pushes harder at the vent; above the water it is the cooling."""
    over = looks.measured("water_over_breather")
    if over is None:
        return NOT_LOOKED_AT
    return Word(stronger_push(max(over.amount.base, 0.0) / _MM_A_METRE))
