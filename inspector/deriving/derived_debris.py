"""Pieces on a drain magnet, measured and counted, against criteria somebody has published."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks
from inspector.quantities.grades import pieces_action
from inspector.reading.inspection import Silent, Word


def pieces(looks: Looks) -> Word | Silent:
    """The largest piece by its two sides, and how many are as large as the published chip."""
    length, width = looks.measured("longest_piece"), looks.measured("longest_piece_width")
    if length is None or width is None or min(length.amount.base, width.amount.base) <= 0:
        return NOT_LOOKED_AT
    return Word(pieces_action(length.amount.base, width.amount.base, looks.counted("pieces") or 0))
