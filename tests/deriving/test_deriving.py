"""Derived values and the limits that apply, from records as written."""

from __future__ import annotations

import pytest

from inspector.deriving.facts import Fact, derive_facts
from inspector.knowledge.library import knowledge
from inspector.reading.inspection import Measured, Silent, Word
from tests.records import record


def fact(part: str, place: str, name: str, observations: dict[str, dict[str, str]], **more: object) -> Fact:
    return derive_facts(record(observations, **more), knowledge()).items[part, place][name]  # type: ignore[arg-type]


def amount(found: Fact) -> float:
    assert isinstance(found.value, Measured)
    return found.value.amount.base


def pads(inner: str, outer: str) -> dict[str, dict[str, str]]:
    return {
        "brake pad @ rear inner": {"friction_material_thickness": inner},
        "brake pad @ rear outer": {"friction_material_thickness": outer},
    }


def test_the_pads_of_one_caliper_are_compared_and_the_thinner_one_counts() -> None:
    observations = pads("1.5 mm ± 0.3 mm", "3.5 mm ± 0.4 mm")
    difference = fact("brake caliper", "rear", "pad_difference", observations)

    assert amount(difference) == pytest.approx(2.0)
    assert isinstance(difference.value, Measured)
    assert difference.value.uncertainty == pytest.approx(0.5)  # 0.3 and 0.4 mm in quadrature
    assert amount(fact("brake caliper", "rear", "thinnest_pad", observations)) == 1.5


def test_a_difference_needs_both_looks() -> None:
    observations = pads("1.5 mm", "could not see")

    assert isinstance(fact("brake caliper", "rear", "pad_difference", observations).value, Silent)


def test_the_least_of_three_treads_stays_undecided_while_one_was_not_measured() -> None:
    two = {"tyre @ rear": {"tread_centre": "4 mm ± 0.1 mm", "tread_left": "4 mm ± 0.1 mm"}}
    bald = {"tyre @ rear": {"tread_centre": "0.4 mm ± 0.1 mm"}}

    assert fact("tyre", "rear", "least_tread", two).limits["legal minimum"].standing == "cannot tell"
    assert fact("tyre", "rear", "least_tread", bald).limits["legal minimum"].standing == "beyond"


def test_the_age_of_brake_fluid_counts_from_its_change() -> None:
    age = fact("brake circuit", "front", "fluid_age", {"brake circuit @ front": {"fluid_changed": "2024-05-01"}})

    assert amount(age) == pytest.approx(25, abs=0.1)
    assert age.limits["change interval"].standing == "beyond"
    assert age.limits["long overdue"].standing == "within"


def test_an_age_that_runs_out_within_the_horizon_is_known_beforehand() -> None:
    age = fact("brake circuit", "front", "fluid_age", {"brake circuit @ front": {"fluid_changed": "2025-03-01"}})

    assert age.limits["change interval"].standing == "within"
    assert age.limits["change interval"].reaches


def test_a_date_that_nobody_knows_stays_unknown() -> None:
    age = fact("brake circuit", "front", "fluid_age", {"brake circuit @ front": {"fluid_changed": "unknown"}})

    assert age.value == Word("unknown")


def test_the_age_of_a_tyre_comes_from_its_code() -> None:
    """Week 48 of 2019 begins on Monday 25 November 2019 (49 CFR 574.5 and the ISO week)."""
    age = fact("tyre", "rear", "age", {"tyre @ rear": {"date_code": "4819"}})

    assert amount(age) / 12 == pytest.approx(6.5, abs=0.05)
    assert fact("tyre", "rear", "code_digits", {"tyre @ rear": {"date_code": "317"}}).value == Word("three")


@pytest.mark.parametrize(
    ("applied", "required", "slip"),
    [
        ("50 lbf·ft", "50 N·m", "newton metres set as foot pounds"),  # 67.8 N·m, 36 % too much (NIST SP 811 B.8)
        ("50 N·m", "50 lbf·ft", "foot pounds set as newton metres"),  # 26 % too little
        ("20 lbf·ft", "20 lbf·in", "inch pounds set as foot pounds"),  # twelve times too much
        ("52 N·m", "50 N·m", "none"),
    ],
)
def test_a_torque_set_in_the_wrong_unit_is_recognised(applied: str, required: str, slip: str) -> None:
    observations = {"work @ rear": {"torque_applied": applied, "torque_required": required}}

    assert fact("work", "rear", "torque_slip", observations).value == Word(slip)


def test_the_limit_on_the_part_counts_for_its_place_only() -> None:
    observations = {f"brake disc @ {place}": {"thickness": "4.0 mm ± 0.01 mm"} for place in ("front left", "rear")}
    limits = {"brake disc @ front": {"thickness": "at least 4.5 mm (stamped)"}}
    front = fact("brake disc", "front left", "thickness", observations, limits=limits).limits["wear limit"]
    rear = fact("brake disc", "rear", "thickness", observations, limits=limits).limits["wear limit"]

    assert front.standing == "beyond"
    assert front.band is not None
    assert front.band.origin == "stamped on the part"
    assert rear.standing == "not known"


def test_what_was_not_worked_on_is_not_asked_after_a_service() -> None:
    purpose = {"purpose": "after own service", "work done": ["brake_pads @ front"]}
    front = fact("brake control", "front", "pumped_after_work", {}, **purpose)
    rear = fact("brake control", "rear", "pumped_after_work", {}, **purpose)

    assert front.unseen
    assert rear.value == Silent("does not apply")


def test_an_optional_part_is_there_once_something_is_said_of_it() -> None:
    without = fact("abs", "whole machine", "lamp", {})
    with_it = fact("abs", "whole machine", "lamp", {"abs": {"sensor_lead": "clipped and clear"}})

    assert without.value == Silent("does not apply", "this machine has none")
    assert with_it.unseen
