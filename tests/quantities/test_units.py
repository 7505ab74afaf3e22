"""Amounts as people type them: published factors, an independent units library, exact temperatures, spellings."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities.units import (
    DIMENSIONS,
    NotAnAmount,
    base_unit,
    convert,
    number_text,
    parse_amount,
    parse_number,
    units_of,
)

LIBRARY = pint.UnitRegistry()
LIBRARY.define("calendar_month = 365.2425 / 12 * day")  # 400 years of the calendar have 146 097 days
NAMES = {
    "length": {"mm": "millimeter", "cm": "centimeter", "m": "meter", "µm": "micrometer", "in": "inch",
               "thou": "thou"},
    "distance": {"km": "kilometer", "mi": "mile", "m": "meter"},
    "temperature": {"°C": "degC", "°F": "degF"},
    "temperature difference": {"°C": "delta_degC", "°F": "delta_degF"},
    "time": {"months": "calendar_month", "years": "12 * calendar_month", "weeks": "week", "days": "day"},
    "volume": {"ml": "milliliter", "l": "liter", "cl": "centiliter", "US fl oz": "fluid_ounce", "US qt": "quart"},
    "torque": {"N·m": "newton * meter", "lbf·ft": "force_pound * foot", "lbf·in": "force_pound * inch",
               "kgf·m": "force_kilogram * meter", "kgf·cm": "force_kilogram * centimeter"},
    "pressure": {"kPa": "kilopascal", "bar": "bar", "psi": "psi", "kgf/cm²": "force_kilogram / centimeter ** 2"},
    "percent": {"%": "percent"},
    "voltage": {"V": "volt"},
    "current": {"mA": "milliampere", "A": "ampere"},
    "charge": {"Ah": "ampere_hour"},
    "force": {"N": "newton", "lbf": "force_pound"},
    "angle": {"°": "degree"},
    "mass": {"kg": "kilogram", "lb": "pound"},
    "speed": {"km/h": "kilometer / hour", "mph": "mile / hour", "m/s": "meter / second"},
    "ppm": {"ppm": "ppm", "%": "percent"},
    "ppm per distance": {"ppm/1000 km": "ppm / kilometer / 1000", "ppm/1000 mi": "ppm / mile / 1000"},
    "viscosity": {"mm²/s": "millimeter ** 2 / second"},
}  # fmt: skip
EVERY_UNIT = [(dimension, unit) for dimension in DIMENSIONS for unit in units_of(dimension)]


@pytest.mark.parametrize(("dimension", "unit"), EVERY_UNIT)
@pytest.mark.parametrize("number", [1.0, 37.5])
def test_every_unit_agrees_with_an_independent_library(dimension: str, unit: str, number: float) -> None:
    names = NAMES[dimension]
    if dimension.startswith("temperature"):
        theirs = LIBRARY.Quantity(number, names[unit]).to(names[base_unit(dimension)]).magnitude
    else:
        one, base = LIBRARY.parse_expression(names[unit]), LIBRARY.parse_expression(names[base_unit(dimension)])
        theirs = (number * one / base).to("dimensionless").magnitude
    assert convert(number, unit, base_unit(dimension), dimension) == pytest.approx(theirs, rel=1e-12)


# NIST Special Publication 811 (2008), appendix B.8: the factor as printed, and half a unit of its last digit.
PRINTED = [
    ("torque", "lbf·ft", "N·m", 1.355818, 5e-7),
    ("torque", "lbf·in", "N·m", 0.1129848, 5e-8),
    ("torque", "kgf·m", "N·m", 9.80665, 0),
    ("pressure", "psi", "kPa", 6.894757, 5e-7),
    ("pressure", "bar", "kPa", 100.0, 0),
    ("pressure", "kgf/cm²", "kPa", 98.0665, 0),
    ("length", "in", "mm", 25.4, 0),
    ("length", "thou", "mm", 0.0254, 0),
    ("distance", "mi", "km", 1.609344, 0),
    ("volume", "US qt", "l", 0.9463529, 5e-8),
    ("volume", "US fl oz", "ml", 29.57353, 5e-6),
    ("force", "lbf", "N", 4.448222, 5e-7),
    ("mass", "lb", "kg", 0.4535924, 5e-8),
    ("speed", "mph", "km/h", 1.609344, 0),
    ("speed", "m/s", "km/h", 3.6, 0),
]


@pytest.mark.parametrize(("dimension", "unit", "into", "factor", "last_digit"), PRINTED)
def test_the_printed_conversion_factors_come_out(
    dimension: str, unit: str, into: str, factor: float, last_digit: float
) -> None:
    assert convert(1.0, unit, into, dimension) == pytest.approx(factor, abs=last_digit + 1e-15, rel=1e-15)


def test_fifteen_foot_pounds_on_a_drain_plug_are_a_little_over_twenty_newton_metres() -> None:
    assert parse_amount("15 lbf·ft", "torque").base == pytest.approx(20.34, abs=0.005)


@pytest.mark.parametrize(
    ("fahrenheit", "celsius"), [(32, 0), (212, 100), (-40, -40), (98.6, 37), (14, -10), (-459.67, -273.15)]
)
def test_temperatures_convert_exactly_both_ways(fahrenheit: float, celsius: float) -> None:
    assert convert(fahrenheit, "°F", "°C", "temperature") == pytest.approx(celsius, abs=1e-12)
    assert convert(celsius, "°C", "°F", "temperature") == pytest.approx(fahrenheit, abs=1e-12)


def test_a_difference_of_temperatures_has_no_zero_to_shift() -> None:
    assert convert(9, "°F", "°C", "temperature difference") == pytest.approx(5, abs=1e-12)
    assert convert(0, "°F", "°C", "temperature difference") == 0


def test_a_year_of_service_has_twelve_months_and_a_month_the_days_of_the_calendar() -> None:
    assert parse_amount("2 years", "time").base == 24
    assert parse_amount("146097 days", "time").base == pytest.approx(400 * 12, rel=1e-12)
    assert parse_amount("1 week", "time").base == pytest.approx(7 * parse_amount("1 day", "time").base, rel=1e-12)


@pytest.mark.parametrize(
    ("typed", "dimension", "number", "unit"),
    [
        ("1.8 mm", "length", 1.8, "mm"),
        ("1.8mm", "length", 1.8, "mm"),
        ("  1.8   MM ", "length", 1.8, "mm"),
        ("9/16 in", "length", 0.5625, "in"),
        ("1 1/4 inches", "length", 1.25, "in"),
        ('3/32"', "length", 0.09375, "in"),
        ("15 um", "length", 15, "µm"),
        ("41 200 km", "distance", 41200, "km"),
        ("41'200 km", "distance", 41200, "km"),
        ("41\u202f200 km", "distance", 41200, "km"),
        ("27 ft-lbs", "torque", 27, "lbf·ft"),
        ("27 lb ft", "torque", 27, "lbf·ft"),
        ("20 Nm", "torque", 20, "N·m"),
        ("2.3 BAR", "pressure", 2.3, "bar"),
        ("-7 °C", "temperature", -7, "°C"),
        ("−7 c", "temperature", -7, "°C"),  # the minus of typesetters
        ("3.5%", "percent", 3.5, "%"),
        ("1e2 mm", "length", 100, "mm"),
        ("12.6 volts", "voltage", 12.6, "V"),
        ("200 cc", "volume", 200, "ml"),
    ],
)
def test_amounts_are_read_as_people_type_them(typed: str, dimension: str, number: float, unit: str) -> None:
    amount = parse_amount(typed, dimension)
    assert (amount.number, amount.unit, amount.dimension) == (pytest.approx(number), unit, dimension)
    assert amount.typed == " ".join(typed.split())


@pytest.mark.parametrize(
    ("typed", "dimension", "words"),
    [
        ("1,8 mm", "length", ["Decimals take a point", "1.8 mm"]),
        ("1,800 km", "distance", ["thousands with a blank", "1 800 km"]),
        ("1.8", "length", ["no unit", "mm, cm, m"]),
        ("thin", "length", ["not a length", "1.5 mm"]),
        ("", "length", ["not a length"]),
        ("3 bar", "length", ["is a pressure, a length is wanted", "mm"]),
        ("3 mm", "angle", ["is a length, an angle is wanted"]),
        ("3 millimetre s", "length", ["not a unit of length", "Did you mean `mm`"]),
        ("3-4 mm", "length", ["not one number with one unit"]),
        ("3 x 4 mm", "length", ["not a unit"]),
        ("nan mm", "length", ["not a length"]),
        ("inf mm", "length", ["not a length"]),
        ("1e999 mm", "length", ["too large"]),
        ("1/0 in", "length", ["nought"]),
        ("1/000 in", "length", ["nought"]),
        ("9" * 5000 + " mm", "length", ["too long"]),
        ("1" * 5000 + "/3 mm", "length", ["too long"]),
        ("about 3 mm", "length", ["not a length"]),
    ],
)
def test_what_is_no_amount_is_refused_with_what_is_allowed(typed: str, dimension: str, words: list[str]) -> None:
    with pytest.raises(NotAnAmount) as refused:
        parse_amount(typed, dimension)
    message = str(refused.value)
    assert all(word in message for word in words), message
    assert len(message) < 400


@given(st.floats(-1e11, 1e11, allow_nan=False))
def test_a_number_written_out_is_read_back_exactly(number: float) -> None:
    assert parse_number(repr(number)) == number


@given(st.integers(0, 10**11))
def test_thousands_set_off_with_blanks_are_the_same_number(number: int) -> None:
    assert parse_number(f"{number:,}".replace(",", " ")) == number


@given(st.integers(0, 999), st.integers(0, 999), st.integers(1, 999))
def test_fractions_of_an_inch_add_up(whole: int, above: int, below: int) -> None:
    assert parse_number(f"{whole} {above}/{below}") == pytest.approx(whole + above / below, rel=1e-12)


@given(st.sampled_from(EVERY_UNIT), st.floats(-1e6, 1e6, allow_nan=False))
def test_an_amount_keeps_its_number_unit_and_value_on_the_way_to_base_units_and_back(
    kind: tuple[str, str], number: float
) -> None:
    dimension, unit = kind
    amount = parse_amount(f"{number!r} {unit}", dimension)
    assert (amount.number, amount.unit) == (number, unit)
    back = convert(amount.base, base_unit(dimension), unit, dimension)
    assert back == pytest.approx(number, rel=1e-9, abs=1e-9)


@given(st.text(max_size=40), st.sampled_from(DIMENSIONS))
def test_any_text_is_an_amount_or_is_refused_in_words(text: str, dimension: str) -> None:
    told = ""
    try:
        amount = parse_amount(text, dimension)
    except NotAnAmount as refused:
        told = str(refused)
    assert told or amount.unit in units_of(dimension)


@given(st.floats(1e-4, 1e6), st.integers(1, 5))
def test_a_printed_number_has_no_exponent_and_is_near(number: float, digits: int) -> None:
    text = number_text(number, digits)
    assert "e" not in text
    assert float(text) == pytest.approx(number, rel=0.6 * 10 ** (1 - digits))
