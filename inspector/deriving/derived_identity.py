"""Papers: what the frame number says by itself, whether readings rise, how far it was ridden each year."""

from __future__ import annotations

import re
from datetime import date

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.identity import check_answer, year_answer
from inspector.quantities.odometer import per_year, readings_order
from inspector.quantities.units import NotAnAmount, parse_amount
from inspector.reading.inspection import Inspection, Measured, Silent, Word

_NOT_KNOWN = "not known"
_ELSEWHERE = "elsewhere"
_FIRST_LONG_NUMBERS = 1981
_DAYS_A_YEAR = 365.2425
_READING = re.compile(r"(\d{4})-(\d{1,2})(?:-(\d{1,2}))?[ :]+(.+)")


def vin_check(looks: Looks) -> Word | Silent:
    """The check digit of the frame number, where the law of the market asks for one."""
    market, number, built = looks.word("market"), looks.inspection.vin, looks.inspection.year
    if market == _ELSEWHERE or (built is not None and built < _FIRST_LONG_NUMBERS):
        return Silent("does not apply")
    if market is None or number is None:
        return NOT_LOOKED_AT
    return Word(_NOT_KNOWN if market == _NOT_KNOWN else check_answer(number))


def vin_year(looks: Looks) -> Word | Silent:
    """The model year of the frame number against the year the machine is said to be of."""
    market, number, built = looks.word("market"), looks.inspection.vin, looks.inspection.year
    if market == _ELSEWHERE or (built is not None and built < _FIRST_LONG_NUMBERS):
        return Silent("does not apply")
    if market is None or number is None or built is None:
        return NOT_LOOKED_AT
    return Word(_NOT_KNOWN if market == _NOT_KNOWN else year_answer(number, built, looks.inspection.day.year))


def order_of_readings(looks: Looks) -> Word | Silent:
    """The readings of all papers and of today, in order of their dates."""
    text = looks.text("readings_list")
    if text is None:
        return NOT_LOOKED_AT
    found = [_reading(one, looks.inspection) for one in text.replace("\n", ";").split(";") if one.strip()]
    readings = [one for one in found if one is not None]
    if not readings or len(readings) < len(found):
        return Word("cannot be read")
    if looks.inspection.odometer is not None:
        readings.append((looks.inspection.day, looks.inspection.odometer.base))
    return Word(readings_order(readings))


def distance_each_year(looks: Looks) -> Measured | Silent:
    """As written down; else today's reading by the age, from the first registration or the year of build."""
    written, odometer = looks.measured("distance_a_year"), looks.inspection.odometer
    if written is not None:
        return written
    age = _age(looks)
    if odometer is None or age is None:
        return NOT_LOOKED_AT
    years, doubt = age
    if years < 1:
        return Silent("does not apply")
    ridden = per_year(odometer.base, years)
    rounded = float(f"{ridden:.2g}")
    return worked_out(rounded, "distance", odometer.unit, ridden * doubt / years)


def _age(looks: Looks) -> tuple[float, float] | None:
    """Age in years with its uncertainty; the year of build alone leaves half a year open."""
    day = looks.inspection.day
    first = looks.day("first_registered")
    if first is not None:
        return (day - first).days / _DAYS_A_YEAR, 0.0
    if looks.inspection.year is None:
        return None
    return (day - date(looks.inspection.year, 7, 1)).days / _DAYS_A_YEAR, 0.3


def _reading(text: str, inspection: Inspection) -> tuple[date, float] | None:
    match = _READING.fullmatch(" ".join(text.split()))
    if match is None:
        return None
    try:
        day = date(int(match[1]), int(match[2]), int(match[3] or 1))
        amount = parse_amount(match[4], "distance")
    except (ValueError, NotAnAmount):
        return None
    return (day, amount.base) if day <= inspection.day and amount.base >= 0 else None
