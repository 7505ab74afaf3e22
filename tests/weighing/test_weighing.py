"""From findings to a verdict: levels, order, rivals, unseen, look next (design rules, Directive 2014/45/EU)."""

from __future__ import annotations

import random
from typing import Any

import pytest

from inspector.judging.judge import Finding
from inspector.knowledge.library import knowledge
from inspector.weighing.assessment import LEVELS
from inspector.weighing.entries import level_of, strongest_rivals
from inspector.weighing.unseen import MOST_NEXT
from tests.records import assessed, good_observations

KNOWN = knowledge()
OWN_LIMITS = {"brake disc": {"thickness": "at least 4.5 mm (stamped)"}}


def good() -> dict[str, dict[str, Any]]:
    return good_observations(KNOWN, "shaft_drive")


@pytest.mark.parametrize(
    ("class_", "due", "level"),
    [
        ("dangerous", False, "stop"),  # Art. 7(2)(c): direct and immediate risk
        ("major", False, "repair"),  # Art. 7(2)(b): may prejudice safety
        ("minor", True, "plan"),
        ("minor", False, "watch"),  # Art. 7(2)(a): no significant effect
        ("none", True, "plan"),
        ("none", False, "watch"),
    ],
)
def test_a_class_leads_to_its_level(class_: Any, due: bool, level: str) -> None:
    assert level_of(class_, due) == level


def test_a_machine_in_good_order_that_was_fully_looked_at_is_sound() -> None:
    assessment = assessed(good(), limits=OWN_LIMITS)

    assert assessment.verdict.level == "sound"
    assert assessment.unseen == ()


CRITICAL = [
    (f"{part} @ {place}", name)
    for part, places in KNOWN.machines["shaft_drive"].parts.items()
    for place in places
    for name, prop in KNOWN.properties[part].items()
    if prop.critical and prop.moment != "service" and part not in KNOWN.machines["shaft_drive"].optional_parts
]


@pytest.mark.parametrize("silence", [None, "not checked: no stand", "could not see"])
def test_one_critical_look_that_was_not_made_keeps_the_machine_from_being_sound(silence: str | None) -> None:
    assert len(CRITICAL) > 40
    for address, name in CRITICAL:
        observations = good()
        if silence is None:
            del observations[address][name]
        else:
            observations[address][name] = silence
        verdict = assessed(observations, limits=OWN_LIMITS).verdict

        assert verdict.level == "unseen", (address, name)
        assert verdict.critical_unseen == 1


def test_a_critical_look_that_cannot_decide_keeps_the_machine_from_being_sound() -> None:
    observations = good()
    observations["brake pad @ rear inner"]["friction_material_thickness"] = "2.2 mm by eye"
    assessment = assessed(observations, limits=OWN_LIMITS)

    assert assessment.verdict.level == "unseen"
    assert assessment.unseen[0].because == "cannot tell"


def test_a_part_that_the_machine_does_not_have_is_not_asked_for() -> None:
    observations = {
        a: looks for a, looks in good().items() if not a.endswith("front right") and "front right" not in a
    }
    lacking = ["brake pad @ front right", "brake disc @ front right", "brake caliper @ front right"]
    observations["fork leg @ front right"] = {"oil": "dry"}
    machine = {"kind": "shaft drive motorcycle", "without": lacking}
    assessment = assessed(observations, limits=OWN_LIMITS, machine=machine)

    assert assessment.verdict.level == "sound"


def random_troubles(seed: int, share: float = 0.25) -> dict[str, dict[str, Any]]:
    """A good machine with some of its answers changed to any word they may hold."""
    chooser = random.Random(seed)
    observations = good()
    for address, looks in observations.items():
        for name in looks:
            prop = KNOWN.properties[address.partition(" @")[0]][name]
            if prop.kind in ("choice", "yes_no") and chooser.random() < share:
                looks[name] = chooser.choice(prop.words())
    return observations


@pytest.mark.parametrize("seed", range(15))
def test_what_holds_of_every_assessment(seed: int) -> None:
    assessment = assessed(random_troubles(seed), limits=OWN_LIMITS)
    standing = (*assessment.findings, *assessment.causes)
    levels = [LEVELS.index(entry.level) for entry in assessment.findings]

    assert levels == sorted(levels)
    assert LEVELS.index(assessment.verdict.level) <= min(LEVELS.index(entry.level) for entry in standing)
    labels = [entry.label for entry in standing]
    assert len(set(labels)) == len(labels)
    for finding in assessment.findings:
        assert len(finding.explained_by) <= len(assessment.causes)
        for cause in assessment.causes:
            assert (cause.label in finding.explained_by) == (finding.label in cause.symptoms)
    for cause in assessment.causes:
        assert cause.certainty in ("weak", "medium", "strong")
        worst = min(
            (f.level for f in assessment.findings if f.label in cause.symptoms),
            key=LEVELS.index,
            default=cause.level,
        )
        assert LEVELS.index(cause.level) <= LEVELS.index(worst)
    assert len(assessment.look_next) <= MOST_NEXT
    assert {label for job in assessment.jobs for label in job.labels} == set(labels)


def test_a_symptom_has_at_most_three_rival_causes_most_dangerous_first() -> None:
    cause = next(rule for rule in KNOWN.rules.values() if rule.is_suspicion)
    entry = assessed(good()).findings  # no entry is read: only the order of the pairs decides
    shared, alone = ("brakes/a", "rear"), ("brakes/b", "front")
    pairs: list[Any] = [(Finding(cause, f"place {i}", symptoms=(shared,)), entry) for i in range(5)]
    pairs.append((Finding(cause, "place 5", symptoms=(shared, alone)), entry))
    kept = [finding.place for finding, _ in strongest_rivals(pairs)]

    assert kept == ["place 0", "place 1", "place 2", "place 5"]  # the last explains something else, too


def test_milky_oil_and_a_low_breather_are_one_trouble_with_a_suspected_cause() -> None:
    observations = good()
    observations["final drive @ rear"] |= {"oil_look": "milky", "breather_end": "below axle"}
    observations["splines @ rear wheel side"]["rust"] = "red dust"
    assessment = assessed(observations, limits=OWN_LIMITS)
    cause = next(c for c in assessment.causes if "breather" in c.title.lower())

    assert {f.rule for f in assessment.findings if f.label in cause.symptoms} >= {"final_drive/oil_holds_water"}
    assert cause.settled_by


def test_a_refuter_rules_a_cause_out_and_keeps_its_members() -> None:
    """A dragging brake that opening the bleed screw frees has no seized piston: pressure held it."""
    observations = good()
    observations["brake caliper @ front left"] |= {"drag": "locked", "pistons": "rust"}
    observations["brake caliper @ front left"]["frees_with_bleed_screw_open"] = "yes"
    assessment = assessed(observations, limits=OWN_LIMITS)

    assert "brakes/seized_piston" in {entry.rule for entry in assessment.ruled_out}
    assert "brakes/seized_piston" not in {entry.rule for entry in assessment.causes}
    assert any(entry.part == "brake caliper" for entry in assessment.findings)


def test_a_stamped_limit_wins_over_the_general_one_and_is_named() -> None:
    observations = good()
    observations["brake pad @ rear inner"]["friction_material_thickness"] = "1.7 mm ± 0.05 mm"
    general = assessed(observations, limits=OWN_LIMITS)
    own = assessed(
        observations,
        limits=OWN_LIMITS | {"brake pad": {"friction_material_thickness": "at least 2.0 mm (manual)"}},
    )

    assert "brakes/pad_below_limit" not in {f.rule for f in general.findings}
    finding = next(f for f in own.findings if f.rule == "brakes/pad_below_limit")
    assert finding.evidence[0].limit == "at least 2.0 mm"
    assert finding.evidence[0].limit_origin == "the machine's manual"


def test_figures_carry_the_unit_that_was_typed() -> None:
    observations = good()
    observations["brake pad @ rear inner"]["friction_material_thickness"] = "0.04 in with caliper"
    finding = next(
        f for f in assessed(observations, limits=OWN_LIMITS).findings if f.rule == "brakes/pad_below_limit"
    )

    assert "0.04 in" in finding.says
    assert "1.5 mm (0.059 in)" in finding.says
