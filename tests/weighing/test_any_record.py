"""Any record that reads is judged and told, whatever was noted: chance records over all kinds, parts and words."""

from __future__ import annotations

import random
from typing import Any

import pytest

from inspector import assess
from inspector.knowledge.library import knowledge
from inspector.knowledge.observables import Property
from inspector.quantities.units import base_unit
from inspector.reporting.text import to_text
from inspector.weighing.assessment import LEVELS
from tests.records import record

KINDS = [name for name, machine in knowledge().machines.items() if not machine.abstract]
PURPOSES = ["before purchase", "after own service", "handover"]
SILENT = ["not checked: no stand", "could not see", "does not apply"]
FIXED = {
    "yes_no": ["yes", "no"],
    "date": ["unknown", "2012-03-04", "2025-05-01", "2026-05-20"],
    "odometer": ["unknown", "12 000 km", "39 000 km"],
    "tyre_code": ["1416", "3625", "219"],
    "text": ["some words"],
}


def chance_value(prop: Property, dice: random.Random) -> str:
    if dice.random() < 0.12:
        return dice.choice(SILENT)
    if prop.kind == "choice":
        return dice.choice(list(prop.choices))
    if prop.kind in FIXED:
        return dice.choice(FIXED[prop.kind])
    low, high = prop.plausible_range()
    if prop.kind == "count":
        return str(dice.randint(int(low), int(high)))
    unit = base_unit(str(prop.dimension))
    reading = f"{low + (high - low) * dice.random() ** 2:.3f} {unit}"
    return reading if dice.random() < 0.6 else f"{reading} ± {(high - low) * dice.random() / 50:.4f} {unit}"


def chance_look(part: str, name: str, prop: Property, dice: random.Random) -> Any:
    value = chance_value(prop, dice)
    if (part, name) not in knowledge().wear or value in SILENT or dice.random() < 0.5:
        return value
    before = [chance_value(prop, dice) for _ in range(dice.randint(1, 3))]
    earlier = [
        {"value": one, "odometer": f"{39_000 - 3000 * i} km", "date": f"202{5 - i}-04-02"}
        for i, one in enumerate(before)
        if one not in SILENT
    ]
    return {"value": value, "earlier": earlier} if earlier else value


def chance_looks(kind: str, purpose: str, dice: random.Random) -> dict[str, dict[str, Any]]:
    share, found = dice.choice([0.05, 0.3, 0.8, 1.0]), {}
    for part, places in knowledge().machines[kind].parts.items():
        asked = {
            name: prop
            for name, prop in knowledge().properties[part].items()
            if prop.asked and not prop.work and (prop.moment != "service" or purpose == "after own service")
        }
        for place in places:
            looks = {n: chance_look(part, n, p, dice) for n, p in asked.items() if dice.random() < share}
            if looks:
                found[f"{part} @ {place}"] = looks
    return found


@pytest.mark.parametrize("seed", range(36))
def test_a_chance_record_is_judged_and_never_called_better_than_its_findings(seed: int) -> None:
    dice = random.Random(seed)
    kind, purpose = KINDS[seed % len(KINDS)], PURPOSES[seed // len(KINDS) % len(PURPOSES)]
    looks = chance_looks(kind, purpose, dice)
    country = dice.choice(["GB", "DE", "FR", "US", "XX"])
    told = assess(record(looks, kind=knowledge().machines[kind].called, purpose=purpose, country=country))

    levels = [entry.level for entry in (*told.findings, *told.causes)]
    worst = min(levels, key=LEVELS.index, default="sound")
    critical = any(entry.critical for entry in told.unseen)
    assert told.verdict.level == (worst if worst in ("stop", "repair") or not critical else "unseen")
    assert told.model_validate_json(told.model_dump_json()) == told
    for reader in ("buyer", "owner", "mechanic"):
        text = to_text(told, reader, 90)
        assert all(entry.title.split()[0] in text for entry in told.findings)
