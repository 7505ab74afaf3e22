"""Drive oil: metal by distance, debris, particles and thickness, as a laboratory sheet gives them."""

from __future__ import annotations

import math
from collections.abc import Callable

from inspector.deriving.amounts import NOT_KNOWN, NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.oils import against_gear_grade, gear_grade_match
from inspector.quantities.used_oil import iso4406_trend, per_1000_km, pq_zone, rate_trend
from inspector.reading.inspection import Measured, Silent, Word

_COMPARTMENT = "wheel final drive"


def rate_per_1000_km(looks: Looks) -> Measured | Silent:
    """Metal on the distance of its fill: the first input over the second."""
    values = [value for value in looks.by_position() if isinstance(value, Measured)]
    if len(values) != 2 or values[1].amount.base <= 0:
        return NOT_LOOKED_AT
    metal, distance = values
    rate = per_1000_km(metal.amount.base, distance.amount.base)
    doubts = [one.uncertainty / one.amount.base for one in values if one.amount.base > 0]
    return worked_out(rate, "ppm per distance", "ppm/1000 km", rate * math.hypot(*doubts))


def iron_trend(looks: Looks) -> Word | Silent:
    """The rate of iron on this fill against that on the fill before."""
    before, now = looks.measured("earlier_iron_rate"), looks.measured("iron_rate")
    if before is None or now is None or before.amount.base <= 0:
        return NOT_LOOKED_AT
    return Word(rate_trend(before.amount.base, now.amount.base))


def debris_zone(looks: Looks) -> Word | Silent:
    """The zone of a PQ index in the table for heavy machines."""
    index = looks.counted("pq_index")
    return NOT_LOOKED_AT if index is None else Word(pq_zone(_COMPARTMENT, index))


def debris_trend(looks: Looks) -> Word | Silent:
    """Whether the PQ index jumped since the sample before."""
    before, now = looks.counted("earlier_pq_index"), looks.counted("pq_index")
    if before is None or now is None or before == 0:
        return NOT_LOOKED_AT
    return Word(rate_trend(before, now))


def code_trend(looks: Looks) -> Word | Silent:
    """The particle code against that of the sample before."""
    before, now = looks.text("earlier_cleanliness_code"), looks.text("cleanliness_code")
    return NOT_LOOKED_AT if before is None or now is None else Word(iso4406_trend(before, now))


def grade_match(looks: Looks) -> Word | Silent:
    """The grade filled against the grade the manual asks for."""
    return compare_grades(looks, gear_grade_match)


def compare_grades(looks: Looks, compare: Callable[[str, str], str]) -> Word | Silent:
    """The grade filled against the one asked for, by the scale that `compare` knows."""
    filled, specified = looks.word("oil_grade_filled"), looks.word("oil_grade_specified")
    if filled is None or specified is None or NOT_KNOWN in (filled, specified):
        return NOT_LOOKED_AT
    return Word(compare(filled, specified))


def viscosity_against_grade(looks: Looks) -> Word | Silent:
    """The drained oil's viscosity against the grade that was filled, or else the one asked for."""
    return compare_viscosity(looks, against_gear_grade)


def compare_viscosity(looks: Looks, compare: Callable[[float, str], str]) -> Word | Silent:
    """The drained oil's viscosity against a grade of the scale that `compare` knows."""
    found = looks.measured("viscosity_100")
    grades = [looks.word("oil_grade_filled"), looks.word("oil_grade_specified")]
    grade = next((one for one in grades if one not in (None, NOT_KNOWN)), None)
    if found is None or grade is None or found.amount.base <= 0:
        return NOT_LOOKED_AT
    return Word(compare(found.amount.base, grade))
