"""Wear looked forward from the readings in a record: how long the rest will last, and what it does not tell."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from inspector.deriving.facts import Fact, derive_facts
from inspector.deriving.forecast import Forecast, forecast, round_down, round_outward
from inspector.deriving.limits import Band
from inspector.knowledge.library import knowledge
from inspector.quantities.units import Amount
from inspector.reading.inspection import Earlier, Inspection, Measured
from tests.records import assessed, record

PAD = "brake pad @ rear inner"
PRIOR = knowledge().wear["brake pad", "friction_material_thickness"]
LIMIT = Band(1.5, None, "1.5 mm", "general figure")


def pad(value: str, earlier: list[dict[str, str]] | None = None, **more: Any) -> Fact:
    look: dict[str, Any] = {"value": value}
    if earlier:
        look["earlier"] = earlier
    inspection = record({PAD: {"friction_material_thickness": look}}, **more)
    return derive_facts(inspection, knowledge()).items["brake pad", "rear inner"]["friction_material_thickness"]


def ahead(fact: Fact) -> Forecast:
    assert fact.forecast is not None
    return fact.forecast


NEW = {"value": "5.0 mm ± 0.2 mm", "odometer": "30 000 km", "date": "2024-06-01", "new part": "yes"}
BY_CALIPER = {"value": "3.8 mm ± 0.05 mm", "odometer": "35 000 km", "date": "2025-06-01"}


def test_one_reading_gives_no_distance_only_the_next_look() -> None:
    found = ahead(pad("3.4 mm with caliper"))

    assert found.story == "one reading"
    assert found.low is None
    assert 500 <= found.check <= 10_000


def test_two_readings_give_a_range_that_holds_the_plain_line_through_them() -> None:
    """From 5.0 mm at 30 000 km to 3.0 mm at 40 000 km the line reaches 1.5 mm after 7500 km more."""
    found = ahead(pad("3.0 mm ± 0.05 mm", [NEW]))

    assert found.story == "as before"
    assert found.low is not None
    assert found.high is not None
    assert found.low < 7500 < found.high
    assert found.check <= found.low
    assert found.per_month == pytest.approx(10_000 / 24, rel=0.01)


def test_more_and_better_readings_make_the_range_narrower() -> None:
    two = ahead(pad("2.6 mm ± 0.1 mm", [NEW]))
    three = ahead(pad("2.6 mm ± 0.1 mm", [NEW, BY_CALIPER]))
    assert None not in (two.low, two.high, three.low, three.high)

    assert three.high - three.low < two.high - two.low  # type: ignore[operator]


def test_a_part_renewed_on_the_way_forgets_the_wear_of_the_old_one() -> None:
    old = {"value": "1.6 mm", "odometer": "29 000 km"}

    assert ahead(pad("3.0 mm ± 0.05 mm", [old, NEW])) == ahead(pad("3.0 mm ± 0.05 mm", [NEW]))


def test_a_reading_thicker_than_before_is_a_question_not_a_reset() -> None:
    found = ahead(pad("4.8 mm ± 0.1 mm", [{"value": "3.4 mm ± 0.3 mm", "odometer": "36 000 km"}]))

    assert found.story == "thicker than before"
    assert found.guess == "a new part"  # near the thickness of a new one


def test_a_thicker_reading_gives_no_distance_until_the_owner_says_which() -> None:
    before = {"value": "3.4 mm ± 0.1 mm", "odometer": "36 000 km"}
    found = ahead(pad("4.8 mm ± 0.1 mm", [before]))
    without = ahead(pad("3.4 mm ± 0.1 mm"))

    assert found.low is None
    assert found.high is None
    assert found.check <= without.check  # the thicker reading must not buy time


def test_a_thicker_reading_stays_a_question_when_later_readings_fall() -> None:
    thin = {"value": "3.0 mm ± 0.1 mm", "odometer": "34 000 km"}
    thick = {"value": "4.9 mm ± 0.1 mm", "odometer": "38 000 km"}
    answered = {**thick, "new part": "yes"}

    assert ahead(pad("4.5 mm ± 0.1 mm", [thin, thick])).story == "thicker than before"
    assert ahead(pad("4.5 mm ± 0.1 mm", [thin, answered])).story == "as before"


def test_a_little_thicker_with_a_coarse_tool_is_the_same_part_and_keeps_its_range() -> None:
    found = ahead(pad("3.6 mm ± 0.3 mm", [NEW, {"value": "3.0 mm ± 0.3 mm", "odometer": "38 000 km"}]))

    assert found.guess in (None, "the same part")
    assert found.low is not None


def test_a_part_that_wears_far_faster_than_before_is_told_apart() -> None:
    slow = [NEW, {"value": "4.4 mm ± 0.05 mm", "odometer": "39 000 km"}]

    assert ahead(pad("2.4 mm ± 0.05 mm", slow)).story == "faster than before"


def test_an_earlier_reading_above_the_odometer_of_today_is_refused() -> None:
    from inspector.knowledge.faults import Faults

    with pytest.raises(Faults, match="lies above the odometer of this day"):
        pad("3.0 mm", [{"value": "4.0 mm", "odometer": "41 000 km"}])


def test_a_limit_that_wear_may_reach_within_the_horizon_is_planned_for() -> None:
    near = pad("2.3 mm ± 0.05 mm", [NEW])
    far = pad("4.4 mm ± 0.05 mm", [NEW])

    assert near.limits["wear limit"].reaches
    assert not far.limits["wear limit"].reaches


def test_splines_wear_upwards_towards_their_limit() -> None:
    look = {"value": "20 % ± 3 %", "earlier": [{"value": "5 % ± 3 %", "odometer": "20 000 km"}]}
    inspection = record({"splines @ rear wheel side": {"worn_share": look}})
    fact = derive_facts(inspection, knowledge()).items["splines", "rear wheel side"]["worn_share"]
    found = ahead(fact)

    assert found.low is not None
    assert found.high is not None
    assert found.low < 1000 * (33.3 - 20) / (15 / 20) < found.high


CHAIN = "chain @ rear"
NEW_CHAIN = {"value": "317.6 mm ± 0.2 mm", "odometer": "20 000 km", "new part": "yes"}
WORN_CHAIN = {"new_length": "317.5 mm", "measured_length": {"value": "320.6 mm ± 0.2 mm", "earlier": [NEW_CHAIN]}}


def chain(looks: dict[str, Any]) -> Fact:
    facts = derive_facts(record({CHAIN: looks}, kind="chain drive motorcycle"), knowledge())
    return facts.items["chain", "rear"]["elongation"]


def test_earlier_lengths_of_a_chain_feed_the_forecast_of_its_wear() -> None:
    """317.6 mm new and 320.6 mm after 20 000 km: 3.0 of 317.5 mm, so 0.047 % in 1000 km; 2 % is 323.85 mm."""
    found = ahead(chain(WORN_CHAIN))

    assert found.rate == pytest.approx(0.047, rel=0.15)
    assert found.low is not None
    assert found.high is not None
    assert found.low < 1000 * (323.85 - 320.6) / 3.0 * 20 < found.high


def test_earlier_lengths_count_by_the_number_on_the_chain_as_well() -> None:
    by_number = chain({"series": "525", "measured_length": WORN_CHAIN["measured_length"]})

    assert ahead(by_number) == ahead(chain(WORN_CHAIN))


def test_without_a_new_length_or_a_number_nothing_is_looked_forward() -> None:
    assert chain({"measured_length": WORN_CHAIN["measured_length"]}).forecast is None


def test_a_chart_of_the_chain_shows_its_earlier_lengthening() -> None:
    assessment = assessed({CHAIN: WORN_CHAIN}, kind="chain drive motorcycle")
    wear = next(m.wear for m in assessment.measurements if m.name == "elongation")

    assert wear is not None
    assert [round(one.value, 2) for one in wear.readings] == [0.03, 0.98]


def test_every_part_that_wears_by_distance_has_a_prior() -> None:
    parts = {part for part, _ in knowledge().wear}

    assert parts == {"brake pad", "brake disc", "tyre", "chain", "belt", "splines"}


def test_the_chance_of_being_at_the_limit_by_the_horizon_goes_with_the_range() -> None:
    near, far = ahead(pad("2.3 mm ± 0.05 mm", [NEW])), ahead(pad("4.4 mm ± 0.05 mm", [NEW]))
    assert None not in (near.by_horizon, near.low, near.horizon, far.by_horizon, far.low, far.horizon)

    assert near.by_horizon > 0.1 > far.by_horizon  # type: ignore[operator]
    assert near.low < near.horizon  # type: ignore[operator]
    assert far.low > far.horizon  # type: ignore[operator]


def says(value: str, earlier: list[dict[str, str]], **visit: str) -> str:
    look = {"value": value, "earlier": earlier}
    assessment = assessed({PAD: {"friction_material_thickness": look}}, **visit)
    return next(m.forecast for m in assessment.measurements if m.forecast)


def test_the_rate_is_told_with_one_figure_unless_it_is_known_well() -> None:
    """Two readings by eye leave more than 30 % of doubt about the rate; four by caliper do not."""
    coarse = says("4.2 mm ± 0.5 mm", [{"value": "5.0 mm ± 0.5 mm", "odometer": "37 000 km"}])
    fine = says("2.6 mm ± 0.05 mm", [NEW, {"value": "4.3 mm ± 0.05 mm", "odometer": "33 000 km"}, BY_CALIPER])

    assert "It wears by about 0.2 mm in 1000 km." in coarse
    assert "It wears by about 0.24 mm in 1000 km." in fine


def test_the_chance_ahead_is_told_in_tenths() -> None:
    text = says("3.0 mm ± 0.1 mm", [{"value": "5.0 mm ± 0.1 mm", "odometer": "32 000 km", "new part": "yes"}])

    assert ", within the next 5000 km in about 2 of 10 such cases;" in text
    assert "of 10 such" not in says("4.4 mm ± 0.05 mm", [NEW])


def test_the_report_says_it_in_words_with_no_more_digits_than_it_deserves() -> None:
    look = {"value": "3.0 mm ± 0.1 mm", "earlier": [NEW]}
    assessment = assessed({PAD: {"friction_material_thickness": look}})
    text = next(m.forecast for m in assessment.measurements if m.forecast)

    assert text.startswith("It wears by about 0.2 mm in 1000 km. The limit of 1.5 mm is probably reached after ")
    assert "measure again after" in text
    assert "months as it was ridden so far" in text


@pytest.mark.parametrize(("way", "rounded"), [(4514.0, 4000.0), (872.0, 800.0), (9.0, 0.0), (13_390.0, 10_000.0)])
def test_a_check_distance_is_rounded_down(way: float, rounded: float) -> None:
    assert round_down(way) == rounded


@pytest.mark.parametrize(
    ("low", "high", "printed"),
    [
        (3130.0, 6650.0, (3000.0, 7000.0)),  # figures of a worked pad
        (780.0, 2770.0, (700.0, 3000.0)),  # a low end under one step keeps its own first figure
        (5300.0, 10_400.0, (5000.0, 11_000.0)),  # not 20 000
        (10_600.0, 21_200.0, (10_000.0, 25_000.0)),  # not 30 000
        (12_100.0, 13_900.0, (12_000.0, 14_000.0)),
        (4514.0, 4580.0, (4500.0, 4600.0)),  # never more than two figures
        (0.0, 0.0, (0.0, 0.0)),
        (870.0, float("inf"), (800.0, float("inf"))),
    ],
)
def test_a_range_is_rounded_outward(low: float, high: float, printed: tuple[float, float]) -> None:
    assert round_outward(low, high) == printed


def test_the_stated_range_holds_as_often_as_it_says() -> None:
    """Over simulated owners who ride and wear as the prior says, eight in ten ranges hold the true distance."""
    chance = np.random.default_rng(20261125)
    factor, jitter, step = PRIOR.factor, 0.005, 0.1
    held = judged = 0
    for _ in range(500):
        rate = 0.20 * np.exp(chance.normal(0, np.log(factor) / 1.96))  # mm per 1000 km
        heights = [4.5]
        while heights[-1] > 1.5 and len(heights) < 2000:
            heights.append(heights[-1] - rate * step + chance.normal(0, (jitter * step) ** 0.5))
        worn_after = (len(heights) - 1) * step
        if worn_after <= 8:
            continue
        seen = [
            heights[0] + chance.normal(0, 0.05),
            *(heights[int(w / step)] + chance.normal(0, 0.1) for w in (4, 8)),
        ]
        found = simulated(seen, [4.0, 8.0])
        assert found.low is not None
        assert found.high is not None
        held += found.low <= (worn_after - 8) * 1000 <= found.high
        judged += 1
    own_error = (0.8 * 0.2 / judged) ** 0.5

    assert judged > 300
    assert abs(held / judged - 0.80) < 3 * own_error


def simulated(readings: list[float], ways: list[float]) -> Forecast:
    def measured(height: float, spread: float) -> Measured:
        return Measured(Amount(f"{height:.2f} mm", height, "mm", "length", height), spread, None, stated=True)

    def km(way: float) -> Amount:
        return Amount(f"{way * 1000:.0f} km", way * 1000, "km", "distance", way * 1000)

    base = record({})
    inspection = Inspection(**{**base.__dict__, "odometer": km(10 + ways[-1])})
    history = (
        Earlier(measured(readings[0], 0.05), km(10.0), new_part=True),
        Earlier(measured(readings[1], 0.1), km(10.0 + ways[0])),
    )
    found = forecast(measured(readings[2], 0.1), history, PRIOR, LIMIT, inspection)
    assert found is not None
    return found


def test_several_readings_of_one_thing_count_as_their_mean() -> None:
    inspection = record(
        {PAD: {"friction_material_thickness": {"readings": ["2.6 mm", "2.7 mm", "2.5 mm"], "tool": "caliper"}}}
    )
    value = inspection.observations["brake pad", "rear inner", "friction_material_thickness"].value

    assert isinstance(value, Measured)
    assert value.amount.base == pytest.approx(2.6)
    # scatter 0.1 mm / root 3, and half of the caliper's own uncertainty, which repeating does not take away
    caliper = float(knowledge().tools["caliper"].gives["length"].split()[0])
    assert value.uncertainty == pytest.approx(((0.1 / 3**0.5) ** 2 + (caliper / 2) ** 2) ** 0.5)
