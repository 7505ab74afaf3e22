"""What comes next: counted from noted days and readings only, the next limit chosen, two bounds in one line."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from inspector.weighing.coming import add_months
from inspector.weighing.upkeep import DueEntry
from tests.records import assessed

FAR = date(2500, 1, 1)


def due(part: str, looks: dict[str, dict[str, Any]], **more: Any) -> list[DueEntry]:
    return [entry for entry in assessed(looks, **more).due if entry.part == part]


@given(st.dates(date(1950, 1, 1), FAR), st.integers(0, 600))
def test_months_are_added_as_the_calendar_counts_them(day: date, months: int) -> None:
    assert add_months(day, float(months)) == day + relativedelta(months=months)


@given(st.dates(date(1950, 1, 1), FAR), st.floats(0, 600))
def test_parts_of_a_month_lie_between_the_whole_ones(day: date, months: float) -> None:
    whole = int(months)
    assert add_months(day, float(whole)) <= add_months(day, months) <= day + relativedelta(months=whole, days=31)


def test_a_day_no_calendar_has_is_not_reached() -> None:
    assert add_months(date(9999, 6, 1), 12.0) == date.max


# the record of `assessed` is of 2026-06-01 at 40 000 km


@pytest.mark.parametrize(
    ("oil", "on", "at", "first", "overdue"),
    [
        ({"oil_changed": "2025-07-10"}, "2026-07-10", None, None, False),
        ({"oil_changed_at": "33 000 km"}, None, "41 000 km", None, False),
        (
            {"oil_changed": "2025-07-10", "oil_changed_at": "33 000 km"},
            "2026-07-10",
            "41 000 km",
            "whichever comes first",
            False,
        ),
        ({"oil_changed": "2025-05-31", "oil_changed_at": "39 000 km"}, "2026-05-31", "47 000 km", None, True),
        ({"oil_changed": "2026-05-01", "oil_changed_at": "32 000 km"}, "2027-05-01", "40 000 km", None, True),
        ({"oil_changed": "2026-05-01", "oil_changed_at": "unknown"}, "2027-05-01", None, None, False),
    ],
)
def test_engine_oil_is_due_by_date_or_distance(
    oil: dict[str, str], on: str | None, at: str | None, first: str | None, overdue: bool
) -> None:
    (entry,) = [one for one in due("engine", {"engine @ engine": oil}) if one.what == "oil_changed"]

    assert (entry.on, entry.at, entry.overdue) == (on, at, overdue)
    assert entry.first == first or overdue
    assert entry.step == "Change oil and filter and keep the bill."


def test_nothing_is_counted_from_what_nobody_noted() -> None:
    unknown = {"engine @ engine": {"oil_changed": "unknown"}, "tyre @ front": {"cracks": "none"}}
    assert assessed(unknown).due == ()


def test_the_manuals_interval_wins_over_the_general_one() -> None:
    own = {"engine @ engine": {"oil_age": "at most 6 months (manual)"}}
    (entry,) = due("engine", {"engine @ engine": {"oil_changed": "2026-05-01"}}, limits=own)

    assert entry.on == "2026-11-01"
    assert entry.limit_origin == "the machine's manual"


@pytest.mark.parametrize(
    ("code", "years", "overdue"), [("2424", 7, False), ("2419", 7, False), ("2418", 7, True), ("2414", 10, True)]
)
def test_of_several_ages_the_next_one_counts_or_the_last_one_passed(code: str, years: int, overdue: bool) -> None:
    (entry,) = due("tyre", {"tyre @ rear": {"date_code": code}})

    assert entry.limit == f"at most {years} years"
    assert entry.overdue == overdue
    assert entry.on is not None
    assert entry.on.startswith(str(2000 + int(code[2:]) + years))


@pytest.mark.parametrize(("done", "expected"), [("no", ["40 020 km"]), ("yes", [])])
def test_a_second_look_that_was_made_is_not_due(done: str, expected: list[str]) -> None:
    looks = {"machine @ whole machine": {"worked_at": "39 970 km", "second_look_done": done}}
    entries = due("machine", looks, purpose="after own service", **{"work done": ["wheel @ front"]})

    assert [entry.at for entry in entries] == expected


@pytest.mark.parametrize(("fitted", "until"), [("39 900 km", ["40 100 km"]), ("39 000 km", [])])
def test_a_new_tyre_is_ridden_gently_until_its_distance(fitted: str, until: list[str]) -> None:
    entries = due("tyre", {"tyre @ rear": {"fitted_at": fitted}})

    assert [entry.at for entry in entries if entry.kind == "gently until"] == until


def _pads(earlier: list[dict[str, Any]], value: str = "3.0 mm") -> dict[str, dict[str, Any]]:
    thickness = {"value": value, "tool": "caliper", **({"earlier": earlier} if earlier else {})}
    return {"brake pad @ front left inner": {"friction_material_thickness": thickness}}


def test_wear_is_measured_again_before_its_limit_with_a_month_when_dates_tell_the_pace() -> None:
    earlier = [{"value": "4.4 mm", "tool": "caliper", "odometer": "30 000 km", "date": "2025-06-01"}]
    (entry,) = due("brake pad", _pads(earlier))

    assert entry.kind == "measure again"
    assert entry.at is not None
    assert entry.expected is not None
    low, high = (int(end.removesuffix(" km").replace(" ", "")) for end in entry.between)
    at = int(entry.at.removesuffix(" km").replace(" ", ""))
    assert 40_000 < at <= low < high
    months = (at - 40_000) / (10_000 / 12)  # 10 000 km in the last twelve months
    assert entry.expected == add_months(date(2026, 6, 1), int(months)).isoformat()[:7]


def test_one_reading_gives_a_distance_to_look_again_and_no_range() -> None:
    (entry,) = due("brake pad", _pads([]))

    assert (entry.between, entry.expected) == ((), None)
    assert entry.at is not None


def test_what_is_worn_out_is_not_measured_again() -> None:
    assert due("brake pad", _pads([], "0.8 mm")) == []


def test_alike_places_share_a_line_and_overdue_comes_first() -> None:
    sides = ("left inner", "left outer")
    pads = {f"brake pad @ front {side}": {"friction_material_thickness": "3.0 mm"} for side in sides}
    entries = assessed({**pads, "engine @ engine": {"oil_changed": "2020-01-01"}}).due

    assert [entry.overdue for entry in entries] == [True, False]
    assert entries[1].place == "front left inner, front left outer"


def test_the_day_of_the_next_look_is_the_end_of_the_horizon() -> None:
    assert assessed({}).visit.next_look == "2027-06-01"
