"""Brake fluid: whether it bears long braking downhill, from the best thing that is known of it."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks
from inspector.quantities.fluids import (
    hard_use_from_age,
    hard_use_from_boiling,
    hard_use_from_water,
    takes_up_water,
)
from inspector.reading.inspection import Silent, Word

_A_YEAR = 12.0


def fluid_for_hard_use(looks: Looks) -> Word | Silent:
    """A tested boiling point counts first, then a tested share of water, then the age; all need the class."""
    boiling, water = looks.measured("boiling_point"), looks.measured("water_share")
    if boiling is not None:
        return Word(hard_use_from_boiling(boiling.amount.base, boiling.uncertainty))
    fluid = looks.word("fluid_class_filled") or looks.word("fluid_class_required")
    if fluid is None:
        return NOT_LOOKED_AT
    if not takes_up_water(fluid):
        return Word("not known")
    if water is not None:
        return Word(hard_use_from_water(fluid, water.amount.base, water.uncertainty))
    age = looks.measured("fluid_age")
    if age is not None:
        return Word(hard_use_from_age(fluid, max(age.amount.base, 0.0) / _A_YEAR))
    return Word(hard_use_from_age(fluid, None)) if looks.word("fluid_age") == "unknown" else NOT_LOOKED_AT
