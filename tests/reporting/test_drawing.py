"""The drawing of the machine: every part has a place on it or is said to have none; findings have theirs there."""

from __future__ import annotations

import itertools
import re
from functools import cache
from typing import Any
from xml.etree import ElementTree

import pytest

from inspector.knowledge.library import knowledge
from inspector.knowledge.shipped import shipped
from inspector.reporting.drawing import _points, draw_machine, numbered, point_of, without_point
from inspector.reporting.figures import Figures
from inspector.reporting.svg import INK
from inspector.weighing.assessment import FindingEntry
from tests.reporting.cases import in_order, worn

KINDS = [machine.called for machine in knowledge().machines.values() if not machine.abstract]


@cache
def parts() -> dict[str, set[str]]:
    """Every part of every kind with its places."""
    found: dict[str, set[str]] = {}
    for machine in knowledge().machines.values():
        for part, places in machine.parts.items():
            found.setdefault(part, set()).update(places)
    return found


def test_every_part_has_a_point_at_each_of_its_places_or_is_listed_as_having_none() -> None:
    nowhere = set(_points()["nowhere"]["parts"])
    without = {part for part, places in parts().items() if any(point_of(part, place) is None for place in places)}

    assert without == nowhere & set(parts())
    assert nowhere | set(_points()["points"]) == set(parts())
    assert not nowhere & set(_points()["points"])


def test_every_point_lies_on_the_drawing() -> None:
    wide, high = _points()["size"]
    for part, points in _points()["points"].items():
        for place, (x, y) in points.items():
            assert 0 < x < wide, part
            assert 0 < y < high, part
            named = parts()[part]
            assert place == "all" or any(p == place or p.startswith(f"{place} ") for p in named), (part, place)


def test_front_parts_lie_at_the_front_and_rear_parts_at_the_rear() -> None:
    for part, places in parts().items():
        for place in places:
            point = point_of(part, place)
            if point and place.split()[0] in ("front", "rear"):
                assert (point[0] > 230) == (place.split()[0] == "front"), (part, place)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_has_its_own_rear_end(kind: str) -> None:
    entries = worn().findings
    drawings = {other: draw_machine(other, entries, "t") for other in KINDS}

    assert kind in _points()["rear_end"]
    assert len(set(drawings.values())) == len(KINDS)


def test_an_unknown_kind_is_drawn_without_its_rear_end() -> None:
    drawn = draw_machine("sidecar outfit", worn().findings, "t")

    assert drawn is not None
    assert len(drawn) < len(draw_machine(KINDS[0], worn().findings, "t") or "")


def test_every_finding_is_numbered_on_the_drawing_or_named_beside_it() -> None:
    entries = (*worn().findings, *worn().causes)
    drawn = draw_machine(worn().visit.kind, entries, "t & u")
    assert drawn is not None
    root = ElementTree.fromstring(drawn)
    shown = [one.text for one in root.iter("text") if one.attrib.get("font-weight") == "700"]
    beside = [entry.label for entry in without_point(entries)]

    assert sorted([*shown, *beside]) == sorted(entry.label for entry in entries)
    assert root[0].text == "t & u"


def crowd() -> tuple[FindingEntry, ...]:
    """A finding at every part and place there is."""
    first = worn().findings[0]
    places = [(part, place) for part, found in sorted(parts().items()) for place in sorted(found)]
    return tuple(
        first.model_copy(update={"label": str(number), "part": part, "place": place})
        for number, (part, place) in enumerate(places, 1)
    )


def test_words_of_a_crowded_drawing_do_not_cover_each_other_and_stay_on_the_paper() -> None:
    drawn = draw_machine(KINDS[0], crowd(), "t")
    assert drawn is not None
    root = ElementTree.fromstring(drawn)
    rows: dict[tuple[str, str], list[tuple[float, float]]] = {}
    for one in root.iter("text"):
        wide, x, y = (float(one.attrib[name]) for name in ("textLength", "x", "y"))
        left = x - wide if one.attrib["text-anchor"] == "end" else x
        assert left >= 0
        assert left + wide <= float(root.attrib["width"])
        assert y <= float(root.attrib["height"])
        rows.setdefault((f"{y:.1f}", "left" if x < 325 else "right"), []).append((left, left + wide))
    for row in rows.values():
        row.sort()
        assert all(before[1] <= after[0] for before, after in itertools.pairwise(row))


def test_findings_at_one_part_and_place_share_their_words() -> None:
    entries = [e for e in crowd() if e.part == "brake pad"]

    assert {(one.x, one.y) for one in numbered(entries)} == {point_of("brake pad", p) for p in ("front", "rear")}


def test_a_machine_without_findings_has_no_drawing() -> None:
    assert Figures(in_order()).machine() is None


def test_the_drawings_are_plain_black_lines_of_our_own() -> None:
    folder = shipped("report_templates") / "drawings"
    allowed: dict[str, Any] = {"#ffffff", INK, "#9aa3ad", "none"}
    for entry in folder.iterdir():
        if entry.name.endswith(".svg"):
            text = entry.read_text(encoding="utf-8")
            ElementTree.fromstring(f"<svg>{text}</svg>")
            assert set(re.findall(r'(?:fill|stroke)="([^"]+)"', text)) <= allowed
            assert not re.findall(r"href|script|image|style|font", text)
