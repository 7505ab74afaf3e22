"""ASTM D341, D7152, D2270 / ISO 2909: worked examples, measured oils, the library `chemicals` as an oracle."""

from math import exp, inf, log

import numpy as np
import pytest
from chemicals.viscosity import VI_Hs, VI_Ls, VI_nus
from chemicals.viscosity import viscosity_index as library_index
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities.viscosity import belong_together, blend_viscosity, viscosity_at, viscosity_index


def test_d341_published_calculator_sheet():
    # 32 mm2/s at 40 degrees and 5.4 at 100: 8.5 at 80
    assert viscosity_at(80.0, 40, 32, 100, 5.4) == pytest.approx(8.5, abs=0.05)
    assert viscosity_at(80.0, 40, 32, 100, 5.4) == pytest.approx(8.533, abs=0.001)


@pytest.mark.parametrize(("celsius", "viscosity"), [(20, 483.5), (60, 54.0), (80, 25.9), (120, 9.1)])
def test_d341_gear_oil(celsius, viscosity):
    # calculated: 139 at 40, 14.5 at 100 degrees
    assert viscosity_at(float(celsius), 40, 139, 100, 14.5) == pytest.approx(viscosity, rel=0.005)


@pytest.mark.parametrize(
    ("at_30", "at_60", "at_100"),
    [
        *((153, 34, 9.1), (250, 50.5, 12.6), (810, 135, 26.8), (18.6, 6.3, 2.4), (45, 12, 3.9), (107, 23.3, 6.4)),
        *((122, 26.3, 7.3), (171, 31, 7.5), (30.7, 8.6, 3.1), (165, 30, 6.8), (310, 44.2, 9.4), (2000, 180, 24)),
    ],
)
def test_d341_between_two_measured_points(at_30, at_60, at_100):
    # Engineering Tribology, table 2.3: dynamic viscosities of mineral oils in mPa s (its first row, 38, 12.1 and
    # 5.3, is no straight line: 12 % off). Density 0.885 g/ml at 15 degrees, from memory.
    cold, middle, hot = (
        mpas / (0.885 - 0.00063 * (t - 15)) for mpas, t in ((at_30, 30), (at_60, 60), (at_100, 100))
    )

    assert viscosity_at(60.0, 30, cold, 100, hot) == pytest.approx(middle, rel=0.06)


@pytest.mark.parametrize(("celsius", "viscosity"), [(37.6, 31.4), (49.0, 21.4), (60.7, 13.9)])
def test_d341_class_problem(celsius, viscosity):
    # a problem of an open lubrication course: 53.7 at 27 and 9.05 at 76.4 degrees, measured between
    assert viscosity_at(celsius, 27, 53.7, 76.4, 9.05) == pytest.approx(viscosity, rel=0.055)


@pytest.mark.parametrize(
    ("at_40", "at_100", "celsius", "mpas"),
    [
        *((60, 11.5, -35, 6200), (80, 13.8, -30, 6600), (95, 14.4, -25, 7000), (110, 14.8, -20, 7000)),
        (165, 18.6, -15, 9500),
    ],
)
def test_d341_meets_the_cranking_limits_of_j300_within_a_third(at_40, at_100, celsius, mpas):
    # SAE J300, 0W to 20W, at the temperature of each; usual data sheets of such oils from memory, 0.88 g/ml
    assert 0.88 * viscosity_at(float(celsius), 40, at_40, 100, at_100) == pytest.approx(mpas, rel=0.33)


@given(st.floats(10, 1000), st.floats(2, 40), st.floats(-40, 150), st.floats(0.1, 50))
def test_d341_gives_back_its_points_and_thins_with_warmth(at_40, ratio, celsius, step):
    at_100 = max(at_40 / ratio, 1.5)
    first, second = (viscosity_at(t, 40, at_40, 100, at_100) for t in (celsius, celsius + step))

    assert viscosity_at(40.0, 40, at_40, 100, at_100) == pytest.approx(at_40, rel=1e-9)
    assert viscosity_at(100.0, 40, at_40, 100, at_100) == pytest.approx(at_100, rel=2e-3)
    assert first > second or first == inf


def test_d341_ends_where_the_standard_ends():
    assert viscosity_at(-60.0, 40, 1000, 100, 26) == inf
    many = viscosity_at(np.array([-60.0, 40.0, 100.0]), 40, 1000, 100, 26)
    assert many == pytest.approx([inf, 1000, 26])


def refutas(first, second, share):
    """Blending index of Refutas, an independent rule of the trade (from memory)."""

    def index(viscosity):
        return 14.534 * log(log(viscosity + 0.8)) + 10.975

    mixed = (1 - share) * index(first) + share * index(second)
    return exp(exp((mixed - 10.975) / 14.534)) - 0.8


@given(st.floats(4.0, 1000.0), st.floats(4.0, 1000.0), st.floats(0, 1))
def test_blend_agrees_with_another_rule_and_stays_between(first, second, share):
    mixed = blend_viscosity(first, second, share)

    assert mixed == pytest.approx(refutas(first, second, share), rel=0.02)
    assert min(first, second) * 0.997 <= mixed <= max(first, second) * 1.003


def test_blend_of_two_base_oils():
    # by hand with D7152 at one temperature: half each of 4 and 40 mm2/s; a mean would be 22, a geometric one 12.6
    assert blend_viscosity(4.0, 40.0, 0.5) == pytest.approx(10.27, abs=0.01)
    assert blend_viscosity(np.array([4.0, 4.0]), 40.0, np.array([0.0, 1.0])) == pytest.approx([4, 40], rel=0.002)


@pytest.mark.parametrize(
    ("at_40", "at_100", "index"),
    [
        (73.30, 8.86, 92),  # D2270, 5.1.4
        (22.83, 5.05, 156),  # D2270, 6.1.4
        (1000.0, 100.0, 193),  # test of the open library
        (139.0, 14.5, 103),  # calculated
        (29.5, 4.37, 7),  # printed on the data sheet of a refrigeration oil
        (97.6, 11.8, 110),  # printed on the data sheet of a hydraulic oil of ISO VG 100
        (32.0, 5.4, 102),  # the usual figures of an ISO VG 32 and VG 46 of about 100, from memory
        (46.0, 6.8, 102),
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


@pytest.mark.parametrize(
    ("at_40", "at_100", "answer"),
    [
        (73.30, 8.86, "belong together"),  # D2270, 5.1.4
        (22.83, 5.05, "belong together"),  # D2270, 6.1.4
        (8.86, 73.30, "do not belong together"),
        (1.8, 1.2, "do not belong together"),  # thinner than the index is defined for
        (900.0, 13.5, "do not belong together"),
    ],
)
def test_figures_that_cannot_be_of_one_oil(at_40, at_100, answer):
    assert belong_together(at_40, at_100) == answer


@pytest.mark.parametrize(
    "call",
    [
        lambda: viscosity_at(-273.15, 40, 32, 100, 5.4),
        lambda: viscosity_at(80.0, 40, 32, 40, 32),
        lambda: viscosity_at(80.0, 40, 5.4, 100, 32),
        lambda: viscosity_at(80.0, 40, 32, 100, 0.1),
        lambda: viscosity_at(inf, 40, 32, 100, 5.4),
        lambda: blend_viscosity(10.0, 20.0, 1.1),
        lambda: blend_viscosity(0.0, 20.0, 0.5),
        lambda: blend_viscosity(np.array([10.0, np.nan]), 20.0, 0.5),
        lambda: viscosity_index(20.0, 1.9),
        lambda: viscosity_index(5.0, 5.0),
        lambda: viscosity_index(float("nan"), 5.0),
        lambda: belong_together(0.0, 12.0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match="must"):
        call()
