"""Amounts of money as they are typed: a number and the three letters of a currency."""

from __future__ import annotations

import re
from dataclasses import dataclass

from inspector.quantities.units import NotAnAmount, parse_number

_MONEY = re.compile(r"(?P<number>.*\d)\s*(?P<currency>[A-Za-z]{3})")
_LONGEST = 60
MOST = 1e9


@dataclass(frozen=True)
class Money:
    """So much of a currency, and how it was typed."""

    typed: str
    number: float
    currency: str


def parse_money(text: str) -> Money:
    """Read `3 200 EUR`. Raises NotAnAmount with what is wanted."""
    typed = " ".join(text.split())
    match = _MONEY.fullmatch(typed) if len(typed) <= _LONGEST else None
    if match is None:
        raise NotAnAmount(f"`{typed[:_LONGEST]}` is no price. Write a number and three letters, such as 3 200 EUR")
    number = parse_number(match["number"])
    if not 0 <= number <= MOST:
        raise NotAnAmount(f"`{typed}` is not believable as a price")
    return Money(typed, number, match["currency"].upper())
