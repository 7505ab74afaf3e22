"""What a derivation gives and is given: a value with its looks, amounts worked out, and inputs by name."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import NamedTuple

from inspector.quantities.units import Amount, base_unit, convert, number_text
from inspector.reading.inspection import Counted, Day, FreeText, Inspection, Measured, Silent, Value, Word

Key = tuple[str, str, str]
NOT_LOOKED_AT = Silent("not looked at")
DOES_NOT_APPLY = Silent("does not apply")
NOT_KNOWN = "not known"
"""The word of a choice when nobody can say."""


class Derived(NamedTuple):
    """A value and the looks it came from; `partial` when some of these looks were not made."""

    value: Value | Silent
    sources: tuple[Key, ...] = ()
    partial: bool = False


def worked_out(base: float, dimension: str, unit: str, uncertainty: float) -> Measured:
    """An amount that was computed: `base` and `uncertainty` in base units, written in `unit`.

    Two figures below ten and where more than a twentieth of it is in doubt, three otherwise.
    """
    digits = 2 if uncertainty > abs(base) / 20 else 3
    number = convert(base, base_unit(dimension), unit, dimension)
    separator = "" if unit in ("%", "°") else " "
    typed = f"{number_text(number, 2 if abs(number) < 10 else digits)}{separator}{unit}"
    return Measured(Amount(typed, number, unit, dimension, base), uncertainty, None, stated=True)


class Looks:
    """The looks that a function asks for, by the name of their property; what has no value is None.

    `inspection` is the record they stand in, for what is told of the machine as a whole.
    """

    def __init__(self, found: Mapping[Key, Derived], inspection: Inspection) -> None:
        self.inspection = inspection
        self._values: dict[str, Value] = {}
        for (_, _, name), derived in found.items():
            if not isinstance(derived.value, Silent):
                self._values.setdefault(name, derived.value)

    def word(self, name: str) -> str | None:
        """The word of a choice, or `unknown`."""
        value = self._values.get(name)
        return value.word if isinstance(value, Word) else None

    def measured(self, name: str) -> Measured | None:
        """An amount."""
        value = self._values.get(name)
        return value if isinstance(value, Measured) else None

    def counted(self, name: str) -> int | None:
        """A whole number."""
        value = self._values.get(name)
        return value.number if isinstance(value, Counted) else None

    def text(self, name: str) -> str | None:
        """A text of the person's own."""
        value = self._values.get(name)
        return value.text if isinstance(value, FreeText) else None

    def day(self, name: str) -> date | None:
        """A date."""
        value = self._values.get(name)
        return value.day if isinstance(value, Day) else None

    def by_position(self) -> list[Value]:
        """All values that are there, in the order in which the knowledge names them."""
        return list(self._values.values())
