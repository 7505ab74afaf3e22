"""Down to which temperature a coolant stays liquid. Knows no part and no rule.

Temperatures in degrees Celsius. Shares by mass unless a name says volume: sheets and bottles mix the two
up.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import Number, as_given, between, interpolate

Glycol = Literal["ethylene", "propylene"]
ShareBy = Literal["mass", "volume"]

# Percent by mass against freezing point, from the open library CoolProp 8.0.0 (INCOMP::MEG and MPG). Straight
# lines between these points stay within 0.3 degrees of it.
_MASS = (0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0)
_FREEZES: dict[str, tuple[float, ...]] = {
    "ethylene": (0.0, -1.6, -3.4, -5.4, -7.9, -11.0, -14.6, -18.8, -23.8, -29.5, -36.0, -43.2, -51.2),
    "propylene": (0.0, -1.2, -2.9, -4.9, -7.2, -9.8, -12.8, -16.3, -20.6, -25.8, -32.2, -40.2, -50.0),
}

# Propylene glycol by volume: Lange's Handbook, table 5.13.
_VOLUME = (0.0, 10.0, 20.0, 30.0, 40.0, 45.0, 50.0)
_FREEZES_BY_VOLUME = (0.0, -2.2, -6.7, -12.8, -20.6, -26.7, -33.3)

_DENSITY = {"ethylene": 1.113, "propylene": 1.036}  # g/ml at 20 degrees, from memory
_WATER = 0.998


def freezing_point(glycol: Glycol, percent_by_mass: Number) -> Number:
    """Temperature at which the first ice forms, by the share of glycol in the water, 0 to 60 % by mass.

    More glycol does not help: pure ethylene glycol freezes at about -13. Raises ValueError outside 0 to 60
    and for another glycol. Source: calculated with an open library; straight lines between its points.
    """
    share = between("The share of glycol", percent_by_mass, 0.0, _MASS[-1])
    return as_given(interpolate(share, _MASS, _points(glycol)), percent_by_mass)


def propylene_freezing_by_volume(percent_by_volume: Number) -> Number:
    """Temperature at which ice forms in propylene glycol and water, 0 to 50 % by volume.

    Raises ValueError outside. Source: Lange's Handbook, table 5.13 (second hand).
    """
    share = between("The share of glycol", percent_by_volume, 0.0, _VOLUME[-1])
    return as_given(interpolate(share, _VOLUME, _FREEZES_BY_VOLUME), percent_by_volume)


def share_by_mass(glycol: Glycol, percent_by_volume: Number) -> Number:
    """Percent by mass of a mix that was measured out by volume. Raises ValueError outside 0 to 100.

    Source: plain arithmetic; the densities at 20 degrees are from memory.
    """
    _points(glycol)
    share = between("The share of glycol", percent_by_volume, 0.0, 100.0)
    heavy = share * _DENSITY[glycol]
    return as_given(100 * heavy / (heavy + (100 - share) * _WATER), percent_by_volume)


def mix_freezes_at(glycol: Glycol, percent: float, by: ShareBy) -> float:
    """Temperature at which ice forms in a mix; a share above 60 % by mass counts as 60.

    Propylene glycol by volume has a table of its own up to a half; the rest goes by mass. Raises ValueError
    outside 0 to 100. Source: as `freezing_point` and `propylene_freezing_by_volume`.
    """
    if by == "volume" and glycol == "propylene" and percent <= _VOLUME[-1]:
        return propylene_freezing_by_volume(percent)
    mass = share_by_mass(glycol, percent) if by == "volume" else float(between("The share", percent, 0.0, 100.0))
    return freezing_point(glycol, min(mass, _MASS[-1]))


def _points(glycol: str) -> tuple[float, ...]:
    if glycol not in _FREEZES:
        raise ValueError(f"{glycol!r} is no glycol of the table. Use one of: {', '.join(_FREEZES)}.")
    return _FREEZES[glycol]
