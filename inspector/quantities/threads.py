"""How deep a bolt must be screwed in before it breaks rather than tears out its thread.

Lengths in mm, forces in N, stresses in MPa. Knows no part and no rule.
"""

from __future__ import annotations

import math

from inspector.quantities.arrays import Number, as_given, positive

USUAL_ENGAGEMENT: dict[str, tuple[float, float]] = {
    "steel": (1.0, 1.0),
    "aluminium": (1.5, 2.0),
    "zinc": (2.0, 2.5),
}
"""Usual depth in diameters for a steel bolt in this material (handbook pages; a forum: 3 for aluminium)."""

_TAN_30 = math.tan(math.pi / 6)


def shear_area_per_mm(
    pitch: Number | float, bolt_diameter_least: Number, nut_flank_greatest: Number | float
) -> Number:
    """Area of the nut's thread that shears, in mm2 for each mm of depth.

    From the least outer diameter of the bolt and the greatest pitch diameter of the nut. Raises ValueError
    unless the pitch and the overlap of the threads are positive. Source: handbook formula, 60 degree
    thread.
    """
    step = positive("The pitch", pitch)
    size = positive("The bolt's least diameter", bolt_diameter_least)
    overlap = positive("The overlap of the threads", size - positive("The pitch diameter", nut_flank_greatest))
    return as_given(math.pi * size / step * (step / 2 + _TAN_30 * overlap), bolt_diameter_least)


def depth_to_break_bolt(
    breaking_load: Number, shear_strength: Number | float, area_per_mm: Number | float
) -> Number:
    """Depth at which the thread of the nut bears as much as the bolt, in mm.

    `shear_strength` is that of the nut's material in MPa. Raises ValueError unless all are positive.
    """
    bears = positive("The shear strength", shear_strength) * positive("The area", area_per_mm)
    return as_given(positive("The breaking load", breaking_load) / bears, breaking_load)
