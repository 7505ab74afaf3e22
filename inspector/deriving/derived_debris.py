"""Pieces on a drain magnet, measured and counted, against criteria somebody has published."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks
from inspector.quantities.grades import pieces_action
from inspector.quantities.used_oil import per_1000_km, rate_trend
from inspector.reading.inspection import Silent, Word


def pieces(looks: Looks) -> Word | Silent:
    """The largest piece by its two sides, and how many are as large as the published chip."""
    length, width = looks.measured("longest_piece"), looks.measured("longest_piece_width")
    if length is None or width is None or min(length.amount.base, width.amount.base) <= 0:
        return NOT_LOOKED_AT
    return Word(pieces_action(length.amount.base, width.amount.base, looks.counted("pieces") or 0))


def paste_trend(looks: Looks) -> Word | Silent:
    """The paste on the magnet by the distance of its fill, against that of the fill before."""
    now, way = looks.measured("paste_thickness"), looks.measured("distance_on_oil")
    before, way_before = looks.measured("earlier_paste_thickness"), looks.measured("earlier_oil_distance")
    if now is None or way is None or before is None or way_before is None:
        return NOT_LOOKED_AT
    if min(way.amount.base, way_before.amount.base, before.amount.base) <= 0:
        return NOT_LOOKED_AT
    rates = (per_1000_km(one.amount.base, km.amount.base) for one, km in ((before, way_before), (now, way)))
    return Word(rate_trend(*rates))
