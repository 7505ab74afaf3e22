"""Wear over distance as inline SVG: readings, what they may be off by, the limit, the fan of the forecast."""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass

from inspector.reporting.svg_scale import Axis, hatched, span
from inspector.reporting.svg_text import GREY, INK, PAPER, label, picture, width
from inspector.weighing.assessment import Reading, Wear

WIDE, HIGH = 312, 158
_LEFT, _RIGHT, _TOP, _BOTTOM = 30.0, WIDE - 6.0, 26.0, HIGH - 18.0
_FAN = "#d3d8de"
_FINE = 9.6


@dataclass(frozen=True)
class WearWords:
    """The words of a chart; `title` says all of it to those who do not see it."""

    title: str
    limit: str
    today: str
    next_look: str


def draw_wear(wear: Wear, told: WearWords) -> str:
    """The chart of one part."""
    across, up = _axes(wear)
    limit = up.at(wear.limit)
    beyond = up.at(up.low if _falls(wear) else up.high)
    inside = [
        hatched(_LEFT, _RIGHT, min(limit, beyond), min(limit, beyond) + 5) if not _falls(wear) else "",
        _grid(across, up, wear),
        _fan(wear, across, up),
        f'<path d="M{_LEFT} {limit:.1f}H{_RIGHT}" stroke="{INK}" stroke-width="1.4" stroke-dasharray="5 2.5"/>',
        _reached(wear, across, limit),
        _moments(wear, told, across),
        _limit_words(told.limit, limit, _falls(wear)),
        _readings(wear.readings, across, up),
    ]
    return picture("wear", WIDE, HIGH, told.title, "".join(inside))


def ticks(low: float, high: float, most: int) -> list[float]:
    """Round figures between two ends, at most `most`."""
    raw = (high - low) / most
    power = 10.0 ** math.floor(math.log10(raw))
    step = next(power * times for times in (1, 2, 2.5, 5, 10) if power * times >= raw * 0.999)
    first = math.ceil(low / step - 1e-9)
    return [round(number * step, 10) for number in range(first, math.floor(high / step + 1e-9) + 1)]


def _falls(wear: Wear) -> bool:
    """Whether the limit lies below: a lining that gets thinner; else play or length that grows."""
    return wear.limit <= max(one.value for one in wear.readings)


def _axes(wear: Wear) -> tuple[Axis, Axis]:
    now = wear.readings[-1].odometer
    first = min(one.odometer for one in wear.readings)
    last = now + max(wear.high or 0.0, 1.3 * (wear.low or 0.0), 1.12 * wear.horizon)
    figures = [wear.limit]
    for one in wear.readings:
        figures += [max(one.value - one.spread, 0.0) if one.value >= 0 else one.value - one.spread]
        figures += [one.value + one.spread]
    low, high = span(figures)
    room = 0.2 * (high - low)  # so that the words of the limit have their place beyond it
    if _falls(wear):
        low = min(low, max(wear.limit - room, 0.0) if low >= 0 else wear.limit - room)
    else:
        high = max(high, wear.limit + room)
    return Axis(first, last + 0.02 * (last - first), _LEFT + 6, _RIGHT), Axis(low, high, _BOTTOM, _TOP)


def _grid(across: Axis, up: Axis, wear: Wear) -> str:
    inside = [f'<path d="M{_LEFT} {_TOP - 4}V{_BOTTOM}H{_RIGHT}" stroke="{INK}" stroke-width="1" fill="none"/>']
    steps = ticks(up.low, up.high, 4)
    for figure in steps:
        y = up.at(figure)
        inside.append(f'<path d="M{_LEFT - 3} {y:.1f}h3" stroke="{INK}" stroke-width="1"/>')
        inside.append(label(_LEFT - 5, y + 3.2, f"{figure:g}", size=_FINE, anchor="end"))
    inside.append(label(0, 9, wear.unit, size=_FINE, ink=GREY))
    edge = _RIGHT - width(wear.distance_unit, _FINE) - 6
    for figure in ticks(across.low, across.high, 4):
        x = across.at(figure)
        inside.append(f'<path d="M{x:.1f} {_BOTTOM}v3" stroke="{INK}" stroke-width="1"/>')
        text = f"{figure:,.0f}".replace(",", "\u00a0")
        if x + width(text, _FINE) / 2 < edge:
            inside.append(label(x, _BOTTOM + 13, text, size=_FINE, anchor="middle"))
    inside.append(label(_RIGHT, _BOTTOM + 13, wear.distance_unit, size=_FINE, anchor="end", ink=GREY))
    return "".join(inside)


def _fan(wear: Wear, across: Axis, up: Axis) -> str:
    """From today's reading to the limit, the soonest and the latest way; open where it may never be reached."""
    if wear.low is None:
        return ""
    today = wear.readings[-1]
    x, y, limit = across.at(today.odometer), up.at(today.value), up.at(wear.limit)
    soon = across.at(today.odometer + wear.low)
    if wear.high is None:
        points = f"M{x:.1f} {y:.1f}L{soon:.1f} {limit:.1f}H{across.end:.1f}V{y:.1f}Z"
    else:
        points = f"M{x:.1f} {y:.1f}L{soon:.1f} {limit:.1f}H{across.at(today.odometer + wear.high):.1f}Z"
    return f'<path d="{points}" fill="{_FAN}" stroke="{INK}" stroke-width="0.6"/>'


def _reached(wear: Wear, across: Axis, limit: float) -> str:
    """The range on the limit itself, as a heavy line."""
    if wear.low is None:
        return ""
    now = wear.readings[-1].odometer
    end = across.end if wear.high is None else across.at(now + wear.high)
    return f'<path d="M{across.at(now + wear.low):.1f} {limit:.1f}H{end:.1f}" stroke="{INK}" stroke-width="3.4"/>'


def _limit_words(text: str, limit: float, falls: bool) -> str:
    y = limit + 11 if falls else limit - 5
    ground = f'<rect x="{_LEFT + 3}" y="{y - 8:.1f}" width="{width(text, _FINE, bold=True) + 4:.1f}" height="10"'
    return f'{ground} fill="{PAPER}"/>' + label(_LEFT + 5, y, text, size=_FINE, bold=True)


def _moments(wear: Wear, told: WearWords, across: Axis) -> str:
    """Today and the end of the horizon."""
    now, ahead = (across.at(wear.readings[-1].odometer + way) for way in (0.0, wear.horizon))
    inside = [
        f'<path d="M{x:.1f} {_TOP - 4}V{_BOTTOM}" stroke="{GREY}" stroke-width="0.8" stroke-dasharray="1.2 2.2"/>'
        for x in (now, ahead)
    ]
    inside.append(label(now, 18, told.today, size=_FINE, anchor="middle", ink=GREY))
    room = width(told.next_look, _FINE) / 2
    middle = max(min(ahead, _RIGHT - room), now + width(told.today, _FINE) / 2 + room + 6)
    if middle + room <= WIDE:
        inside.append(label(middle, 18, told.next_look, size=_FINE, anchor="middle", ink=GREY))
    return "".join(inside)


def _readings(readings: tuple[Reading, ...], across: Axis, up: Axis) -> str:
    """Dots with bars, joined by a line that breaks where a new part begins."""
    inside = []
    for before, after in itertools.pairwise(readings):
        if not after.new_part:
            points = " ".join(f"{across.at(o.odometer):.1f},{up.at(o.value):.1f}" for o in (before, after))
            inside.append(f'<polyline points="{points}" fill="none" stroke="{INK}" stroke-width="1.2"/>')
    for one in readings:
        x, y = across.at(one.odometer), up.at(one.value)
        if one.spread:
            low, high = up.at(one.value - one.spread), up.at(one.value + one.spread)
            whisker = f"M{x:.1f} {low:.1f}V{high:.1f}M{x - 3:.1f} {low:.1f}h6M{x - 3:.1f} {high:.1f}h6"
            inside.append(f'<path d="{whisker}" stroke="{INK}" stroke-width="1" fill="none"/>')
        fill = PAPER if one.new_part else INK
        inside.append(f'<circle cx="{x:.1f}" cy="{y:.1f}" r="3" fill="{fill}" stroke="{INK}" stroke-width="1.3"/>')
    return "".join(inside)
