"""Viscosity of an oil at another temperature, of two oils mixed, and its index; do two figures belong together?

Kinematic viscosities in mm2/s (the same as cSt). Knows no part and no rule.
"""

from __future__ import annotations

import math
from typing import Any, Literal

from inspector.quantities.arrays import Number, as_given, between, each, exp, finite, log10, positive, where

Together = Literal["belong together", "do not belong together"]

_KELVIN = 273.15
_THINNEST, _THICKEST = 0.21, 2e7  # the relation of ASTM D341 ends at both
_COLDEST, _HOTTEST = -70.0, 370.0
_INDEX_FROM = 2.0
_TABLE_END = 70.0
_BELIEVABLE = (70.0, 250.0)

# ASTM D2270: L = a Y2 + b Y + c and H = d Y2 + e Y + f, up to the viscosity in the first column.
# Coefficients from memory; every row of the printed table comes out within 0.12 %.
_INDEX_ROWS = (
    (3.8, 1.14673, 1.7576, -0.109, 0.84155, 1.5521, -0.077),
    (4.4, 3.38095, -15.4952, 33.196, 0.78571, 1.7929, -0.183),
    (5.0, 2.5000, -7.2143, 13.812, 0.82143, 1.5679, 0.119),
    (6.4, 0.10100, 16.6350, -45.469, 0.04985, 9.1613, -18.557),
    (7.0, 3.35714, -23.5643, 78.466, 0.22619, 7.7369, -16.656),
    (7.7, 0.01191, 21.4750, -72.870, 0.79762, -0.7321, 14.610),
    (9.0, 0.41858, 16.1558, -56.040, 0.05794, 10.5156, -28.240),
    (12.0, 0.88779, 7.5527, -16.600, 0.26665, 6.7015, -10.810),
    (15.0, 0.76720, 10.7972, -38.180, 0.20073, 8.4658, -22.490),
    (18.0, 0.97305, 5.3135, -2.200, 0.28889, 5.9741, -4.930),
    (22.0, 0.97256, 5.2500, -0.980, 0.24504, 7.4160, -16.730),
    (28.0, 0.91413, 7.4759, -21.820, 0.20323, 9.1267, -34.230),
    (40.0, 0.87031, 9.7157, -50.770, 0.18411, 10.1015, -46.750),
    (55.0, 0.84703, 12.6752, -133.310, 0.17029, 11.4866, -80.620),
    (_TABLE_END, 0.85921, 11.1009, -83.190, 0.17130, 11.3680, -76.940),
)
_INDEX_BEYOND = (0.8353, 14.67, -216.0, 0.1684, 11.85, -97.0)


def viscosity_at(
    temperature: Number,
    first_temperature: float,
    first_viscosity: Number | float,
    second_temperature: float,
    second_viscosity: Number | float,
) -> Number:
    """Viscosity at a temperature, from those at two others; infinite where it would pass 20 000 000 mm2/s.

    Degrees Celsius, -70 to 370. Not to be believed below the pour point, and a guess in the cold for oils with
    thickening additives. Raises ValueError outside, for equal temperatures, for an oil that does not thin when
    warmer, and for a viscosity outside 0.21 to 20 000 000. Source: ASTM D341, general form (second hand).
    """
    cold, warm, wanted = (
        log10(between("A temperature", t, _COLDEST, _HOTTEST) + _KELVIN)
        for t in (first_temperature, second_temperature, temperature)
    )
    if first_temperature == second_temperature:
        raise ValueError("The two known points must have different temperatures.")
    first, second = _straightened(first_viscosity), _straightened(second_viscosity)
    slope = positive("The slope, thinner when warmer,", (first - second) / (warm - cold))
    return as_given(_bent(first - slope * (wanted - cold)), temperature)


def blend_viscosity(first: Number, second: Number | float, share_of_second: Number | float) -> Number:
    """Viscosity of a mixture of two oils, both known at one temperature; share by volume, 0 to 1.

    Meant for oils without thickening additives; with them an estimate. Raises ValueError for a share outside 0 to
    1 and for viscosities outside 0.21 to 20 000 000. Source: ASTM D7152, blending at one temperature (scope read,
    formula from memory).
    """
    share = between("The share of the second oil", share_of_second, 0.0, 1.0)
    return as_given(_bent((1 - share) * _straightened(first) + share * _straightened(second)), first)


def viscosity_index(at_40: Number, at_100: Number | float) -> Number:
    """Viscosity index, unrounded; the standard rounds it to a whole number.

    Defined from 2 mm2/s at 100 degrees upwards. Raises ValueError below, and for an oil that is not thicker
    at 40 degrees than at 100. Source: ASTM D2270 / ISO 2909, procedures A and B.
    """
    hot = between("The viscosity at 100 degrees", at_100, _INDEX_FROM, float("inf"))
    cold = finite("The viscosity at 40 degrees", at_40)
    positive("The viscosity at 40 less that at 100 degrees", cold - hot)
    low, high = each(_index_low, hot), each(_index_high, hot)
    straight = 100 * (low - cold) / (low - high)
    power = (log10(high) - log10(cold)) / log10(hot)
    curved = (10**power - 1) / 0.00715 + 100
    return as_given(where(cold >= high, straight, curved), at_40)


def belong_together(at_40: float, at_100: float) -> Together:
    """Whether two viscosities can be those of one engine or gear oil.

    Plain mineral oils have an index of about 90, the best synthetic ones stay under 250: an index outside 70
    to 250 speaks for a figure that was copied wrongly. Raises ValueError unless both are positive. Source: index
    as ASTM D2270; the range is an own choice.
    """
    cold, hot = float(positive("A viscosity", at_40)), float(positive("A viscosity", at_100))
    if cold <= hot or hot < _INDEX_FROM:
        return "do not belong together"
    low, high = _BELIEVABLE
    return "belong together" if low <= viscosity_index(cold, hot) <= high else "do not belong together"


def _straightened(viscosity: Any) -> Any:
    """The scale of ASTM D341 on which an oil is a straight line over the logarithm of its temperature."""
    v = between("A viscosity", viscosity, _THINNEST, _THICKEST)
    return log10(log10(v + 0.7 + exp(-1.47 - 1.84 * v - 0.51 * v * v)))


def _bent(value: Any) -> Any:
    """Back from the straight scale."""
    end = math.log10(math.log10(_THICKEST + 0.7)) + 1e-12
    kept = where(value > end, end, value)
    z = 10 ** (10**kept) - 0.7
    capped = where(z > 10.0, 10.0, z)  # the correction is nothing above 2, and its cubic must not overflow
    cubic = -0.7487 - 3.295 * capped + 0.6119 * capped**2 - 0.3193 * capped**3
    return where(value > end, math.inf, z - where(z > 10.0, 0.0, exp(cubic)))


def _index_row(hot: float) -> tuple[float, ...]:
    return next((row[1:] for row in _INDEX_ROWS if hot <= row[0]), _INDEX_BEYOND)


def _index_low(hot: float) -> float:
    a, b, c, *_ = _index_row(hot)
    return (a * hot + b) * hot + c


def _index_high(hot: float) -> float:
    *_, d, e, f = _index_row(hot)
    return (d * hot + e) * hot + f
