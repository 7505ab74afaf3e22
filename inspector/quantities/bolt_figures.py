"""Does a torque fit the bolt it is meant for, or only when its number is read in another unit?

Lengths in mm, torques in N·m. A machine's own figure comes first; this only asks for a second look at it. Knows
no part and no rule.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import positive
from inspector.quantities.tightening import above_ceiling, tightening
from inspector.quantities.units import convert, units_of

TorqueBears = Literal[
    "fine",
    "more than the bolt bears",
    "more than aluminium usually takes",
    "fits only in the other unit",
    "not known",
]

BOLT_SIZES: dict[str, tuple[float, float]] = {
    **{"M5x0.8": (5, 0.8), "M6x1": (6, 1.0), "M8x1.25": (8, 1.25), "M8x1": (8, 1.0)},
    **{"M10x1.5": (10, 1.5), "M10x1.25": (10, 1.25), "M12x1.75": (12, 1.75), "M12x1.5": (12, 1.5)},
    **{"M12x1.25": (12, 1.25), "M14x2": (14, 2.0), "M14x1.5": (14, 1.5)},
    **{"M16x2": (16, 2.0), "M16x1.5": (16, 1.5)},
}
"""Outer diameter and pitch by the name of the thread."""

_FRICTION = 0.14
CLASSES = ("8.8", "10.9", "12.9")
"""The property classes that the figures of strong bolts are known for."""
_STRONGEST, _USUAL = "12.9", "8.8"
_ALUMINIUM = 0.8  # figures into aluminium are usually half to four fifths of the steel tables (from memory)
_LEAST_SENSE = 0.4  # a figure under two fifths of what the bolt bears is a poor candidate for the right unit


def torque_bears(number: float, unit: str, size: str, strength_class: str, into: str | None) -> TorqueBears:
    """How a torque, `number` in `unit`, stands to what a bolt of this size and class bears.

    `strength_class` is 8.8, 10.9 or 12.9; any other word (stainless, not known) leaves the answer open between
    the ceilings of the weakest and the strongest of these. `into` is `steel`, `aluminium` or None. Raises
    ValueError for an unknown size and a torque that is not positive. Source: VDI 2230 at friction 0.14; the
    share for aluminium from memory; reading another unit is an own choice.
    """
    if size not in BOLT_SIZES:
        raise ValueError(f"{size!r} is no bolt size. Use one of: {', '.join(BOLT_SIZES)}.")
    diameter, pitch = BOLT_SIZES[size]
    torque = convert(float(positive("The torque", number)), unit, "N·m", "torque")
    known = strength_class in CLASSES
    ceiling = tightening(diameter, pitch, strength_class if known else _USUAL, _FRICTION).torque
    if torque > ceiling if known else above_ceiling(torque, diameter, pitch):
        others = [convert(number, other, "N·m", "torque") for other in units_of("torque") if other != unit]
        if any(_LEAST_SENSE * ceiling <= other <= ceiling for other in others):
            return "fits only in the other unit"
        strongest = tightening(diameter, pitch, _STRONGEST, _FRICTION).torque
        return "more than the bolt bears" if known or torque > strongest else "not known"
    if strength_class == "stainless":
        return "not known"
    return "more than aluminium usually takes" if into == "aluminium" and torque > _ALUMINIUM * ceiling else "fine"
