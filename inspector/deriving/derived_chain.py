"""Chain: how much longer it has become, from a new length or from its number, and the handbook's limit."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_KNOWN, NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.chain import (
    elongation,
    elongation_uncertainty,
    industrial_limit,
    length_from_rollers,
    pitch_of,
)
from inspector.reading.inspection import Measured, Silent, Word

_USUAL_COUNT = 20


def chain_elongation(looks: Looks) -> Measured | Silent:
    """Length against a new chain's; without a new length, against pitches times the pitch of the number."""
    length, new = _length(looks), _new_length(looks)
    if length is None or new is None:
        return NOT_LOOKED_AT
    found, doubt = length
    longer = elongation(found, 1, new)
    return worked_out(longer, "percent", "%", elongation_uncertainty(doubt, 1, new))


def against_handbook(looks: Looks) -> Word | Silent:
    """The lengthening against the handbook's limit for a rear sprocket of so many teeth."""
    longer, teeth = looks.measured("elongation"), looks.counted("rear_teeth")
    if longer is None or teeth is None:
        return NOT_LOOKED_AT
    return Word("beyond" if longer.amount.base > industrial_limit(teeth) else "within")


def _length(looks: Looks) -> tuple[float, float] | None:
    """Pin to pin in mm with its uncertainty: as measured, or half way between the two roller figures."""
    direct = looks.measured("measured_length")
    if direct is not None and direct.amount.base > 0:
        return direct.amount.base, direct.uncertainty
    inside, outside = looks.measured("rollers_inside"), looks.measured("rollers_outside")
    if inside is None or outside is None or not 0 < inside.amount.base < outside.amount.base:
        return None
    middle = length_from_rollers(inside.amount.base, outside.amount.base)
    return middle, math.hypot(inside.uncertainty, outside.uncertainty) / 2


def _new_length(looks: Looks) -> float | None:
    new, series = looks.measured("new_length"), looks.word("series")
    if new is not None and new.amount.base > 0:
        return new.amount.base
    if series is None or series == NOT_KNOWN:
        return None
    return (looks.counted("pitches") or _USUAL_COUNT) * pitch_of(series)
