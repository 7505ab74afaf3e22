"""What comes due, in words: when, and what to do."""

from __future__ import annotations

from datetime import date

from inspector.knowledge.wording import words
from inspector.reporting.lines import bullet, heading
from inspector.weighing.assessment import Assessment
from inspector.weighing.upkeep import DueEntry

_MOST_LINES = 12


def day_text(day: str) -> str:
    """A day in ISO form as people write it."""
    read = date.fromisoformat(day)
    return f"{read.day} {month_text(day[:7])}"


def month_text(month: str) -> str:
    """A month in ISO form as people write it."""
    year, number = month.split("-")
    return f"{words()['months']['names'][int(number) - 1]} {int(year)}"


def due_when(entry: DueEntry) -> str:
    """By which date or at which reading; whichever is reached first."""
    wording, on, at = words()["due"], day_text(entry.on) if entry.on else None, entry.at
    if entry.overdue:
        key = "overdue_on" if on else "overdue_at" if at else "overdue"
        return str(wording[key].format(on=on, at=at))
    if on and at:
        text = wording["on_or_at"].format(on=on, at=at)
    elif on:
        text = wording["on"].format(on=on)
    else:
        text = wording["until" if entry.kind == "gently until" else "at"].format(at=at)
    if entry.expected:
        month = wording["month_about"].format(month=month_text(entry.expected))
        text = wording["expected"].format(when=text, month=month)
    return str(text)


def due_what(entry: DueEntry) -> str:
    """What to do, and between which readings a limit of wear is probably reached."""
    wording = words()["due"]
    texts = [entry.step or wording["measure_again"]]
    if entry.between:
        texts.append(wording["between"].format(low=entry.between[0], high=entry.between[1]))
    return " ".join(texts)


def due_lines(assessment: Assessment, width: int) -> list[str]:
    """The next things that come due, for a terminal."""
    if not assessment.due:
        return []
    lines = heading(words()["heading"]["due"], width)
    for entry in assessment.due[:_MOST_LINES]:
        lines += bullet(f"{entry.part}, {entry.place}, {due_when(entry)}: {due_what(entry)}", width)
    if len(assessment.due) > _MOST_LINES:
        more = words()["text"]["more_shown"].format(number=len(assessment.due) - _MOST_LINES)
        lines += bullet(more, width)
    return lines
