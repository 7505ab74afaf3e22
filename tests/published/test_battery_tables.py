"""Battery makers' tables: resting voltage, freezing, temperature; seen as pages."""

import pytest

from inspector.quantities.electrics import (
    charge_from_rest,
    charge_in_words,
    days_until,
    freezing_point,
    frost_danger,
    lithium_charge,
    voltage_at_25,
)


@pytest.mark.parametrize(("volts", "charge"), [(12.65, 100), (12.45, 75), (12.24, 50), (12.06, 25), (11.89, 0)])
def test_flooded_at_80_fahrenheit(volts, charge):
    assert charge_from_rest(volts, "flooded") == pytest.approx(charge)


@pytest.mark.parametrize(("volts", "charge"), [(12.66, 100), (12.45, 75), (12.30, 50), (12.15, 25)])
def test_another_flooded_table_differs_by_less_than_a_seventh(volts, charge):
    # sources differ; ours must stay in their neighbourhood
    assert charge_from_rest(volts, "flooded") == pytest.approx(charge, abs=14)


@pytest.mark.parametrize(("volts", "charge"), [(12.8, 100), (13.2, 100), (12.6, 75), (12.3, 50), (12.0, 25)])
def test_agm(volts, charge):
    assert charge_from_rest(volts, "agm") == pytest.approx(charge)


def test_cold_acid_shows_less():
    # 0.024 V for 10 degrees Fahrenheit, 4.3 mV for one Celsius, from 80 F
    assert charge_from_rest(12.45 - 0.024, "flooded", (70 - 32) / 1.8) == pytest.approx(75, abs=0.05)


def test_a_percent_of_the_meter_is_fifteen_percent_of_charge():
    # published: 1 % of 12 V is 0.12 V is 15 % of charge
    assert charge_from_rest(12.45, "flooded") - charge_from_rest(12.33, "flooded") == pytest.approx(15, abs=1)


@pytest.mark.parametrize(("charge", "celsius"), [(100, -59), (75, -48), (50, -37), (25, -27)])
def test_freezing(charge, celsius):
    assert freezing_point(charge) == celsius


@pytest.mark.parametrize(
    ("volts", "word"),
    [(13.6, "full"), (13.4, "full"), (13.2, "cannot tell"), (13.0, "cannot tell"), (12.8, "low")],
)
def test_lithium_iron_phosphate_mostly_cannot_tell(volts, word):
    # one table has 40 % at 13.2 V, another 80 %
    assert lithium_charge(volts) == word


@pytest.mark.parametrize(("celsius", "per_cell"), [(25, 2.30), (35, 2.27), (15, 2.33)])
def test_charging_voltage_per_cell(celsius, per_cell):
    # printed example
    assert voltage_at_25(per_cell, celsius, cells=1) == pytest.approx(2.30)


def test_charging_voltage_of_six_cells():
    # -18 mV for one degree
    assert voltage_at_25(14.4 - 0.018, 26.0) == pytest.approx(14.4)


def test_ten_milliamperes_empty_half_a_battery_in_a_month_or_so():
    # calculated: 14 Ah from 100 to 50 % at 10 mA
    assert days_until(14.0, 100, 50, 10.0) == pytest.approx(29.2, abs=0.1)


@pytest.mark.parametrize(
    "call",
    [
        lambda: charge_from_rest(-1.0, "flooded"),
        lambda: charge_from_rest(12.5, "gel"),
        lambda: charge_from_rest(float("nan"), "agm"),
        lambda: lithium_charge(48.0),
        lambda: freezing_point(10.0),
        lambda: voltage_at_25(0.0, 20),
        lambda: charge_in_words(101.0),
        lambda: frost_danger(-1.0, -10.0),
        lambda: days_until(14.0, 50, 50, 10.0),
        lambda: days_until(14.0, 100, 50, 0.0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match=r"must|no lead battery"):
        call()
