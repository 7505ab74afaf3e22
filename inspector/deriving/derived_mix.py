"""Oil that was topped up with another grade: how thick the mix is, and whether it stays in the grade asked for."""

from __future__ import annotations

import math
from collections.abc import Callable

from inspector.deriving.amounts import NOT_KNOWN, NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.oils import Band, engine_band, gear_band, mix_against_band
from inspector.quantities.viscosity import blend_viscosity
from inspector.reading.inspection import Measured, Silent, Word


def engine_mix(looks: Looks) -> Measured | Silent:
    """Viscosity at 100 degrees of the oil in the engine and what was topped up."""
    return _mixed(looks, engine_band, "oil_volume")


def engine_mix_against_grade(looks: Looks) -> Word | Silent:
    """The mixed engine oil against the grade the manual asks for, or else the one that was filled."""
    return _against(looks, engine_band)


def gear_mix(looks: Looks) -> Measured | Silent:
    """Viscosity at 100 degrees of the oil in the final drive and what was topped up."""
    return _mixed(looks, gear_band, "oil_specified")


def gear_mix_against_grade(looks: Looks) -> Word | Silent:
    """The mixed gear oil against the grade the manual asks for, or else the one that was filled."""
    return _against(looks, gear_band)


def _mixed(looks: Looks, band_of: Callable[[str], Band], volume: str) -> Measured | Silent:
    total, added = looks.measured(volume), looks.measured("topped_up_volume")
    first = _printed(looks) or _anywhere(looks.word("oil_grade_filled"), band_of)
    second = _anywhere(looks.word("topped_up_grade"), band_of)
    if total is None or added is None or first is None or second is None or total.amount.base <= 0:
        return NOT_LOOKED_AT
    share = min(added.amount.base / total.amount.base, 1.0)

    def mixed(one: float, other: float) -> float:
        return blend_viscosity(one, other, share)

    found = mixed(first[0], second[0])
    doubts = (mixed(sum(first), second[0]) - found, mixed(first[0], sum(second)) - found)
    return worked_out(found, "viscosity", "mm²/s", math.hypot(*doubts))


def _against(looks: Looks, band_of: Callable[[str], Band]) -> Word | Silent:
    found = looks.measured("mixed_viscosity")
    grades = [looks.word("oil_grade_specified"), looks.word("oil_grade_filled")]
    grade = next((one for one in grades if one not in (None, NOT_KNOWN)), None)
    if found is None or grade is None:
        return NOT_LOOKED_AT
    return Word(mix_against_band(found.amount.base, found.uncertainty, band_of(grade)))


def _printed(looks: Looks) -> tuple[float, float] | None:
    """Viscosity at 100 degrees of the oil that was filled, and its doubt, by its data sheet."""
    printed = looks.measured("oil_viscosity_100")
    return None if printed is None or printed.amount.base <= 0 else (printed.amount.base, printed.uncertainty)


def _anywhere(grade: str | None, band_of: Callable[[str], Band]) -> tuple[float, float] | None:
    """The middle of a grade's band, and the doubt of an oil that may lie anywhere in it; None for an open band."""
    if grade is None or grade == NOT_KNOWN:
        return None
    band = band_of(grade)
    if math.isinf(band.high):
        return None
    return (band.low + band.high) / 2, (band.high - band.low) / math.sqrt(12)
