"""A limit that the stamp or the manual may give needs a unit."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from inspector.knowledge.faults import Faults
from inspector.knowledge.library import Loader, knowledge
from inspector.quantities.units import parse_amount

RULES = Path(__file__).parents[2] / "rules"


def test_a_count_cannot_have_a_limit_of_the_machine(tmp_path: Path) -> None:
    """It used to be taken, and crashed when a record looked for the unit of a count."""
    shutil.copytree(RULES, tmp_path / "rules")
    file = tmp_path / "rules" / "limits" / "chain_and_belt.yaml"
    text = file.read_text(encoding="utf-8")
    changed = text.replace(
        "    at_most: 0\n    origin: a sound", "    at_most: 0\n    given_by_machine: yes\n    origin: a sound"
    )
    assert changed != text
    file.write_text(changed, encoding="utf-8")

    with pytest.raises(Faults) as caught:
        Loader(tmp_path / "rules").load()

    assert [fault.text for fault in caught.value.faults] == [
        "a limit that stamp or manual may give belongs to a quantity; a count has no unit"
    ]
    assert caught.value.faults[0].file.endswith("limits/chain_and_belt.yaml")


def test_every_limit_of_the_machine_is_an_amount() -> None:
    known = knowledge()
    given = [
        key for key, limits in known.limits.items() if any(limit.given_by_machine for limit in limits.values())
    ]

    assert given
    for part, name in given:
        assert known.properties[part][name].kind == "quantity", (part, name)


@pytest.mark.parametrize(("typed", "milliamperes"), [("30 mA", 30), ("0.12 A", 120), ("5 milliamperes", 5)])
def test_a_key_off_current_has_a_unit(typed: str, milliamperes: float) -> None:
    assert parse_amount(typed, "current").base == pytest.approx(milliamperes)
