"""Which grade an oil's viscosity belongs to: SAE J306 for gears, SAE J300 for engines.

Kinematic viscosities in mm2/s (the same as cSt). Gear and engine numbers are separate scales: a gear 90 is
about an engine 40 to 50. Knows no part and no rule.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from inspector.quantities.arrays import positive
from inspector.quantities.conformity import chance_beyond, outcome

GradeMatch = Literal["same", "thinner", "thicker", "stiffer in the cold"]
AgainstGrade = Literal["in its grade", "thinner than its grade", "thicker than its grade"]
MixAgainstGrade = Literal[
    "in the grade asked for",
    "near the thin end of the grade",
    "near the thick end of the grade",
    "thinner than the grade asked for",
    "thicker than the grade asked for",
]

_SCALE_END = float("inf")
_BORNE = 0.2

# SAE J306 (Feb 2019), at 100 degrees: lower edge of each grade; it ends where the next begins. Reference
# chart.
_GEAR = (("65", 3.8), ("70", 5.0), ("75", 6.5), ("80", 8.5), ("85", 11.0), ("90", 13.5), ("110", 18.5))
_GEAR_EDGES = (*_GEAR, ("140", 24.0), ("190", 32.5), ("250", 41.0))
# Winter grades: temperature up to which 150 Pa s are not passed, and least viscosity at 100 degrees.
_GEAR_WINTER = {"70W": (-55.0, 3.8), "75W": (-40.0, 3.8), "80W": (-26.0, 8.5), "85W": (-12.0, 11.0)}

# SAE J300 (Jan 2015), band at 100 degrees.
_ENGINE = {
    **{"8": (4.0, 6.1), "12": (5.0, 7.1), "16": (6.1, 8.2), "20": (6.9, 9.3)},
    **{"30": (9.3, 12.5), "40": (12.5, 16.3), "50": (16.3, 21.9), "60": (21.9, 26.1)},
}
_ENGINE_WINTER = {"0W": 3.8, "5W": 3.8, "10W": 4.1, "15W": 5.6, "20W": 5.6, "25W": 9.3}


@dataclass(frozen=True)
class Band:
    """From `low` (included) up to `high` (excluded), in mm2/s."""

    low: float
    high: float

    def holds(self, viscosity: float) -> bool:
        """Tell whether a viscosity lies in this band. Raises ValueError unless it is positive."""
        return self.low <= float(positive("The viscosity", viscosity)) < self.high


def gear_band(grade: str) -> Band:
    """Viscosity at 100 degrees that a gear oil grade asks for: `90`, `75W` or `75W-90`.

    A double grade meets both of its rows. Raises ValueError for a grade that is not in the table.
    Source: SAE J306, Feb 2019; older editions differ for 75W, 80W and thinner.
    """
    edges = dict(_GEAR_EDGES)
    bands = {name: Band(low, high) for (name, low), (_, high) in pairwise([*_GEAR_EDGES, ("", _SCALE_END)])}
    winter, summer = _split(grade, tuple(_GEAR_WINTER), tuple(edges))
    low = max(_GEAR_WINTER[winter][1] if winter else 0.0, bands[summer].low if summer else 0.0)
    return Band(low, bands[summer].high if summer else _SCALE_END)


def gear_cold_end(grade: str) -> float:
    """Lowest temperature in degrees Celsius at which a winter gear oil still reaches its places.

    Raises ValueError for a grade without a W. Source: SAE J306, 150 000 mPa s.
    """
    winter, _ = _split(grade, tuple(_GEAR_WINTER), tuple(dict(_GEAR_EDGES)))
    if not winter:
        raise ValueError(f"{grade!r} is no winter grade, so no cold end is promised.")
    return _GEAR_WINTER[winter][0]


def gear_grade_match(filled: str, specified: str) -> GradeMatch:
    """How the gear oil grade filled compares with the one specified: warm first, then in the cold.

    Raises ValueError for a grade that is not in the table. Source: SAE J306, Feb 2019.
    """
    have, want = gear_band(filled), gear_band(specified)
    if have.low < want.low:
        return "thinner"
    if have.low >= want.high:
        return "thicker"
    cold = [gear_cold_end(grade) if "W" in grade.upper() else _SCALE_END for grade in (filled, specified)]
    return "stiffer in the cold" if cold[0] > cold[1] else "same"


def against_gear_grade(viscosity: float, grade: str) -> AgainstGrade:
    """Whether a viscosity at 100 degrees lies in the band of a gear oil grade.

    Raises ValueError for an unknown grade and a viscosity that is not positive. Source: SAE J306, Feb 2019.
    """
    return _against(viscosity, gear_band(grade))


def engine_band(grade: str) -> Band:
    """Viscosity at 100 degrees that an engine oil grade asks for: `40`, `10W` or `10W-40`.

    Raises ValueError for a grade that is not in the table. Source: SAE J300, Jan 2015 (two pages agree).
    """
    winter, summer = _split(grade, tuple(_ENGINE_WINTER), tuple(_ENGINE))
    low = max(_ENGINE_WINTER[winter] if winter else 0.0, _ENGINE[summer][0] if summer else 0.0)
    return Band(low, _ENGINE[summer][1] if summer else _SCALE_END)


def engine_grade_match(filled: str, specified: str) -> GradeMatch:
    """How the engine oil grade filled compares with the one specified: warm first, then in the cold.

    Raises ValueError for a grade that is not in the table. Source: SAE J300, Jan 2015; a lower W figure flows in
    more cold.
    """
    have, want = engine_band(filled), engine_band(specified)
    if have.high <= want.low or have.low < want.low:
        return "thinner"
    if have.low >= want.high:
        return "thicker"
    cold = [_winter_number(grade) for grade in (filled, specified)]
    return "stiffer in the cold" if cold[0] > cold[1] else "same"


def against_engine_grade(viscosity: float, grade: str) -> AgainstGrade:
    """Whether a viscosity at 100 degrees lies in the band of an engine oil grade.

    Raises ValueError for an unknown grade and a viscosity that is not positive. Source: SAE J300, Jan 2015.
    """
    return _against(viscosity, engine_band(grade))


def mix_against_band(viscosity: float, uncertainty: float, band: Band) -> MixAgainstGrade:
    """Whether a mixed oil, its viscosity at 100 degrees known only so well, stays in a band.

    In it when the chance of being outside is at most one in five; outside above one half. Raises ValueError for
    a viscosity that is not positive and a negative uncertainty. Source: decision as in `conformity`; one in five
    is an own choice, since another grade wears slowly.
    """
    found = float(positive("The viscosity", viscosity))
    high = band.high if band.high < _SCALE_END else None
    stands = outcome(found, uncertainty, at_least=band.low, at_most=high, act_over_loss=_BORNE)
    if stands == "within":
        return "in the grade asked for"
    too_thick = 0.0 if high is None else chance_beyond(found, uncertainty, at_most=high)
    thin = chance_beyond(found, uncertainty, at_least=band.low) >= too_thick
    if stands == "beyond":
        return "thinner than the grade asked for" if thin else "thicker than the grade asked for"
    return "near the thin end of the grade" if thin else "near the thick end of the grade"


def _against(viscosity: float, band: Band) -> AgainstGrade:
    if band.holds(viscosity):
        return "in its grade"
    return "thinner than its grade" if viscosity < band.low else "thicker than its grade"


def _winter_number(grade: str) -> float:
    winter, _ = _split(grade, tuple(_ENGINE_WINTER), tuple(_ENGINE))
    return float(winter[:-1]) if winter else _SCALE_END


def _split(grade: str, winters: tuple[str, ...], summers: tuple[str, ...]) -> tuple[str, str]:
    plain = grade.upper().replace("SAE", "").replace(" ", "")
    first, _, second = plain.partition("-")
    winter, summer = (first, second) if first.endswith("W") else ("", first)
    if (
        not plain
        or (winter and winter not in winters)
        or (summer and summer not in summers)
        or (second and not winter)
    ):
        raise ValueError(f"{grade!r} is no grade of this table. Known: {', '.join((*winters, *summers))}.")
    return winter, summer
