"""What is moulded on a tyre, how old it is, and what its pressure says at another temperature.

Also the repair rule of BS AU 159. Knows no part, no rule and no wear limit of tread.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from inspector.quantities.arrays import Number, as_given, between, finite, not_negative, positive

# Load index to kilograms, from index 30 upwards. Two published tables agree for 43 to 90, the rest is from
# one, above 95 from memory.
_FIRST_LOAD_INDEX = 30
_LOADS_KG = (
    *(106, 109, 112, 115, 118, 121, 125, 128, 132, 136),
    *(140, 145, 150, 155, 160, 165, 170, 175, 180, 185),
    *(190, 195, 200, 206, 212, 218, 224, 230, 236, 243),
    *(250, 257, 265, 272, 280, 290, 300, 307, 315, 325),
    *(335, 345, 355, 365, 375, 387, 400, 412, 425, 437),
    *(450, 462, 475, 487, 500, 515, 530, 545, 560, 580),
    *(600, 615, 630, 650, 670, 690, 710, 730, 750, 775, 800),
)

# Speed symbols in km/h. H stands between U and V. Z and brackets mean "more than"; C, D, E, G, (V), (Y) are from
# memory.
SPEEDS_KMH: dict[str, int] = {
    **dict(zip("BCDEFGJKLM", (50, 60, 65, 70, 80, 90, 100, 110, 120, 130), strict=True)),
    **dict(zip("NPQR", (140, 150, 160, 170), strict=True)),
    **dict(zip("STUHVZWY", (180, 190, 200, 210, 240, 240, 270, 300), strict=True)),
    **dict(zip(("(V)", "(W)", "(Y)"), (240, 270, 300), strict=True)),
}

_CENTRE_SHARE = 0.25
_ABSOLUTE_ZERO = -273.15
_SEA_LEVEL_BAR = 1.01325


@dataclass(frozen=True)
class TyreDate:
    """When a tyre was made: the Monday of its week, or the two candidates a three-digit code leaves open."""

    digits: Literal["four", "three"]
    earliest: date
    latest: date


def tyre_date(code: str, today: date) -> TyreDate:
    """Read the date code: four digits are week and year since 2000, three week and last digit of the year.

    A three-digit code was used before 2000 and keeps both decades, the 1980s and the 1990s. The week is
    taken as the ISO week, which may differ by a few days from the maker's count. Raises ValueError for
    anything but three or four digits, for week 00 or above 53, and for a week that begins after `today`.
    Source: 49 CFR 574.5.
    """
    text = code.strip()
    if not (text.isascii() and text.isdigit() and len(text) in (3, 4)):
        raise ValueError(
            f"{code!r} is no tyre date code. It has four digits, week and year: 4819 is week 48 of 2019."
        )
    week, year = int(text[:2]), int(text[2:])
    if not 1 <= week <= 53:
        raise ValueError(f"{code!r} names week {week:02d}; a tyre date code has weeks 01 to 53.")
    if len(text) == 3:
        return TyreDate("three", _monday(1980 + year, week), _monday(1990 + year, week))
    made = _monday(2000 + year, week)
    if made > today:
        raise ValueError(f"{code!r} is week {week} of {2000 + year}, which lies in the future.")
    return TyreDate("four", made, made)


def _monday(year: int, week: int) -> date:
    return date.fromisocalendar(year, 1, 1) + timedelta(weeks=week - 1)


def load_kg(index: int) -> int:
    """Greatest load in kg that a load index stands for. Indices 30 to 100; raises ValueError outside."""
    place = index - _FIRST_LOAD_INDEX
    if not 0 <= place < len(_LOADS_KG):
        last = _FIRST_LOAD_INDEX + len(_LOADS_KG) - 1
        raise ValueError(f"Load index {index} is not in the table, which runs from {_FIRST_LOAD_INDEX} to {last}.")
    return _LOADS_KG[place]


def speed_kmh(symbol: str) -> int:
    """Speed in km/h that a symbol stands for; for Z and symbols in brackets the speed it exceeds.

    Raises ValueError for a symbol that is not in the table.
    """
    try:
        return SPEEDS_KMH[symbol.strip().upper()]
    except KeyError:
        raise ValueError(f"{symbol!r} is no speed symbol. Known: {', '.join(SPEEDS_KMH)}.") from None


def pressure_at(
    pressure: Number,
    measured_at: Number | float,
    wanted_at: Number | float,
    air: float = _SEA_LEVEL_BAR,
) -> Number:
    """Gauge pressure the same tyre will show at another temperature: (p + air) x T2 / T1 - air.

    Temperatures in degrees Celsius; `air` is the outside pressure in the unit of `pressure` (bar unless
    given otherwise). The tyre's volume is taken as constant. Raises ValueError at or below absolute zero
    and for a negative pressure. Source: gas law at constant volume.
    """
    gauge = not_negative("The pressure", pressure)
    outside = positive("The pressure of the outside air", air)
    before = positive("The absolute temperature at measuring", finite("measured_at", measured_at) - _ABSOLUTE_ZERO)
    after = positive("The absolute temperature wanted", finite("wanted_at", wanted_at) - _ABSOLUTE_ZERO)
    return as_given((gauge + outside) * after / before - outside, pressure)


@dataclass(frozen=True)
class RepairRule:
    """What BS AU 159 allows for a motorcycle tyre: largest hole in mm, and how many repairs."""

    largest_hole: float
    most_repairs: int


def repair_rule(symbol: str) -> RepairRule:
    """Repair allowance for a speed symbol: up to J 6 mm and two, up to V 3 mm and one, above V none.

    Raises ValueError for an unknown symbol. Source: BS AU 159f, motorcycle part (two pages agree); advice,
    not law.
    """
    speed = speed_kmh(symbol)
    plain = symbol.strip().upper()
    if plain == "Z" or plain.startswith("(") or speed > SPEEDS_KMH["V"]:
        return RepairRule(0.0, 0)
    return RepairRule(6.0, 2) if speed <= SPEEDS_KMH["J"] else RepairRule(3.0, 1)


def may_be_repaired(symbol: str, hole: float, repairs_before: int, off_centre: float) -> bool:
    """Tell whether BS AU 159 allows one more repair of a hole.

    `hole` in mm, more than zero. `off_centre` is the distance of the hole from the tread's centre line as a
    share of the tread width, 0 to 0.5: only the middle, up to a quarter to each side, may be mended. Raises
    ValueError outside these ranges. Source: BS AU 159f.
    """
    rule = repair_rule(symbol)
    positive("The hole", hole)
    not_negative("The number of repairs", repairs_before)
    between("The distance from the centre line", off_centre, 0.0, 0.5)
    return hole <= rule.largest_hole and repairs_before < rule.most_repairs and off_centre <= _CENTRE_SHARE
