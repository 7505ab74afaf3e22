"""The invented samples: their verdicts and leading findings, each with the reason why it must be so."""

from __future__ import annotations

from pathlib import Path

import pytest

from inspector import assess, read
from inspector.weighing.assessment import Assessment

SAMPLES = Path(__file__).resolve().parents[2] / "samples"
NAMES = ["before_purchase", "after_service", "handover_brake", "good_order", "nearly_empty"]


def sample(name: str) -> Assessment:
    return assess(read(SAMPLES / name / "record.yaml"))


def rules(assessment: Assessment, *levels: str) -> set[str]:
    standing = (*assessment.findings, *assessment.causes)
    return {entry.rule for entry in standing if not levels or entry.level in levels}


def test_every_folder_is_a_sample_that_says_it_is_invented() -> None:
    folders = sorted(entry.name for entry in SAMPLES.iterdir() if entry.is_dir())

    assert folders == sorted(NAMES)
    assert all(sample(name).visit.invented for name in NAMES)


def test_before_purchase_the_tourer_needs_repair_and_much_was_not_seen() -> None:
    assessment = sample("before_purchase")

    # nothing seen is a direct and immediate danger, but several things fail a test: so `repair`, not `stop`
    assert assessment.verdict.level == "repair"
    assert rules(assessment, "repair") >= {
        "final_drive/oil_holds_water",  # milky on the stick: water, whatever the way it came in
        "brakes/pad_below_limit",  # 1.2 mm by steel rule against 1.5 mm
        "wheels_and_tyres/valve_cracked",  # a cracked stem can tear off at speed
    }
    # pads of one caliper 2.2 mm apart and that brake hot: one story, told as a suspicion
    assert "brakes/sticking_piston_or_slide" in rules(assessment)
    # nobody lifted the machine: bearings, drag and drive play are unseen and said to be so
    unseen = {(entry.part, entry.name) for entry in assessment.unseen if entry.critical}
    assert unseen >= {("wheel", "bearing_play"), ("brake caliper", "drag"), ("final drive", "wheel_play")}
    assert assessment.verdict.critical_unseen > 5


def test_after_the_service_two_mistakes_keep_it_parked() -> None:
    assessment = sample("after_service")

    # a pad pin without its clip lets the pad walk out: not to be ridden
    assert assessment.verdict.level == "stop"
    assert "brakes/pad_pin_not_secured" in rules(assessment, "stop")
    # the breather hose pinched under the boot: pressure blows the seal, cooling draws water in
    assert "final_drive/breather_blocked" in rules(assessment, "repair")
    # everything that decides was looked at: the verdict rests on what was seen, not on silence
    assert assessment.verdict.critical_unseen == 0


def test_handed_over_the_brake_that_tightens_is_held_pressure_not_a_seized_piston() -> None:
    assessment = sample("handover_brake")

    assert assessment.verdict.level == "stop"  # a brake that tightens on the road can lock the wheel
    assert "brakes/pressure_cannot_return" in {entry.rule for entry in assessment.causes}
    # the bleed screw freed it: pressure was held, so a seized piston is not among the causes
    assert "brakes/seized_piston" not in {entry.rule for entry in assessment.causes}
    # the pot was filled over worn pads and is now over-full: the second suspicion, with the new pads as its ground
    assert "hydraulics/pot_overfull_with_new_pads" in {entry.rule for entry in assessment.causes}


def test_a_machine_in_good_order_that_was_fully_looked_at_is_sound() -> None:
    assessment = sample("good_order")

    assert assessment.verdict.level == "sound"
    assert assessment.findings == ()
    assert all(system.critical_looked == system.critical_expected for system in assessment.coverage)


def test_a_nearly_empty_record_says_nothing_for_the_machine() -> None:
    assessment = sample("nearly_empty")

    assert assessment.verdict.level == "unseen"  # silence is no evidence
    assert assessment.findings == ()
    assert assessment.verdict.critical_unseen > 50


@pytest.mark.parametrize("name", NAMES)
def test_the_same_record_gives_the_same_assessment(name: str) -> None:
    assert sample(name) == sample(name)
