"""Coolant: freezing by mass (CoolProp 8.0.0) and of propylene glycol by volume (Lange's Handbook 5.13)."""

import pytest
from CoolProp.CoolProp import PropsSI
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities.coolant import (
    freezing_point,
    mix_freezes_at,
    propylene_freezing_by_volume,
    share_by_mass,
)

# printed by CoolProp 8.0.0 for INCOMP::MEG and INCOMP::MPG
MASS = (10, 20, 30, 33, 40, 50, 55, 60)
ETHYLENE = (-3.4, -7.9, -14.6, -17.1, -23.8, -36.0, -43.2, -51.2)
PROPYLENE = (-2.9, -7.2, -12.8, -14.8, -20.6, -32.2, -40.2, -50.0)


@pytest.mark.parametrize(("glycol", "points"), [("ethylene", ETHYLENE), ("propylene", PROPYLENE)])
def test_by_mass(glycol, points):
    for share, celsius in zip(MASS, points, strict=True):
        assert freezing_point(glycol, share) == pytest.approx(celsius, abs=0.11)


@given(st.sampled_from([("ethylene", "MEG"), ("propylene", "MPG")]), st.floats(0.5, 60))
def test_by_mass_as_the_library_has_it_over_its_domain(glycol, share):
    name, fluid = glycol
    theirs = PropsSI("T_FREEZE", "T", 300, "P", 101_325, f"INCOMP::{fluid}[{share / 100}]") - 273.15

    assert freezing_point(name, share) == pytest.approx(theirs, abs=0.3)


@pytest.mark.parametrize(
    ("share", "celsius"), [(10, -2.2), (20, -6.7), (30, -12.8), (40, -20.6), (45, -26.7), (50, -33.3)]
)
def test_propylene_by_volume(share, celsius):
    # the sign of the printed column is restored
    assert propylene_freezing_by_volume(share) == pytest.approx(celsius)


def test_half_and_half_ethylene_glycol_by_volume_is_good_to_about_37():
    # trade pages: 50 % by volume about -37 degrees; ASTM D3306 asks for -36.4 at least (from memory)
    by_mass = 100 * 50 * 1.113 / (50 * 1.113 + 50 * 0.998)

    assert share_by_mass("ethylene", 50.0) == pytest.approx(by_mass)
    assert mix_freezes_at("ethylene", 50.0, "volume") == pytest.approx(freezing_point("ethylene", by_mass))
    assert mix_freezes_at("ethylene", 50.0, "volume") <= -36.4


def test_propylene_goes_on_by_mass_where_its_own_table_ends():
    assert mix_freezes_at("propylene", 45.0, "volume") == pytest.approx(-26.7)
    assert mix_freezes_at("propylene", 51.0, "volume") < -33.3


@pytest.mark.parametrize(
    "call",
    [
        lambda: freezing_point("methanol", 30.0),
        lambda: freezing_point("ethylene", 100.0),
        lambda: freezing_point("ethylene", -1.0),
        lambda: share_by_mass("methanol", 30.0),
        lambda: mix_freezes_at("ethylene", 101.0, "mass"),
        lambda: propylene_freezing_by_volume(60.0),
    ],
)
def test_nonsense_is_refused(call):
    with pytest.raises(ValueError, match=r"must|no glycol"):
        call()
