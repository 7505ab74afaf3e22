"""Engine oil: the grade filled against the one asked for, and a laboratory sheet of the drained oil."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks
from inspector.quantities.oils import against_engine_grade, engine_grade_match
from inspector.quantities.viscosity import belong_together
from inspector.reading.inspection import Silent, Word

_NOT_KNOWN = "not known"


def grade_match(looks: Looks) -> Word | Silent:
    """The grade filled against the grade the manual asks for."""
    filled, specified = looks.word("oil_grade_filled"), looks.word("oil_grade_specified")
    if filled is None or specified is None or _NOT_KNOWN in (filled, specified):
        return NOT_LOOKED_AT
    return Word(engine_grade_match(filled, specified))


def viscosity_against_grade(looks: Looks) -> Word | Silent:
    """The drained oil's viscosity against the grade that was filled, or else the one asked for."""
    found = looks.measured("viscosity_100")
    grades = [looks.word("oil_grade_filled"), looks.word("oil_grade_specified")]
    grade = next((one for one in grades if one not in (None, _NOT_KNOWN)), None)
    if found is None or grade is None or found.amount.base <= 0:
        return NOT_LOOKED_AT
    return Word(against_engine_grade(found.amount.base, grade))


def sheet_viscosities(looks: Looks) -> Word | Silent:
    """Whether the two viscosities of a sheet can be those of one oil, going by their index."""
    cold, hot = looks.measured("viscosity_40"), looks.measured("viscosity_100")
    if cold is None or hot is None or min(cold.amount.base, hot.amount.base) <= 0:
        return NOT_LOOKED_AT
    return Word(belong_together(cold.amount.base, hot.amount.base))
