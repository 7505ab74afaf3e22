"""The report as a tagged PDF (PDF/UA-1): same assessment, same bytes."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import UTC, date, datetime, time
from pathlib import Path
from typing import Any

from inspector.knowledge.wording import words
from inspector.reporting.assets import fetcher
from inspector.reporting.carried import ATTACHED_NAME, Carried, to_bytes
from inspector.reporting.files import write_whole
from inspector.reporting.glyphs import replaced, without_glyph
from inspector.reporting.html import page_style, to_paper
from inspector.reporting.photos import gallery
from inspector.weighing.assessment import Assessment

_STAMP = "SOURCE_DATE_EPOCH"


def write_pdf(
    assessment: Assessment,
    reader: str,
    path: Path,
    photo_folder: Path | None = None,
    carried: Carried | None = None,
    size: str = "a4",
) -> None:
    """Write the report to `path`, with the photos that lie below `photo_folder`; the file is whole or as it was.

    Raises ValueError for an unknown reader or size of paper and OSError if the file cannot be written.
    """
    write_whole(path, to_pdf(assessment, reader, carried, size, photo_folder))


def to_pdf(
    assessment: Assessment,
    reader: str,
    carried: Carried | None = None,
    size: str = "a4",
    photo_folder: Path | None = None,
) -> bytes:
    """The bytes of the PDF, with what it carries. Raises ValueError for an unknown reader or size of paper."""
    photos = gallery(assessment, photo_folder)
    html = to_paper(assessment, reader, carried, size, photos)
    missing = without_glyph(html, page_style(size))
    if missing:
        html = replaced(to_paper(assessment, reader, carried, size, photos, missing), missing)
    return printed(html, assessment.visit.date, carried, photos.files)


def printed(
    html: str,
    day: str,
    carried: Carried | None = None,
    pictures: Mapping[str, bytes] | None = None,
    forms: bool = False,
) -> bytes:
    """A page of ours as a tagged PDF dated `day` (in ISO form), with `pictures` by their names behind `asset:`."""
    from weasyprint import HTML
    from weasyprint.text.fonts import FontConfiguration

    fonts = FontConfiguration()
    page = HTML(string=html, url_fetcher=fetcher(pictures), base_url="asset:")
    document = page.render(font_config=fonts, pdf_forms=forms)
    _date(document.metadata, day)
    attached = [_attachment(carried, day)] if carried else []
    with _stamped(day):
        content: bytes = document.write_pdf(
            pdf_variant="pdf/ua-1", finisher=_finished, attachments=attached, pdf_forms=forms
        )
    return content


def _attachment(carried: Carried, day: str) -> Any:
    from weasyprint import Attachment

    moment = datetime.combine(date.fromisoformat(day), time(), UTC)
    return Attachment(
        string=to_bytes(carried),
        name=ATTACHED_NAME,
        description=words()["carried"]["name_of_attachment"],
        created=moment,
        modified=moment,
        relationship="Source",
    )


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


def _finished(_document: Any, pdf: Any) -> None:
    """What WeasyPrint leaves out: links belong to the print, too, and a head cell says what it is the head of."""
    for entry in pdf.objects:
        if not isinstance(entry, dict):
            continue
        if entry.get("Type") == "/Annot":
            entry["F"] = 4
            _say_where_to(entry)
        elif entry.get("S") == "/TH":
            row = pdf.objects[_number(entry["P"])]
            entry["A"]["Scope"] = "/Column" if pdf.objects[_number(row["P"])]["S"] == "/THead" else "/Row"


def _say_where_to(annotation: Any) -> None:
    """Where a link leads to, in words for those who hear the page: WeasyPrint gives the bare name of the place."""
    from pydyf import String

    kind, _, name = annotation["Contents"].string.partition("-") if "Contents" in annotation else ("", "", "")
    if kind in words()["link"]:
        annotation["Contents"] = String(words()["link"][kind].format(name=name.replace("_", " ")))


def _number(reference: bytes) -> int:
    return int(reference.split()[0])


def _date(metadata: Any, day: str) -> None:
    """The day of the visit, not the moment of printing, so that the same record gives the same bytes."""
    metadata.created = metadata.modified = day
