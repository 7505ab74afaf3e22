"""ASTM D2270 / ISO 2909: worked examples, and the open library `chemicals` as an oracle."""

import pytest
from chemicals.viscosity import VI_Hs, VI_Ls, VI_nus
from chemicals.viscosity import viscosity_index as library_index
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities.viscosity import belong_together, viscosity_index


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
        lambda: viscosity_index(20.0, 1.9),
        lambda: viscosity_index(5.0, 5.0),
        lambda: viscosity_index(float("nan"), 5.0),
        lambda: belong_together(0.0, 12.0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match="must"):
        call()
