"""Readings of a distance counter by date: do they rise, and how far was it ridden each year? Distances in km.

Knows no part and no rule.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from datetime import date
from typing import Literal

from inspector.quantities.arrays import not_negative, positive

Order = Literal["rise", "falls", "falls unless miles were meant", "cannot be read"]

_KM_A_MILE = 1.609344


def readings_order(readings: Sequence[tuple[date, float]]) -> Order:
    """Whether readings, put in order of their dates, never fall.

    A fall counts as a mix-up of units when the later figure, taken as miles, would not be one. Source: a
    distance cannot run backwards; the mile from NIST SP 811.
    """
    ordered = [distance for _, distance in sorted(readings)]
    falls = [(first, then) for first, then in itertools.pairwise(ordered) if then < first]
    if not falls:
        return "rise"
    mixed = all(then * _KM_A_MILE >= first for first, then in falls)
    return "falls unless miles were meant" if mixed else "falls"


def per_year(distance: float, years: float) -> float:
    """Distance ridden each year: distance over age. Raises ValueError unless the age is positive."""
    return float(not_negative("The distance", distance)) / float(positive("The age", years))
