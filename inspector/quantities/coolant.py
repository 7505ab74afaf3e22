"""Down to which temperature a coolant stays liquid. Knows no part and no rule.

Temperatures in degrees Celsius. Shares by mass unless a name says volume: sheets and bottles mix the two
up.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import Number, as_given, between, interpolate

Glycol = Literal["ethylene", "propylene"]

# Percent by mass against freezing point, from the open library CoolProp 8.0.0 (INCOMP::MEG and MPG).
_MASS = (0.0, 10.0, 20.0, 30.0, 33.0, 40.0, 50.0, 55.0, 60.0)
_FREEZES: dict[str, tuple[float, ...]] = {
    "ethylene": (0.0, -3.4, -7.9, -14.6, -17.1, -23.8, -36.0, -43.2, -51.2),
    "propylene": (0.0, -2.9, -7.2, -12.8, -14.8, -20.6, -32.2, -40.2, -50.0),
}

# Propylene glycol by volume: Lange's Handbook, table 5.13.
_VOLUME = (0.0, 10.0, 20.0, 30.0, 40.0, 45.0, 50.0)
_FREEZES_BY_VOLUME = (0.0, -2.2, -6.7, -12.8, -20.6, -26.7, -33.3)


def freezing_point(glycol: Glycol, percent_by_mass: Number) -> Number:
    """Temperature at which the first ice forms, by the share of glycol in the water, 0 to 60 % by mass.

    More glycol does not help: pure ethylene glycol freezes at about -13. Raises ValueError outside 0 to 60
    and for another glycol. Source: calculated with an open library; straight lines between its points.
    """
    share = between("The share of glycol", percent_by_mass, 0.0, _MASS[-1])
    return as_given(interpolate(share, _MASS, _points(glycol)), percent_by_mass)


def share_for(glycol: Glycol, temperature: Number) -> Number:
    """Share of glycol in percent by mass that stays free of ice down to a temperature.

    The inverse of `freezing_point`: what a refractometer (meant for the same glycol) reads, as a share.
    Raises ValueError for temperatures the table does not reach.
    """
    points = _points(glycol)
    wanted = between("The temperature", temperature, points[-1], 0.0)
    return as_given(interpolate(wanted, points[::-1], _MASS[::-1]), temperature)


def propylene_freezing_by_volume(percent_by_volume: Number) -> Number:
    """Temperature at which ice forms in propylene glycol and water, 0 to 50 % by volume.

    Raises ValueError outside. Source: Lange's Handbook, table 5.13 (second hand).
    """
    share = between("The share of glycol", percent_by_volume, 0.0, _VOLUME[-1])
    return as_given(interpolate(share, _VOLUME, _FREEZES_BY_VOLUME), percent_by_volume)


def _points(glycol: str) -> tuple[float, ...]:
    if glycol not in _FREEZES:
        raise ValueError(f"{glycol!r} is no glycol of the table. Use one of: {', '.join(_FREEZES)}.")
    return _FREEZES[glycol]
