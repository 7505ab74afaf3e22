"""Breather of a gear case: how far its end is under water, and what would drive the water in."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.breather import stronger_push, water_at_cooling
from inspector.reading.inspection import Measured, Silent, Word

_MM_A_METRE = 1000.0
_A_PERCENT = 10_000.0
_AIR_DOUBT = 0.5  # of the water drawn in: nobody knows how much air stands over the oil; own choice


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


def water_drawn(looks: Looks) -> Measured | Silent:
    """Water that one cooling may bring into the oil, with the breather under the planned water or above it."""
    oil = looks.measured("oil_specified")
    over = looks.measured("wading_over_breather")
    if oil is None or over is None or oil.amount.base <= 0:
        return NOT_LOOKED_AT
    found = float(f"{water_at_cooling(oil.amount.base, under_water=over.amount.base > 0):.1g}")
    return worked_out(found, "ppm", "%" if found >= _A_PERCENT else "ppm", _AIR_DOUBT * found)
