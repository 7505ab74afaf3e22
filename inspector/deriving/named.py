"""The functions that tell their inputs apart by name, one table for all topics."""

from __future__ import annotations

from collections.abc import Callable

from inspector.deriving import (
    derived_breather,
    derived_chain,
    derived_coolant,
    derived_debris,
    derived_electrics,
    derived_engine_oil,
    derived_fasteners,
    derived_fluid,
    derived_heat,
    derived_identity,
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
    "water_drawn": derived_breather.water_drawn,
    "torque_bears": derived_fasteners.bolt_bears,
    "repair_allowed": derived_tyres.repair,
    "overload": derived_tyres.overload,
    "speed_fit": derived_tyres.speed,
    "pressure_at_20": derived_tyres.pressure_at_20,
    "battery_charge": derived_electrics.charge,
    "battery_frost": derived_electrics.frost,
    "charging_at_25": derived_electrics.charging_at_25,
    "days_to_half": derived_electrics.days_to_half,
    "chain_elongation": derived_chain.chain_elongation,
    "against_handbook": derived_chain.against_handbook,
    "vin_check": derived_identity.vin_check,
    "vin_year": derived_identity.vin_year,
    "order_of_readings": derived_identity.order_of_readings,
    "per_year": derived_identity.distance_each_year,
    "mix_frost_point": derived_coolant.mix_frost_point,
    "frost_reserve": derived_coolant.frost_reserve,
    "engine_grade_match": derived_engine_oil.grade_match,
    "engine_viscosity": derived_engine_oil.viscosity_against_grade,
    "sheet_viscosities": derived_engine_oil.sheet_viscosities,
    "cold_viscosity": derived_engine_oil.cold_viscosity,
    "mixed_viscosity": derived_engine_oil.mixed_viscosity,
    "mix_against_grade": derived_engine_oil.mix_against_grade,
    "thread_pull": derived_fasteners.thread_pull,
    "thread_depth": derived_fasteners.thread_depth,
    "proof_share": derived_fasteners.proof_share,
    "gives_first": derived_fasteners.gives_first,
    "descent_heat": derived_heat.descent,
    "pieces_found": derived_debris.pieces,
    "paste_trend": derived_debris.paste_trend,
    "rust_grade": derived_rust.rust_grade,
}
