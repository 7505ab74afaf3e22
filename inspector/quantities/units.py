"""Amounts with units as people type them, and their base unit. Knows no part and no rule.

The factors stand here because a units library costs more time to load than a whole assessment takes; a test
compares every one of them with such a library.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction
from functools import cache, lru_cache

# dimension -> unit as printed -> (how many base units it is, further spellings). The first is the base unit.
# A year of service intervals is twelve months.
_UNITS: dict[str, dict[str, tuple[float, tuple[str, ...]]]] = {
    "length": {
        "mm": (1.0, ("millimetre", "millimetres", "millimeter", "millimeters")),
        "cm": (10.0, ()),
        "m": (1000.0, ()),
        "µm": (0.001, ("um", "μm", "micron", "microns")),
        "in": (25.4, ("inch", "inches", '"', "″")),
        "thou": (0.0254, ("mil",)),
    },
    "distance": {
        "km": (1.0, ("kilometre", "kilometres", "kilometer", "kilometers", "kms")),
        "mi": (1.609344, ("mile", "miles")),
        "m": (0.001, ()),
    },
    "temperature": {
        "°C": (1.0, ("c", "degc", "deg c", "ºc", "celsius")),
        "°F": (5 / 9, ("f", "degf", "deg f", "ºf", "fahrenheit")),
    },
    "temperature difference": {
        "°C": (1.0, ("k", "c", "degc", "deg c", "ºc", "kelvin")),
        "°F": (5 / 9, ("f", "degf", "deg f", "ºf")),
    },
    "time": {
        "months": (1.0, ("month", "mo")),
        "years": (12.0, ("year", "yr", "yrs", "y", "a")),
        "weeks": (7 * 12 / 365.2425, ("week",)),
        "days": (12 / 365.2425, ("day", "d")),
    },
    "volume": {
        "ml": (1.0, ("millilitre", "millilitres", "milliliter", "cc", "cm3", "cm³")),
        "l": (1000.0, ("litre", "litres", "liter", "liters")),
        "cl": (10.0, ()),
        "US fl oz": (29.5735295625, ("fl oz", "floz")),
        "US qt": (946.352946, ("qt", "quart")),
    },
    "torque": {
        "N·m": (1.0, ("nm", "n m", "n.m", "n*m", "n-m", "newton metre", "newton metres")),
        "lbf·ft": (
            1.3558179483314004,
            ("lbf ft", "lbf.ft", "lbf-ft", "ft·lbf", "ft lbf", "ft-lbf", "lb ft", "lb-ft", "lb.ft", "lb·ft",
             "ft lb", "ft-lb", "ft·lb", "ftlb", "lbft", "ft lbs", "ft-lbs", "lbs ft"),
        ),
        "lbf·in": (
            0.1129848290276167,
            ("lbf in", "lbf.in", "lbf-in", "in·lbf", "in lbf", "in-lbf", "lb in", "lb-in", "in lb", "in-lb",
             "in lbs", "in-lbs"),
        ),
        "kgf·m": (9.80665, ("kgf m", "kgm", "kg m", "kg·m", "kg-m", "mkg")),
        "kgf·cm": (0.0980665, ("kgf cm", "kgcm", "kg cm", "kg·cm", "kg-cm")),
    },
    "pressure": {
        "kPa": (1.0, ()),
        "bar": (100.0, ("bars",)),
        "psi": (6.894757293168361, ("lbf/in2", "lb/in2", "lbf/in²")),
        "kgf/cm²": (98.0665, ("kgf/cm2", "kg/cm2", "kg/cm²")),
    },
    "percent": {"%": (1.0, ("percent", "per cent", "pct"))},
    "voltage": {"V": (1.0, ("volt", "volts"))},
    "current": {
        "mA": (1.0, ("milliampere", "milliamperes", "milliamp", "milliamps")),
        "A": (1000.0, ("amp", "amps")),
    },
    "charge": {"Ah": (1.0, ("a h", "a·h", "amp hours", "ampere hours"))},
    "force": {"N": (1.0, ("newton", "newtons")), "lbf": (4.4482216152605, ("lb", "lbs"))},
    "mass": {
        "kg": (1.0, ("kgs", "kilogram", "kilograms", "kilo", "kilos")),
        "lb": (0.45359237, ("lbs", "pound", "pounds")),
    },
    "speed": {
        "km/h": (1.0, ("kmh", "kph", "km/hr")),
        "mph": (1.609344, ("mi/h", "miles per hour")),
        "m/s": (3.6, ()),
    },
    "ppm": {"ppm": (1.0, ("mg/kg",)), "%": (10000.0, ("percent", "per cent"))},
    "ppm per distance": {"ppm/1000 km": (1.0, ("ppm per 1000 km",)), "ppm/1000 mi": (1 / 1.609344, ())},
    "viscosity": {"mm²/s": (1.0, ("mm2/s", "cst"))},
    "angle": {"°": (1.0, ("deg", "degree", "degrees"))},
}  # fmt: skip

_OFFSETS = {"temperature": {"°F": 32.0}}  # the reading at 0 of the base unit
DIMENSIONS = tuple(_UNITS)
_LONGEST_NUMBER = 40
_NUMBER = r"[+\-−]?\d+(?:[ '\u00a0\u2009\u202f]\d{3})*(?:\.\d+)?(?:[eE][+\-]?\d+)?"
_FRACTION = r"(?:\d+ )?\d+/\d+"
_AMOUNT = re.compile(rf"\s*(?P<number>{_FRACTION}|{_NUMBER})\s*(?P<unit>.*?)\s*$")


class NotAnAmount(ValueError):
    """A text that is no amount of the wanted dimension; its message says what is allowed."""


@dataclass(frozen=True, slots=True)
class Amount:
    """A number with its unit as typed; `base` is the same in the base unit of its dimension."""

    typed: str
    number: float
    unit: str
    dimension: str
    base: float

    def __str__(self) -> str:
        return self.typed


def base_unit(dimension: str) -> str:
    """Name of the unit in which `base` amounts of this dimension are kept."""
    return next(iter(_UNITS[dimension]))


def units_of(dimension: str) -> list[str]:
    """Units that may be typed for this dimension, the base unit first."""
    return list(_UNITS[dimension])


@cache
def _spellings(dimension: str) -> dict[str, str]:
    return {
        spelling.casefold(): unit for unit, (_, more) in _UNITS[dimension].items() for spelling in (unit, *more)
    }


def convert(number: float, unit: str, into: str, dimension: str) -> float:
    """Convert between two units of one dimension. Factors: NIST SP 811, appendix B.8."""
    if unit == into:
        return number
    table, offset = _UNITS[dimension], _OFFSETS.get(dimension, {})
    base = (number - offset.get(unit, 0.0)) * table[unit][0]
    return base / table[into][0] + offset.get(into, 0.0)


def parse_number(text: str) -> float:
    """Read a plain number: `41 200`, `0.07`, `9/16`, `-3`. Raises NotAnAmount for anything else."""
    match = re.fullmatch(rf"\s*(?:(?P<fraction>{_FRACTION})|(?P<number>{_NUMBER}))\s*", text)
    if match is None:
        raise NotAnAmount(f"{_shown(text)} is not a number")
    if len(match[0]) > _LONGEST_NUMBER:
        raise NotAnAmount(f"{_shown(text)} is too long for a number")
    if match["fraction"]:
        whole, _, part = match["fraction"].rpartition(" ")
        above, below = part.split("/")
        if int(below) == 0:
            raise NotAnAmount(f"{_shown(text)} divides by nought")
        number = float(int(whole or 0) + Fraction(int(above), int(below)))
    else:
        number = float(re.sub(r"[ '\u00a0\u2009\u202f]", "", match["number"]).replace("−", "-"))
    if abs(number) >= 1e12:
        raise NotAnAmount(f"{_shown(text)} is too large to be meant")
    return number


@lru_cache(maxsize=4096)  # the amounts in `rules/` are read again for every record
def parse_amount(text: str, dimension: str) -> Amount:
    """Read a number with its unit, such as `1.8 mm`, `32 lbf·ft` or `41 200 km`.

    Raises NotAnAmount, with what is allowed, when the number or the unit cannot be read.
    """
    typed = " ".join(text.split())
    allowed = ", ".join(units_of(dimension))
    match = _AMOUNT.match(typed)
    if match is None or "," in typed:
        raise NotAnAmount(f"{_shown(typed)} is not {_a(dimension)}. {_example(typed, dimension)}")
    if not match["unit"]:
        raise NotAnAmount(f"{_shown(typed)} has no unit. Write one of: {allowed}")
    unit = _spellings(dimension).get(match["unit"].casefold())
    if unit is None:
        raise NotAnAmount(_wrong_unit(typed, match["unit"], dimension, allowed))
    number = parse_number(match["number"])
    return Amount(typed, number, unit, dimension, convert(number, unit, base_unit(dimension), dimension))


def _shown(text: str) -> str:
    return f"`{text if len(text) <= _LONGEST_NUMBER else text[: _LONGEST_NUMBER - 1] + '…'}`"


def _a(dimension: str) -> str:
    return f"an {dimension}" if dimension[0] in "aeiou" else f"a {dimension}"


def _example(typed: str, dimension: str) -> str:
    if len(typed) > _LONGEST_NUMBER:
        return f"Write a number and a unit, such as 1.5 {base_unit(dimension)}"
    repaired = re.sub(r"(\d),(\d)", r"\1.\2", typed)
    match = _AMOUNT.match(repaired)
    if "," in typed and match is not None and re.search(r"\d,\d{3}(?!\d)", typed):
        return f"Write thousands with a blank and decimals with a point, such as {typed.replace(',', ' ')}"
    if "," in typed and match is not None:
        return f"Decimals take a point. Write {repaired}"
    return f"Write a number and a unit, such as 1.5 {base_unit(dimension)}"


def _wrong_unit(typed: str, unit: str, dimension: str, allowed: str) -> str:
    others = [d for d in DIMENSIONS if unit.casefold() in _spellings(d)]
    if others:
        return f"{_shown(typed)} is {_a(others[0])}, {_a(dimension)} is wanted. Units allowed: {allowed}"
    if not unit[0].isalpha() and not unit.startswith(("°", "%")):
        return f"{_shown(typed)} is not one number with one unit. {_example(typed, dimension)}. Units: {allowed}"
    near = get_close_matches(unit.casefold(), _spellings(dimension), n=1, cutoff=0.6)
    hint = f" Did you mean `{_spellings(dimension)[near[0]]}`?" if near and len(unit) <= _LONGEST_NUMBER else ""
    return f"{_shown(unit)} is not a unit of {dimension}.{hint} Units allowed: {allowed}"


def number_text(number: float, digits: int = 3) -> str:
    """A number in `digits` significant figures, whole numbers left whole, without exponents."""
    if number == round(number) and abs(number) < 1e6:
        return f"{number:.0f}"
    text = f"{number:.{digits}g}"
    return f"{float(text):.0f}" if "e" in text else text
