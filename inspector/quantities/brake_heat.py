"""Heat that braking puts into discs: an upper bound from energy, and a balance with cooling.

Masses in kg, speeds in km/h, heights in m, energy in J, power in W, temperatures in degrees Celsius. No
owner knows how well a disc cools, so the spread between the two answers is part of the answer. Knows no
part.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import Number, as_given, between, exp, finite, not_negative, positive

GRAVITY = 9.80665
IRON = 460.0
"""Specific heat of iron and steel, J/(kg K); pages and problem books use 448 to 460."""
AIR_DENSITY = 1.2

DescentHeat = Literal["normal", "strong", "more than these brakes shed"]

_KMH = 3.6
_FASTEST = 1000.0  # km/h; more is a slip
_DISC_KG = 0.8  # one motorcycle disc; two in front and one behind make about 2.4
_DOWNHILL, _SLOPE = 40.0, 0.10  # km/h and height over distance of a mountain pass
_DRAG_AREA, _ROLLING = 0.7, 0.02
_POOR_COOLING, _GOOD_COOLING = 5.0 / 3, 10.0 / 3  # W/K of one disc at that speed
_LOW_GEAR = 1500.0  # W that the engine takes in a low gear
_NORMAL_RISE = 230.0  # published design rule for one hard stop from 128 km/h
_FADING_RISE = 330.0  # organic linings fade from about 350 degrees on (from memory)


def motion_energy(mass: Number | float, speed: Number, end_speed: Number | float = 0.0) -> Number:
    """Energy given up in slowing from one speed to another, in J.

    Raises ValueError for a mass that is not positive, a speed outside 0 to 1000 km/h, or an end speed above the
    first.
    """
    weight = positive("The mass", mass)
    first = between("The speed", speed, 0.0, _FASTEST) / _KMH
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


def descent_heat(mass: float, height: float, discs: int) -> DescentHeat:
    """Whether a long descent at one in ten heats so many discs beyond what they shed; ends with one stop.

    `mass` with rider and load, `height` in m. Normal when poor cooling without the engine's help keeps the rise
    under that of one hard stop as brakes are laid out for; beyond when linings fade in spite of good cooling and a
    low gear. Raises ValueError outside the domain. Source: lumped heat balance; slope, speed, cooling, the
    engine's help and the two bounds are own choices.
    """
    count = int(positive("The number of discs", discs))
    stop = disc_rise(motion_energy(mass, _DOWNHILL), count * _DISC_KG)
    if disc_rise(descent_energy(mass, height), count * _DISC_KG) + stop <= _NORMAL_RISE:
        return "normal"  # even if all of it stayed in the discs
    seconds = height / _SLOPE / (_DOWNHILL / _KMH)

    def rise(cooling: float, engine: float) -> float:
        power = braking_power(mass, _DOWNHILL, _SLOPE, drag_area=_DRAG_AREA, rolling=_ROLLING, engine=engine)
        capacity = count * _DISC_KG * IRON
        return stop + cooled_temperature(
            0.0, 0.0, power, cooling=cooling * count, heat_capacity=capacity, seconds=seconds
        )

    if rise(_GOOD_COOLING, _LOW_GEAR) > _FADING_RISE:
        return "more than these brakes shed"
    return "normal" if rise(_POOR_COOLING, 0.0) <= _NORMAL_RISE else "strong"
