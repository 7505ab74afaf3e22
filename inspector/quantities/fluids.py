"""Brake fluid: which classes go together, when a fluid boils, and how much water its age may have brought.

Temperatures in degrees Celsius, water in percent by volume. Class minima, not the figures of a fresh good
fluid. Knows no part and no rule.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import Number, as_given, between, interpolate, not_negative, positive

FluidMatch = Literal["same", "mixable", "wrong"]
HardUse = Literal["fit", "expect strong heat", "not fit for mountains", "not known"]

# Lowest boiling point a class allows, dry and wet: FMVSS 116 (49 CFR 571.116), several pages agree.
# Class 6 (ISO 4925) is from memory.
BOILING_MINIMA: dict[str, tuple[float, float]] = {
    "dot 3": (205.0, 140.0),
    "dot 4": (230.0, 155.0),
    "dot 5.1": (260.0, 180.0),
    "dot 5": (260.0, 180.0),
    "iso class 6": (250.0, 165.0),
}
WET_WATER = 3.7
"""Water at which the wet boiling point is meant."""

HARD_USE_FLOOR = 180.0
"""Boiling point below which the trade changes a fluid (several pages); taken here as the least for hard use."""

_Z_95 = 1.645  # one-sided 95 %
_GLYCOL = ("dot 3", "dot 4", "dot 5.1", "iso class 6")
_KNOWN = (*BOILING_MINIMA, "mineral oil")

# What is left of the way from wet to dry boiling point, by water: the published DOT 3 points 205, 188, 160,
# 145 and 140 degrees. The other classes are given the same shape, which is an estimate.
_WATER = (0.0, 1.0, 2.0, 3.0, WET_WATER)
_LEFT = (1.0, 48 / 65, 20 / 65, 5 / 65, 0.0)

# Uptake a year: 1 to 2 % is claimed; 2.6 % was the mean of eight-year-old cars, 8 % the worst claim.
_SLOW, _SLOW_END = 1.0, 2.6
_FAST, _FAST_END = 2.0, 8.0


def fluid_match(filled: str, required: str) -> FluidMatch:
    """How the fluid in a circuit fits the one required: the same, one that mixes with it, or wrong.

    Glycol classes mix, and the mixture falls towards the lower one. Silicone (`dot 5`) and mineral oil mix
    with nothing and harm seals or brakes meant for the other. Raises ValueError for a class that is not
    known. Source: fluid makers' tables; mineral oil from memory.
    """
    for fluid in (filled, required):
        if fluid not in _KNOWN:
            raise ValueError(f"{fluid!r} is no fluid class. Use one of: {', '.join(_KNOWN)}.")
    if filled == required:
        return "same"
    return "mixable" if filled in _GLYCOL and required in _GLYCOL else "wrong"


def boiling_point(fluid_class: str, water: Number) -> Number:
    """Lowest boiling point to count on for a glycol class at a water content.

    Read for DOT 3, estimated by the same shape for the others; above 3.7 % the wet point is returned, which
    is then the best that can be hoped for. Raises ValueError for water outside 0 to 100 % and for fluids
    that take up none: in `dot 5` water stays apart and boils at 100 degrees. Source: FMVSS 116 minima; DOT
    3 against water from three agreeing pages.
    """
    if fluid_class not in _GLYCOL:
        raise ValueError(f"{fluid_class!r} takes up no water. Use one of: {', '.join(_GLYCOL)}.")
    share = between("The water content", water, 0.0, 100.0)
    dry, wet = BOILING_MINIMA[fluid_class]
    return as_given(wet + (dry - wet) * interpolate(share, _WATER, _LEFT), water)


def water_from_age(years: Number) -> tuple[Number, Number]:
    """Water a glycol fluid may hold after so many years in a machine: slow and fast uptake, in percent.

    A band, because sources differ by a factor of three. Raises ValueError for a negative age.
    Source: 1 to 2 % a year from trade pages, ends from field samples of cars; the band is an own choice.
    """
    age = not_negative("The age", years)
    slow = interpolate(age * _SLOW, (0.0, _SLOW_END), (0.0, _SLOW_END))
    fast = interpolate(age * _FAST, (0.0, _FAST_END), (0.0, _FAST_END))
    return as_given(slow, years), as_given(fast, years)


def boiling_from_age(fluid_class: str, years: Number) -> tuple[Number, Number]:
    """Boiling point after so many years: at worst and at best. Raises as the two functions above."""
    slow, fast = water_from_age(years)
    return boiling_point(fluid_class, fast), boiling_point(fluid_class, slow)


def takes_up_water(fluid_class: str) -> bool:
    """Tell whether water dissolves in this fluid, so that its boiling point can be told from the water."""
    return fluid_class in _GLYCOL


def hard_use_of(worst: float, best: float) -> HardUse:
    """Words for long braking downhill, from the lowest and the likely boiling point of a fluid.

    Fit when even the lowest reaches the trade's replace point, not fit when the likely one does not. Raises
    ValueError when `worst` lies above `best`. Source: replace point from trade pages; the words are ours.
    """
    not_negative("The likely boiling point less the lowest", best - worst)
    if worst >= HARD_USE_FLOOR:
        return "fit"
    return "expect strong heat" if best >= HARD_USE_FLOOR else "not fit for mountains"


def hard_use_from_age(fluid_class: str, years: float | None) -> HardUse:
    """The same from the age alone, or for a fluid whose age nobody knows (None).

    Old fluid may hold more water than the wet point is meant for, so it is then never called fit; of unknown
    age it is counted wet. Silicone and mineral oil take up no water: `not known`. Raises ValueError for a
    negative age. Source: as `boiling_from_age`.
    """
    if not takes_up_water(fluid_class):
        return "not known"
    if years is None:
        wet = BOILING_MINIMA[fluid_class][1]
        return hard_use_of(0.0, wet)
    worst, best = boiling_from_age(fluid_class, years)
    beyond_wet = water_from_age(years)[1] > WET_WATER
    return hard_use_of(0.0 if beyond_wet else worst, best)


def hard_use_from_water(fluid_class: str, water: float, uncertainty: float) -> HardUse:
    """The same from a tested water share and the standard uncertainty of the test, both in percent.

    The lowest boiling point is that of the share it stays under with 95 %. Raises ValueError for a share or an
    uncertainty outside 0 to 100.
    """
    if not takes_up_water(fluid_class):
        return "not known"
    most = water + _Z_95 * float(between("The uncertainty", uncertainty, 0.0, 100.0))
    worst = boiling_point(fluid_class, most) if most <= WET_WATER else 0.0
    return hard_use_of(worst, boiling_point(fluid_class, water))


def hard_use_from_boiling(boiling: float, uncertainty: float) -> HardUse:
    """The same from a boiling point that was tested. Raises ValueError unless it is positive, and as above."""
    positive("The boiling point", boiling)
    return hard_use_of(boiling - _Z_95 * float(not_negative("The uncertainty", uncertainty)), boiling)
