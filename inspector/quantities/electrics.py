"""What a voltmeter says about a 12 V battery and its charging. Knows no part and no rule.

Voltages in V, temperatures in degrees Celsius, charge in percent. Resting voltages: after eight hours at
least without charge or load.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import Number, as_given, between, interpolate, positive

LeadBattery = Literal["flooded", "agm"]
LithiumCharge = Literal["low", "cannot tell", "full"]
Charge = Literal["full", "three quarters full", "half full", "low", "empty", "not to be told by voltage"]
Frost = Literal["no danger", "may freeze"]

# Resting voltage and charge. The lowest AGM point is ours: the published table only says "under 12.0".
_CHARGE: dict[str, tuple[tuple[float, ...], tuple[float, ...]]] = {
    "flooded": ((11.89, 12.06, 12.24, 12.45, 12.65), (0.0, 25.0, 50.0, 75.0, 100.0)),
    "agm": ((11.7, 12.0, 12.3, 12.6, 12.8), (0.0, 25.0, 50.0, 75.0, 100.0)),
}
_TABLE_TEMPERATURE = 26.7
_WEATHER = (-90.0, 90.0)  # no battery that is measured is colder or hotter
_VOLTS_PER_DEGREE = 0.024 / (10 / 1.8)  # 0.024 V for 10 degrees Fahrenheit
_WORDS: tuple[tuple[float, Charge], ...] = (
    (87.5, "full"), (62.5, "three quarters full"), (37.5, "half full"), (12.5, "low"))  # fmt: skip

# A full battery freezes late. The printed figure at 0 % contradicts others and is left out.
_FREEZES_CHARGE, _FREEZES_AT = (25.0, 50.0, 75.0, 100.0), (-27.0, -37.0, -48.0, -59.0)
_EMPTY_FREEZES = -7.0  # from memory; the acid of an empty battery is little more than water

_LITHIUM_LOW, _LITHIUM_FULL = 12.8, 13.4
_CELLS = 6
_VOLTS_PER_CELL_DEGREE = -0.003
_COMPENSATED_AT = 25.0


def charge_from_rest(
    voltage: Number, kind: LeadBattery, temperature: Number | float = _TABLE_TEMPERATURE
) -> Number:
    """State of charge of a rested lead battery, 0 to 100 %.

    Colder acid shows a lower voltage, which is allowed for. An error of 0.1 V is one of about 12 %. Raises
    ValueError for voltages outside 0 to 20 and for another kind of battery.
    Source: battery makers' tables at 26.7 degrees; the correction is published for flooded batteries.
    """
    if kind not in _CHARGE:
        raise ValueError(f"{kind!r} is no lead battery of the tables. Use one of: {', '.join(_CHARGE)}.")
    shown = between("The voltage", voltage, 0.0, 20.0)
    warmer = between("The temperature", temperature, *_WEATHER) - _TABLE_TEMPERATURE
    volts, charge = _CHARGE[kind]
    return as_given(interpolate(shown - _VOLTS_PER_DEGREE * warmer, volts, charge), voltage)


def charge_in_words(charge: float) -> Charge:
    """The nearest quarter of a charge in percent. Raises ValueError outside 0 to 100."""
    share = float(between("The charge", charge, 0.0, 100.0))
    return next((word for least, word in _WORDS if share >= least), "empty")


def lithium_charge(voltage: float) -> LithiumCharge:
    """What a resting voltage says about a four-cell lithium iron phosphate battery: mostly nothing.

    Between 12.8 and 13.4 V lie about seven tenths of the capacity, and tables differ by 40 points there.
    Raises ValueError for voltages outside 0 to 20. Source: two makers' tables that disagree.
    """
    shown = float(between("The voltage", voltage, 0.0, 20.0))
    if shown <= _LITHIUM_LOW:
        return "low"
    return "full" if shown >= _LITHIUM_FULL else "cannot tell"


def freezing_point(charge: Number) -> Number:
    """Temperature at which the acid of a flooded battery freezes, by its charge from 25 to 100 %.

    Raises ValueError outside: under 25 % the sources contradict each other. Source: battery maker's table.
    """
    share = between("The charge", charge, _FREEZES_CHARGE[0], _FREEZES_CHARGE[-1])
    return as_given(interpolate(share, _FREEZES_CHARGE, _FREEZES_AT), charge)


def frost_danger(charge: float, coldest: float) -> Frost:
    """Whether a lead battery of this charge may freeze at a temperature.

    Under 25 % the sources contradict each other, so the warmest of them is taken: -7 degrees, from memory.
    Raises ValueError for a charge outside 0 to 100 and a temperature outside -90 to 90. Source: as
    `freezing_point`.
    """
    share = float(between("The charge", charge, 0.0, 100.0))
    freezes = _EMPTY_FREEZES if share < _FREEZES_CHARGE[0] else freezing_point(share)
    return "may freeze" if float(between("The temperature", coldest, *_WEATHER)) <= freezes else "no danger"


def voltage_at_25(voltage: Number, temperature: Number | float, cells: int = _CELLS) -> Number:
    """What a charging voltage seen at a temperature counts at 25 degrees.

    A lead battery wants 3 mV less a cell for each degree above 25. Raises ValueError unless voltage and cells
    are positive, and for a temperature outside -90 to 90. Source: charger makers; another gives 22 mV in all.
    """
    warmer = between("The temperature", temperature, *_WEATHER) - _COMPENSATED_AT
    count = positive("The number of cells", cells)
    return as_given(positive("The voltage", voltage) - _VOLTS_PER_CELL_DEGREE * count * warmer, voltage)


def days_until(capacity_ah: float, charge: float, lowest_charge: float, drain_ma: Number) -> Number:
    """Days until a key-off drain has taken a battery from one charge down to another, self-discharge apart.

    Charges in percent, drain in mA. Raises ValueError unless capacity and drain are positive and the lowest
    charge lies strictly under the first. Source: plain division.
    """
    first = between("The charge", charge, 0.0, 100.0)
    last = between("The lowest charge", lowest_charge, 0.0, 100.0)
    fall = positive("The charge less the lowest charge", first - last)
    taken = positive("The capacity", capacity_ah) * fall / 100
    return as_given(1000 * taken / positive("The drain", drain_ma) / 24, drain_ma)
