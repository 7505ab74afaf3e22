"""Grades that others have published for what an eye sees: rust, chips on a magnet.

Each grade is looked up in a table of edges; nothing is fitted. Knows no part, no rule.
"""

from __future__ import annotations

import itertools
from bisect import bisect_left, bisect_right
from typing import TYPE_CHECKING, Literal, overload

from inspector.quantities.arrays import between, is_number, not_negative, positive

if TYPE_CHECKING:
    from inspector.quantities.arrays import FloatArray, IntArray

ChipSize = Literal["splinter", "chip", "smaller"]
ChipAction = Literal["continue", "clean and check again", "replace"]

# Largest rusted share in percent that still earns grade 10, 9, ... 1.
_D610_EDGES = (0.01, 0.03, 0.1, 0.3, 1.0, 3.0, 10.0, 16.0, 33.0, 50.0)

# The standard shows pictures of 0.05, 0.5, 1, 8 and 40 to 50 %, no bands; the cuts are their geometric
# middles.
_RI_PICTURES = (0.05, 0.5, 1.0, 8.0, (40.0 * 50.0) ** 0.5)
_RI_CUTS = tuple((low * high) ** 0.5 for low, high in itertools.pairwise(_RI_PICTURES))

_INCH_MM = 25.4
_CHIP_MM = _INCH_MM / 16
_SPLINTER_MM = 3 * _INCH_MM / 16
_MANY_CHIPS = 10


@overload
def d610_grade(share: float) -> int: ...
@overload
def d610_grade(share: FloatArray) -> IntArray: ...
def d610_grade(share: float | FloatArray) -> int | IntArray:
    """Rust grade of painted steel, 10 (a trace at most) to 0 (more than half), from the rusted share in %.

    A share on an edge takes the better grade, as printed. Staining is not rust. Raises ValueError outside 0
    to 100. Source: ASTM D610-08 (2019), seen second hand.
    """
    share = between("The rusted share in percent", share, 0.0, 100.0)
    if is_number(share):
        return 10 - bisect_left(_D610_EDGES, share)
    import numpy as np

    answer: IntArray = 10 - np.searchsorted(np.array(_D610_EDGES), share, side="left")
    return answer


@overload
def iso4628_ri(share: float) -> int: ...
@overload
def iso4628_ri(share: FloatArray) -> IntArray: ...
def iso4628_ri(share: float | FloatArray) -> int | IntArray:
    """Rust degree of painted steel, Ri 0 (none) to Ri 5, from the rusted share in percent.

    Only a share of exactly zero is Ri 0. A share on a cut takes the worse degree. Raises ValueError outside
    0 to 100. Source: ISO 4628-3:2016 (second hand) gives picture areas; the cuts between them are
    calculated here.
    """
    share = between("The rusted share in percent", share, 0.0, 100.0)
    if is_number(share):
        return 0 if share == 0 else 1 + bisect_right(_RI_CUTS, share)
    import numpy as np

    answer: IntArray = np.where(share == 0, 0, 1 + np.searchsorted(np.array(_RI_CUTS), share, side="right"))
    return answer


def rust_words(share: float) -> str:
    """Both grades of a rusted share in one phrase, such as `grade 5 of ASTM D610, Ri 3 of ISO 4628-3`.

    Raises ValueError outside 0 to 100. Source: as `d610_grade` and `iso4628_ri`.
    """
    return f"grade {d610_grade(share)} of ASTM D610, Ri {iso4628_ri(share)} of ISO 4628-3"


def rust_phrases() -> tuple[str, ...]:
    """Every phrase that `rust_words` can give, the cleanest first."""
    edges = sorted({0.0, *_D610_EDGES, *_RI_CUTS, 100.0})
    shares = [share for low, high in itertools.pairwise(edges) for share in (low, (low + high) / 2)]
    return tuple(dict.fromkeys(rust_words(share) for share in (*shares, 100.0)))


def chip_size(length: float, width: float) -> ChipSize:
    """Sort one piece of steel from a magnet by its two sides in mm, in either order.

    Splinter: more than 1/16 by 3/16 in (1.6 x 4.8 mm). Chip: at least 1/16 by 1/16 in. Raises ValueError
    for sides that are not more than zero. Source: TM 1-1520-238-23, chip detectors of two helicopter
    gearboxes.
    """
    short, long = sorted((float(positive("A side", length)), float(positive("A side", width))))
    if short > _CHIP_MM and long > _SPLINTER_MM:
        return "splinter"
    return "chip" if short >= _CHIP_MM else "smaller"


def chip_action(*, splinters: int = 0, chips: int = 0, smaller: int = 0) -> ChipAction:
    """What a published manual asks for after this many pieces in its small (nose) gearbox.

    `chips` does not count the splinters; they are added. Helicopter figures: an anchor, no motorcycle limit.
    Raises ValueError for a negative number. Source: TM 1-1520-238-23.
    """
    counts = [not_negative("A number of pieces", count) for count in (splinters, chips, smaller)]
    if splinters > 0 or splinters + chips > _MANY_CHIPS:
        return "replace"
    return "clean and check again" if sum(counts) else "continue"


def pieces_action(length: float, width: float, large: int) -> ChipAction:
    """What that manual asks for, from the largest piece and the number of pieces of 1.6 by 1.6 mm and more.

    Raises as `chip_size` and `chip_action`.
    """
    largest = chip_size(length, width)
    if largest == "splinter":
        return chip_action(splinters=1, chips=max(large - 1, 0))
    return chip_action(chips=max(large, 1) if largest == "chip" else large, smaller=1)
