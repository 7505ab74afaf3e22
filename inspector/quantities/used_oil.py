"""What a laboratory prints about used oil: particle counts, magnetic debris, metals per distance.

Knows no part and no rule, and no alarm figure that would hold for every machine.
"""

from __future__ import annotations

import re
from typing import Literal

from inspector.quantities.arrays import Number, as_given, not_negative, positive

PqZone = Literal["no action", "monitor", "action"]
Trend = Literal["falling", "as before", "rising"]
CodeTrend = Literal["cleaner", "as before", "dirtier", "no code"]

# ISO 4406:2017: a number holds from above one edge up to and including the next; particles per millilitre.
_EDGES = (
    *(0.0, 0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64, 1.3, 2.5),
    *(5.0, 10.0, 20.0, 40.0, 80.0, 160.0, 320.0, 640.0, 1300.0, 2500.0),
    *(5e3, 1e4, 2e4, 4e4, 8e4, 1.6e5, 3.2e5, 6.4e5, 1.3e6, 2.5e6),
)
_LAST_NUMBER = len(_EDGES) - 2
_NUMBER = r"\d+(?: \d{3})*(?:\.\d+)?"
_COUNTS = re.compile(rf"(?P<counts>{_NUMBER}(?: ?/ ?{_NUMBER}){{2}}) ?(?:/|per) ?(?P<ml>1|10|100)? ?ml")

# Laboratory memo of an equipment dealer, 2008, "use only with no history": up to, and up to.
_PQ_ZONES: dict[str, tuple[float, float]] = {
    "engine": (28, 35),
    "powershift transmission": (44, 55),
    "hydraulic": (28, 35),
    "axle": (308, 385),
    "wheel final drive": (216, 270),
    "track final drive": (594, 743),
}
_PQ_TREND = 50.0
_CODE_STEP = 2


def iso4406_number(per_ml: float) -> int:
    """Scale number of a particle count per millilitre, 0 to 28; 29 stands for more than the scale.

    Raises ValueError for a negative count. Source: ISO 4406:2017.
    """
    count = float(not_negative("The particle count", per_ml))
    numbers = range(_LAST_NUMBER + 1)
    return next((number for number in numbers if count <= iso4406_bounds(number)[1]), _LAST_NUMBER + 1)


def iso4406_bounds(number: int) -> tuple[float, float]:
    """Particles per millilitre a scale number stands for: more than, up to and including.

    Raises ValueError outside 0 to 28. Source: ISO 4406:2017.
    """
    if not 0 <= number <= _LAST_NUMBER:
        raise ValueError(f"An ISO 4406 number lies between 0 and {_LAST_NUMBER}, found {number}.")
    return _EDGES[number], _EDGES[number + 1]


def pq_zone(compartment: str, pq: float) -> PqZone:
    """What a published memo advises for a magnetic debris index (PQ) of which no history is known.

    Heavy-equipment figures: no table for motorcycles was found. Raises ValueError for an unknown
    compartment or a negative index. Source: dealer's oil laboratory memo, 2008; the index is that of ASTM
    D8184.
    """
    if compartment not in _PQ_ZONES:
        raise ValueError(f"{compartment!r} is not in the memo. Use one of: {', '.join(_PQ_ZONES)}.")
    index = float(not_negative("The PQ index", pq))
    calm, watchful = _PQ_ZONES[compartment]
    if index <= calm:
        return "no action"
    return "monitor" if index <= watchful else "action"


def pq_jumped(before: float, now: float) -> bool:
    """Tell whether the index rose by half or more, which counts by itself.

    Raises ValueError unless the earlier index is positive. Source: same memo.
    """
    rise = float(not_negative("The PQ index", now)) / float(positive("The earlier PQ index", before)) - 1
    return 100 * rise >= _PQ_TREND


def per_1000_km(ppm: Number, distance_km: Number | float, new_oil: Number | float = 0.0) -> Number:
    """Metal gained per 1000 km on this fill, in ppm per 1000 km; negative when the new oil held more.

    Any other amount that is naught when the oil is new goes by the distance in the same way.
    Fills of different age compare only so. Raises ValueError for a negative content, or a distance that is
    not positive. Source: plain division.
    """
    gained = not_negative("The metal content", ppm) - not_negative("The metal content of new oil", new_oil)
    return as_given(1000 * gained / positive("The distance", distance_km), ppm)


def rate_trend(before: float, now: float) -> Trend:
    """Whether a rate rose or fell by half or more between two fills.

    Raises ValueError unless the earlier rate is positive and the later one not negative. Source: own choice,
    the share that the memo names for the PQ index.
    """
    if pq_jumped(before, now):
        return "rising"
    return "falling" if now == 0 or pq_jumped(now, before) else "as before"


def iso4406_numbers(code: str) -> tuple[int, int, int] | None:
    """The three numbers of a code such as `19/16/10`, or of three counts; None for a text that is neither.

    Counts name what they are counted in: `3000/500/7 per ml`, `300 000/50 000/700 per 100 ml`. They are particles
    of 4, 6 and 14 micrometres and more. A sign before a number (`≥7`, `>28`) is dropped. Larger particles never
    outnumber smaller ones. Source: ISO 4406:2017.
    """
    counted = _COUNTS.fullmatch(" ".join(code.lower().split()))
    if counted is not None:
        small, middle, large = (float(one.replace(" ", "")) for one in counted["counts"].split("/"))
        first, second, third = (iso4406_number(one / float(counted["ml"] or 1)) for one in (small, middle, large))
        return (first, second, third) if small >= middle >= large else None
    parts = [part.strip().lstrip("≥>") for part in code.split("/")]
    if len(parts) != 3 or not all(part.isascii() and part.isdigit() and len(part) <= 2 for part in parts):
        return None
    first, second, third = (int(part) for part in parts)
    return (first, second, third) if _LAST_NUMBER + 1 >= first >= second >= third else None


def iso4406_trend(before: str, now: str) -> CodeTrend:
    """Whether any size class of a code rose (or, with none risen, fell) by two numbers: four times as many.

    One number is within the scatter of counting. Source: ISO 4406:2017 doubles from number to number; two
    numbers are an own choice.
    """
    old, new = iso4406_numbers(before), iso4406_numbers(now)
    if old is None or new is None:
        return "no code"
    steps = [later - earlier for earlier, later in zip(old, new, strict=True)]
    if max(steps) >= _CODE_STEP:
        return "dirtier"
    return "cleaner" if min(steps) <= -_CODE_STEP else "as before"
