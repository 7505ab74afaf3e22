"""Brake fluid: which classes go together, when a fluid boils, and how much water its age may have brought.

Temperatures in degrees Celsius, water in percent by volume. Class minima, not the figures of a fresh good
fluid. Knows no part and no rule.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import Number, as_given, between, interpolate, not_negative

FluidMatch = Literal["same", "mixable", "wrong"]

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
