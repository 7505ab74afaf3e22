"""How deep a bolt is screwed in, against the usual depth, and whether the thread or the bolt gives way first.

Lengths in mm, stresses in MPa, forces in N. Knows no part and no rule.
"""

from __future__ import annotations

import math
from typing import Literal

from inspector.quantities.arrays import Number, as_given, positive
from inspector.quantities.fasteners import stress_area

FirstToGive = Literal["the bolt", "the thread around it", "either"]
Depth = Literal["as deep as usual", "less deep than usual", "less than half as deep as usual"]

USUAL_ENGAGEMENT: dict[str, tuple[float, float]] = {"steel": (1.0, 1.0), "aluminium": (1.5, 2.0)}
"""Usual depth in diameters for a steel bolt in this material (handbook pages; a forum: 3 for aluminium)."""


# What a bolt breaks at, in MPa, well above the least of its class: the chapter takes 1200 for a 10.9; the others
# in proportion.
_BREAKS_AT = {"8.8": 960.0, "10.9": 1200.0, "12.9": 1440.0}
_SHEARS_AT = (130.0, 170.0)  # cast light metals, weak and strong (handbook chapter)
# Tolerances by pitch, ISO 965 6g and 6H, from memory: how far the bolt may be under size, the nut's flank over it.
_ALLOWANCES = {
    **{0.8: (0.024, 0.125), 1.0: (0.026, 0.150), 1.25: (0.028, 0.160)},
    **{1.5: (0.032, 0.180), 1.75: (0.034, 0.200), 2.0: (0.038, 0.212)},
}


def shear_area_per_mm(pitch: Number, bolt_outer: Number | float, nut_flank: Number | float) -> Number:
    """Area in mm2 over which the thread of the part shears off, for each mm of depth.

    `bolt_outer` is the least outer diameter of the bolt, `nut_flank` the greatest flank diameter of the hole.
    Raises ValueError unless all are positive and the bolt is the larger. Source: handbook chapter on threads.
    """
    step, outer = positive("The pitch", pitch), positive("The outer diameter", bolt_outer)
    bite = positive("The outer less the flank diameter", outer - positive("The flank diameter", nut_flank))
    return as_given(math.pi / step * outer * (step / 2 + bite / math.sqrt(3)), pitch)


def depth_to_break_bolt(load: Number, shear_stress: Number | float, area_per_mm: Number | float) -> Number:
    """Depth of thread that bears a load before it shears. Raises ValueError unless all three are positive."""
    strength = positive("The shear stress", shear_stress) * positive("The shear area", area_per_mm)
    return as_given(positive("The load", load) / strength, load)


def first_to_give(depth: float, diameter: float, pitch: float, strength_class: str) -> FirstToGive:
    """What gives way when a steel bolt in light metal is turned too far.

    `either`: it depends on the alloy. Classes 8.8, 10.9 and 12.9, pitches 0.8 to 2 mm. Raises ValueError outside
    and for a depth that is not positive. Source: handbook chapter on thread strength, 130 to 170 MPa in shear.
    """
    if strength_class not in _BREAKS_AT:
        raise ValueError(f"{strength_class!r} is no property class of the table. It has {', '.join(_BREAKS_AT)}.")
    if pitch not in _ALLOWANCES:
        raise ValueError(f"{pitch:g} mm is no pitch of the table. It has {', '.join(map(str, _ALLOWANCES))}.")
    under, over = _ALLOWANCES[pitch]
    area = shear_area_per_mm(pitch, diameter - under, diameter - 0.6495 * pitch + over)
    load = _BREAKS_AT[strength_class] * stress_area(diameter, pitch)
    weak, strong = (depth_to_break_bolt(load, stress, area) for stress in _SHEARS_AT)
    found = float(positive("The depth", depth))
    if found >= weak:
        return "the bolt"
    return "either" if found >= strong else "the thread around it"


def engagement(depth: float, diameter: float, into: str) -> Depth:
    """How a depth of thread stands to the usual one: one diameter in steel, one and a half in aluminium.

    Raises ValueError unless both lengths are positive, and for another material. Source: handbook pages on
    threads; the half is an own choice.
    """
    if into not in USUAL_ENGAGEMENT:
        raise ValueError(f"{into!r} is no material of the table. Use one of: {', '.join(USUAL_ENGAGEMENT)}.")
    share = float(positive("The depth", depth)) / float(positive("The diameter", diameter))
    usual, _ = USUAL_ENGAGEMENT[into]
    if share >= usual:
        return "as deep as usual"
    return "less deep than usual" if share >= usual / 2 else "less than half as deep as usual"
