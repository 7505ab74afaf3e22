"""`inspector assess`: from a record to a verdict, and to a report when one is asked for."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from inspector.cli.common import input_faults, loaded_knowledge, refuse_targets, width

_READERS = ("buyer", "owner", "mechanic")
_LEVELS = ("stop", "repair", "plan", "watch")
_READER_OF = {"before purchase": "buyer", "after own service": "owner", "handover": "mechanic"}
_PAPERS = ("a4", "letter")
_UNITS = ("typed", "metric", "imperial")
_Command = TypeVar("_Command", bound=Callable[..., Any])


def _file(*names: str, text: str) -> Callable[[_Command], _Command]:
    return click.option(*names, type=click.Path(path_type=Path), metavar="FILE", help=text)


@click.command("assess")
@click.argument("record", type=click.Path(path_type=Path))
@_file("--pdf", "pdf_file", text="Write the report as PDF, with the record inside, for `inspector verify`.")
@_file("--html", "html_file", text="Write the report as one page for a phone or a screen.")
@_file("--ics", "ics_file", text="Write what comes due as a calendar file (iCalendar).")
@_file("--prices", "prices", text="Read your own price file and say what the findings may cost.")
@_file("--json", "json_file", text="Write everything as JSON.")
@click.option(
    "--for", "reader", type=click.Choice(_READERS), help="Who reads it. Default: from the record's purpose."
)
@click.option("--paper", type=click.Choice(_PAPERS), default="a4", help="Size of the paper. Default: a4.")
@click.option("--units", type=click.Choice(_UNITS), default="typed", help="Units to show beside the typed ones.")
@click.option("--no-attachment", is_flag=True, help="Leave the record out of the PDF; it cannot be verified then.")
@click.option(
    "--fail-at", type=click.Choice(_LEVELS), help="Exit with 1 when a finding is at this level or above."
)
def command(record: Path, reader: str | None, fail_at: str | None, **wanted: Any) -> None:
    """Read RECORD (YAML or JSON, a filled sheet, a zip of the page), judge it, print verdict and findings.

    Example: inspector assess my_bike.yaml --pdf report.pdf --for mechanic
    """
    from inspector.cli.judging import judged, priced
    from inspector.cli.reports import write_reports
    from inspector.reading.opening import opened_record
    from inspector.reporting.text import to_text

    known = loaded_knowledge()
    targets = [wanted[name] for name in wanted if name.endswith("_file")]
    refuse_targets(record, *targets)
    prices = wanted["prices"] and priced(wanted["prices"], known, targets)
    with input_faults(), opened_record(record, known) as (inspection, folder):
        assessment = judged(inspection, known, prices).model_copy(update={"shown_units": wanted["units"]})
        who = reader or _READER_OF[inspection.purpose]
        click.echo(to_text(assessment, who, width()))
        write_reports(assessment, who, record, folder, wanted, prices)
    if fail_at is not None:
        levels = {entry.level for entry in (*assessment.findings, *assessment.causes)}
        if levels & set(_LEVELS[: _LEVELS.index(fail_at) + 1]):
            raise SystemExit(1)
