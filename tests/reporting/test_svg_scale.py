"""Scales and wear charts: what lies where on them, and that they say it in words, too."""

from __future__ import annotations

import itertools
import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspector.reporting.figures import Figures
from inspector.reporting.svg_scale import Axis, Told, draw_scale, draw_small_scale, span
from inspector.reporting.svg_text import width, wrapped
from inspector.reporting.svg_wear import WearWords, draw_wear, ticks
from inspector.weighing.assessment import Assessment, Reading, Scale, Wear
from tests.records import assessed

TOLD = Told("title & all", "1.2 mm", "at least 1.5 mm", "general figure of somebody", "new about 4.5 mm")
WORN_PAD = Scale(unit="mm", value=1.2, spread=0.3, at_least=1.5, at_most=None, new=4.5)


def parsed(drawing: str) -> ElementTree.Element:
    return ElementTree.fromstring(drawing)


def texts(drawing: str) -> list[str]:
    return [one.text or "" for one in parsed(drawing).iter("text")]


def dots(drawing: str, filled: bool) -> list[float]:
    """Where the filled dots, or the open ones, lie across."""
    return [
        float(one.attrib["cx"])
        for one in parsed(drawing).iter("circle")
        if (one.attrib["fill"] != "#ffffff") == filled
    ]


def limits(drawing: str) -> list[float]:
    """Where the heavy ticks of the limits lie across."""
    heavy = [one for one in parsed(drawing).iter("path") if one.attrib.get("stroke-width") == "2.4"]
    return [float(one.attrib["d"].split()[0].lstrip("M")) for one in heavy]


def test_a_value_below_its_limit_lies_left_of_it_and_the_words_stand_by() -> None:
    drawing = draw_scale(WORN_PAD, TOLD, 250)

    assert dots(drawing, filled=True)[0] < limits(drawing)[0]
    assert texts(drawing)[0] == "1.2 mm"
    assert "at least 1.5 mm" in texts(drawing)
    assert "new about 4.5 mm" in texts(drawing)
    assert "general figure of somebody" in " ".join(texts(drawing))
    assert parsed(drawing)[0].tag == "title"
    assert parsed(drawing)[0].text == "title & all"


def test_the_bar_is_as_wide_as_the_uncertainty() -> None:
    drawing = draw_scale(WORN_PAD, TOLD, 250)
    [bar] = parsed(drawing).iter("rect")
    a_millimetre = (limits(drawing)[0] - dots(drawing, filled=True)[0]) / 0.3

    assert float(bar.attrib["width"]) == pytest.approx(0.6 * a_millimetre, abs=0.2)


def test_what_is_still_to_come_is_an_open_dot_between_value_and_limit() -> None:
    scale = WORN_PAD.model_copy(update={"value": 3.0, "by_horizon": 2.2})
    ahead = Told("t", "3.0 mm", "at least 1.5 mm", "o", ahead="by the next look about 2.2 mm")
    drawing = draw_scale(scale, ahead, 250)

    [value], [later] = dots(drawing, filled=True), dots(drawing, filled=False)
    assert limits(drawing)[0] < later < value
    assert "by the next look about 2.2 mm" in texts(drawing)


def test_a_band_has_both_limits() -> None:
    scale = Scale(unit="bar", value=2.5, spread=0.05, at_least=2.4, at_most=2.9)

    assert len(limits(draw_scale(scale, TOLD, 250))) == 2


def test_a_small_scale_has_no_words_but_its_title() -> None:
    drawing = draw_small_scale(WORN_PAD, "said")

    assert texts(drawing) == []
    assert parsed(drawing)[0].text == "said"


figures = st.floats(-500, 5000, allow_nan=False).map(lambda number: round(number, 3))
spreads = st.floats(0, 500).map(lambda number: round(number, 3))


@given(figures, spreads, st.none() | figures, st.none() | figures, st.none() | figures, st.none() | figures)
def test_any_figures_stay_inside_the_drawing_and_no_text_covers_another(value, spread, low, high, new, ahead):
    scale = Scale(unit="mm", value=value, spread=spread, at_least=low, at_most=high, new=new, by_horizon=ahead)
    told = Told(
        "t", f"{value:g} mm", "at least 1.5 mm", "from somewhere or other " * 4, "new 4.5 mm", "by then 2 mm"
    )
    drawing = parsed(draw_scale(scale, told, 250))

    boxes = []
    for one in drawing.iter("text"):
        wide, x, y = (float(one.attrib[name]) for name in ("textLength", "x", "y"))
        left = x - wide / 2 if one.attrib["text-anchor"] == "middle" else x
        boxes.append((left, left + wide, y))
        assert left >= -0.2
        assert left + wide <= 250.2
        assert 0 < y <= float(drawing.attrib["height"])
    for one, other in itertools.combinations(boxes, 2):
        assert one[2] != other[2] or one[1] <= other[0] or other[1] <= one[0]
    for circle in drawing.iter("circle"):
        assert 0 <= float(circle.attrib["cx"]) <= 250


@given(st.lists(figures, min_size=1))
def test_a_span_holds_all_its_figures(found):
    low, high = span(found)

    assert low <= min(found) <= max(found) < high


def test_a_length_starts_at_nothing_and_a_thick_disc_does_not() -> None:
    assert span([1.2, 4.5])[0] == 0
    assert span([4.5, 5.0])[0] > 4.4
    assert Axis(0, 10, 0, 100).at(25) == 100


def test_ticks_are_round_and_few() -> None:
    assert ticks(0, 5.2, 4) == [0, 2, 4]
    assert ticks(27_900, 45_000, 4) == [30_000, 35_000, 40_000, 45_000]


@given(st.floats(-1e4, 1e4), st.floats(0.01, 1e5))
def test_ticks_lie_inside(low, wide):
    found = ticks(low, low + wide, 4)

    assert len(found) <= 5
    assert all(low - 1e-6 * wide <= one <= low + wide * (1 + 1e-6) for one in found)


def test_text_is_as_wide_as_its_letters_and_bold_is_wider() -> None:
    assert width("mm", 10) == pytest.approx(2 * width("m", 10))
    assert width("at least 1.5 mm", 10, bold=True) > width("at least 1.5 mm", 10)
    assert width("車", 10) == pytest.approx(6)
    assert wrapped("one two three", width("one two")) == ["one two", "three"]
    assert wrapped("", 10) == []


def chart(low: float | None, high: float | None, *readings: Reading) -> str:
    pair = (Reading(odometer=30000, value=4.0, spread=0.1), Reading(odometer=40000, value=2.5, spread=0.1))
    wear = Wear(
        unit="mm",
        distance_unit="km",
        readings=readings or pair,
        limit=1.5,
        limit_words="at least 1.5 mm",
        limit_origin="o",
        horizon=4000,
        low=low,
        high=high,
    )
    return draw_wear(wear, WearWords("said <b>", "limit: at least 1.5 mm", "today", "next look"))


def test_a_chart_shows_every_reading_and_the_fan_from_today_to_the_limit() -> None:
    drawing = chart(3000, 9000)
    fan = next(one for one in parsed(drawing).iter("path") if one.attrib.get("fill") == "#d3d8de")
    corners = [float(number) for number in re.findall(r"-?\d+\.\d", fan.attrib["d"])]
    first, today = dots(drawing, filled=True)

    assert first < today == corners[0] < corners[2] < corners[4]
    assert parsed(drawing)[0].text == "said <b>"
    assert {"limit: at least 1.5 mm", "today", "next look", "mm", "km"} <= set(texts(drawing))


def test_without_a_range_there_is_no_fan() -> None:
    assert "#d3d8de" not in chart(None, None)
    assert "#d3d8de" in chart(3000, None)


def test_the_line_breaks_where_a_new_part_begins() -> None:
    kept = [
        Reading(odometer=km, value=value, spread=0.1) for km, value in ((30000, 2.0), (32000, 4.5), (40000, 3.0))
    ]
    renewed = [kept[0], kept[1].model_copy(update={"new_part": True}), kept[2]]

    assert chart(None, None, *kept).count("<polyline") == 2
    assert chart(None, None, *renewed).count("<polyline") == 1
    assert len(dots(chart(None, None, *renewed), filled=False)) == 1


def measured_over_distance(unit: str = "km") -> Assessment:
    earlier = [
        {"value": "2.0 mm", "tool": "caliper", "odometer": f"20 000 {unit}"},
        {"value": "4.6 mm", "tool": "caliper", "odometer": f"21 000 {unit}", "new part": "yes"},
        {"value": "3.4 mm", "tool": "steel rule", "odometer": f"30 000 {unit}"},
    ]
    looks = {"value": "2.1 mm", "tool": "caliper", "earlier": earlier}
    inspection = {"purpose": "before purchase", "date": "2026-06-01", "odometer": f"40 000 {unit}",
                  "horizon": f"12 months, 2000 {unit}"}  # fmt: skip
    return assessed({"brake pad @ rear inner": {"friction_material_thickness": looks}}, inspection=inspection)


@pytest.mark.parametrize("unit", ["km", "mi"])
def test_the_figures_of_a_chart_are_in_the_units_of_the_record(unit: str) -> None:
    [one] = [m for m in measured_over_distance(unit).measurements if m.wear is not None]
    wear = one.wear
    assert wear is not None

    assert [round(r.odometer) for r in wear.readings] == [20000, 21000, 30000, 40000]
    assert [r.value for r in wear.readings] == pytest.approx([2.0, 4.6, 3.4, 2.1])
    assert [r.new_part for r in wear.readings] == [False, True, False, False]
    assert wear.readings[2].spread > wear.readings[3].spread > 0
    assert (wear.distance_unit, wear.limit, round(wear.horizon)) == (unit, 1.5, 2000)
    assert wear.low is not None
    assert wear.high is not None
    assert 0 < wear.low < wear.high
    # at the end of the horizon the pad is somewhere between today and its limit
    assert one.scale is not None
    assert one.scale.by_horizon is not None
    assert 1.5 <= one.scale.by_horizon < 2.1


def test_a_chart_says_its_readings_limit_and_forecast_in_words() -> None:
    drawn = Figures(measured_over_distance())
    [one] = drawn.worn()
    title = parsed(drawn.wear(one))[0].text or ""

    assert "at 21 000 km 4.6 mm; at 30 000 km 3.4 mm; at 40 000 km 2.1 mm" in title
    assert "Limit: at least 1.5 mm, " in title
    assert one.forecast
    assert one.forecast in title


def test_a_reading_without_a_past_has_no_chart() -> None:
    looks = {"brake pad @ rear inner": {"friction_material_thickness": "2.1 mm with caliper"}}

    assert Figures(assessed(looks)).worn() == []


def test_only_a_value_held_against_the_limit_that_is_drawn_gets_a_scale() -> None:
    assessment = assessed({"brake pad @ rear inner": {"friction_material_thickness": "1.1 mm with caliper"}})
    entry = next(e for e in assessment.findings if e.rule == "brakes/pad_below_limit")
    other = entry.evidence[0].model_copy(update={"limit": "at least 9 mm"})

    [drawn] = Figures(assessment).scales(entry)
    assert "at least 1.5 mm" in texts(drawn)
    assert Figures(assessment).scales(entry.model_copy(update={"evidence": (other,)})) == []
