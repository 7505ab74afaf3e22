"""Known verdicts: short records as owners write them, judged as a seasoned mechanic would judge them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml

from inspector import assess
from inspector.knowledge.library import knowledge
from inspector.weighing.assessment import LEVELS, Assessment, FindingEntry
from tests.records import good_observations, record

KNOWN = knowledge()
CASES: list[dict[str, Any]] = yaml.load(
    (Path(__file__).parent / "verdicts.yaml").read_text(encoding="utf-8"), yaml.BaseLoader
)
KEYS = {"case", "machine", "country", "date", "good", "work", "limits", "see"} | {
    *("level", "verdict", "told", "told only", "never", "cannot tell", "doer", "caution", "source", "known")
}
HOW_KNOWN = ("read", "second hand", "from memory", "common practice")


def observations(case: dict[str, Any], kind: str) -> dict[str, dict[str, Any]]:
    """What the case says, over a machine in good order where it says so."""
    looks = good_observations(KNOWN, kind) if case.get("good") else {}
    places = next(machine for machine in KNOWN.machines.values() if machine.id == kind).parts
    for address, seen in case.get("see", {}).items():
        whole = address if "@" in address else f"{address} @ {places[address][0]}"
        looks[whole] = {**looks.get(whole, {}), **seen}
    return looks


def judged(case: dict[str, Any]) -> Assessment:
    words = case.get("machine", "shaft drive motorcycle")
    kind = next(machine.id for machine in KNOWN.machines.values() if machine.called == words)
    visit = {
        "purpose": "after own service" if "work" in case else "before purchase",
        "date": case.get("date", "2026-06-01"),
        "country": case.get("country", "GB"),
        "odometer": "40 000 km",
    }
    sections = {"work done": case["work"]} if "work" in case else {}
    limits = {"brake disc": {"thickness": "at least 3.5 mm (stamped)"}} if case.get("good") else {}
    return assess(
        record(
            observations(case, kind),
            machine={"kind": words},
            inspection=visit,
            limits={**limits, **case.get("limits", {})},
            **sections,
        )
    )


def told(assessment: Assessment) -> list[FindingEntry]:
    return [*assessment.findings, *assessment.causes]


def differences(case: dict[str, Any], assessment: Assessment) -> Iterator[str]:
    """What the tool says otherwise than the case expects."""
    by_rule = {entry.rule: entry for entry in told(assessment)}
    worst = min((entry.level for entry in by_rule.values()), key=LEVELS.index, default=None)
    if case["level"] in ("sound", "unseen"):
        yield from (f"told: {rule}" for rule in by_rule)
    elif worst != case["level"]:
        yield f"the worst is {worst}: {sorted(rule for rule, e in by_rule.items() if e.level == worst)}"
    if "verdict" in case or "good" in case or case["level"] in ("stop", "repair"):
        wanted = case.get("verdict", case["level"])
        if assessment.verdict.level != wanted:
            yield f"the verdict is {assessment.verdict.level}, not {wanted}"
    expected = case.get("told", [])
    yield from (f"not told: {rule}" for rule in expected if rule not in by_rule)
    if case.get("told only"):
        loud = [rule for rule, entry in by_rule.items() if LEVELS.index(entry.level) < LEVELS.index("watch")]
        yield from (f"told besides: {rule}" for rule in loud if rule not in expected)
    for beginning in case.get("never", []):
        yield from (f"never: {rule}" for rule in by_rule if rule.startswith(beginning))
    open_looks = {f"{entry.part} {entry.name}" for entry in assessment.unseen if entry.because == "cannot tell"}
    yield from (f"can tell: {look}" for look in case.get("cannot tell", []) if look not in open_looks)
    if expected and expected[0] in by_rule:
        yield from of_the_first(case, by_rule[expected[0]])


def of_the_first(case: dict[str, Any], entry: FindingEntry) -> Iterator[str]:
    if entry.level != case["level"]:
        yield f"{entry.rule} is at {entry.level}"
    if "doer" in case and case["doer"] not in {action.by for action in entry.do}:
        yield f"{entry.rule} sends nothing to the {case['doer']}"
    yield from (
        f"{entry.rule} lacks the caution {one}" for one in case.get("caution", []) if one not in entry.cautions
    )


@pytest.mark.parametrize("case", [pytest.param(case, id=case["case"]) for case in CASES])
def test_the_verdict_is_the_one_a_mechanic_gives(case: dict[str, Any]) -> None:
    assert set(case) <= KEYS
    assert case["source"]
    assert case["known"] in HOW_KNOWN
    assert case["level"] in LEVELS
    assert {*case.get("told", [])} <= set(KNOWN.rules)

    assert list(differences(case, judged(case))) == []


def test_the_cases_have_names_of_their_own() -> None:
    names = [case["case"] for case in CASES]

    assert len(names) == len(set(names)) >= 40
