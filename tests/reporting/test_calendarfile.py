"""The calendar file, read back: all-day events, one each, with UIDs that stay."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from icalendar import Calendar, Event

from inspector import assess, read
from inspector.reporting.calendarfile import to_calendar, write_calendar
from inspector.weighing.assessment import Assessment
from tests.records import assessed
from tests.reporting.cases import HOSTILE, in_order, nearly_empty, worn

ROOT = Path(__file__).resolve().parents[2]
SAMPLES = sorted((ROOT / "samples").glob("*/record.yaml"))


def events(assessment: Assessment) -> list[Any]:
    calendar = Calendar.from_ical(to_calendar(assessment))
    assert calendar.errors == []
    return [one for one in calendar.subcomponents if isinstance(one, Event)]


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.parent.name)
def test_every_event_is_whole_days_once_and_not_before_the_record(sample: Path) -> None:
    assessment = assess(read(sample))
    found = events(assessment)
    uids = [str(event["uid"]) for event in found]

    assert len(uids) == len(set(uids))
    dated = [entry for entry in assessment.due if entry.on or entry.expected or entry.overdue]
    assert len(found) == len(dated) + bool(assessment.due)
    for event in found:
        start, end = event["dtstart"].dt, event["dtend"].dt
        assert type(start) is date
        assert end - start == timedelta(days=1)
        assert start >= date.fromisoformat(assessment.visit.date)
        assert event["dtstamp"].dt.date() == date.fromisoformat(assessment.visit.date)
        assert event["summary"]


@pytest.mark.parametrize("sample", SAMPLES[:3], ids=lambda path: path.parent.name)
def test_lines_are_short_and_end_as_the_standard_says(sample: Path) -> None:
    raw = to_calendar(assess(read(sample)))
    lines = raw.split(b"\r\n")

    assert lines[0] == b"BEGIN:VCALENDAR"
    assert lines[-2:] == [b"END:VCALENDAR", b""]
    assert max(map(len, lines)) <= 75
    assert b"\n" not in b"".join(lines)
    assert to_calendar(assess(read(sample))) == raw


def _oil(day: str, **more: Any) -> Assessment:
    return assessed({"engine @ engine": {"oil_changed": day}}, **more)


def test_a_later_record_moves_the_event_and_adds_none() -> None:
    before, after = events(_oil("2025-08-01")), events(_oil("2026-05-20"))

    assert [event["uid"] for event in before] == [event["uid"] for event in after]
    assert before[0]["dtstart"].dt == date(2026, 8, 1)
    assert after[0]["dtstart"].dt == date(2027, 5, 20)
    assert all(new["sequence"] >= old["sequence"] for old, new in zip(before, after, strict=True))


def test_two_machines_do_not_share_an_event_and_no_uid_tells_the_frame_number() -> None:
    one = _oil("2025-08-01")
    vin = one.model_copy(update={"visit": one.visit.model_copy(update={"vin": "ABC12345678901234"})})

    assert {e["uid"] for e in events(one)}.isdisjoint(e["uid"] for e in events(vin))
    assert b"ABC12345678901234" not in to_calendar(vin)


def test_what_has_a_distance_and_no_date_stands_in_the_next_look() -> None:
    (event,) = events(assessed({"engine @ engine": {"oil_changed_at": "39 000 km"}}))

    assert event["dtstart"].dt == date(2027, 6, 1)
    assert "- at 47 000 km: engine, engine: Change oil and filter" in event["description"]


def test_an_overdue_thing_stands_on_the_day_of_the_record_and_says_so() -> None:
    first = events(_oil("2020-01-01"))[0]

    assert first["dtstart"].dt == date(2026, 6, 1)
    assert first["summary"].startswith("Overdue: ")
    assert "overdue since 1 January 2021" in first["description"]


def test_no_text_of_a_record_breaks_out_of_its_line() -> None:
    plain = _oil("2025-08-01")
    name = f"{HOSTILE}\r\nBEGIN:VALARM;,\\n"
    visit = plain.visit.model_copy(update={"name": name})
    found = events(plain.model_copy(update={"visit": visit}))

    assert len(found) == 2
    assert HOSTILE in found[0]["summary"]
    assert all(not event.subcomponents for event in found)


def test_nothing_due_gives_a_calendar_without_events(tmp_path: Path) -> None:
    assert events(nearly_empty()) == []
    write_calendar(nearly_empty(), tmp_path / "a.ics")
    assert Calendar.from_ical((tmp_path / "a.ics").read_bytes())["version"] == "2.0"
    assert events(worn())
    assert events(in_order())
