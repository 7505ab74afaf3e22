"""Every figure that a formula asks for: no number, an endless or an absurd one gives an error, no result."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from inspector.quantities import (
    bolt_figures,
    brake_heat,
    breather,
    chain,
    conformity,
    coolant,
    electrics,
    fasteners,
    fluids,
    grades,
    odometer,
    oils,
    threads,
    tightening,
    torque_slip,
    tyre_fit,
    tyres,
    used_oil,
    value_of_information,
    viscosity,
    wear,
)

# each with figures that it takes
CALLS: list[tuple[Callable[..., Any], tuple[Any, ...]]] = [
    (conformity.chance_beyond, (1.6, 0.1, 1.5)),
    (conformity.guard_band, (0.1, 0.05)),
    (wear.prior_rate, (0.25, 3.0)),
    (wear.start, (5.0, 0.2, 0.3, 0.1)),
    (fluids.boiling_point, ("dot 4", 1.0)),
    (fluids.boiling_from_age, ("dot 4", 2.0)),
    (fluids.hard_use_from_age, ("dot 4", 2.0)),
    (fluids.hard_use_from_water, ("dot 4", 2.0, 0.2)),
    (fluids.hard_use_from_boiling, (200.0, 5.0)),
    (brake_heat.motion_energy, (300.0, 100.0)),
    (brake_heat.descent_energy, (300.0, 100.0)),
    (brake_heat.disc_rise, (1e5, 2.4)),
    (brake_heat.descent_heat, (300.0, 500.0, 3)),
    (breather.head, (0.3,)),
    (breather.suction, (80.0, 15.0)),
    (breather.drawn_volume, (80.0, 80.0, 15.0)),
    (breather.water_ppm, (1.0, 180.0)),
    (breather.vapour_drawn, (80.0, 80.0, 15.0)),
    (breather.stronger_push, (0.3,)),
    (chain.length_from_rollers, (300.0, 320.0)),
    (chain.elongation, (320.0, 20.0, 15.875)),
    (chain.elongation_uncertainty, (0.3, 20.0, 15.875)),
    (coolant.freezing_point, ("ethylene", 30.0)),
    (coolant.share_by_mass, ("ethylene", 30.0)),
    (coolant.mix_freezes_at, ("ethylene", 30.0, "mass")),
    (electrics.charge_from_rest, (12.5, "agm", 20.0)),
    (electrics.lithium_charge, (13.2,)),
    (electrics.frost_danger, (50.0, -10.0)),
    (electrics.voltage_at_25, (14.0, 10.0)),
    (electrics.days_until, (10.0, 100.0, 50.0, 10.0)),
    (fasteners.stress_area, (8.0, 1.25)),
    (fasteners.proof_load, ("8.8", 8.0, 1.25)),
    (fasteners.preload_from, (25.0, 8.0, 0.2)),
    (fasteners.torque_for_other_surface, (25.0, 0.2, 0.14)),
    (threads.engagement, (15.0, 10.0, "aluminium")),
    (threads.shear_area_per_mm, (1.5, 9.9, 9.2)),
    (threads.depth_to_break_bolt, (1000.0, 130.0, 24.0)),
    (tightening.tightening, (8, 1.25, "8.8", 0.12)),
    (torque_slip.unit_slip, (20.0, 27.0)),
    (bolt_figures.torque_bears, (25.0, "N·m", "M8x1.25", "8.8", "steel")),
    (grades.d610_grade, (1.0,)),
    (grades.iso4628_ri, (1.0,)),
    (grades.chip_size, (1.0, 1.0)),
    (odometer.per_year, (1000.0, 2.0)),
    (oils.against_gear_grade, (15.0, "75W-90")),
    (oils.mix_against_band, (13.0, 0.5, oils.engine_band("10W-40"))),
    (tyre_fit.speed_fit, ("H", 200.0)),
    (tyres.pressure_at, (2.5, 20.0, 40.0)),
    (used_oil.iso4406_number, (100.0,)),
    (used_oil.pq_zone, ("engine", 10.0)),
    (used_oil.per_1000_km, (100.0, 5000.0)),
    (used_oil.rate_trend, (10.0, 20.0)),
    (value_of_information.look_worth, (0.1, 100.0, 10.0, 0.7, 0.9)),
    (viscosity.viscosity_at, (20.0, 40.0, 100.0, 100.0, 14.0)),
    (viscosity.blend_viscosity, (10.0, 20.0, 0.5)),
    (viscosity.viscosity_index, (100.0, 14.0)),
    (viscosity.belong_together, (100.0, 14.0)),
]


def with_one_wrong(wrong: float) -> Iterator[Any]:
    for function, figures in CALLS:
        for place, figure in enumerate(figures):
            if isinstance(figure, int | float):
                changed = (*figures[:place], wrong, *figures[place + 1 :])
                yield pytest.param(function, changed, id=f"{function.__name__} {place}: {wrong}")


@pytest.mark.parametrize(("function", "figures"), CALLS)
def test_sensible_figures_are_taken(function: Callable[..., Any], figures: tuple[Any, ...]) -> None:
    assert function(*figures) is not None


@pytest.mark.parametrize(
    ("function", "figures"), [case for wrong in (math.nan, math.inf, -math.inf) for case in with_one_wrong(wrong)]
)
def test_what_is_no_finite_number_is_refused(function: Callable[..., Any], figures: tuple[Any, ...]) -> None:
    with pytest.raises(ValueError, match=r"must|No head|no pitch"):
        function(*figures)


@pytest.mark.parametrize(
    "call",
    [
        lambda: wear.prior_rate(0.25, 1e300),
        lambda: brake_heat.motion_energy(300, 1e300),
        lambda: fasteners.stress_area(1e300, 1.25),
        lambda: electrics.voltage_at_25(14.0, -1e9),
        lambda: electrics.frost_danger(50.0, -1e9),
        lambda: electrics.charge_from_rest(12.5, "agm", 1e9),
        lambda: fluids.hard_use_from_boiling(-1.0, 5.0),
    ],
)
def test_what_no_machine_has_is_refused(call: Callable[[], Any]) -> None:
    with pytest.raises(ValueError, match="must"):
        call()
