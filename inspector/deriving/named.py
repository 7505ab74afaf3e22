"""The functions that tell their inputs apart by name, one table for all topics."""

from __future__ import annotations

from collections.abc import Callable

from inspector.deriving import (
    derived_breather,
    derived_fasteners,
    derived_fluid,
    derived_oil,
    derived_rust,
    derived_tyres,
)
from inspector.deriving.amounts import Looks
from inspector.reading.inspection import Silent, Value

NAMED: dict[str, Callable[[Looks], Value | Silent]] = {
    "fluid_for_hard_use": derived_fluid.fluid_for_hard_use,
    "rate_per_1000_km": derived_oil.rate_per_1000_km,
    "rate_trend": derived_oil.iron_trend,
    "pq_zone": derived_oil.debris_zone,
    "pq_trend": derived_oil.debris_trend,
    "code_trend": derived_oil.code_trend,
    "grade_match": derived_oil.grade_match,
    "viscosity_against_grade": derived_oil.viscosity_against_grade,
    "water_over": derived_breather.water_over,
    "stronger_push": derived_breather.push,
    "torque_bears": derived_fasteners.bolt_bears,
    "repair_allowed": derived_tyres.repair,
    "overload": derived_tyres.overload,
    "speed_fit": derived_tyres.speed,
    "pressure_at_20": derived_tyres.pressure_at_20,
    "rust_grade": derived_rust.rust_grade,
}
