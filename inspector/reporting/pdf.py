"""The report as a tagged PDF (PDF/UA-1): same assessment, same bytes."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from inspector.reporting.assets import fetcher
from inspector.reporting.files import write_whole
from inspector.reporting.html import to_paper
from inspector.weighing.assessment import Assessment


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
    content: bytes = document.write_pdf(pdf_variant="pdf/ua-1")
    return content


def _date(metadata: Any, day: str) -> None:
    """The day of the visit, not the moment of printing, so that the same record gives the same bytes."""
    metadata.created = metadata.modified = day
