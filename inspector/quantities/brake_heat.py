"""Heat that braking puts into discs: an upper bound from energy, and a balance with cooling.

Masses in kg, speeds in km/h, heights in m, energy in J, power in W, temperatures in degrees Celsius. No
owner knows how well a disc cools, so the spread between the two answers is part of the answer. Knows no
part.
"""

from __future__ import annotations

import math

from inspector.quantities.arrays import Number, as_given, between, exp, finite, not_negative, positive

GRAVITY = 9.80665
IRON = 460.0
"""Specific heat of iron and steel, J/(kg K); pages and problem books use 448 to 460."""
AIR_DENSITY = 1.2

_KMH = 3.6


def motion_energy(mass: Number | float, speed: Number, end_speed: Number | float = 0.0) -> Number:
    """Energy given up in slowing from one speed to another, in J.

    Raises ValueError for a mass that is not positive, a negative speed, or an end speed above the first.
    """
    weight = positive("The mass", mass)
    first = not_negative("The speed", speed) / _KMH
    last = not_negative("The end speed", end_speed) / _KMH
    not_negative("The speed taken off", first - last)
    return as_given(weight * (first * first - last * last) / 2, speed)


def descent_energy(mass: Number | float, height: Number, gravity: float = GRAVITY) -> Number:
    """Energy given up in rolling down a height, in J. Raises ValueError for negative input."""
    weight = positive("The mass", mass) * positive("The gravity", gravity)
    return as_given(weight * not_negative("The height", height), height)


def disc_rise(
    energy: Number, disc_mass: Number | float, *, share: Number | float = 1.0, specific_heat: float = IRON
) -> Number:
    """Upper bound of the rise in temperature, in K: all the heat stays in the discs.

    `share` is the part of the energy that goes into these discs, `disc_mass` their mass together. Raises
    ValueError for negative energy, a share outside 0 to 1, or a mass or specific heat that is not positive.
    Source: heat = mass x specific heat x rise.
    """
    heat = not_negative("The energy", energy) * between("The share", share, 0.0, 1.0)
    capacity = positive("The disc mass", disc_mass) * positive("The specific heat", specific_heat)
    return as_given(heat / capacity, energy)


def braking_power(
    mass: Number | float,
    speed: Number,
    slope: Number | float,
    *,
    drag_area: float,
    rolling: float,
    engine: float = 0.0,
) -> Number:
    """Power left to the brakes in holding a speed downhill, in W; 0 where air, rolling and engine suffice.

    `slope` is height over level distance (0.10 for 10 %), `drag_area` in m2, `rolling` the rolling
    resistance coefficient, `engine` the braking power of the engine in W. Raises ValueError for negative
    input.
    """
    pace = not_negative("The speed", speed) / _KMH
    weight = positive("The mass", mass) * GRAVITY
    fall = not_negative("The slope", slope)
    hypotenuse = (1 + fall * fall) ** 0.5
    air = AIR_DENSITY / 2 * not_negative("The drag area", drag_area) * pace * pace * pace
    rolled = not_negative("The rolling resistance", rolling) * weight / hypotenuse * pace
    left = weight * fall / hypotenuse * pace - air - rolled - not_negative("The engine power", engine)
    return as_given((left + abs(left)) / 2, speed)


def cooled_temperature(
    start: Number | float,
    ambient: Number | float,
    power: Number,
    *,
    cooling: float,
    heat_capacity: float,
    seconds: Number | float,
) -> Number:
    """Temperature after so many seconds at a steady braking power, with cooling.

    `cooling` is film coefficient times surface in W/K, `heat_capacity` mass times specific heat in J/K;
    both must be more than zero. Raises ValueError outside the domain. Source: lumped heat balance.
    """
    outside = finite("The outside temperature", ambient)
    steady = outside + not_negative("The power", power) / positive("The cooling", cooling)
    fading = not_negative("The time", seconds) * cooling / positive("The heat capacity", heat_capacity)
    return as_given(steady + (finite("The first temperature", start) - steady) * exp(-fading), power)


def hottest_speed(terminal_speed: float) -> float:
    """Speed at which a descent heats the brakes most when only air helps: terminal speed over root three.

    `terminal_speed` is the speed at which the machine would roll by itself. Same unit out as in.
    Raises ValueError unless it is positive.
    """
    return float(positive("The terminal speed", terminal_speed)) / math.sqrt(3)
