"""Write the files that `inspector assess` is asked for."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from inspector.cli.common import write

if TYPE_CHECKING:
    from inspector.cli.judging import Priced
    from inspector.reporting.carried import Carried
    from inspector.weighing.assessment import Assessment


def write_reports(
    assessment: Assessment,
    reader: str,
    record: Path,
    folder: Path,
    wanted: dict[str, Any],
    prices: Priced | None = None,
) -> None:
    """Write every report whose file is named in `wanted`; exits with 2 when one cannot be written."""
    if wanted["json_file"] is not None:
        from inspector.reporting.jsonfile import write_json

        write(wanted["json_file"], lambda target: write_json(assessment, target))
    if wanted["html_file"] is not None:
        from inspector.reporting.htmlfile import write_html

        write(wanted["html_file"], lambda target: write_html(assessment, reader, target, folder))
    if wanted["ics_file"] is not None:
        from inspector.reporting.calendarfile import write_calendar

        write(wanted["ics_file"], lambda target: write_calendar(assessment, target))
    if wanted["pdf_file"] is not None:
        from inspector.reporting.pdf import write_pdf

        inside = None if wanted["no_attachment"] else _carried(assessment, reader, record, prices)
        size = wanted["paper"]
        write(wanted["pdf_file"], lambda target: write_pdf(assessment, reader, target, folder, inside, size))


def _carried(assessment: Assessment, reader: str, record: Path, prices: Priced | None) -> Carried | None:
    from inspector.reading.record_text import record_text
    from inspector.reporting.carried import carried_text, make_carried

    text = record_text(record)
    if text is None:
        click.echo("The record came through a pipe: the PDF does not carry it and cannot be verified.", err=True)
        return None
    inside = carried_text(prices.name, prices.text) if prices else None
    return make_carried(assessment, reader, carried_text(record.name, text), inside)
