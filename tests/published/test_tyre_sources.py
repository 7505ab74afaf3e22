"""What is moulded on tyres (49 CFR 574.5, load and speed tables), gas law examples, BS AU 159f."""

from datetime import date

import pytest

from inspector.quantities.tyres import (
    load_kg,
    may_be_repaired,
    pressure_at,
    repair_rule,
    speed_kmh,
    tyre_date,
)

TODAY = date(2025, 11, 25)


@pytest.mark.parametrize(
    ("code", "monday"),
    [("0301", date(2001, 1, 15)), ("1004", date(2004, 3, 1)), ("4819", date(2019, 11, 25))],
)
def test_four_digits_are_week_and_year(code, monday):
    # 49 CFR 574.5, examples of tyre pages: week 3 of 2001, week 10 of 2004, week 48 of 2019
    made = tyre_date(code, TODAY)

    assert (made.digits, made.earliest, made.latest) == ("four", monday, monday)


def test_three_digits_leave_the_decade_open():
    # 317: week 31 of 1987 or of 1997
    made = tyre_date("317", TODAY)

    assert made.digits == "three"
    assert made.earliest.isocalendar()[:2] == (1987, 31)
    assert made.latest.isocalendar()[:2] == (1997, 31)


def test_week_53_follows_week_52_even_where_the_calendar_has_none():
    assert tyre_date("5318", TODAY).earliest == date(2018, 12, 31)
    assert tyre_date("5320", TODAY).earliest == date(2020, 12, 28)


@pytest.mark.parametrize(
    "code", ["0019", "5419", "9919", "4925", "0126", "12", "12345", "1a19", "", "²³19", "-119"]
)
def test_a_code_that_cannot_be_is_refused(code):
    with pytest.raises(ValueError, match=r"tyre date code|future"):
        tyre_date(code, TODAY)


@pytest.mark.parametrize(
    ("index", "kg"),
    [
        (30, 106),
        (39, 136),
        (43, 155),
        (50, 190),
        (58, 236),
        (65, 290),
        (69, 325),
        (73, 365),
        (80, 450),
        (89, 580),
        (90, 600),
        (91, 615),
        (92, 630),
        (93, 650),
        (94, 670),
        (95, 690),
        *((96, 710), (97, 730), (98, 750), (99, 775), (100, 800)),  # from memory
    ],
)
def test_load_index(index, kg):
    # two published tables
    assert load_kg(index) == kg


@pytest.mark.parametrize("index", range(30, 101))
def test_load_index_follows_its_law(index):
    # preferred numbers: 45 x 10^(index/80) kg, checked over the whole table
    assert load_kg(index) == pytest.approx(45 * 10 ** (index / 80), rel=0.021)


@pytest.mark.parametrize("index", [29, 101, -1])
def test_load_index_outside_the_table_is_refused(index):
    with pytest.raises(ValueError, match="30 to 100"):
        load_kg(index)


@pytest.mark.parametrize(
    ("symbol", "kmh"),
    [
        ("B", 50),
        ("F", 80),
        ("J", 100),
        ("K", 110),
        ("L", 120),
        ("M", 130),
        ("N", 140),
        ("P", 150),
        ("Q", 160),
        ("R", 170),
        ("S", 180),
        ("T", 190),
        ("U", 200),
        ("H", 210),
        ("V", 240),
        ("W", 270),
        ("Y", 300),
        ("Z", 240),
        ("(W)", 270),
        ("h", 210),
    ],
)
def test_speed_symbol(symbol, kmh):
    # published table; H stands between U and V
    assert speed_kmh(symbol) == kmh


def test_an_unknown_speed_symbol_is_refused():
    with pytest.raises(ValueError, match="no speed symbol"):
        speed_kmh("O")


@pytest.mark.parametrize(
    ("symbol", "hole", "repairs"),
    [
        ("B", 6, 2),
        ("J", 6, 2),
        ("K", 3, 1),
        ("H", 3, 1),
        ("V", 3, 1),
        ("W", 0, 0),
        ("Z", 0, 0),
        ("(V)", 0, 0),
    ],
)
def test_repair_rule(symbol, hole, repairs):
    # BS AU 159f, motorcycle part
    rule = repair_rule(symbol)

    assert (rule.largest_hole, rule.most_repairs) == (hole, repairs)


@pytest.mark.parametrize(
    ("symbol", "hole", "before", "off_centre", "allowed"),
    [
        ("J", 6.0, 1, 0.25, True),
        ("J", 6.1, 0, 0.0, False),
        ("J", 2.0, 2, 0.0, False),
        ("H", 3.0, 0, 0.1, True),
        ("H", 3.0, 1, 0.1, False),
        ("H", 2.0, 0, 0.3, False),
        ("W", 1.0, 0, 0.0, False),
    ],
)
def test_one_more_repair(symbol, hole, before, off_centre, allowed):
    assert may_be_repaired(symbol, hole, before, off_centre) is allowed


def celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32) / 1.8


@pytest.mark.parametrize(
    ("psi", "before", "later", "printed"),
    [(20, 70, 50, 18.7), (20, 70, 130, 23.9), (70, 70, 100, 74.8)],
)
def test_gas_law_examples_in_psi(psi, before, later, printed):
    # textbook pages, with 14.7 psi of air
    assert pressure_at(psi, celsius(before), celsius(later), air=14.7) == pytest.approx(printed, abs=0.06)


def test_gas_law_example_over_a_wide_range():
    # printed 55.9 psi
    assert pressure_at(42.5, -16.0, 44.2, air=14.7) == pytest.approx(55.9, abs=0.05)


def test_gas_law_example_with_a_slip_of_its_page():
    # 30 psi at 10 C, seen at 40 C: the page prints 239.38 kPa, its own figures give 239.49 kPa
    kpa = pressure_at(30 * 6.894757, 10.0, 40.0, air=101.325)

    assert kpa == pytest.approx(239.49, abs=0.02)


@pytest.mark.parametrize(("celsius_later", "bar"), [(0, 2.26), (40, 2.74), (60, 2.98), (80, 3.22)])
def test_two_and_a_half_bar_at_other_temperatures(celsius_later, bar):
    # calculated from the gas law
    assert pressure_at(2.5, 20.0, celsius_later, air=1.013) == pytest.approx(bar, abs=0.005)


def test_rule_of_thumb_of_one_psi_for_ten_degrees_fahrenheit():
    assert pressure_at(36.0, celsius(70), celsius(80), air=14.696) - 36 == pytest.approx(0.96, abs=0.01)
    assert pressure_at(2.5, 20.0, 30.0) - 2.5 == pytest.approx(0.12, abs=0.005)


@pytest.mark.parametrize(("pressure", "before", "later"), [(-0.1, 20, 20), (2.5, -274, 20), (2.5, 20, -273.15)])
def test_an_impossible_tyre_is_refused(pressure, before, later):
    with pytest.raises(ValueError, match="must"):
        pressure_at(pressure, before, later)
