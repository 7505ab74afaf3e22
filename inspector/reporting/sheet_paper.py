"""The blank sheet as a PDF with fields: to be filled in with a pencil, or on a screen and read back."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from inspector.knowledge.library import Knowledge
from inspector.knowledge.wording import words
from inspector.reading.sheet_fields import field_name
from inspector.reporting.files import write_whole
from inspector.reporting.form_font import form_font
from inspector.reporting.html import environment
from inspector.reporting.pdf import printed
from inspector.reporting.sheet_plan import Plan

# section of the record, heading, how wide its box is
_HEAD = (
    ("machine", "kind", "half"),
    ("inspection", "purpose", "half"),
    ("machine", "name", "half"),
    ("machine", "vin", "half"),
    ("machine", "odometer", "quarter"),
    ("machine", "year", "quarter"),
    ("inspection", "date", "quarter"),
    ("inspection", "country", "quarter"),
    ("inspection", "request", "whole"),
)


def write_sheet(plan: Plan, knowledge: Knowledge, path: Path) -> None:
    """Write the sheet to `path`; the file is whole or as it was. Raises OSError."""
    write_whole(path, sheet_pdf(plan, knowledge))


def sheet_pdf(plan: Plan, knowledge: Knowledge) -> bytes:
    """The bytes of the PDF, on one day always the same.

    No PDF/A: that forbids fields whose looks the reading program draws.
    """
    day = date.today().isoformat()
    return printed(sheet_html(plan, knowledge), day, pictures={"form.ttf": form_font()}, forms=True)


def sheet_html(plan: Plan, knowledge: Knowledge) -> str:
    """The sheet as the HTML that the PDF is drawn from."""
    called = knowledge.machines[plan.kind].called
    return (
        environment()
        .get_template("sheet.html")
        .render(
            plan=plan,
            w=words(),
            machine=called,
            head=_HEAD,
            given={"kind": called, "purpose": plan.purpose},
            total=total(plan),
            left_out=left_out(plan),
            field=field_name,
            minutes=minutes,
            clock=clock,
        )
    )


def clock(start: float, end: float) -> str:
    """From which minute to which a stop takes."""
    first, last = round(start), round(end)
    text: str = words()["sheet"]["clock"]
    return text.format(start=first, end=max(last, first + 1))


def total(plan: Plan) -> str:
    """How much the sheet asks for."""
    text: str = words()["sheet"]["total"]
    return text.format(looks=len(plan.questions), stops=len(plan.stations), time=duration(plan.minutes))


def duration(number: float) -> str:
    """Minutes up to two hours, then hours."""
    t = words()["sheet"]
    whole = max(1, round(number))
    if whole > 120:
        return str(t["hours_many"]).format(hours=round(whole / 60))
    return str(t["minutes_one"]) if whole == 1 else str(t["minutes_many"]).format(minutes=whole)


def left_out(plan: Plan) -> str:
    """How much more the full sheet asks for."""
    key = "left_out_one" if plan.left_out == 1 else "left_out_many"
    text: str = words()["sheet"][key]
    return text.format(number=plan.left_out) if plan.left_out else ""


def minutes(number: float) -> str:
    """Minutes in words, without false precision."""
    t = words()["sheet"]
    if number < 0.4:
        return str(t["minutes_less"])
    if number < 0.7:
        return str(t["minutes_half"])
    whole = round(number)
    return str(t["minutes_one"]) if whole == 1 else str(t["minutes_many"]).format(minutes=whole)
