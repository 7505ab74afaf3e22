"""Assembly preload and torque of a steel joint after VDI 2230, and a ceiling for doubtful figures.

Lengths in mm, forces in N, torques in N·m. Knows no part and no rule.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from inspector.quantities.arrays import inside, positive
from inspector.quantities.fasteners import stress_area, yield_stress

_USE_OF_YIELD = 0.90
_CEILING_CLASS, _CEILING_FRICTION = "8.8", 0.14

# Outer diameter of the head's bearing face and of the hole under it.
_BEARING: dict[float, tuple[float, float]] = {
    **{5: (6.88, 5.5), 6: (8.9, 6.6), 8: (11.6, 9), 10: (14.6, 11), 12: (16.6, 13.5)},
    **{14: (19.6, 15.5), 16: (22.5, 17.5)},
}


@dataclass(frozen=True)
class Tightening:
    """What a bolt can be tightened to: `preload` in N, `torque` in N·m."""

    preload: float
    torque: float


def tightening(diameter: float, pitch: float, strength_class: str, friction: float) -> Tightening:
    """Preload and torque at 90 % of the yield stress, with the same friction in thread and under the head.

    A ceiling for steel joints: figures for threads in aluminium are usually half to four fifths of it.
    Diameters 5 to 16 mm, friction between 0 and 0.5. Raises ValueError outside the domain. Source: VDI 2230
    (2003); the formula from memory gives the printed fine-pitch table within 1.2 %.
    """
    if diameter not in _BEARING:
        raise ValueError(
            f"No head is known for a diameter of {diameter:g} mm. Known: {', '.join(map(str, _BEARING))}."
        )
    step = float(positive("The pitch", pitch))
    rub = float(inside("The friction", friction, 0.0, 0.5))
    flank = diameter - 0.6495 * step
    middle = (flank + diameter - 1.2269 * step) / 2
    twist = 1.5 * flank / middle * (step / (math.pi * flank) + 1.155 * rub)
    limit = _USE_OF_YIELD * yield_stress(strength_class, diameter) * stress_area(diameter, step)
    preload = limit / math.sqrt(1 + 3 * twist**2)
    head, hole = _BEARING[diameter]
    lever = 0.16 * step + 0.58 * flank * rub + (head + hole) / 4 * rub
    return Tightening(preload, preload * lever / 1000)


def above_ceiling(torque: float, diameter: float, pitch: float) -> bool:
    """Tell whether a torque asks more of a bolt than class 8.8 with friction 0.14 may bear.

    Such a figure deserves a second look at the manual: the class may be higher, or the unit another one.
    Raises as `tightening`. Source: own choice, on VDI 2230.
    """
    return (
        float(positive("The torque", torque))
        > tightening(diameter, pitch, _CEILING_CLASS, _CEILING_FRICTION).torque
    )
