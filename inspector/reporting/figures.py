"""The drawings of a report with their words: scales, wear charts, the machine. Words come from the templates."""

from __future__ import annotations

import math
from typing import Any

from inspector.knowledge.wording import words
from inspector.quantities.units import number_text
from inspector.reporting.drawing import draw_machine, numbered, without_point
from inspector.reporting.svg_scale import Told, draw_scale, draw_small_scale
from inspector.reporting.svg_wear import WearWords, draw_wear
from inspector.weighing.assessment import Assessment, Evidence, FindingEntry, Measurement

SCALE_WIDTH = 250.0
Key = tuple[str, str, str]


class Figures:
    """All drawings of one assessment, made when a template asks for them."""

    def __init__(self, assessment: Assessment) -> None:
        self.assessment = assessment
        self.measured = {(one.part, one.place, one.name): one for one in assessment.measurements}

    def scales(self, entry: FindingEntry) -> list[str]:
        """A scale for every measured value of a finding that is held against the limit that is drawn."""
        found = dict.fromkeys((one.part, one.place, one.name) for one in entry.evidence if self._drawn(one))
        return [self.scale(self.measured[key]) for key in found]

    def _drawn(self, one: Evidence) -> bool:
        """A count or an age has no uncertainty that a scale could show; its figures say all."""
        measured = self.measured.get((one.part, one.place, one.name))
        return (
            measured is not None
            and measured.scale is not None
            and measured.scale.spread > 0
            and one.limit is not None
            and one.limit == measured.limit
        )

    def scale(self, one: Measurement) -> str:
        """The scale of a measured value with its words."""
        assert one.scale is not None
        return draw_scale(one.scale, _told(one), SCALE_WIDTH)

    def small_scale(self, one: Measurement) -> str:
        """The scale for a table; nothing where there is no limit or no uncertainty to draw."""
        if one.scale is None or not one.scale.spread:
            return ""
        return draw_small_scale(one.scale, _told(one).title)

    def worn(self) -> list[Measurement]:
        """What has a history over distance."""
        return [one for one in self.assessment.measurements if one.wear is not None]

    def wear(self, one: Measurement) -> str:
        """The chart of one part over distance."""
        assert one.wear is not None
        told, unit = words()["wear"], one.wear.unit
        readings = "; ".join(
            told["reading"].format(
                odometer=f"{reading.odometer:,.0f}".replace(",", " "),
                distance_unit=one.wear.distance_unit,
                value=number_text(reading.value),
                unit=unit,
            )
            for reading in one.wear.readings
        )
        limit = told["limit"].format(limit=one.wear.limit_words)
        title = told["title"].format(
            name=one.name.replace("_", " "),
            part=one.part,
            place=one.place,
            readings=readings,
            limit=f"{one.wear.limit_words}, {one.wear.limit_origin}",
            forecast=one.forecast or "",
        )
        return draw_wear(one.wear, WearWords(title.strip(), limit, told["today"], told["next_look"]))

    def machine(self) -> str | None:
        """The machine from the side with the numbers of the findings; None when none has a place on it."""
        entries = self._entries()
        told = words()["drawing"]
        listed = "; ".join(
            told["at"].format(labels=", ".join(number for _, number in one.marks), part=one.part)
            for one in numbered(entries)
        )
        title = told["title"].format(kind=self.assessment.visit.kind, numbers=listed)
        return draw_machine(self.assessment.visit.kind, entries, title)

    def beside_machine(self) -> tuple[FindingEntry, ...]:
        """Findings without a place on the drawing."""
        return without_point(self._entries())

    def _entries(self) -> tuple[FindingEntry, ...]:
        return (*self.assessment.findings, *self.assessment.causes)


def _told(one: Measurement) -> Told:
    scale, told = one.scale, words()["scale"]
    assert scale is not None
    new = told["new"].format(value=number_text(scale.new), unit=scale.unit) if scale.new is not None else None
    ahead = None
    if scale.by_horizon is not None:
        reached = any(
            bound is not None and math.isclose(scale.by_horizon, bound, abs_tol=1e-9)
            for bound in (scale.at_least, scale.at_most)
        )
        value = _as_fine(scale.by_horizon, scale.spread)
        ahead = told["reached"] if reached else told["ahead"].format(value=value, unit=scale.unit)
    parts: dict[str, Any] = {
        "name": one.name.replace("_", " "),
        "part": one.part,
        "place": one.place,
        "value": one.value,
        "uncertainty": one.uncertainty or told["exact"],
        "limit": one.limit,
        "origin": one.limit_origin,
    }
    title = " ".join([told["title"].format(**parts), *(f"{text}." for text in (new, ahead) if text)])
    return Told(title, one.value, one.limit or "", one.limit_origin or "", new, ahead)


def _as_fine(figure: float, spread: float) -> str:
    """A figure that is worked out, no finer than what it comes from."""
    decimals = max(0, -math.floor(math.log10(spread))) if spread else 1
    return f"{figure:.{decimals}f}"
