"""The drawing of the machine from the side, with the findings' numbers where their parts sit."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from typing import Any

from inspector.knowledge.shipped import shipped
from inspector.reporting.svg import mark_shape
from inspector.reporting.svg_text import GREY, INK, PAPER, SIZE, label, picture, width, wrapped
from inspector.weighing.assessment import FindingEntry

WIDE = 650.0
_SIDE = 118.0  # px for the words on either side
_SHARE = (WIDE - 2 * _SIDE) / 420
_LINE, _GAP, _MARK = 12.0, 6.0, 9.0
_MIDDLE = (140.0, 290.0)  # between these a part may have its words on either side


@dataclass(frozen=True)
class Numbered:
    """Findings of one part at one point: their labels with the mark of each, and the part's name."""

    part: str
    x: float
    y: float
    marks: tuple[tuple[str, str], ...]

    @property
    def rows(self) -> list[list[tuple[str, str]]]:
        """The marks, as many on a line as there is room for."""
        rows: list[list[tuple[str, str]]] = [[]]
        used = 0.0
        for level, number in self.marks:
            wide = _MARK + 2 + width(number, SIZE, bold=True) + 6
            if rows[-1] and used + wide > _SIDE - 8:
                rows.append([])
                used = 0.0
            rows[-1].append((level, number))
            used += wide
        return rows

    @property
    def lines(self) -> list[str]:
        """The name of the part, broken to the room beside the drawing."""
        return wrapped(self.part, _SIDE - 8)

    @property
    def high(self) -> float:
        """How much room the words take, in px."""
        return _LINE * (len(self.rows) + len(self.lines)) + _GAP


@cache
def _points() -> dict[str, Any]:
    text = (shipped("report_templates") / "drawings" / "points.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def point_of(part: str, place: str) -> tuple[float, float] | None:
    """Where a part sits on the drawing; None for one that sits nowhere."""
    found = [
        (len(key), point)
        for key, point in _points()["points"].get(part, {}).items()
        if key == "all" or place == key or place.startswith(f"{key} ")
    ]
    return (float(max(found)[1][0]), float(max(found)[1][1])) if found else None


def numbered(entries: Iterable[FindingEntry]) -> tuple[Numbered, ...]:
    """Findings and suspicions by the point they sit at, in their own order."""
    groups: dict[tuple[str, float, float], list[tuple[str, str]]] = {}
    for entry in entries:
        point = point_of(entry.part, entry.place)
        if point is not None:
            level = entry.level if entry.label.isdigit() else "suspected"
            groups.setdefault((entry.part, *point), []).append((level, entry.label))
    return tuple(Numbered(part, x, y, tuple(marks)) for (part, x, y), marks in groups.items())


def without_point(entries: Iterable[FindingEntry]) -> tuple[FindingEntry, ...]:
    """Findings whose part sits nowhere on the drawing."""
    return tuple(entry for entry in entries if point_of(entry.part, entry.place) is None)


def draw_machine(kind: str, entries: Iterable[FindingEntry], title: str) -> str | None:
    """The drawing for a machine kind; None when no finding sits anywhere on it."""
    groups = numbered(entries)
    if not groups:
        return None
    left, right = _sides(groups)
    high = max(236 * _SHARE, *(sum(one.high for one in side) for side in (left, right))) + 4
    down = (high - 236 * _SHARE) / 2
    inside = [f'<g transform="translate({_SIDE:g} {down:.1f}) scale({_SHARE:.4f})">{_machine(kind)}</g>']
    words = []
    for side, edge, anchor in ((left, _SIDE - 6, "end"), (right, WIDE - _SIDE + 6, "start")):
        for one, top in zip(side, _tops(side, high, down), strict=True):
            inside.append(_leader(one, edge, top, down, anchor))
            words.append(_words(one, edge, top, anchor))
    return picture("machine", WIDE, round(high, 1), title, "".join([*inside, *words]))


@cache
def _machine(kind: str) -> str:
    """The lines of the drawing: what all kinds have, and the rear end of this one."""
    folder = shipped("report_templates") / "drawings"
    names = ["motorcycle", *([_points()["rear_end"][kind]] if kind in _points()["rear_end"] else [])]
    text = "".join((folder / f"{name}.svg").read_text(encoding="utf-8") for name in names)
    return re.sub(r"<!--.*?-->|\n", "", text)


def _sides(groups: tuple[Numbered, ...]) -> tuple[list[Numbered], list[Numbered]]:
    """Words beside the nearer edge; parts in the middle where there is more room."""
    left = [one for one in groups if one.x < _MIDDLE[0]]
    right = [one for one in groups if one.x > _MIDDLE[1]]
    for one in sorted((g for g in groups if g not in left and g not in right), key=lambda g: abs(g.x - 215)):
        heights = [sum(g.high for g in side) + (20 if (one.x < 215) == (i == 1) else 0) for i, side in
                   enumerate((left, right))]  # fmt: skip
        (left if heights[0] <= heights[1] else right).append(one)
    return sorted(left, key=lambda g: (g.y, g.x)), sorted(right, key=lambda g: (g.y, -g.x))


def _tops(side: list[Numbered], high: float, down: float) -> list[float]:
    """Where the words of each part begin: as near to its height as the others leave room."""
    tops, free = [], 0.0
    left = sum(one.high for one in side)
    for one in side:
        wanted = down + one.y * _SHARE - one.high / 2
        tops.append(max(free, min(wanted, high - left)))
        free = tops[-1] + one.high
        left -= one.high
    return tops


def _leader(one: Numbered, edge: float, top: float, down: float, anchor: str) -> str:
    x, y = _SIDE + one.x * _SHARE, down + one.y * _SHARE
    start = edge + (2 if anchor == "end" else -2)
    line = f"M{start:.1f} {top + _LINE * 0.62:.1f}L{x:.1f} {y:.1f}"
    return (
        f'<path d="{line}" stroke="{PAPER}" stroke-width="2.4" fill="none"/>'
        f'<path d="{line}" stroke="{GREY}" stroke-width="0.8" fill="none"/>'
        f'<circle cx="{x:.1f}" cy="{y:.1f}" r="2.6" fill="{INK}" stroke="{PAPER}" stroke-width="0.8"/>'
    )


def _words(one: Numbered, edge: float, top: float, anchor: str) -> str:
    """Marks with numbers, then the name of the part, against the edge of the drawing."""
    inside, y = [], top + SIZE
    for row in one.rows:
        wide = sum(_MARK + 2 + width(number, SIZE, bold=True) + 6 for _, number in row) - 6
        x = edge - wide if anchor == "end" else edge
        for level, number in row:
            shape = mark_shape(level)
            inside.append(f'<g transform="translate({x:.1f} {y - 8.2:.1f}) scale({_MARK / 24:.4f})">{shape}</g>')
            inside.append(label(x + _MARK + 2, y, number, bold=True))
            x += _MARK + 2 + width(number, SIZE, bold=True) + 6
        y += _LINE
    for line in one.lines:
        inside.append(label(edge, y, line, anchor=anchor, ink=GREY))
        y += _LINE
    return "".join(inside)
