"""The functions that properties may be derived with: what they need, and the words they may give.

`inspector/deriving` holds one function for each name here; a test compares the two lists.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, get_args

from inspector.quantities.bolt_figures import TorqueBears
from inspector.quantities.brake_heat import DescentHeat
from inspector.quantities.breather import Push
from inspector.quantities.electrics import Charge, Frost
from inspector.quantities.fasteners import Pull
from inspector.quantities.fluids import FluidMatch, HardUse
from inspector.quantities.grades import ChipAction, rust_phrases
from inspector.quantities.identity import CheckAnswer, YearAnswer
from inspector.quantities.odometer import Order
from inspector.quantities.oils import AgainstGrade, GradeMatch, MixAgainstGrade
from inspector.quantities.threads import Depth, FirstToGive
from inspector.quantities.torque_slip import UnitSlip
from inspector.quantities.tyre_fit import RepairAllowed, SpeedFit
from inspector.quantities.used_oil import CodeTrend, PqZone, Trend
from inspector.quantities.viscosity import Together


@dataclass(frozen=True)
class Function:
    """How many of its inputs must apply here, and the words it gives (none: it gives an amount).

    A function that is `named` tells its inputs apart by the names of their properties; the others take them in
    the order in which they stand.
    """

    needs: int = 1
    words: tuple[str, ...] = ()
    named: bool = False


def _choice(words: Any, needs: int = 1) -> Function:
    return Function(needs, get_args(words), named=True)


_WEAR_STORY = ("one reading", "as before", "faster than before", "thicker than before", "no distance between")
FUNCTIONS: dict[str, Function] = {
    "spread": Function(2),
    "least": Function(),
    "greatest": Function(),
    "age": Function(),
    "digits": Function(words=("four", "three")),
    "travelled": Function(),
    "deviation": Function(2),
    "difference": Function(2),
    "fluid_match": Function(2, get_args(FluidMatch)),
    "unit_slip": Function(2, get_args(UnitSlip)),
    "wear_story": Function(words=_WEAR_STORY),
    "fluid_for_hard_use": _choice(HardUse),
    "rate_per_1000_km": Function(2, named=True),
    "rate_trend": _choice(Trend, 2),
    "pq_zone": _choice(PqZone),
    "pq_trend": _choice(Trend, 2),
    "code_trend": _choice(CodeTrend, 2),
    "grade_match": _choice(GradeMatch, 2),
    "viscosity_against_grade": _choice(AgainstGrade, 2),
    "water_over": Function(3, named=True),
    "stronger_push": _choice(Push),
    "water_drawn": Function(2, named=True),
    "torque_bears": _choice(TorqueBears, 2),
    "repair_allowed": _choice(RepairAllowed, 3),
    "overload": Function(2, named=True),
    "speed_fit": _choice(SpeedFit, 2),
    "pressure_at_20": Function(2, named=True),
    "battery_charge": _choice(Charge, 2),
    "battery_frost": _choice(Frost, 3),
    "charging_at_25": Function(3, named=True),
    "days_to_half": Function(2, named=True),
    "chain_elongation": Function(2, named=True),
    "against_handbook": Function(2, ("within", "beyond"), named=True),
    "vin_check": _choice(CheckAnswer),
    "vin_year": _choice(YearAnswer),
    "order_of_readings": _choice(Order),
    "per_year": Function(1, named=True),
    "mix_frost_point": Function(2, named=True),
    "frost_reserve": Function(3, named=True),
    "engine_grade_match": _choice(GradeMatch, 2),
    "engine_viscosity": _choice(AgainstGrade, 2),
    "sheet_viscosities": _choice(Together, 2),
    "cold_viscosity": Function(3, named=True),
    "mixed_viscosity": Function(2, named=True),
    "mix_against_grade": _choice(MixAgainstGrade, 2),
    "gear_mixed_viscosity": Function(2, named=True),
    "gear_mix_against_grade": _choice(MixAgainstGrade, 2),
    "thread_pull": _choice(Pull, 2),
    "thread_depth": _choice(Depth, 3),
    "proof_share": Function(3, named=True),
    "gives_first": _choice(FirstToGive, 4),
    "descent_heat": _choice(DescentHeat, 2),
    "pieces_found": _choice(ChipAction, 2),
    "paste_trend": _choice(Trend, 4),
    "rust_grade": Function(1, rust_phrases(), named=True),
}
