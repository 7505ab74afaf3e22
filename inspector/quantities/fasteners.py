"""What a metric bolt can carry, and how torque and preload go together.

Lengths in mm, forces in N, stresses in MPa, torques in N·m. A machine's own figure always comes before
these. Knows no part and no rule.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from inspector.quantities.arrays import Number, as_given, not_negative, positive

COARSE_PITCH: dict[float, float] = {
    **{4: 0.7, 5: 0.8, 6: 1.0, 8: 1.25, 10: 1.5, 12: 1.75},
    **{14: 2.0, 16: 2.0, 18: 2.5, 20: 2.5},
}
"""Pitch of the ISO coarse thread by diameter."""


@dataclass(frozen=True)
class BoltClass:
    """Stresses of a property class in MPa; `thick` holds above 16 mm diameter."""

    proof: float
    proof_thick: float
    strength: float
    strength_thick: float
    yielding: float
    yielding_thick: float


# ISO 898-1: proof and strength derived from its load tables; yield (Rp0.2) from memory. Classes below 8.8
# have no yield here, the formula for tightening is not used for them.
_CLASSES: dict[str, BoltClass] = {
    "8.8": BoltClass(580, 600, 800, 830, 640, 660),
    "10.9": BoltClass(830, 830, 1040, 1040, 940, 940),
    "12.9": BoltClass(970, 970, 1220, 1220, 1100, 1100),
}
_PROOF_OF_SOFT = {"4.6": 225.0, "5.8": 380.0, "6.8": 440.0}
_THICK_ABOVE = 16.0

NUT_FACTORS: dict[str, tuple[float, float]] = {
    "dry steel": (0.18, 0.27),
    "zinc plated": (0.17, 0.35),
    "oiled": (0.10, 0.26),
    "anti-seize or moly": (0.12, 0.16),
    "phosphate and oil": (0.15, 0.22),
    "zinc flake": (0.16, 0.32),
    "stainless on stainless": (0.30, 0.50),
}
"""Range of K in T = K d F that published tables give for a surface; it is wide, and that is the point."""

TORQUE_WRENCH_SCATTER = 0.30
"""Preload scatters by this share, either way, when tightened to a torque (handbook glossaries)."""


def stress_area(diameter: Number, pitch: Number | float) -> Number:
    """Area that carries the load of a metric thread, in mm2: pi/4 (d - 0.9382 P)^2.

    Raises ValueError unless the pitch is positive and less than the diameter. Source: ISO 898-1.
    """
    size = positive("The diameter", diameter)
    step = positive("The pitch", pitch)
    positive("The diameter less the pitch", size - step)
    return as_given(math.pi / 4 * (size - 0.9382 * step) ** 2, diameter)


def proof_stress(strength_class: str, diameter: float) -> float:
    """Stress a bolt must bear without staying stretched, in MPa.

    Raises ValueError for a class that is not in the table. Source: ISO 898-1.
    """
    if strength_class in _PROOF_OF_SOFT:
        return _PROOF_OF_SOFT[strength_class]
    bolt = _bolt_class(strength_class)
    return bolt.proof if positive("The diameter", diameter) <= _THICK_ABOVE else bolt.proof_thick


def proof_load(strength_class: str, diameter: float, pitch: float) -> float:
    """Load a bolt must bear without staying stretched, in N. Raises as `proof_stress` and `stress_area`."""
    return proof_stress(strength_class, diameter) * stress_area(diameter, pitch)


def yield_stress(strength_class: str, diameter: float) -> float:
    """Stress at which 0.2 % stretch stays, in MPa; classes 8.8, 10.9 and 12.9 only.

    Raises ValueError for another class. Source: ISO 898-1, from memory.
    """
    bolt = _bolt_class(strength_class)
    return bolt.yielding if positive("The diameter", diameter) <= _THICK_ABOVE else bolt.yielding_thick


def breaking_load(strength_class: str, diameter: float, pitch: float) -> float:
    """Least load at which a bolt breaks, in N; classes 8.8, 10.9 and 12.9 only. Raises as `yield_stress`."""
    bolt = _bolt_class(strength_class)
    area = stress_area(diameter, pitch)
    return area * (bolt.strength if diameter <= _THICK_ABOVE else bolt.strength_thick)


def torque_for(preload: Number, diameter: Number | float, nut_factor: Number | float) -> Number:
    """Torque that gives a preload, in N·m: T = K d F. Raises ValueError for negative or zero input.

    Source: short formula of the trade; K from tables such as NUT_FACTORS.
    """
    force = not_negative("The preload", preload)
    size = positive("The diameter", diameter)
    return as_given(positive("The nut factor", nut_factor) * size * force / 1000, preload)


def preload_from(torque: Number, diameter: Number | float, nut_factor: Number | float) -> Number:
    """Preload that a torque gives, in N; the inverse of `torque_for`. Raises as it does."""
    moment = not_negative("The torque", torque)
    lever = positive("The nut factor", nut_factor) * positive("The diameter", diameter)
    return as_given(1000 * moment / lever, torque)


def torque_for_other_surface(torque: Number, from_factor: Number | float, to_factor: Number | float) -> Number:
    """Torque that gives the same preload on another surface: T2 = T1 K2 / K1.

    Raises ValueError unless both factors are positive and the torque is not negative.
    """
    before, later = (
        positive("The first nut factor", from_factor),
        positive("The second nut factor", to_factor),
    )
    return as_given(not_negative("The torque", torque) * later / before, torque)


def _bolt_class(name: str) -> BoltClass:
    if name not in _CLASSES:
        known = ", ".join((*_PROOF_OF_SOFT, *_CLASSES))
        raise ValueError(f"{name!r} is no property class with the figures asked for. The table has {known}.")
    return _CLASSES[name]
