"""Costs by the user's own prices: what is counted, once or each, and the price asked."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.quantities.costs import Estimate
from inspector.quantities.money import parse_money
from inspector.reading.prices import EFFORTS, Price, Prices
from inspector.reporting.costs_text import costs_notes, costs_sum, money_range, sizes
from inspector.weighing.assessment import Assessment
from inspector.weighing.costing import with_costs
from inspector.weighing.upkeep import Costs
from tests.reporting.cases import in_order, worn

FIXED = Estimate(100, 100, 100)
NO_HOURS = Estimate(0, 0, 0)


def prices(**more: object) -> Prices:
    """Every job costs a hundred, nothing is uncertain."""
    plain = dict.fromkeys(EFFORTS, Price(FIXED, NO_HOURS))
    given = {
        "currency": "EUR",
        "day": date(2026, 5, 1),
        "rate": FIXED,
        "effort": plain,
        "rules": {},
        "invented": True,
    }
    return Prices(**{**given, **more})  # type: ignore[arg-type]


def costs(assessment: Assessment, of: Prices, asking: str | None = None) -> Costs:
    found = with_costs(assessment, of, parse_money(asking) if asking else None).costs
    assert found is not None
    return found


def to_pay(assessment: Assessment) -> list[str]:
    return [e.label for e in assessment.findings if e.level in ("stop", "repair", "plan") and e.effort != "none"]


def test_every_finding_to_be_paid_for_stands_in_one_line_and_no_other() -> None:
    found = costs(worn(), prices())

    assert sorted(label for line in found.lines for label in line.labels) == sorted(to_pay(worn()))
    assert all(not label.isdigit() for line in found.suspected for label in line.labels)
    assert found.without_price == ()


def test_the_lower_end_counts_a_part_once_the_upper_end_each_finding() -> None:
    found = costs(worn(), prices())
    places = {(line.part, line.place) for line in found.lines}

    assert len(places) < len(found.lines)
    assert (found.low, found.high) == (100.0 * len(places), 100.0 * len(found.lines))


def test_a_suspicion_is_listed_and_not_in_the_sum() -> None:
    bare = worn().model_copy(update={"causes": ()})
    found, without = costs(worn(), prices()), costs(bare, prices())

    assert found.suspected
    assert (found.low, found.high) == (without.low, without.high)


def test_a_price_for_the_rule_wins_over_the_size_of_the_job() -> None:
    rule = next(e.rule for e in worn().findings if e.label == to_pay(worn())[0])
    found = costs(worn(), prices(rules={rule: Price(Estimate(7, 7, 7), Estimate(2, 2, 2))}))
    line = next(line for line in found.lines if to_pay(worn())[0] in line.labels)

    assert (line.low, line.high, line.priced_by) == (200, 210, "rule")  # rounded outward to two figures
    assert {one.priced_by for one in found.lines} == {"rule", "size of job"}


def test_what_has_no_price_is_named() -> None:
    found = costs(worn(), prices(effort={}))

    assert set(found.without_price) >= set(to_pay(worn()))
    assert (found.low, found.high, found.lines) == (0, 0, ())


def test_a_machine_in_order_costs_nothing_that_is_known() -> None:
    found = costs(in_order(), prices(), "3 000 EUR")

    assert (found.low, found.high) == (0, 0)
    assert "excluding what was not looked at" in costs_sum(found)
    assert found.asking is not None
    assert (found.asking.low, found.asking.high) == (3000, 3000)


def test_what_is_left_of_the_price_asked_is_never_below_nought() -> None:
    high = costs(worn(), prices(), "5 000 EUR")
    low = costs(worn(), prices(), "1 EUR")

    assert high.asking is not None
    assert high.asking.low is not None
    assert high.asking.low <= 5000 - high.high
    assert low.asking is not None
    assert (low.asking.low, low.asking.high) == (0, 0)


def test_another_currency_is_not_compared() -> None:
    found = costs(worn(), prices(), "5 000 GBP")

    assert found.asking is not None
    assert found.asking.low is None
    assert "not compared" in " ".join(costs_notes(found))


estimates = st.lists(st.floats(0, 10_000), min_size=3, max_size=3).map(lambda found: Estimate(*sorted(found)))


@settings(deadline=None, max_examples=50)  # the machine may be busy
@given(estimates, estimates, estimates)
def test_a_range_holds_together_and_lies_within_all_at_their_ends(
    parts: Estimate, hours: Estimate, rate: Estimate
) -> None:
    found = costs(worn(), prices(rate=rate, effort=dict.fromkeys(EFFORTS, Price(parts, hours))))

    assert 0 <= found.low <= found.high
    assert found.high <= 1.1 * len(found.lines) * (parts.high + hours.high * rate.high) + 1
    assert found.low >= 0.89 * (parts.low + hours.low * rate.low) - 1
    assert money_range(found.low, found.high, "EUR").endswith(" EUR")


def test_without_prices_only_sizes_are_told() -> None:
    assert worn().costs is None
    assert sum(int(one.split()[0]) for one in sizes(worn()).removeprefix("Jobs by size: ").split(", ")) == len(
        to_pay(worn())
    )


@pytest.mark.parametrize(
    ("low", "high", "text"), [(5.5, 68, "5.50 to 68 EUR"), (1900, 4200, "1 900 to 4 200 EUR")]
)
def test_money_is_written_with_its_currency(low: float, high: float, text: str) -> None:
    assert money_range(low, high, "EUR") == text
