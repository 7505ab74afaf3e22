"""The report as a real PDF, read back: content, tags, language, fonts, same bytes, and nothing fetched."""

from __future__ import annotations

import logging
import os
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from inspector.knowledge.wording import words
from inspector.reporting import pdf
from inspector.reporting.assets import assets, fetcher
from inspector.reporting.html import to_paper
from inspector.reporting.words import READERS, verdict_sentence
from inspector.weighing.assessment import Assessment
from tests.reporting.cases import HOSTILE, hostile, in_order, nearly_empty, squeezed, worn

CASES = {"worn": worn, "nearly empty": nearly_empty, "in order": in_order, "hostile": hostile}


@cache
def written(case: str, reader: str) -> bytes:
    return pdf.to_pdf(CASES[case](), reader)


@pytest.fixture
def read(tmp_path: Path) -> Any:
    def of(case: str, reader: str) -> PdfReader:
        path = tmp_path / "report.pdf"
        path.write_bytes(written(case, reader))
        return PdfReader(path)

    return of


def text_of(reader: PdfReader) -> str:
    return squeezed("".join(page.extract_text() for page in reader.pages))


def structure(node: Any) -> Iterator[DictionaryObject]:
    """Every element of the tag tree."""
    node = node.get_object()
    if isinstance(node, list):
        for one in node:
            yield from structure(one)
    elif isinstance(node, DictionaryObject):
        yield node
        if "/K" in node:
            yield from structure(node["/K"])


def titles(outline: list[Any]) -> Iterator[str]:
    for one in outline:
        if isinstance(one, list):
            yield from titles(one)
        else:
            yield one.title


@pytest.mark.parametrize("reader", READERS)
def test_the_pdf_says_the_verdict_and_every_finding_in_order(read: Any, reader: str) -> None:
    document = read("worn", reader)
    text = text_of(document)

    assert squeezed(verdict_sentence(worn())) in squeezed(document.pages[0].extract_text())
    start = text.index(squeezed(words()["level"]["stop"] + "." + words()["level_means"]["stop"]))
    assert text.index(squeezed(words()["heading"]["findings"])) < start
    entries = (*worn().findings, *worn().causes)
    heads = [squeezed(entry.title + entry.part.capitalize() + ",") for entry in worn().findings]
    places = [text.index(head, start) for head in heads]
    assert places == sorted(places)
    for entry in entries:
        assert squeezed(entry.says) in text
    outline = [" ".join(title.split()) for title in titles(document.outline)]
    named = [f"{entry.label} {entry.title}" for entry in entries]
    assert [title for title in outline if title in named] == named


@pytest.mark.parametrize("reader", READERS)
def test_the_first_page_is_followed_by_the_findings_not_by_an_overflow(read: Any, reader: str) -> None:
    pages = [squeezed(page.extract_text()) for page in read("worn", reader).pages]
    heading = squeezed(words()["heading"]["findings"])
    first_band = squeezed(words()["level"]["stop"] + "." + words()["level_means"]["stop"])
    starts = [heading in page and first_band in page for page in pages]

    assert starts.index(True) == 1


@pytest.mark.parametrize("case", CASES)
def test_the_pdf_has_title_language_tags_and_page_numbers(read: Any, case: str) -> None:
    document = read(case, "mechanic")
    root = document.trailer["/Root"]

    assert root["/Lang"] == "en-GB"
    assert root["/MarkInfo"]["/Marked"]
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert document.metadata is not None
    assert document.metadata.title == f"Handed to the workshop: {_short(CASES[case]())}, 1 June 2026"
    assert document.metadata["/CreationDate"] == "D:20260601"
    assert b"pdfuaid:part" in root["/Metadata"].get_object().get_data()
    total = len(document.pages)
    for number, page in enumerate(document.pages, 1):
        assert squeezed(f"page {number} of {total}") in squeezed(page.extract_text())


def _short(assessment: Assessment) -> str:
    name = " ".join((assessment.visit.name or assessment.visit.kind).split())
    return name if len(name) <= 56 else name[:55].rstrip() + "…"


def test_every_picture_has_words_and_every_table_head_cell_is_tagged(read: Any) -> None:
    elements = list(structure(read("worn", "buyer").trailer["/Root"]["/StructTreeRoot"]["/K"]))
    figures = [one for one in elements if one.get("/S") == "/Figure"]
    kinds = {str(one.get("/S")) for one in elements}

    assert len(figures) > 20
    assert all(str(one.get("/Alt", "")).strip() for one in figures)
    assert {"/H1", "/H2", "/H3", "/H4", "/Table", "/TH", "/TD", "/L", "/LI", "/Link"} <= kinds


def test_every_link_lies_in_a_link_tag_and_every_list_holds_only_items(read: Any) -> None:
    document = read("worn", "owner")
    elements = list(structure(document.trailer["/Root"]["/StructTreeRoot"]["/K"]))
    tagged = [
        child
        for one in elements
        if one.get("/S") == "/Link"
        for child in one["/K"]
        if not isinstance(child, int) and child.get_object().get("/Type") == "/OBJR"
    ]
    links = [a.get_object() for page in document.pages for a in page.get("/Annots", [])]

    assert len(tagged) == len(links) > 10
    assert all(link["/F"] == 4 for link in links)  # also on paper
    for one in elements:
        if one.get("/S") == "/L":
            assert {child.get_object()["/S"] for child in one["/K"]} == {"/LI"}


@pytest.mark.parametrize("case", ["worn", "hostile"])
def test_every_font_is_embedded_and_the_text_is_set_in_ours(read: Any, case: str) -> None:
    fonts: dict[str, bool] = {}
    for page in read(case, "mechanic").pages:
        for font in page["/Resources"]["/Font"].values():
            inner = font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()
            fonts[str(inner["/FontName"])] = any(key.startswith("/FontFile") for key in inner)

    assert all(fonts.values())
    ours = {name.split("+")[-1] for name in fonts if "Report" in name}
    assert {"Report", "Report-Bold", "Report-Semi-Bold", "Report-Italic"} <= ours


@pytest.mark.parametrize("case", ["worn", "hostile"])
def test_the_same_assessment_gives_the_same_bytes(case: str) -> None:
    assert pdf.to_pdf(CASES[case](), "mechanic") == written(case, "mechanic")


def test_hostile_text_fetches_nothing_attaches_nothing_and_links_nowhere(
    monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture, tmp_path: Path
) -> None:
    asked: list[str] = []
    plain = fetcher()

    class Recorder(type(plain)):  # type: ignore[misc]
        def fetch(self, url: str, headers: Any = None) -> Any:
            asked.append(url)
            return super().fetch(url, headers)

    monkeypatch.setattr(pdf, "fetcher", Recorder)
    path = tmp_path / "report.pdf"
    with caplog.at_level(logging.WARNING, logger="weasyprint"):
        pdf.write_pdf(hostile(), "mechanic", path)

    document = PdfReader(path)
    assert set(asked) == {f"asset:{name}" for name in assets()}
    assert dict(document.attachments) == {}
    links = [a.get_object() for page in document.pages for a in page.get("/Annots", [])]
    assert links
    assert all("/A" not in link or link["/A"]["/S"] == "/GoTo" for link in links)
    assert squeezed(HOSTILE) in text_of(document)
    assert [r.message for r in caplog.records if "Failed to load" in r.message] == []


def test_letters_are_laid_out_as_wide_as_their_weight() -> None:
    from weasyprint import HTML
    from weasyprint.text.fonts import FontConfiguration

    visit = nearly_empty().visit.model_copy(update={"name": "2019", "year": 2019})
    named = nearly_empty().model_copy(update={"visit": visit})  # once as the name, once as the year
    html = HTML(string=to_paper(named, "buyer"), url_fetcher=fetcher(), base_url="asset:")
    first = html.render(font_config=FontConfiguration()).pages[0]._page_box
    widths = {
        box.style["font_weight"]: box.width / box.style["font_size"]
        for box in first.descendants()
        if getattr(box, "text", None) == "2019"
    }

    assert widths[700] > 1.02 * widths[600]


def test_long_text_without_blanks_stays_on_the_paper(read: Any) -> None:
    edge = 595.3 - 18 / 25.4 * 72
    found: list[float] = []

    def visit(text: str, matrix: list[float], line: list[float], font: Any, size: float) -> None:
        if "xxxx" in text:
            width = 0.38 * abs(size * line[0] * matrix[0])  # of an x, a little less than it is
            found.append(line[4] * matrix[0] + matrix[4] + len(text.strip()) * width)

    for page in read("hostile", "mechanic").pages:
        page.extract_text(visitor_text=visit)
    assert len(found) > 20
    assert max(found) < edge


def test_a_failed_report_leaves_the_old_file_and_no_litter(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "report.pdf"
    path.write_bytes(b"old")

    def broken(source: str, target: str) -> None:
        raise OSError("the disk is gone")

    monkeypatch.setattr(os, "replace", broken)
    with pytest.raises(OSError, match="the disk is gone"):
        pdf.write_pdf(nearly_empty(), "buyer", path)

    assert path.read_bytes() == b"old"
    assert [entry.name for entry in tmp_path.iterdir()] == ["report.pdf"]
