"""The report as a tagged PDF (PDF/UA-1): same assessment, same bytes."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, date, datetime, time
from pathlib import Path
from typing import Any

from inspector.reporting.assets import fetcher
from inspector.reporting.files import write_whole
from inspector.reporting.html import to_paper
from inspector.weighing.assessment import Assessment

_STAMP = "SOURCE_DATE_EPOCH"


def write_pdf(assessment: Assessment, reader: str, path: Path, photo_folder: Path | None = None) -> None:
    """Write the report to `path`; the file is whole or as it was. Photos are named, not yet shown.

    Raises ValueError for an unknown reader and OSError if the file cannot be written.
    """
    write_whole(path, to_pdf(assessment, reader))


def to_pdf(assessment: Assessment, reader: str) -> bytes:
    """The bytes of the PDF. Raises ValueError for an unknown reader."""
    from weasyprint import HTML
    from weasyprint.text.fonts import FontConfiguration

    fonts = FontConfiguration()
    html = HTML(string=to_paper(assessment, reader), url_fetcher=fetcher(), base_url="asset:")
    document = html.render(font_config=fonts)
    _date(document.metadata, assessment.visit.date)
    with _stamped(assessment.visit.date):
        content: bytes = document.write_pdf(pdf_variant="pdf/ua-1", finisher=_links_on_paper)
    return content


@contextmanager
def _stamped(day: str) -> Iterator[None]:
    """Let fontTools, which writes the moment of saving into each font, write the day of the visit instead."""
    before = os.environ.get(_STAMP)
    moment = datetime.combine(date.fromisoformat(day), time(), UTC)
    os.environ[_STAMP] = str(max(int(moment.timestamp()), 0))
    try:
        yield
    finally:
        if before is None:
            del os.environ[_STAMP]
        else:
            os.environ[_STAMP] = before


def _links_on_paper(_document: Any, pdf: Any) -> None:
    """Mark every link as belonging to the print, too: readers else may treat it as hidden."""
    for entry in pdf.objects:
        if isinstance(entry, dict) and entry.get("Type") == "/Annot":
            entry["F"] = 4


def _date(metadata: Any, day: str) -> None:
    """The day of the visit, not the moment of printing, so that the same record gives the same bytes."""
    metadata.created = metadata.modified = day
