"""What a metric bolt can carry, how hard a torque pulls it, and what an oiled thread does to that.

Lengths in mm, stresses in MPa, forces in N, torques in N·m. A machine's own figure always comes before
these. Knows no part and no rule.
"""

from __future__ import annotations

import math
from typing import Literal

from inspector.quantities.arrays import Number, as_given, between, not_negative, positive

Pull = Literal["harder than meant", "about as meant", "less hard than meant"]

# ISO 898-1: stress that must not leave a stretch behind, up to 16 mm and above, in MPa; from its load tables.
_PROOF: dict[str, tuple[float, float]] = {
    **{"4.6": (225, 225), "5.8": (380, 380), "6.8": (440, 440)},
    **{"8.8": (580, 600), "10.9": (830, 830), "12.9": (970, 970)},
}
# ISO 898-1, from memory: stress (Rp0.2) up to 16 mm and above, in MPa.
_YIELD: dict[str, tuple[float, float]] = {"8.8": (640, 660), "10.9": (940, 940), "12.9": (1100, 1100)}
_THICK_ABOVE = 16.0
_THICKEST_BOLT = 300.0
_AS_MEANT = 7 / 6
# Preload by torque wrench, plus or minus 30 % (handbook glossaries), taken as two sigma.
_WRENCH_SCATTER = 0.30 / 2

NUT_FACTORS: dict[str, tuple[float, float]] = {
    "dry": (0.18, 0.27),
    "oiled": (0.10, 0.26),
    "anti-seize or moly": (0.12, 0.16),
}
"""Range of K in T = K d F that published tables give for a surface; it is wide, and that is the point."""


def stress_area(diameter: Number, pitch: Number | float) -> Number:
    """Area that carries the load of a metric thread, in mm2: pi/4 (d - 0.9382 P)^2.

    Raises ValueError unless the pitch is positive and less than the diameter, which is at most 300 mm. Source:
    ISO 898-1.
    """
    size = between("The diameter", positive("The diameter", diameter), 0.0, _THICKEST_BOLT)
    step = positive("The pitch", pitch)
    positive("The diameter less the pitch", size - step)
    return as_given(math.pi / 4 * (size - 0.9382 * step) ** 2, diameter)


def yield_stress(strength_class: str, diameter: float) -> float:
    """Stress at which 0.2 % stretch stays, in MPa; classes 8.8, 10.9 and 12.9 only.

    Raises ValueError for another class. Source: ISO 898-1, from memory.
    """
    if strength_class not in _YIELD:
        raise ValueError(f"{strength_class!r} is no property class of the table. It has {', '.join(_YIELD)}.")
    thin, thick = _YIELD[strength_class]
    return thin if positive("The diameter", diameter) <= _THICK_ABOVE else thick


def proof_load(strength_class: str, diameter: float, pitch: float) -> float:
    """Load a bolt must bear without staying stretched, in N; classes 4.6 to 12.9.

    Raises ValueError for another class and as `stress_area`. Source: ISO 898-1.
    """
    if strength_class not in _PROOF:
        raise ValueError(f"{strength_class!r} is no property class of the table. It has {', '.join(_PROOF)}.")
    thin, thick = _PROOF[strength_class]
    return (thin if diameter <= _THICK_ABOVE else thick) * stress_area(diameter, pitch)


def preload_from(torque: Number, diameter: Number | float, nut_factor: Number | float) -> Number:
    """Pull in N that a torque puts on a bolt: F = T / (K d).

    Raises ValueError unless diameter and nut factor are positive and the torque is not negative. Source: short
    formula of the trade; K from tables such as NUT_FACTORS. A torque wrench scatters by about 30 % either way.
    """
    lever = positive("The nut factor", nut_factor) * positive("The diameter", diameter)
    return as_given(1000 * not_negative("The torque", torque) / lever, torque)


def torque_for_other_surface(torque: Number, from_factor: Number | float, to_factor: Number | float) -> Number:
    """Torque that gives the same preload on another surface: T2 = T1 K2 / K1.

    Raises ValueError unless both factors are positive and the torque is not negative.
    """
    before, later = (
        positive("The first nut factor", from_factor),
        positive("The second nut factor", to_factor),
    )
    return as_given(not_negative("The torque", torque) * later / before, torque)


def pull_against_meant(asked: str, found: str) -> Pull:
    """How hard a bolt is pulled when its torque was meant for another surface than the one found.

    By the middle of the published ranges; a sixth either way is as meant. Raises ValueError for a surface that is
    not in the table. Source: T = K d F with the factors of NUT_FACTORS; the sixth is an own choice.
    """
    needed = torque_for_other_surface(1.0, *(sum(_factors(surface)) / 2 for surface in (asked, found)))
    if needed < 1 / _AS_MEANT:
        return "harder than meant"
    return "less hard than meant" if needed > _AS_MEANT else "about as meant"


def share_of_proof(
    torque: float, strength_class: str, size: tuple[float, float], surface: str
) -> tuple[float, float]:
    """Share of its proof load that a torque puts on a bolt of `size` (diameter, pitch), and its uncertainty.

    By the middle of the published factors of the surface; their range and the scatter of the wrench make the
    doubt. Raises ValueError for an unknown class or surface and a negative torque. Source: ISO 898-1, T = K d F.
    """
    low, high = _factors(surface)
    middle = (low + high) / 2
    share = preload_from(torque, size[0], middle) / proof_load(strength_class, *size)
    return share, share * math.hypot((high - low) / math.sqrt(12) / middle, _WRENCH_SCATTER)


def _factors(surface: str) -> tuple[float, float]:
    """The published range of a surface. Raises ValueError for another surface."""
    if surface not in NUT_FACTORS:
        raise ValueError(f"{surface!r} is no surface of the table. It has {', '.join(NUT_FACTORS)}.")
    return NUT_FACTORS[surface]
