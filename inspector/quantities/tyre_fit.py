"""Does a tyre fit the load, the speed and the hole it has: words for what the tables say.

Loads in kg, speeds in km/h, holes in mm. Knows no part and no rule.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import positive
from inspector.quantities.tyres import may_be_repaired, repair_rule, speed_kmh

RepairAllowed = Literal[
    "allowed",
    "not for this speed letter",
    "hole too large",
    "too many repairs",
    "outside the middle half",
    "not known",
]
SpeedFit = Literal["fits", "letter too slow", "not known"]
HolePlace = Literal["middle half", "shoulder", "sidewall"]

_OFF_CENTRE: dict[HolePlace, float] = {"middle half": 0.25, "shoulder": 0.5}
_OPEN_ENDED = ("Z", "(V)", "(W)", "(Y)")


def repair_allowed(symbol: str, hole: float, repairs_before: int, place: HolePlace) -> RepairAllowed:
    """What BS AU 159 says of one more repair, with the first reason against it.

    `middle half` is up to a quarter of the tread width to each side of its centre line. Raises ValueError for
    an unknown symbol, a hole that is not positive and a negative number. Source: BS AU 159f; advice, not law.
    """
    rule = repair_rule(symbol)
    if place in _OFF_CENTRE and may_be_repaired(symbol, hole, repairs_before, _OFF_CENTRE[place]):
        return "allowed"
    if place != "middle half":
        return "outside the middle half"
    if rule.most_repairs == 0:
        return "not for this speed letter"
    return "hole too large" if hole > rule.largest_hole else "too many repairs"


def speed_fit(symbol: str, top_speed: float) -> SpeedFit:
    """Whether a speed symbol reaches a machine's top speed; symbols without an upper end stay open above theirs.

    Raises ValueError for an unknown symbol and a speed that is not positive. Source: the published table.
    """
    stands_for = speed_kmh(symbol)
    if float(positive("The top speed", top_speed)) <= stands_for:
        return "fits"
    return "not known" if symbol.strip().upper() in _OPEN_ENDED else "letter too slow"
