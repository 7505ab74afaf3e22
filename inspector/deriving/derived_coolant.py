"""Coolant: when its mix freezes, and what that leaves to the coldest night."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.coolant import Glycol, ShareBy, mix_freezes_at
from inspector.reading.inspection import Measured, Silent

_GLYCOLS: dict[str, tuple[Glycol, ...]] = {
    "ethylene glycol": ("ethylene",),
    "propylene glycol": ("propylene",),
    "not known": ("ethylene", "propylene"),
}
_SHARES: dict[str, tuple[ShareBy, ...]] = {"mass": ("mass",), "volume": ("volume",)}


def mix_frost_point(looks: Looks) -> Measured | Silent:
    """When a mix of known share freezes; what is not known of kind or measure counts as the weaker one."""
    share, kind = looks.measured("glycol_share"), looks.word("glycol_kind")
    if share is None or kind is None:
        return NOT_LOOKED_AT
    measures = _SHARES.get(looks.word("share_by") or "", ("mass", "volume"))

    def freezes(percent: float) -> float:
        return max(mix_freezes_at(glycol, percent, by) for glycol in _GLYCOLS[kind] for by in measures)

    found = freezes(share.amount.base)
    low, high = (
        min(max(share.amount.base + step, 0.0), 100.0) for step in (-share.uncertainty, share.uncertainty)
    )
    return worked_out(float(round(found)), "temperature", "°C", abs(freezes(low) - freezes(high)) / 2)


def frost_reserve(looks: Looks) -> Measured | Silent:
    """Degrees from the freezing point up to the coldest night; a reading counts before a reckoned mix."""
    point = looks.measured("frost_point") or looks.measured("mix_frost_point")
    night = looks.measured("coldest_night")
    if point is None or night is None:
        return NOT_LOOKED_AT
    doubt = math.hypot(point.uncertainty, night.uncertainty)
    return worked_out(night.amount.base - point.amount.base, "temperature difference", "°C", doubt)
