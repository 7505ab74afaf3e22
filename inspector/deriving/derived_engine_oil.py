"""Engine oil: its grade, topping up with another one, the cold, and a laboratory sheet of the drained oil."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_KNOWN, NOT_LOOKED_AT, Looks, worked_out
from inspector.deriving.derived_oil import compare_grades, compare_viscosity
from inspector.quantities.oils import against_engine_grade, engine_band, engine_grade_match, mix_against_band
from inspector.quantities.viscosity import belong_together, blend_viscosity, viscosity_at
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


def mixed_viscosity(looks: Looks) -> Measured | Silent:
    """Viscosity at 100 degrees of the oil in the engine and what was topped up."""
    total, added = looks.measured("oil_volume"), looks.measured("topped_up_volume")
    first, second = _warm(looks, "oil_grade_filled", "oil_viscosity_100"), _warm(looks, "topped_up_grade", None)
    if total is None or added is None or first is None or second is None or total.amount.base <= 0:
        return NOT_LOOKED_AT
    share = min(added.amount.base / total.amount.base, 1.0)

    def mixed(one: float, other: float) -> float:
        return blend_viscosity(one, other, share)

    found = mixed(first[0], second[0])
    doubts = (mixed(sum(first), second[0]) - found, mixed(first[0], sum(second)) - found)
    return worked_out(found, "viscosity", "mm²/s", math.hypot(*doubts))


def mix_against_grade(looks: Looks) -> Word | Silent:
    """The mixed oil against the grade the manual asks for, or else the one that was filled."""
    found = looks.measured("mixed_viscosity")
    grades = [looks.word("oil_grade_specified"), looks.word("oil_grade_filled")]
    grade = next((one for one in grades if one not in (None, NOT_KNOWN)), None)
    if found is None or grade is None:
        return NOT_LOOKED_AT
    return Word(mix_against_band(found.amount.base, found.uncertainty, engine_band(grade)))


def _warm(looks: Looks, grade: str, sheet: str | None) -> tuple[float, float] | None:
    """Viscosity at 100 degrees and its doubt: from the data sheet, or else anywhere in the band of the grade."""
    printed, word = looks.measured(sheet) if sheet else None, looks.word(grade)
    if printed is not None and printed.amount.base > 0:
        return printed.amount.base, printed.uncertainty
    if word in (None, NOT_KNOWN):
        return None
    assert word is not None
    band = engine_band(word)
    return (band.low + band.high) / 2, (band.high - band.low) / math.sqrt(12)


def _pair(looks: Looks, cold: str, hot: str) -> tuple[float, float] | None:
    """Two viscosities, both there and more than nothing."""
    at_40, at_100 = looks.measured(cold), looks.measured(hot)
    if at_40 is None or at_100 is None or min(at_40.amount.base, at_100.amount.base) <= 0:
        return None
    return at_40.amount.base, at_100.amount.base
