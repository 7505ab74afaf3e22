"""The battery by its voltage: charge, frost, charging in the cold, days on a drain."""

from __future__ import annotations

import pytest

from tests.deriving.looks import fact, measured, sentences, word

BATTERY = "battery @ electrics"


def charge(**looks: str) -> str:
    return word(fact(BATTERY, "charge", {BATTERY: looks}))


@pytest.mark.parametrize(
    ("kind", "volts", "answer"),
    [
        # battery makers' tables at 27 °C: flooded 12.65 / 12.45 / 12.24 / 12.06 / 11.89,
        # AGM 12.8 / 12.6 / 12.3 / 12.0
        ("flooded lead", "12.65 V", "full"),
        ("flooded lead", "12.45 V", "three quarters full"),
        ("flooded lead", "12.24 V", "half full"),
        ("flooded lead", "12.06 V", "low"),
        ("flooded lead", "11.89 V", "empty"),
        ("sealed lead", "12.6 V", "three quarters full"),
        ("sealed lead", "12.3 V", "half full"),
        ("sealed lead", "12.0 V", "low"),
        # one table has 40 % at 13.2 V, another 80 %
        ("lithium", "13.2 V", "not to be told by voltage"),
        ("lithium", "13.6 V", "full"),
        ("lithium", "12.7 V", "low"),
    ],
)
def test_the_same_voltage_means_something_else_on_another_battery(kind: str, volts: str, answer: str) -> None:
    assert charge(type=kind, rest_voltage=volts) == answer


def test_cold_acid_shows_less_than_it_holds() -> None:
    """0.024 V for 10 °F: 12.32 V at -5 °C are 12.46 V at 27 °C."""
    assert charge(type="flooded lead", rest_voltage="12.32 V") == "half full"
    assert charge(type="flooded lead", rest_voltage="12.32 V", battery_warmth="-5 °C") == "three quarters full"


@pytest.mark.parametrize(
    ("volts", "night", "answer"),
    [
        ("12.65 V", "-50 °C", "no danger"),  # full: -59 °C
        ("12.24 V", "-30 °C", "no danger"),  # half: -37 °C
        ("12.24 V", "-37 °C", "may freeze"),
        ("12.06 V", "-26 °C", "no danger"),  # a quarter: -27 °C
        ("11.9 V", "-10 °C", "may freeze"),  # empty: about -7 °C, from memory
        ("11.9 V", "-5 °C", "no danger"),
    ],
)
def test_an_empty_battery_freezes_and_a_full_one_does_not(volts: str, night: str, answer: str) -> None:
    observations = {BATTERY: {"type": "flooded lead", "rest_voltage": volts},
                    "use @ whole machine": {"coldest_night": night}}  # fmt: skip

    assert word(fact(BATTERY, "frost", observations)) == answer


def test_nobody_asked_about_the_winter_and_so_nothing_is_open() -> None:
    found = fact(BATTERY, "frost", {BATTERY: {"type": "flooded lead", "rest_voltage": "11.8 V"}})

    assert not found.seen
    assert not found.unseen


def test_charging_in_the_cold_counts_for_less() -> None:
    """Charger makers: 3 mV for each cell and degree; 14.95 V at -5 °C are 14.41 V at 25 °C."""
    looks = {"type": "sealed lead", "charging_voltage": "14.95 V ± 0.01 V", "battery_warmth": "-5 °C ± 1 °C"}

    assert measured(fact(BATTERY, "charging_voltage_at_25", {BATTERY: looks})).amount.base == pytest.approx(14.41)
    says = sentences({BATTERY: looks})
    assert "electrics/charging_right_for_its_warmth" in says
    assert "electrics/charging_outside_band" not in says  # the same thing is not said twice
    assert "electrics/charging_outside_band" in sentences({BATTERY: {**looks, "battery_warmth": "25 °C ± 1 °C"}})


@pytest.mark.parametrize(
    ("capacity", "drain", "days"),
    [("14 Ah", "10 mA", 29), ("14 Ah", "30 mA", 10), ("8 Ah", "2 mA", 83), ("14 Ah", "0.03 A", 10)],
)
def test_how_long_a_parked_battery_lasts(capacity: str, drain: str, days: int) -> None:
    """Plain division: half of 14 Ah at 10 mA is 700 hours, 29 days."""
    found = measured(fact(BATTERY, "days_to_half", {BATTERY: {"capacity": capacity, "key_off_drain": drain}}))

    assert found.typed == f"{days} days"


def test_the_owner_reads_it_in_words() -> None:
    says = sentences({
        BATTERY: {"type": "flooded lead", "rest_voltage": "11.8 V", "capacity": "14 Ah", "key_off_drain": "30 mA"},
        "use @ whole machine": {"coldest_night": "-12 °C"},
    })  # fmt: skip

    assert says["electrics/battery_may_freeze"].endswith(
        "y its voltage at rest the battery is empty, "
        "and so it may freeze in the coldest night that was written down."
    )
    assert says["electrics/drain_empties_soon"].endswith(
        "he current that flows with the key off takes half of a full battery in about 10 days."
    )
    assert "electrics/drain_noticeable" not in says
