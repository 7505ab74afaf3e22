"""A reading thicker than the last one: the same part, a new part, or a slip of the hand?

Knows no record; it only weighs three stories against one reading. Lengths in mm, distances in 1000 km.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from inspector.quantities.arrays import not_negative, phi, positive

_PRIOR_SAME, _PRIOR_REPLACED, _PRIOR_MISREAD = 0.90, 0.07, 0.03  # own choice
_WIDEST_READING = 1.3  # a misreading is anything up to this many new parts thick (own choice)


@dataclass(frozen=True)
class Readings:
    """Two readings of one part, each with its standard uncertainty, and the distance between them."""

    first: float
    first_uncertainty: float
    second: float
    second_uncertainty: float
    distance: float


@dataclass(frozen=True)
class Stories:
    """Chances of the three stories; they add up to one."""

    same_part: float
    replaced: float
    misread: float


def which_story(
    readings: Readings, *, rate: float, rate_sd: float, new: float, new_sd: float, jitter: float = 0.0
) -> Stories:
    """Weigh the three stories of a second reading, given wear rate and thickness of a new part.

    A replaced part may have been fitted anywhere on the way. The answer is a question to the owner, never a
    reason to forget the history. Raises ValueError for negative input, and where nothing is uncertain, no
    way was ridden or nothing wears. Source: own model; priors are an own choice.
    """
    way, speed = positive("The distance", readings.distance), positive("The wear rate", rate)
    size = positive("The thickness of a new part", new)
    first = not_negative("The first reading", readings.first)
    second = not_negative("The second reading", readings.second)
    u_first = not_negative("The uncertainty of the first reading", readings.first_uncertainty)
    u_second = positive("The uncertainty of the second reading", readings.second_uncertainty)
    doubt = not_negative("The uncertainty of the rate", rate_sd)
    noise = not_negative("The jitter", jitter)
    worn = speed * way
    spread = math.sqrt(u_first**2 + u_second**2 + (doubt * way) ** 2 + noise * way)
    z = (second - first + worn) / spread
    same = _PRIOR_SAME * math.exp(-z * z / 2) / (spread * math.sqrt(2 * math.pi))
    blur = math.sqrt(not_negative("The spread of new parts", new_sd) ** 2 + u_second**2)
    replaced = _PRIOR_REPLACED * (phi((second - size + worn) / blur) - phi((second - size) / blur)) / worn
    misread = _PRIOR_MISREAD / (_WIDEST_READING * size)
    total = same + replaced + misread
    return Stories(same / total, replaced / total, misread / total)
