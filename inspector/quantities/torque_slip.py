"""Was a torque set on the wrong scale? Compares what was applied with what was asked for; knows no part."""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import positive

UnitSlip = Literal[
    "none",
    "foot pounds set as newton metres",
    "newton metres set as foot pounds",
    "inch pounds set as foot pounds",
]

FOOT_POUND = 1.3558179483314004
"""N·m in one lbf·ft (NIST SP 811, B.8; exact)."""

# Applied over asked for. A figure meant in foot pounds but set in newton metres is too little, the reverse
# too much.
_RATIOS: dict[UnitSlip, float] = {
    "foot pounds set as newton metres": 1 / FOOT_POUND,
    "newton metres set as foot pounds": FOOT_POUND,
    "inch pounds set as foot pounds": 12.0,
}
_TOLERANCE = 0.04  # of a good torque wrench, ISO 6789 type II class A


def unit_slip(applied: float, required: float) -> UnitSlip:
    """Name the slip of scale that would explain an applied torque, or `none`; both in the same unit.

    Within four percent of the ratio of the scales. Raises ValueError unless both are positive.
    Source: ratios from NIST SP 811; tolerance an own choice.
    """
    ratio = float(positive("The torque applied", applied)) / float(positive("The torque required", required))
    for slip, expected in _RATIOS.items():
        if abs(ratio / expected - 1) <= _TOLERANCE:
            return slip
    return "none"
