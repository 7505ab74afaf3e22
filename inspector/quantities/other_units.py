"""An amount in the units of the other system, as a help for reading; the typed one stays the one that counts."""

from __future__ import annotations

from typing import Literal

from inspector.quantities.units import Amount, base_unit, convert, number_text

System = Literal["metric", "imperial"]
_PAIRS = {
    "length": ("mm", "in"),
    "distance": ("km", "mi"),
    "temperature": ("°C", "°F"),
    "temperature difference": ("°C", "°F"),
    "volume": ("ml", "US fl oz"),
    "torque": ("N·m", "lbf·ft"),
    "pressure": ("bar", "psi"),
    "force": ("N", "lbf"),
    "mass": ("kg", "lb"),
    "speed": ("km/h", "mph"),
}
_IMPERIAL = ("in", "thou", "mi", "°F", "US fl oz", "US qt", "lbf·ft", "lbf·in", "psi", "lbf", "lb", "mph")
_FEWEST_DIGITS, _MOST_DIGITS = 2, 5


def in_system(amount: Amount, system: System) -> str | None:
    """`0.047 in` for `1.2 mm`, with as many figures; None when it is typed so, or has no other unit."""
    if amount.dimension not in _PAIRS or (amount.unit in _IMPERIAL) == (system == "imperial"):
        return None
    unit = _PAIRS[amount.dimension][system == "imperial"]
    number = convert(amount.base, base_unit(amount.dimension), unit, amount.dimension)
    return f"{_rounded(number, _figures(amount.number))} {unit}"


def _figures(number: float) -> int:
    """How many significant figures a number was given with, as far as it shows."""
    digits = f"{abs(number):g}".split("e")[0].replace(".", "").strip("0")
    return min(max(len(digits), _FEWEST_DIGITS), _MOST_DIGITS)


def _rounded(number: float, digits: int) -> str:
    return number_text(float(f"{number:.{digits}g}"), digits)
