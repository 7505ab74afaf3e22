"""Engine oil: the grade filled against the one asked for, and a laboratory sheet of the drained oil."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks
from inspector.deriving.derived_oil import compare_grades, compare_viscosity
from inspector.quantities.oils import against_engine_grade, engine_grade_match
from inspector.quantities.viscosity import belong_together
from inspector.reading.inspection import Silent, Word


def grade_match(looks: Looks) -> Word | Silent:
    """The grade filled against the grade the manual asks for."""
    return compare_grades(looks, engine_grade_match)


def viscosity_against_grade(looks: Looks) -> Word | Silent:
    """The drained oil's viscosity against the grade that was filled, or else the one asked for."""
    return compare_viscosity(looks, against_engine_grade)


def sheet_viscosities(looks: Looks) -> Word | Silent:
    """Whether the two viscosities of a sheet can be those of one oil, going by their index."""
    cold, hot = looks.measured("viscosity_40"), looks.measured("viscosity_100")
    if cold is None or hot is None or min(cold.amount.base, hot.amount.base) <= 0:
        return NOT_LOOKED_AT
    return Word(belong_together(cold.amount.base, hot.amount.base))
