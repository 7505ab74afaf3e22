"""The scale of a measured value as inline SVG: value with its uncertainty, limit, new part, end of the horizon.

Black on white: beyond the limit is hatched, the value is a filled dot on a bar, what is still to come is open.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from inspector.reporting.svg_text import GREY, INK, PAPER, SIZE, label, picture, width, wrapped
from inspector.weighing.assessment import Scale

SMALL_WIDTH, SMALL_HEIGHT = 110, 16
_LINE = 12.5  # px from one line of text to the next
_FINE = 9.6
_ZERO_FROM = 0.62  # a scale whose least figure lies below this share of its greatest starts at nothing
_BAR = "#aeb6bf"


@dataclass(frozen=True)
class Told:
    """The words of a scale; `title` says all of it to those who do not see it."""

    title: str
    value: str
    limit: str
    origin: str
    new: str | None = None
    ahead: str | None = None


@dataclass(frozen=True)
class Axis:
    """From figures to places along a line."""

    low: float
    high: float
    start: float
    end: float

    def at(self, figure: float) -> float:
        """Where a figure lies, held inside the line."""
        share = (figure - self.low) / (self.high - self.low)
        return self.start + (self.end - self.start) * min(max(share, 0.0), 1.0)


def span(figures: list[float]) -> tuple[float, float]:
    """Ends of an axis that holds all figures with a margin; nothing is an end if it is near enough."""
    low, high = min(figures), max(figures)
    margin = 0.1 * (high - low) or abs(high) * 0.1 or 1.0
    from_zero = low >= 0 and low <= _ZERO_FROM * high
    return (0.0 if from_zero else low - margin), high + margin


def draw_scale(scale: Scale, told: Told, wide: float) -> str:
    """The scale with its words, `wide` px wide and as high as the words need."""
    axis = _axis(scale, 1.0, wide - 1.0)
    above = [(axis.at(scale.value), told.value, True)]
    if told.ahead is not None and scale.by_horizon is not None:
        above.append((axis.at(scale.by_horizon), told.ahead, False))
    rows = _rows(above, wide)
    line = max(rows) * _LINE + SIZE + 12
    inside = [
        label(_middle(x, text, bold, wide), line - 10 - row * _LINE, text, bold=bold, anchor="middle")
        for (x, text, bold), row in zip(above, rows, strict=True)
    ]
    inside += _drawn(scale, axis, line)
    below, foot = _below(scale, told, axis, line, wide)
    return picture("scale", wide, foot + 3.5, told.title, "".join([*inside, *below]))


def draw_small_scale(scale: Scale, title: str) -> str:
    """The scale without words, for a table that has them beside it."""
    axis = _axis(scale, 2.0, SMALL_WIDTH - 2.0)
    return picture(
        "small-scale", SMALL_WIDTH, SMALL_HEIGHT, title, "".join(_drawn(scale, axis, SMALL_HEIGHT / 2, small=True))
    )


def _axis(scale: Scale, start: float, end: float) -> Axis:
    figures = [scale.value - 2 * scale.spread, scale.value + 2 * scale.spread]
    figures += [one for one in (scale.at_least, scale.at_most, scale.new, scale.by_horizon) if one is not None]
    if scale.value >= 0 and min(figures) < 0 <= min(figures[2:], default=0.0):
        figures[0] = 0.0  # a length does not reach below nothing, only its uncertainty does
    return Axis(*span(figures), start, end)


def _drawn(scale: Scale, axis: Axis, y: float, small: bool = False) -> list[str]:
    half = 4.0 if small else 5.0
    inside = [f'<path d="M{axis.start:.1f} {y:.1f}H{axis.end:.1f}" stroke="{INK}" stroke-width="1"/>']
    for limit, edge in ((scale.at_least, axis.low), (scale.at_most, axis.high)):
        if limit is not None:
            x = axis.at(limit)
            inside.append(hatched(min(x, axis.at(edge)), max(x, axis.at(edge)), y - half, y + half))
            inside.append(f'<path d="M{x:.1f} {y - half - 3:.1f}V{y + half + 3:.1f}" stroke="{INK}"'
                          f' stroke-width="2.4"/>')  # fmt: skip
    if scale.new is not None:
        inside.append(
            f'<path d="M{axis.at(scale.new):.1f} {y - half:.1f}v{2 * half}" stroke="{INK}" stroke-width="1"/>'
        )
    inside += _value(scale, axis, y, half)
    return inside


def _value(scale: Scale, axis: Axis, y: float, half: float) -> Iterator[str]:
    """The way to the end of the horizon, the bar of the uncertainty, the value."""
    x = axis.at(scale.value)
    if scale.by_horizon is not None:
        ahead = axis.at(scale.by_horizon)
        yield (
            f'<path d="M{x:.1f} {y:.1f}H{ahead:.1f}" stroke="{INK}" stroke-width="2.6" stroke-dasharray="2 2"/>'
            f'<circle cx="{ahead:.1f}" cy="{y:.1f}" r="{half - 1:g}" fill="{PAPER}" stroke="{INK}"'
            ' stroke-width="1.5"/>'
        )
    if scale.spread:
        far = [axis.at(scale.value + times * scale.spread) for times in (-2, -1, 1, 2)]
        yield f'<path d="M{far[0]:.1f} {y:.1f}H{far[3]:.1f}" stroke="{INK}" stroke-width="2"/>'
        yield (
            f'<rect x="{far[1]:.1f}" y="{y - half + 1:.1f}" width="{far[2] - far[1]:.1f}"'
            f' height="{2 * half - 2:g}" fill="{_BAR}" stroke="{INK}" stroke-width="0.8"/>'
        )
    yield (
        f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{half - 1.4:g}" fill="{INK}" stroke="{PAPER}" stroke-width="0.8"/>'
    )


def hatched(left: float, right: float, top: float, bottom: float) -> str:
    """Slanted lines that fill a rectangle."""
    high, strokes, x = bottom - top, [], left
    while x < right + high:
        start, end = max(x - high, left), min(x, right)
        if end > start:
            strokes.append(f"M{start:.1f} {bottom - (start - x + high):.1f}L{end:.1f} {top + (x - end):.1f}")
        x += 3.6
    return f'<path d="{"".join(strokes)}" stroke="{INK}" stroke-width="0.7" fill="none"/>' if strokes else ""


def _below(scale: Scale, told: Told, axis: Axis, y: float, wide: float) -> tuple[list[str], float]:
    """Limit, new part and whose the limit is, below the line; and where the last line stands."""
    limit = scale.at_least if scale.at_least is not None else scale.at_most
    marks = [] if limit is None else [(axis.at(limit), told.limit, True)]
    if told.new is not None and scale.new is not None:
        marks.append((axis.at(scale.new), told.new, False))
    if axis.low == 0:
        marks.append((axis.start, "0", False))
    rows = _rows(marks, wide)
    foot = y + 9 + SIZE
    inside = [
        label(_middle(x, text, bold, wide), foot + row * _LINE, text, bold=bold, anchor="middle")
        for (x, text, bold), row in zip(marks, rows, strict=True)
    ]
    foot += max(rows, default=0) * _LINE
    for text in wrapped(told.origin, wide, _FINE):
        foot += _LINE - 1
        inside.append(label(0, foot, text, size=_FINE, ink=GREY))
    return inside, foot


def _middle(x: float, text: str, bold: bool, wide: float) -> float:
    half = width(text, SIZE, bold) / 2
    return min(max(x, half), max(wide - half, half))


def _rows(marks: list[tuple[float, str, bool]], wide: float) -> list[int]:
    """Which row each text stands in, so that none covers another."""
    taken: list[tuple[int, float, float]] = []
    for x, text, bold in marks:
        half, middle, row = width(text, SIZE, bold) / 2, _middle(x, text, bold, wide), 0
        while any(r == row and middle - half < right + 8 and middle + half > left - 8 for r, left, right in taken):
            row += 1
        taken.append((row, middle - half, middle + half))
    return [row for row, _, _ in taken]
