"""What comes due as a calendar file (iCalendar, RFC 5545) that calendar programs take in.

An entry keeps its UID from one record of a machine to the next, so that a new file moves it and adds none.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from typing import TYPE_CHECKING

from inspector.knowledge.wording import words
from inspector.reporting.due_text import day_text, due_what, due_when
from inspector.reporting.files import write_whole
from inspector.reporting.lines import printable
from inspector.weighing.assessment import Assessment, Visit
from inspector.weighing.upkeep import DueEntry

if TYPE_CHECKING:
    from icalendar import Event

_PRODUCT = "-//inspector//next due//EN"
_START = date(2000, 1, 1)


def write_calendar(assessment: Assessment, path: Path) -> None:
    """Write the calendar to `path`. Raises OSError."""
    write_whole(path, to_calendar(assessment))


def to_calendar(assessment: Assessment) -> bytes:
    """The calendar: all-day events, the same bytes for the same assessment."""
    from icalendar import Calendar

    visit, wording = assessment.visit, words()["due"]
    calendar = Calendar()
    calendar.add("prodid", _PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("method", "PUBLISH")
    calendar.add("x-wr-calname", wording["calendar"].format(machine=_called(visit)))
    undated = [entry for entry in assessment.due if _day(entry, visit) is None]
    for entry in assessment.due:
        day = _day(entry, visit)
        if day is not None:
            calendar.add_component(_event(entry, day, visit))
    if assessment.due:
        calendar.add_component(_next_look(undated, assessment))
    content: bytes = calendar.to_ical()
    return content


def _called(visit: Visit) -> str:
    """The machine in one line: a line end of its name would end a line of the calendar, too."""
    return " ".join(printable(visit.name or visit.kind).split())


def _day(entry: DueEntry, visit: Visit) -> date | None:
    """The day of the event: the sooner of the date and the month in which the distance is ridden."""
    if entry.overdue:
        return date.fromisoformat(visit.date)
    days = [date.fromisoformat(entry.on)] if entry.on else []
    if entry.expected:
        days.append(max(date.fromisoformat(f"{entry.expected}-01"), date.fromisoformat(visit.date)))
    return min(days, default=None)


def _event(entry: DueEntry, day: date, visit: Visit) -> Event:
    wording = words()["due"]
    what = wording["event"].format(
        machine=_called(visit), part=entry.part, place=entry.place, step=due_what(entry)
    )
    limit = wording["limit"].format(limit=entry.limit, origin=entry.limit_origin) if entry.limit else ""
    lines = [due_when(entry), limit, wording["said_by"].format(day=day_text(visit.date))]
    summary = wording["event_overdue"].format(event=what) if entry.overdue else what
    key = (entry.part, entry.place.split(", ")[0], entry.what, entry.kind)
    return _all_day(visit, key, day, summary, "\n".join(line for line in lines if line))


def _next_look(undated: list[DueEntry], assessment: Assessment) -> Event:
    """The end of the horizon, with everything that has a distance and no date."""
    visit, wording = assessment.visit, words()["due"]
    summary = wording["next_look"].format(machine=_called(visit))
    lines = list(_by_distance(undated))
    lines.append(wording["said_by"].format(day=day_text(visit.date)))
    return _all_day(visit, ("next look",), date.fromisoformat(visit.next_look), summary, "\n".join(lines))


def _by_distance(undated: list[DueEntry]) -> Iterator[str]:
    if undated:
        yield words()["due"]["by_distance"]
    for entry in undated:
        yield f"- {due_when(entry)}: {entry.part}, {entry.place}: {due_what(entry)}"


def _all_day(visit: Visit, key: tuple[str, ...], day: date, summary: str, description: str) -> Event:
    from icalendar import Event

    seen = date.fromisoformat(visit.date)
    moment = datetime.combine(seen, time(), UTC)
    event = Event()
    event.add("uid", _uid(visit, key))
    event.add("dtstamp", moment)
    event.add("last-modified", moment)
    event.add("sequence", max((seen - _START).days, 0))  # a later record wins over an earlier one
    event.add("dtstart", day)
    if day < date.max:
        event.add("dtend", day + timedelta(days=1))
    event.add("summary", summary)
    event.add("description", description)
    event.add("transp", "TRANSPARENT")
    return event


def _uid(visit: Visit, key: tuple[str, ...]) -> str:
    """Who the machine is and what is due, as one figure that tells nothing about either."""
    text = "\n".join((visit.vin or visit.name or visit.kind, *key))
    return f"{hashlib.sha256(text.encode()).hexdigest()[:32]}@inspector"
