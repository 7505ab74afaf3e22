"""From a story of harm to a risk level, and from several defect classes to one. Knows no part, no rule.

The grid is that of Delegated Regulation (EU) 2024/3173, Annex II, written for consumer products over their
life; it is used here for one machine until its next look, which is an adaptation and no compliance.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Literal, get_args

Level = Literal["serious", "high", "medium", "low"]
DefectClass = Literal["none", "minor", "major", "dangerous"]

# Worst first. A row holds from its lowest probability upwards; columns are severity 1 to 4 (Annex II,
# 3.6.2).
GRID: tuple[tuple[float, tuple[Level, Level, Level, Level]], ...] = (
    (1 / 2, ("high", "serious", "serious", "serious")),
    (1 / 10, ("medium", "serious", "serious", "serious")),
    (1 / 100, ("medium", "serious", "serious", "serious")),
    (1 / 1_000, ("low", "high", "serious", "serious")),
    (1 / 10_000, ("low", "medium", "high", "serious")),
    (1 / 100_000, ("low", "low", "medium", "high")),
    (1 / 1_000_000, ("low", "low", "low", "medium")),
    (0.0, ("low", "low", "low", "low")),
)

# Lower and upper end of each word (Annex II, 3.4.4). "certain" is ours, for a step that always follows. The
# lowest band has no lower end in the law; one decade is taken, so that it has a middle like the others.
CHANCE_BANDS: dict[str, tuple[float, float]] = {
    "certain": (1.0, 1.0),
    "very frequent": (1 / 2, 1.0),
    "frequent": (1 / 10, 1 / 2),
    "common": (1 / 100, 1 / 10),
    "occasional": (1 / 1_000, 1 / 100),
    "unlikely": (1 / 10_000, 1 / 1_000),
    "unusual": (1 / 100_000, 1 / 10_000),
    "rare": (1 / 1_000_000, 1 / 100_000),
    "extremely rare": (1 / 10_000_000, 1 / 1_000_000),
}

# One representative probability for each word: the geometric middle of its band (own choice).
CHANCE: dict[str, float] = {word: math.sqrt(low * high) for word, (low, high) in CHANCE_BANDS.items()}

_MILDEST_FIRST: tuple[DefectClass, ...] = get_args(DefectClass)
_MOST_STEPS = 5  # Annex II, 3.2.4
_TIE = 1e-9  # a product of steps that should meet a row's edge may fall short of it by rounding


def grid_level(probability: float, severity: int) -> Level:
    """Risk level of one story: chance of the harm 0 to 1, severity 1 (first aid) to 4 (may be fatal).

    The law's index and its grid disagree about the edges; a tie takes the upper, more cautious row.
    Raises ValueError outside the domain. Source: Delegated Regulation (EU) 2024/3173, Annex II, 3.6.2.
    """
    if not 0.0 <= probability <= 1.0:
        raise ValueError(f"A chance must lie between 0 and 1, found {probability}.")
    if severity not in (1, 2, 3, 4):
        raise ValueError(f"A severity is 1, 2, 3 or 4, found {severity}.")
    row = next(levels for lowest, levels in GRID if probability >= lowest * (1 - _TIE))
    return row[severity - 1]


def story_probability(words: Iterable[str]) -> float:
    """Chance of a whole story: the product of its steps, each given as a chance word.

    Each step's chance holds given the steps before it. One to five steps. Raises ValueError for an unknown
    word or another number of steps. Source: Annex II, 3.2.4 and 3.4.2; the number for each word is an own
    choice.
    """
    steps = list(words)
    if not 1 <= len(steps) <= _MOST_STEPS:
        raise ValueError(f"A story has one to {_MOST_STEPS} steps, found {len(steps)}.")
    for word in steps:
        if word not in CHANCE:
            raise ValueError(f"{word!r} is no chance word. Use one of: {', '.join(CHANCE)}.")
    return math.prod(CHANCE[word] for word in steps)


def risk_range(probability: float, severity: int) -> tuple[Level, Level, Level]:
    """Level at a tenth of the chance, at the chance, and at ten times the chance (at most 1).

    A step's chance is a guess to a factor of ten; this shows whether the guess matters. Raises as
    `grid_level`.
    """
    middle = grid_level(probability, severity)
    return grid_level(probability / 10, severity), middle, grid_level(min(1.0, probability * 10), severity)


def risk_words(probability: float, severity: int) -> str:
    """The range of levels in words: `medium`, or `medium to high` when a factor of ten moves it."""
    mildest, _, worst = risk_range(probability, severity)
    return mildest if mildest == worst else f"{mildest} to {worst}"


def combine_classes(classes: Iterable[DefectClass]) -> DefectClass:
    """The worse of several defect classes; `none` when there is none.

    A step up because several defects meet in one area is never taken here, only by a named rule.
    Raises ValueError for an unknown class. Source: Directive 2014/45/EU, Art. 7(3).
    """
    found = list(classes)
    for word in found:
        if word not in _MILDEST_FIRST:
            raise ValueError(f"{word!r} is no class. Use one of: {', '.join(_MILDEST_FIRST)}.")
    return max(found, key=_MILDEST_FIRST.index, default="none")
