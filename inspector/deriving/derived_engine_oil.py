"""Engine oil: its grade, how stiff it gets in the cold, and a laboratory sheet of the drained oil."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.deriving.derived_oil import compare_grades, compare_viscosity
from inspector.quantities.oils import against_engine_grade, engine_grade_match
from inspector.quantities.viscosity import belong_together, viscosity_at
from inspector.reading.inspection import Measured, Silent, Word

_COLD_DOUBT = 0.25  # of a viscosity carried from 40 and 100 degrees down into the frost; own choice


def grade_match(looks: Looks) -> Word | Silent:
    """The grade filled against the grade the manual asks for."""
    return compare_grades(looks, engine_grade_match)


def viscosity_against_grade(looks: Looks) -> Word | Silent:
    """The drained oil's viscosity against the grade that was filled, or else the one asked for."""
    return compare_viscosity(looks, against_engine_grade)


def sheet_viscosities(looks: Looks) -> Word | Silent:
    """Whether the two viscosities of a sheet can be those of one oil, going by their index."""
    both = _pair(looks, "viscosity_40", "viscosity_100")
    return NOT_LOOKED_AT if both is None else Word(belong_together(*both))


def cold_viscosity(looks: Looks) -> Measured | Silent:
    """How thick the oil is in the coldest night, from the two viscosities of its data sheet."""
    both, night = _pair(looks, "oil_viscosity_40", "oil_viscosity_100"), looks.measured("coldest_night")
    if both is None or night is None or belong_together(*both) != "belong together":
        return NOT_LOOKED_AT
    cold = viscosity_at(night.amount.base, 40, both[0], 100, both[1])
    if math.isinf(cold):
        return NOT_LOOKED_AT
    return worked_out(cold, "viscosity", "mm²/s", _COLD_DOUBT * cold)


def _pair(looks: Looks, cold: str, hot: str) -> tuple[float, float] | None:
    """Two viscosities, both there and more than nothing."""
    at_40, at_100 = looks.measured(cold), looks.measured(hot)
    if at_40 is None or at_100 is None or min(at_40.amount.base, at_100.amount.base) <= 0:
        return None
    return at_40.amount.base, at_100.amount.base
