"""Amounts in the units of the other system, against an independent converter."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.quantities.other_units import in_system
from inspector.quantities.units import parse_amount

UNITS = pint.UnitRegistry()
PAIRS = [
    ("length", "mm", "in", "millimeter", "inch"),
    ("distance", "km", "mi", "kilometer", "mile"),
    ("torque", "N·m", "lbf·ft", "newton * meter", "force_pound * foot"),
    ("pressure", "bar", "psi", "bar", "psi"),
    ("mass", "kg", "lb", "kilogram", "pound"),
    ("speed", "km/h", "mph", "kilometer / hour", "mile / hour"),
]


@pytest.mark.parametrize("pair", PAIRS, ids=lambda pair: pair[0])
@given(number=st.floats(0.1, 9e4).map(lambda n: float(f"{n:.3g}")))
@settings(deadline=None, max_examples=50)
def test_it_is_the_same_amount_as_far_as_its_figures_go(pair: tuple[str, ...], number: float) -> None:
    dimension, metric, imperial, one, other = pair
    for unit, system, wanted, source, target in (
        (metric, "imperial", imperial, one, other),
        (imperial, "metric", metric, other, one),
    ):
        told = in_system(parse_amount(f"{number:f} {unit}", dimension), system)  # type: ignore[arg-type]
        assert told is not None
        value, _, found = told.partition(" ")
        exact = UNITS.Quantity(number, source).to(target).magnitude
        assert found == wanted
        assert float(value) == pytest.approx(exact, rel=0.051)


@pytest.mark.parametrize(
    ("typed", "dimension", "system", "expected"),
    [
        ("1.2 mm", "length", "imperial", "0.047 in"),
        ("1.20 in", "length", "metric", "30 mm"),
        ("32 lbf·ft", "torque", "metric", "43 N·m"),
        ("250 kPa", "pressure", "imperial", "36 psi"),
        ("36 psi", "pressure", "metric", "2.5 bar"),
        ("80 °C", "temperature", "imperial", "180 °F"),
        ("41 200 km", "distance", "imperial", "25600 mi"),
        ("1.2 mm", "length", "metric", None),
        ("5 years", "time", "imperial", None),
        ("12.6 V", "voltage", "imperial", None),
    ],
)
def test_what_is_typed_gets_the_other_beside_it(typed: str, dimension: str, system: str, expected: str) -> None:
    assert in_system(parse_amount(typed, dimension), system) == expected  # type: ignore[arg-type]
