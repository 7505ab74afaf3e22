"""How hard a warm gear case pulls on water when it cools, against how hard the water's depth pushes.

Pressures in kPa, depths in m, temperatures in degrees Celsius, volumes in ml. Ideal gas. Knows no part and
no rule.
"""

from __future__ import annotations

from typing import Any, Literal

from inspector.quantities.arrays import Number, as_given, finite, not_negative, positive

Push = Literal["cooling", "depth"]

HOT_CASE, COLD_WATER = 80.0, 15.0
"""Degrees of a gear case after a ride and of the water it meets; own choice, the usual example."""

GRAVITY = 9.80665
WATER_DENSITY = 1000.0
AIR_PRESSURE = 101.325

_KELVIN = 273.15
_OIL_DENSITY = 0.88  # g/ml, usual gear oil
_AIR_FOR_OIL = 80.0 / 180.0  # air over the oil of a small bevel drive, by its volume; own choice


def head(depth: Number) -> Number:
    """Pressure of still water at a depth, over that of the air. Raises ValueError for a negative depth."""
    return as_given(WATER_DENSITY * GRAVITY * not_negative("The depth", depth) / 1000, depth)


def water_column(pressure: Number) -> Number:
    """Depth of water that presses as hard: the inverse of `head`. Raises ValueError below zero."""
    return as_given(1000 * not_negative("The pressure", pressure) / (WATER_DENSITY * GRAVITY), pressure)


def suction(hot: Number, cold: Number | float, air: float = AIR_PRESSURE) -> Number:
    """Vacuum in a sealed case that was closed hot and has cooled: air pressure x (1 - T2 / T1).

    Raises ValueError at or below absolute zero, and when `cold` is warmer than `hot`.
    Source: gas law at constant volume.
    """
    return as_given(positive("The air pressure", air) * _shrinks(hot, cold), hot)


def drawn_volume(air_space: Number, hot: Number | float, cold: Number | float) -> Number:
    """Water (or air) drawn in through an open breather while the air in the case cools, in ml.

    Raises ValueError for an air space that is not positive and as `suction`. Source: gas law at constant
    pressure.
    """
    return as_given(positive("The air space", air_space) * _shrinks(hot, cold), air_space)


def water_ppm(water_g: Number, oil_ml: Number | float) -> Number:
    """Water in oil, in parts per million by mass of the oil.

    Raises ValueError without oil and for negative water.
    """
    oil = positive("The oil", oil_ml) * _OIL_DENSITY
    return as_given(1e6 * not_negative("The water", water_g) / oil, water_g)


def vapour_drawn(air_space: Number, hot: Number | float, cold: Number | float, g_per_m3: float = 23.0) -> Number:
    """Water in g that humid air brings in at one cooling; 23 g in a cubic metre is a warm, wet day.

    Raises ValueError as `drawn_volume` and for negative humidity. Source: gas law.
    """
    return as_given(drawn_volume(air_space, hot, cold) * 1e-6 * not_negative("The humidity", g_per_m3), air_space)


def water_at_cooling(
    oil_ml: Number, *, under_water: bool, hot: float = HOT_CASE, cold: float = COLD_WATER
) -> Number:
    """Water that one cooling may bring into the oil of a small bevel drive, in ppm by mass of the oil.

    Through an open breather under water the air that shrinks is replaced by water, above it by the humid air of a
    warm, wet day. Raises ValueError without oil and as `suction`. Source: gas law; the air over the oil is taken
    as four ninths of the oil's volume (own choice).
    """
    air = positive("The oil", oil_ml) * _AIR_FOR_OIL
    drawn = drawn_volume(air, hot, cold) * WATER_DENSITY / 1000 if under_water else vapour_drawn(air, hot, cold)
    return as_given(water_ppm(drawn, oil_ml), oil_ml)


def stronger_push(depth: float, hot: float = HOT_CASE, cold: float = COLD_WATER) -> Push:
    """Which drives water harder into a sealed case so far under water: its cooling, or the depth.

    Raises ValueError for a negative depth and as `suction`. Source: gas law and weight of water; the water
    column of the usual cooling is 1.90 m.
    """
    return "cooling" if water_column(suction(hot, cold)) >= float(not_negative("The depth", depth)) else "depth"


def _shrinks(hot: Any, cold: Any) -> Any:
    before = positive("The absolute temperature when hot", finite("The hot temperature", hot) + _KELVIN)
    later = positive("The absolute temperature when cold", finite("The cold temperature", cold) + _KELVIN)
    not_negative("The cooling", before - later)
    return 1 - later / before
