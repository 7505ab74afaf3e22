"""ASTM D341 and ASTM D2270 / ISO 2909: worked examples, and the open library `chemicals` as an oracle."""

from math import exp, log

import pytest
from chemicals.viscosity import VI_Hs, VI_Ls, VI_nus
from chemicals.viscosity import viscosity_index as library_index
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities.viscosity import (
    blend_viscosity,
    change_percent,
    viscosity_at,
    viscosity_index,
)


def test_d341_published_calculator_sheet():
    # 32 mm2/s at 40 degrees and 5.4 at 100: 8.5 at 80
    assert viscosity_at(80.0, 40, 32, 100, 5.4) == pytest.approx(8.5, abs=0.05)
    assert viscosity_at(80.0, 40, 32, 100, 5.4) == pytest.approx(8.533, abs=0.001)


@pytest.mark.parametrize(("celsius", "viscosity"), [(20, 483.5), (60, 54.0), (80, 25.9), (120, 9.1)])
def test_d341_gear_oil(celsius, viscosity):
    # calculated: 139 at 40, 14.5 at 100 degrees
    assert viscosity_at(celsius, 40, 139, 100, 14.5) == pytest.approx(viscosity, rel=0.005)


@pytest.mark.parametrize(
    ("at_40", "at_100", "index"),
    [
        (73.30, 8.86, 92),  # D2270, 5.1.4
        (22.83, 5.05, 156),  # D2270, 6.1.4
        (1000.0, 100.0, 193),  # test of the open library
        (139.0, 14.5, 103),  # calculated
    ],
)
def test_d2270_examples(at_40, at_100, index):
    assert round(viscosity_index(at_40, at_100)) == index


@pytest.mark.parametrize(("hot", "low", "high"), list(zip(VI_nus, VI_Ls, VI_Hs, strict=True))[::10])
def test_d2270_table_rows(hot, low, high):
    # an oil as thick as L has index 0, as thick as H index 100; the printed table, every tenth row
    assert viscosity_index(float(low), float(hot)) == pytest.approx(0, abs=0.6)
    assert viscosity_index(float(high), float(hot)) == pytest.approx(100, abs=0.6)


@given(st.floats(2.0, 500.0), st.floats(1.25, 25.0))
def test_d2270_equals_the_library_over_its_domain(at_100, ratio):
    at_40 = at_100 * ratio
    theirs = library_index(at_40 * 1e-6, at_100 * 1e-6)

    # polynomials here, interpolated table there
    assert viscosity_index(at_40, at_100) == pytest.approx(theirs, abs=0.5, rel=0.006)


def refutas(first, second, share):
    """Blending index of Refutas, an independent rule of the trade (from memory)."""

    def index(viscosity):
        return 14.534 * log(log(viscosity + 0.8)) + 10.975

    mixed = (1 - share) * index(first) + share * index(second)
    return exp(exp((mixed - 10.975) / 14.534)) - 0.8


@pytest.mark.parametrize(("first", "second", "share"), [(10, 100, 0.5), (5, 15, 0.3), (100, 1000, 0.2)])
def test_blend_agrees_with_another_rule(first, second, share):
    assert blend_viscosity(float(first), second, share) == pytest.approx(refutas(first, second, share), rel=0.005)


def test_change_of_a_used_oil():
    # calculated: new 15.0, used 12.9
    assert change_percent(15.0, 12.9) == pytest.approx(-14.0)


@pytest.mark.parametrize(
    "call",
    [
        lambda: viscosity_at(-273.15, 40, 32, 100, 5.4),
        lambda: viscosity_at(80.0, 40, 32, 40, 32),
        lambda: viscosity_at(80.0, 40, 5.4, 100, 32),
        lambda: viscosity_at(80.0, 40, 32, 100, 0.1),
        lambda: viscosity_index(20.0, 1.9),
        lambda: viscosity_index(5.0, 5.0),
        lambda: viscosity_index(float("nan"), 5.0),
        lambda: blend_viscosity(10.0, 20.0, 1.1),
        lambda: change_percent(0.0, 12.0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match="must"):
        call()
