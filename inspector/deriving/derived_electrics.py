"""Battery: how full it is, whether it may freeze, what charging counts at 25 °C, how long it bears a drain."""

from __future__ import annotations

import math

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks, worked_out
from inspector.quantities.electrics import (
    LeadBattery,
    charge_from_rest,
    charge_in_words,
    days_until,
    frost_danger,
    lithium_charge,
    voltage_at_25,
)
from inspector.reading.inspection import Measured, Silent, Word

_LEAD: dict[str, LeadBattery] = {"flooded lead": "flooded", "sealed lead": "agm"}
_LITHIUM = {"low": "low", "full": "full", "cannot tell": "not to be told by voltage"}
_FULL, _HALF = 100.0, 50.0
_MONTHS_A_DAY = 12 / 365.2425


def charge(looks: Looks) -> Word | Silent:
    """How full a rested battery is, by its kind and warmth."""
    shown, kind = looks.measured("rest_voltage"), looks.word("type")
    if shown is None or kind is None:
        return NOT_LOOKED_AT
    if kind not in _LEAD:
        return Word(_LITHIUM[lithium_charge(shown.amount.base)])
    return Word(charge_in_words(_percent(shown.amount.base, _LEAD[kind], looks)))


def frost(looks: Looks) -> Word | Silent:
    """Whether its acid may freeze in the owner's coldest night; lithium holds no water."""
    shown, kind, night = looks.measured("rest_voltage"), looks.word("type"), looks.measured("coldest_night")
    if kind is not None and kind not in _LEAD:
        return Silent("does not apply")
    if shown is None or kind is None or night is None:
        return NOT_LOOKED_AT
    return Word(frost_danger(_percent(shown.amount.base, _LEAD[kind], looks), night.amount.base))


def charging_at_25(looks: Looks) -> Measured | Silent:
    """The charging voltage as it counts for a lead battery at 25 degrees."""
    shown, warmth, kind = looks.measured("charging_voltage"), looks.measured("battery_warmth"), looks.word("type")
    if kind is not None and kind not in _LEAD:
        return Silent("does not apply")
    if shown is None or warmth is None or kind is None or shown.amount.base <= 0:
        return NOT_LOOKED_AT
    found = voltage_at_25(shown.amount.base, warmth.amount.base)
    a_degree = voltage_at_25(shown.amount.base, warmth.amount.base + 1) - found
    return worked_out(found, "voltage", "V", math.hypot(shown.uncertainty, a_degree * warmth.uncertainty))


def days_to_half(looks: Looks) -> Measured | Silent:
    """Whole days until the drain has taken half of a full battery."""
    size, drain = looks.measured("capacity"), looks.measured("key_off_drain")
    if size is None or drain is None or drain.amount.base <= 0:
        return NOT_LOOKED_AT
    days = days_until(size.amount.base, _FULL, _HALF, drain.amount.base)
    doubt = days * drain.uncertainty / drain.amount.base
    return worked_out(round(days) * _MONTHS_A_DAY, "time", "days", doubt * _MONTHS_A_DAY)


def _percent(volts: float, kind: LeadBattery, looks: Looks) -> float:
    warmth = looks.measured("battery_warmth")
    return charge_from_rest(volts, kind) if warmth is None else charge_from_rest(volts, kind, warmth.amount.base)
