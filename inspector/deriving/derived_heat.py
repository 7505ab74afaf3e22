"""Heat of a long descent, in words: from the load, the fall and the number of brake discs."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks
from inspector.quantities.brake_heat import descent_heat
from inspector.reading.inspection import Silent, Word

_ALONE, _LOADED = 300.0, 420.0  # kg with rider; with passenger and luggage; own choice
_USUAL_FALL = 1000.0  # m of a long pass; own choice
_DISCS = 3
_METRES_A_KM = 1000.0


def descent(looks: Looks) -> Word | Silent:
    """What a long descent does to the brakes; without passes there is none."""
    passes, load = looks.word("mountain_passes"), looks.word("pillion_or_luggage")
    if passes == "no":
        return Silent("does not apply")
    mass, fall = looks.measured("laden_mass"), looks.measured("descent_height")
    if passes is None or (mass is None and load is None):
        return NOT_LOOKED_AT
    weight = mass.amount.base if mass is not None else _LOADED if load == "yes" else _ALONE
    height = _METRES_A_KM * fall.amount.base if fall is not None else _USUAL_FALL
    missing = sum(part == "brake disc" for part, _ in looks.inspection.without)
    return Word(descent_heat(weight, height, max(_DISCS - missing, 1)))
