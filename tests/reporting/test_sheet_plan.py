"""The plan of a sheet: each question once, minutes that add up, cautions where they matter, limits."""

from __future__ import annotations

from typing import Any

import pytest

from inspector.knowledge.library import knowledge
from inspector.knowledge.walk_round import PURPOSES, questions
from inspector.reporting.sheet_paper import duration, sheet_html
from inspector.reporting.sheet_plan import make_plan, own_limits, works


@pytest.mark.parametrize("purpose", PURPOSES)
def test_the_plan_asks_each_question_of_the_walk_once_and_the_minutes_add_up(purpose: Any) -> None:
    for depth in ("core", "short", "full"):
        plan = make_plan(knowledge(), "shaft_drive", purpose, depth)
        asked = questions(knowledge(), "shaft_drive", purpose, depth)
        keys = [
            (ask.part, place, ask.name)
            for stop in plan.stations
            for block in stop.blocks
            for ask in block.asks
            for place in ask.places
        ]
        assert sorted(keys) == sorted(one.key for one in asked)
        assert plan.minutes == pytest.approx(sum(one.minutes for one in asked))
        assert [stop.start for stop in plan.stations[1:]] == [stop.end for stop in plan.stations[:-1]]
        whole = len(questions(knowledge(), "shaft_drive", purpose, "full"))
        assert plan.left_out == whole - len(asked)


def test_a_caution_is_told_in_full_once_and_stands_before_the_look_it_is_for() -> None:
    plan = make_plan(knowledge(), "shaft_drive", "before purchase", "short")
    told = {caution.title for caution in plan.cautions}
    for ask in (ask for stop in plan.stations for block in stop.blocks for ask in block.asks):
        new = {caution.title for caution in ask.cautions}
        assert not new & told
        told |= new
        assert {knowledge().cautions[name].title for name in ask.prop.cautions} <= told
    html = sheet_html(plan, knowledge())
    assert all(html.count(f"<b>Caution: {title.replace(chr(39), '&#39;')}.</b>") == 1 for title in told)


def test_work_is_asked_for_only_where_it_leads_to_a_look() -> None:
    found = {work: places for work, _, places in works(knowledge(), "shaft_drive")}
    assert found["brake_pads"] == ("front", "rear")
    assert found["splines"] == ("rear",)
    assert "chain" not in found  # a shaft drive has none
    assert "chain" in {work for work, _, _ in works(knowledge(), "chain_drive")}


def test_a_caution_told_before_is_called_to_mind_once_at_each_part() -> None:
    plan = make_plan(knowledge(), "shaft_drive", "before purchase", "full")
    for block in (block for stop in plan.stations for block in stop.blocks):
        named = [caution.title for ask in block.asks for caution in (*ask.cautions, *ask.cautions_again)]
        assert len(named) == len(set(named)), block.part


@pytest.mark.parametrize(
    ("part", "name", "expected"),
    [
        ("brake pad", "friction_material_thickness", [("friction_material_thickness", ("at least",), "mm")]),
        ("brake disc", "runout", [("runout", ("at most",), "mm")]),
        ("battery", "charging_voltage", [("charging_voltage", ("at least", "at most"), "V")]),
        ("chain", "measured_length", [("measured_length", ("at least", "at most"), "mm")]),
        ("chain", "slack", [("slack_tight_side", ("at least",), "mm"), ("slack_loose_side", ("at most",), "mm")]),
        ("engine", "oil_changed", [("oil_age", ("at most",), "months")]),
        ("engine", "oil_changed_at", [("distance_on_oil", ("at most",), "km")]),
        ("tyre", "cracks", []),
    ],
)
def test_own_limits_are_asked_for_beside_the_look_that_they_are_held_against(
    part: str, name: str, expected: list[Any]
) -> None:
    found = own_limits(knowledge(), part, name)
    assert sorted((one.name, one.senses, one.unit) for one in found) == sorted(expected)
    assert [bool(one.about) for one in found] == [one.name != name for one in found]


def test_every_limit_that_the_machine_may_give_is_asked_for_somewhere() -> None:
    known = knowledge()
    asked = {
        (part, limit.name)
        for part, entries in known.properties.items()
        for name, prop in entries.items()
        if prop.asked
        for limit in own_limits(known, part, name)
    }
    given = {key for key in known.limits if known.given_limit(*key) is not None}
    # worked out from several looks: what one of them would have to say is no limit of the look
    assert given - asked == {("chain", "elongation"), ("engine", "compression_gap")}


def test_long_times_are_told_in_hours() -> None:
    assert [duration(minutes) for minutes in (0.2, 1.4, 20.6, 120, 121, 800)] == [
        "1 minute",
        "1 minute",
        "21 minutes",
        "120 minutes",
        "2 hours",
        "13 hours",
    ]
