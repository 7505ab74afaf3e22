"""Whether a torque fits the bolt it was written down for, and whether the bolt sits deep enough."""

from __future__ import annotations

import pytest

from inspector.knowledge.library import knowledge
from inspector.quantities.bolt_figures import BOLT_SIZES
from inspector.reading.inspection import Silent
from tests.deriving.looks import fact, measured, sentences, word

WORK = "work @ front"
AFTER = {"purpose": "after own service", "work done": ["brake_caliper @ front"]}


def bears(**looks: str) -> str:
    return word(fact(WORK, "torque_bears", {WORK: looks}, **AFTER))


@pytest.mark.parametrize(
    ("size", "strength", "torque", "answer"),
    [
        # VDI 2230 at friction 0.14: M8x1 29.2 and 42.8, M10x1.25 57 and 83, M12x1.25 101 N·m (printed)
        ("M8x1", "8.8", "29 N·m", "fine"),
        ("M8x1", "8.8", "30 N·m", "more than the bolt bears"),
        ("M8x1", "10.9", "42 N·m", "fine"),
        ("M10x1.25", "8.8", "56 N·m", "fine"),
        ("M10x1.25", "8.8", "59 N·m", "more than the bolt bears"),
        ("M10x1.25", "10.9", "59 N·m", "fine"),
        ("M12x1.25", "8.8", "103 N·m", "more than the bolt bears"),
    ],
)
def test_the_torque_against_the_printed_table(size: str, strength: str, torque: str, answer: str) -> None:
    assert bears(bolt_size=size, bolt_class=strength, torque_applied=torque) == answer


def test_pound_feet_where_newton_metres_would_fit() -> None:
    """35 lbf·ft are 47 N·m (NIST SP 811), above the 40 N·m that M8 of class 10.9 bears; 35 N·m fit."""
    bolt = {"bolt_size": "M8x1.25", "bolt_class": "10.9"}

    assert bears(**bolt, torque_applied="35 lbf·ft") == "fits only in the other unit"
    assert bears(**bolt, torque_applied="35 N·m") == "fine"
    assert bears(**bolt, torque_required="35 lbf·ft") == "fits only in the other unit"


def test_a_thread_in_aluminium_bears_less_than_the_bolt() -> None:
    bolt = {"bolt_size": "M8x1.25", "bolt_class": "8.8", "torque_applied": "25 N·m"}

    assert bears(**bolt, bolt_into="steel") == "fine"
    assert bears(**bolt, bolt_into="aluminium") == "more than aluminium usually takes"


def test_a_bolt_of_unknown_strength_leaves_the_middle_open() -> None:
    """M8 bears 27 N·m in class 8.8 and 47 N·m in class 12.9."""
    assert bears(bolt_size="M8x1.25", torque_applied="25 N·m") == "fine"
    assert bears(bolt_size="M8x1.25", torque_applied="35 N·m") == "not known"
    assert bears(bolt_size="M8x1.25", torque_applied="60 N·m") == "more than the bolt bears"
    assert bears(bolt_size="M8x1.25", bolt_class="stainless", torque_applied="20 N·m") == "not known"


@pytest.mark.parametrize(
    ("size", "into", "depth", "answer"),
    [
        # handbook pages: one diameter in steel, one and a half in aluminium
        ("M10x1.25", "aluminium", "15 mm", "as deep as usual"),
        ("M10x1.25", "aluminium", "11 mm", "less deep than usual"),
        ("M10x1.25", "aluminium", "7 mm", "less than half as deep as usual"),
        ("M10x1.25", "steel", "10 mm", "as deep as usual"),
        ("M8x1.25", "steel", "3 mm", "less than half as deep as usual"),
    ],
)
def test_light_metal_needs_more_thread(size: str, into: str, depth: str, answer: str) -> None:
    looks = {"bolt_size": size, "bolt_into": into, "engagement_depth": depth}

    assert word(fact(WORK, "thread_depth", {WORK: looks}, **AFTER)) == answer


@pytest.mark.parametrize(
    ("asked", "found", "answer"),
    [
        ("dry", "anti-seize or moly", "harder than meant"),
        ("dry", "oiled", "harder than meant"),
        ("oiled", "dry", "less hard than meant"),
        ("dry", "dry", "about as meant"),
    ],
)
def test_oil_on_a_thread_turns_more_of_the_torque_into_pull(asked: str, found: str, answer: str) -> None:
    """Published nut factors: 0.18 to 0.27 dry, 0.10 to 0.26 oiled, 0.12 to 0.16 with paste; T = K d F."""
    assert (
        word(fact(WORK, "thread_pull", {WORK: {"thread_asked": asked, "thread_found": found}}, **AFTER)) == answer
    )


def test_every_bolt_size_that_can_be_written_has_a_pitch() -> None:
    assert set(knowledge().properties["work"]["bolt_size"].choices) == set(BOLT_SIZES)


def test_the_owner_reads_it_in_words() -> None:
    looks = {"bolt_size": "M8x1.25", "bolt_class": "8.8", "torque_applied": "70 N·m", "tight_by": "by feel"}
    says = sentences({WORK: looks}, **AFTER)

    assert says["reassembly/torque_over_bolt"] == (
        "Front: the torque written down is more than the bolt bears, going by its size and class."
    )
    assert "reassembly/bolts_by_feel" in says


PASTE = {"bolt_size": "M8x1.25", "bolt_class": "8.8", "thread_found": "anti-seize or moly"}


def test_the_pull_of_a_torque_as_a_share_of_the_proof_load() -> None:
    """25 N·m on M8 with paste (K 0.14) pull 22.3 kN; class 8.8 bears 21.2 kN (ISO 898-1)."""
    found = measured(fact(WORK, "proof_share", {WORK: {**PASTE, "torque_applied": "25 N·m"}}, **AFTER))

    assert found.amount.base == pytest.approx(105, abs=1)
    assert found.uncertainty == pytest.approx(18, abs=1)


@pytest.mark.parametrize("missing", list(PASTE))
def test_no_pull_is_told_of_a_bolt_that_is_not_known(missing: str) -> None:
    looks = {name: word for name, word in PASTE.items() if name != missing}
    found = fact(WORK, "proof_share", {WORK: {**looks, "torque_applied": "25 N·m"}}, **AFTER)

    assert isinstance(found.value, Silent)


@pytest.mark.parametrize(
    ("strength", "depth", "answer"),
    [
        ("8.8", "15 mm", "either"),
        ("8.8", "18 mm", "the bolt"),
        ("10.9", "16 mm", "the thread around it"),
        ("10.9", "23 mm", "the bolt"),
    ],
)
def test_what_gives_first_in_light_metal(strength: str, depth: str, answer: str) -> None:
    """Handbook chapter: M10 of 10.9 needs 21.6 mm of aluminium before it breaks itself."""
    bolt = {"bolt_size": "M10x1.5", "bolt_class": strength, "bolt_into": "aluminium", "engagement_depth": depth}

    assert word(fact(WORK, "gives_first", {WORK: bolt}, **AFTER)) == answer


def test_what_gives_first_is_not_asked_of_steel() -> None:
    bolt = {"bolt_size": "M10x1.5", "bolt_class": "10.9", "bolt_into": "steel", "engagement_depth": "10 mm"}

    assert fact(WORK, "gives_first", {WORK: bolt}, **AFTER).value == Silent("does not apply")
