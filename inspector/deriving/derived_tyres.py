"""Tyres: repair, load, speed, and the pressure of a warm tyre."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.tyre_fit import HolePlace, repair_allowed, speed_fit
from inspector.quantities.tyres import load_kg, pressure_at
from inspector.reading.inspection import Measured, Silent, Word

_COLD = 20.0
_AIR_KPA = 101.325
_PLACES: dict[str, HolePlace] = {
    "middle half": "middle half", "shoulder": "shoulder", "sidewall": "sidewall"}  # fmt: skip


def repair(looks: Looks) -> Word | Silent:
    """The hole, its place, the repairs before it and the speed symbol against the repair standard."""
    hole, symbol, place = looks.measured("hole_size"), looks.word("speed_symbol"), looks.word("hole_place")
    if hole is None or symbol is None or place is None or hole.amount.base <= 0:
        return NOT_LOOKED_AT
    if place not in _PLACES or symbol == "not known":
        return Word("not known")
    return Word(repair_allowed(symbol, hole.amount.base, looks.counted("earlier_repairs") or 0, _PLACES[place]))


def overload(looks: Looks) -> Measured | Silent:
    """How much the heaviest load of the axle is more than the load index carries."""
    index, load = looks.counted("load_index"), looks.measured("axle_load")
    if index is None or load is None:
        return NOT_LOOKED_AT
    return worked_out(load.amount.base - load_kg(index), "mass", "kg", load.uncertainty)


def speed(looks: Looks) -> Word | Silent:
    """The speed symbol against the machine's top speed."""
    symbol, top = looks.word("speed_symbol"), looks.measured("top_speed")
    if symbol is None or top is None:
        return NOT_LOOKED_AT
    return Word("not known" if symbol == "not known" else speed_fit(symbol, top.amount.base))


def pressure_at_20(looks: Looks) -> Measured | Silent:
    """What a warm tyre would show at 20 degrees; how well its heat is known is part of the doubt."""
    warm, heat = looks.measured("warm_pressure"), looks.measured("tyre_temperature")
    if warm is None or heat is None:
        return NOT_LOOKED_AT
    cold = pressure_at(warm.amount.base, heat.amount.base, _COLD, _AIR_KPA)
    a_degree_more = pressure_at(warm.amount.base, heat.amount.base + 1, _COLD, _AIR_KPA)
    doubt = math.hypot(warm.uncertainty, (cold - a_degree_more) * heat.uncertainty)
    return worked_out(max(cold, 0.0), "pressure", warm.amount.unit, doubt)
