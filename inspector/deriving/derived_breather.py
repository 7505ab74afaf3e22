"""Breather of a gear case: how far its end is above water, and what would drive the water in."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.breather import stronger_push
from inspector.reading.inspection import Measured, Silent, Word

_MM_A_METRE = 1000.0


def clearance(looks: Looks) -> Measured | Silent:
    """Two heights, one on the other, less a depth of water: how far the end stands above the water."""
    values = [value for value in looks.by_position() if isinstance(value, Measured)]
    if len(values) != 3:
        return NOT_LOOKED_AT
    low, high, water = values
    above = low.amount.base + high.amount.base - water.amount.base
    return worked_out(above, "length", "mm", math.hypot(*(one.uncertainty for one in values)))


def push(looks: Looks) -> Word | Silent:
    """Whether cooling or the depth pushes harder at the vent; above the water it is the cooling."""
    above = looks.measured("breather_over_water")
    if above is None:
        return NOT_LOOKED_AT
    return Word(stronger_push(max(-above.amount.base, 0.0) / _MM_A_METRE))
