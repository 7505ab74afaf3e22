"""How much longer a drive chain has become.

Lengths in mm, measured on the tight run under a light pull. Knows no part, no rule and no wear limit of its
own.
"""

from __future__ import annotations

from inspector.quantities.arrays import Number, as_given, not_negative, positive

# Motorcycle series by their first digit, which is the pitch in eighths of an inch.
_EIGHTH = 25.4 / 8
_SERIES = ("415", "420", "428", "520", "525", "530", "630")

_MOST_TEETH_FOR_3_PERCENT = 67
_PERCENT_TIMES_TEETH = 200.0
_INDUSTRIAL_PERCENT, _FIXED_PERCENT = 3.0, 1.5


def pitch_of(series: str) -> float:
    """Distance from pin to pin of a motorcycle chain in mm, from its number: 525 has five eighths of an inch.

    Letters after the number are left out of account. Raises ValueError for a number that is not known.
    Source: chain makers' code.
    """
    number = series.strip()[:3]
    if number not in _SERIES:
        raise ValueError(f"{series!r} is no known chain number. Known: {', '.join(_SERIES)}.")
    return int(number[0]) * _EIGHTH


def length_from_rollers(inside: Number, outside: Number | float) -> Number:
    """Length from pin to pin, from the distance between the inner and between the outer sides of two rollers.

    The clearance of the rollers drops out. Raises ValueError unless both are positive and the outer is
    longer. Source: chain handbook.
    """
    near, far = positive("The inner distance", inside), positive("The outer distance", outside)
    positive("The outer less the inner distance", far - near)
    return as_given((near + far) / 2, inside)


def elongation(length: Number, pitches: Number | float, pitch: Number | float) -> Number:
    """Lengthening in percent of the new length; twenty pitches reach from pin 1 to pin 21.

    Slightly negative is a new or a slack chain. Raises ValueError unless all are positive.
    """
    new = positive("The number of pitches", pitches) * positive("The pitch", pitch)
    return as_given(100 * (positive("The length", length) - new) / new, length)


def elongation_uncertainty(uncertainty: Number, pitches: Number | float, pitch: Number | float) -> Number:
    """Standard uncertainty of the lengthening, in percent, from that of the length."""
    new = positive("The number of pitches", pitches) * positive("The pitch", pitch)
    return as_given(100 * not_negative("The uncertainty", uncertainty) / new, uncertainty)


def industrial_limit(teeth: int, *, adjustable: bool = True) -> float:
    """Lengthening in percent at which an industrial chain is renewed, by the teeth of its larger sprocket.

    Three percent up to 67 teeth, 200 / teeth above; half of three where nothing can be adjusted. Motorcycle
    makers ask for less. Raises ValueError for fewer than one tooth. Source: chain handbook.
    """
    count = int(positive("The number of teeth", teeth))
    by_teeth = _INDUSTRIAL_PERCENT if count <= _MOST_TEETH_FOR_3_PERCENT else _PERCENT_TIMES_TEETH / count
    return by_teeth if adjustable else min(by_teeth, _FIXED_PERCENT)
