"""Every formula serves one number and an array alike, refuses what is no number, and starts without numpy."""

import math
import subprocess
import sys
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.quantities import (
    arrays,
    brake_heat,
    breather,
    chain,
    conformity,
    coolant,
    electrics,
    fasteners,
    fluids,
    threads,
    tyres,
    used_oil,
    value_of_information,
    viscosity,
    wear,
)


def wear_at(function: Callable[..., Any], *more: float) -> Callable[[Any], Any]:
    """The wear function at a thickness, other figures fixed."""

    def call(thickness: Any) -> Any:
        if isinstance(thickness, int | float):
            return function(wear.start(thickness, 0.1, 0.3, 0.1), *more)
        spread, rate = np.full(thickness.shape, 0.1), np.full(thickness.shape, 0.3)
        return function(wear.start(thickness, spread, rate, spread), *more)

    return call


# name, function of its first argument, range in which it is asked
FORMULAS: dict[str, tuple[Callable[[Any], Any], float, float]] = {
    "chance_beyond": (lambda x: conformity.chance_beyond(x, 0.2, at_least=1.5, at_most=4.0), 0, 6),
    "chance_beyond exact": (lambda x: conformity.chance_beyond(x, 0.0, at_least=1.5), 0, 3),
    "viscosity_at": (lambda x: viscosity.viscosity_at(x, 40, 95, 100, 14.4), -40, 150),
    "blend_viscosity": (lambda x: viscosity.blend_viscosity(x, 14.4, 0.3), 1, 500),
    "preload_from": (lambda x: fasteners.preload_from(x, 8, 0.2), 0, 200),
    "shear_area_per_mm": (lambda x: threads.shear_area_per_mm(x, 9.968, 9.206), 0.5, 2),
    "depth_to_break_bolt": (lambda x: threads.depth_to_break_bolt(x, 130, 24.8), 1, 1e5),
    "water_at_cooling": (lambda x: breather.water_at_cooling(x, under_water=True), 10, 1000),
    "guard_band": (lambda x: conformity.guard_band(x, 0.05), 0, 3),
    "chance_at_limit": (wear_at(wear.chance_at_limit, 1.5, 4.0, 0.005), 0, 6),
    "distance_left early": (wear_at(wear.distance_left, 1.5, 0.05, 0.005), 0, 6),
    "distance_left middle": (wear_at(wear.distance_left, 1.5, 0.5), 0, 6),
    "distance_left late": (wear_at(wear.distance_left, 1.5, 0.95, 0.005), 0, 6),
    "surprise": (wear_at(wear.surprise, 2.0, 0.1), 0, 6),
    "prior_rate": (lambda x: wear.prior_rate(x, 3.0)[1], 0.01, 2),
    "boiling_point": (lambda x: fluids.boiling_point("dot 4", x), 0, 9),
    "water_from_age": (lambda x: fluids.water_from_age(x)[1], 0, 12),
    "motion_energy": (lambda x: brake_heat.motion_energy(300, x), 0, 250),
    "descent_energy": (lambda x: brake_heat.descent_energy(300, x), 0, 3000),
    "disc_rise": (lambda x: brake_heat.disc_rise(x, 2.4, share=0.8), 0, 1e6),
    "braking_power": (lambda x: brake_heat.braking_power(300, x, 0.1, drag_area=0.7, rolling=0.02), 0, 250),
    "cooled_temperature": (
        lambda x: brake_heat.cooled_temperature(20, 20, x, cooling=10, heat_capacity=1100, seconds=300),
        0,
        5000,
    ),
    "pressure_at": (lambda x: tyres.pressure_at(x, 20, 60), 0, 4),
    "viscosity_index": (lambda x: viscosity.viscosity_index(x * 8, x), 2, 200),
    "per_1000_km": (lambda x: used_oil.per_1000_km(x, 5000), 0, 900),
    "stress_area": (lambda x: fasteners.stress_area(x, 1.25), 2, 30),
    "torque_for_other_surface": (lambda x: fasteners.torque_for_other_surface(x, 0.2, 0.15), 0, 300),
    "elongation": (lambda x: chain.elongation(x, 20, 15.875), 300, 340),
    "length_from_rollers": (lambda x: chain.length_from_rollers(x, 330.0), 300, 329),
    "elongation_uncertainty": (lambda x: chain.elongation_uncertainty(x, 20, 15.875), 0, 2),
    "charge_from_rest": (lambda x: electrics.charge_from_rest(x, "agm", 10), 10, 14),
    "battery freezing_point": (electrics.freezing_point, 25, 100),
    "voltage_at_25": (lambda x: electrics.voltage_at_25(x, 5), 10, 15),
    "days_until": (lambda x: electrics.days_until(14, 100, 50, x), 1, 100),
    "coolant freezing_point": (lambda x: coolant.freezing_point("ethylene", x), 0, 60),
    "share_by_mass": (lambda x: coolant.share_by_mass("ethylene", x), 0, 100),
    "propylene by volume": (coolant.propylene_freezing_by_volume, 0, 50),
    "head": (breather.head, 0, 5),
    "water_column": (breather.water_column, 0, 100),
    "suction": (lambda x: breather.suction(x, 15), 15, 140),
    "drawn_volume": (lambda x: breather.drawn_volume(x, 80, 15), 1, 300),
    "water_ppm": (lambda x: breather.water_ppm(x, 180), 0, 10),
    "vapour_drawn": (lambda x: breather.vapour_drawn(x, 80, 15), 1, 300),
    "loss_now": (lambda x: value_of_information.loss_now(x, 1000, 80), 0, 1),
    "look_worth": (lambda x: value_of_information.look_worth(x, 1000, 80, 0.7, 0.94), 0, 1),
}
NAMES = list(FORMULAS)


@pytest.mark.parametrize("name", NAMES)
@given(st.lists(st.floats(0, 1), min_size=1, max_size=6))
def test_an_array_gives_what_its_members_give(name, shares):
    function, low, high = FORMULAS[name]
    values = [min(high, low + share * (high - low)) for share in shares]

    together = function(np.array(values, dtype=float))

    assert isinstance(together, np.ndarray)
    np.testing.assert_allclose(together, [function(value) for value in values], rtol=1e-12, atol=1e-12)


@pytest.mark.parametrize("name", NAMES)
def test_one_number_gives_one_number(name):
    function, low, high = FORMULAS[name]

    assert type(function((low + high) / 2)) is float
    assert type(function(np.float64((low + high) / 2))) is float


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("nonsense", [math.nan, math.inf, -math.inf])
def test_what_is_no_number_is_refused(name, nonsense):
    function, low, _ = FORMULAS[name]

    with pytest.raises(ValueError, match=r"finite|must"):
        function(nonsense)
    with pytest.raises(ValueError, match=r"finite|must"):
        function(np.array([low, nonsense]))


def test_chances_of_arrays_broadcast():
    chances = conformity.chance_beyond(np.array([[1.0], [2.0]]), np.array([0.1, 0.2, 0.3]), at_least=1.5)

    assert chances.shape == (2, 3)


def test_nothing_here_loads_numpy_before_an_array_comes_in():
    code = (
        "import sys\n"
        "from inspector.quantities import conformity, tyres, grades, wear, fluids, torque_slip\n"
        "from inspector.quantities import costs, identity, viscosity, oils, value_of_information\n"
        "from inspector.weighing import risk\n"
        "conformity.outcome(1.6, 0.1, at_least=1.5)\n"
        "wear.distance_left(wear.start(5.0, 0.2, 0.3, 0.1), 1.5, 0.05)\n"
        "sys.exit('numpy' in sys.modules or 'scipy' in sys.modules)\n"
    )

    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


@given(st.floats(1e-9, 1 - 1e-9))
def test_phi_and_its_inverse_belong_together(share):
    assert arrays.phi(arrays.phi_inverse(share)) == pytest.approx(share, rel=1e-9)
