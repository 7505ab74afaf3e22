"""What comes next and when: by distance and by date, whichever is reached first."""

from __future__ import annotations

import math
from statistics import median

from inspector.deriving.facts import Facts
from inspector.knowledge.library import Knowledge
from inspector.quantities.units import convert
from inspector.reading.inspection import Inspection
from inspector.weighing.coming import DAYS_A_MONTH, Coming, add_months, all_coming
from inspector.weighing.upkeep import DueEntry, First

_FARTHEST = 9999 * 12


def due_entries(facts: Facts, knowledge: Knowledge) -> tuple[DueEntry, ...]:
    """What comes due, what is overdue first, then what is reached first."""
    inspection, pace = facts.inspection, _pace(facts)
    found = all_coming(facts, knowledge)

    def left(one: Coming) -> float:
        """The share of the horizon that is left until it is due; nought and less when it is overdue."""
        shares = [math.inf]
        if one.on is not None:
            shares.append((one.on - inspection.day).days / DAYS_A_MONTH / inspection.horizon_months)
        if one.at is not None and inspection.odometer is not None:
            shares.append((one.at - inspection.odometer.base) / inspection.horizon_km)
        return min(shares)

    ordered = sorted(found, key=lambda one: (left(one), one.fact.part, one.fact.place, one.stem))
    entries = [_entry(one, inspection, pace, overdue=left(one) <= 0) for one in ordered]
    return _places_together(entries)


def _places_together(entries: list[DueEntry]) -> tuple[DueEntry, ...]:
    """The same thing at several places as one line."""
    alike: dict[DueEntry, list[str]] = {}
    for entry in entries:
        alike.setdefault(entry.model_copy(update={"place": ""}), []).append(entry.place)
    return tuple(entry.model_copy(update={"place": ", ".join(places)}) for entry, places in alike.items())


def _pace(facts: Facts) -> float | None:
    """Kilometres a month as it was ridden so far, where dated readings tell it."""
    told = [fact.forecast.per_month for fact in facts.all if fact.forecast and fact.forecast.per_month]
    return median(told) if told else None


def _entry(one: Coming, inspection: Inspection, pace: float | None, *, overdue: bool) -> DueEntry:
    expected = _expected(one, inspection, pace)
    return DueEntry(
        part=one.fact.part,
        place=one.fact.place,
        what=one.stem,
        kind=one.kind,
        step=one.action.step if one.action else None,
        by=one.action.by if one.action else None,
        limit=" or ".join(dict.fromkeys(band.words for band in one.limits)) or None,
        limit_origin="; ".join(dict.fromkeys(band.origin for band in one.limits)) or None,
        at=_reading(one.at, inspection),
        on=one.on.isoformat() if one.on else None,
        expected=expected,
        first=_first(one, expected),
        between=tuple(str(_reading(end, inspection)) for end in one.between) if one.between else (),
        overdue=overdue,
    )


def _expected(one: Coming, inspection: Inspection, pace: float | None) -> str | None:
    """The month in which the distance is ridden, at the pace of so far. A day would be a false precision."""
    if one.at is None or pace is None or inspection.odometer is None:
        return None
    months = max(one.at - inspection.odometer.base, 0.0) / pace
    if months > _FARTHEST:
        return None
    return add_months(inspection.day, math.floor(months)).isoformat()[:7]


def _first(one: Coming, expected: str | None) -> First | None:
    if one.on is None or one.at is None:
        return None
    if expected is None:
        return "whichever comes first"
    return "date" if one.on.isoformat()[:7] <= expected else "distance"


def _reading(km: float | None, inspection: Inspection) -> str | None:
    """A reading of the distance counter in its own unit."""
    if km is None:
        return None
    unit = inspection.odometer.unit if inspection.odometer else "km"
    return f"{math.floor(convert(km, 'km', unit, 'distance') + 1e-6):,} {unit}".replace(",", " ")
