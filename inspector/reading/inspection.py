"""What a record says, typed and with nothing dropped: the machine, the visit, every observation."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from inspector.knowledge.walk_round import PURPOSES, Purpose
from inspector.quantities.money import Money
from inspector.quantities.units import Amount

__all__ = ["PURPOSES", "Purpose"]
Silence = Literal["not looked at", "could not see", "does not apply"]


@dataclass(frozen=True, slots=True)
class Measured:
    """An amount with its standard uncertainty in the base unit, and how it was measured."""

    amount: Amount
    uncertainty: float
    tool: str | None
    stated: bool

    @property
    def typed(self) -> str:
        """The amount as the person typed it."""
        return self.amount.typed


@dataclass(frozen=True, slots=True)
class Counted:
    """A whole number of things."""

    number: int

    @property
    def typed(self) -> str:
        """The number as text."""
        return str(self.number)


@dataclass(frozen=True, slots=True)
class Word:
    """A choice, yes or no, or `unknown`."""

    word: str

    @property
    def typed(self) -> str:
        """The word itself."""
        return self.word


@dataclass(frozen=True, slots=True)
class Day:
    """A date."""

    day: date

    @property
    def typed(self) -> str:
        """The date in ISO form."""
        return self.day.isoformat()


@dataclass(frozen=True, slots=True)
class TyreCode:
    """A tyre's date code as it stands on the sidewall."""

    code: str

    @property
    def typed(self) -> str:
        """The code as read."""
        return self.code


@dataclass(frozen=True, slots=True)
class FreeText:
    """Words of the person's own; no rule reads them."""

    text: str

    @property
    def typed(self) -> str:
        """The text."""
        return self.text


@dataclass(frozen=True, slots=True)
class Silent:
    """No value: not looked at, could not see, or does not apply; with the reason given."""

    state: Silence
    reason: str | None = None


Value = Measured | Counted | Word | Day | TyreCode | FreeText


@dataclass(frozen=True, slots=True)
class Earlier:
    """A reading of the same property from before: at which odometer, on which day, or when fitted new."""

    value: Measured
    odometer: Amount
    day: date | None = None
    new_part: bool = False


@dataclass(frozen=True, slots=True)
class Observation:
    """One property of one part at one place, with what was added to it."""

    part: str
    place: str
    name: str
    value: Value | Silent
    note: str | None = None
    photo: str | None = None
    earlier: tuple[Earlier, ...] = ()
    line: int = 0


@dataclass(frozen=True, slots=True)
class OwnLimit:
    """A limit that the machine itself gives, and where it stands."""

    part: str
    place: str | None
    name: str
    at_least: Amount | None
    at_most: Amount | None
    origin: Literal["stamped on the part", "the machine's manual"]


@dataclass(frozen=True)
class Inspection:
    """A record, read: everything later steps may know."""

    kind: str
    purpose: Purpose
    day: date
    odometer: Amount | None
    horizon_months: float
    horizon_km: float
    country: str | None
    year: int | None = None
    vin: str | None = None
    name: str | None = None
    request: str | None = None
    asking_price: Money | None = None
    tried: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    invented: bool = False
    without: tuple[tuple[str, str], ...] = ()
    limits: tuple[OwnLimit, ...] = ()
    work: tuple[tuple[str, str], ...] = ()
    observations: dict[tuple[str, str, str], Observation] = field(default_factory=dict)
