"""The walk round the machine: every look once, numbers before choices, and a wrong list refused with its line."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest
import yaml

from inspector.knowledge.library import knowledge
from inspector.knowledge.shipped import shipped
from inspector.knowledge.walk_round import DEPTHS, PURPOSES, WalkRound, asked_after_work, check_walk, questions
from inspector.knowledge.yamlfile import parse

KNOWN = knowledge()
KINDS = [kind for kind, machine in KNOWN.machines.items() if not machine.abstract]
TEXT = (shipped("rules") / "walk_round.yaml").read_text(encoding="utf-8")


def faults(change: Any) -> list[str]:
    """What the check says to the shipped file after a change of its data."""
    data = yaml.load(TEXT, yaml.BaseLoader)
    change(data)
    document = parse(yaml.safe_dump(data, sort_keys=False), "walk_round.yaml")
    known = replace(KNOWN, walk_round=WalkRound.model_validate(document.data))
    return [str(fault) for fault in check_walk(known, {("walk_round",): (document, ())})]


@pytest.mark.parametrize("kind", KINDS)
def test_the_full_walk_asks_for_every_look_of_the_machine_once(kind: str) -> None:
    asked = [one.key for one in questions(KNOWN, kind, "after own service")]
    expected = {
        (part, place, name)
        for part, places in KNOWN.machines[kind].parts.items()
        for place in places
        for name, prop in KNOWN.properties[part].items()
        if prop.asked and not prop.work
    }

    assert len(asked) == len(set(asked))
    assert set(asked) == expected


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("purpose", PURPOSES)
def test_each_depth_holds_the_one_before_and_the_stops_come_in_order(kind: str, purpose: Any) -> None:
    walks = [questions(KNOWN, kind, purpose, depth) for depth in DEPTHS]
    keys = [[one.key for one in walk] for walk in walks]

    assert set(keys[0]) < set(keys[1]) < set(keys[2])
    for walk in walks:
        assert [one.stop for one in walk] == sorted(one.stop for one in walk)


def test_an_impatient_seller_is_asked_for_eighteen_things_in_twenty_minutes() -> None:
    for kind in ("shaft_drive", "chain_drive", "belt_drive"):
        asked = questions(KNOWN, kind, "before purchase", "core")
        assert len({(one.part, one.name) for one in asked}) == 18
        assert 15 < sum(one.minutes for one in asked) < 22
        assert asked[0].address == "engine"  # whether it is cold can be felt only before anything else
        assert asked[0].name == "temperature_on_arrival"


def test_the_next_place_of_a_look_takes_half_as_long_but_not_at_another_stop() -> None:
    pads = [one for one in questions(KNOWN, "shaft_drive", "before purchase", "core") if one.part == "brake pad"]
    once = KNOWN.properties["brake pad"]["friction_material_thickness"].minutes

    assert [one.place.split()[0] for one in pads] == ["front"] * 4 + ["rear"] * 2
    assert [one.minutes / once for one in pads] == [1, 0.5, 0.5, 0.5, 1, 0.5]


def test_at_each_part_numbers_come_before_choices() -> None:
    for kind in KINDS:
        walk = questions(KNOWN, kind, "before purchase")
        single = {look for stop in KNOWN.walk_round.stops for look in stop.looks}
        for one, after in pairwise(walk):
            same = (one.stop, one.part, one.place) == (after.stop, after.part, after.place)
            alone = {f"{each.part}/{each.name}" for each in (one, after)} & single
            moments = one.prop.moment != after.prop.moment
            if same and not alone and not moments and after.prop.kind == "quantity":
                assert one.prop.kind not in ("choice", "yes_no", "text"), (one.key, after.key)


def test_what_is_missing_is_not_asked_for_and_service_looks_follow_the_work() -> None:
    every = questions(KNOWN, "shaft_drive", "after own service")
    fewer = questions(
        KNOWN, "shaft_drive", "after own service", "full", [("brake_pads", "front")], [("brake disc", "front")]
    )

    assert {one.part for one in every} >= {"brake disc", "abs"}
    assert {one.place for one in fewer if one.part == "brake disc"} == {"rear"}
    service = {(one.part, one.place) for one in fewer if one.prop.moment == "service" and one.prop.after}
    assert ("brake caliper", "front left") in service
    assert ("brake caliper", "rear") not in service
    look = KNOWN.properties["brake caliper"]["bolts_counted_tight"]
    assert not asked_after_work(look, "front left", "before purchase", [])


def test_a_look_that_does_not_exist_is_refused_with_its_line_and_the_nearest_word() -> None:
    def misspelled(data: Any) -> None:
        data["core"]["before purchase"][3] = "tyre/date_cod"

    found = faults(misspelled)

    assert len(found) == 1
    assert "`tyre/date_cod` is not known. Did you mean `tyre/date_code`?" in found[0]
    assert found[0].startswith("walk_round.yaml:")


def test_a_part_that_comes_to_no_stop_or_to_two_is_refused() -> None:
    def lost(data: Any) -> None:
        data["stops"][1]["parts"].remove("tyre @ front")

    def doubled(data: Any) -> None:
        data["stops"][4]["parts"].append("fork leg")

    assert any("`tyre @ front` of a shaft drive motorcycle comes to no stop" in one for one in faults(lost))
    assert any("`fork leg` stands at the stop `front wheel` already" in one for one in faults(doubled))
    assert faults(lambda data: None) == []
