"""The report as one HTML file: whole, nothing fetched, every section linked, and right on a phone."""

from __future__ import annotations

import base64
import io
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
from PIL import Image

from inspector.reporting.htmlfile import html_file, write_html
from inspector.reporting.words import READERS, verdict_sentence
from tests.reporting.cases import hostile, in_order, nearly_empty, worn
from tests.reporting.test_photos import camera_photo, named

CASES = {"worn": worn, "nearly empty": nearly_empty, "in order": in_order, "hostile": hostile}


class _Page(HTMLParser):
    """Collects headings, the links inside the page, and every address."""

    def __init__(self) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.links: list[str] = []
        self.addresses: list[str] = []
        self.tags: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        named = dict(attrs)
        self.tags.append(tag)
        self.ids += [named["id"] or ""] if "id" in named else []
        for name in ("href", "src", "data", "poster", "action"):
            if name in named:
                (self.links if (named[name] or "").startswith("#") else self.addresses).append(named[name] or "")


def parsed(page: str) -> _Page:
    found = _Page()
    found.feed(page)
    return found


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("case", CASES)
def test_it_needs_nothing_from_outside_and_every_link_leads_somewhere(case: str, reader: str) -> None:
    page = parsed(html_file(CASES[case](), reader))

    assert page.addresses == []
    assert not {"link", "script", "iframe", "object", "img", "form"} & set(page.tags)
    assert len(page.ids) == len(set(page.ids))
    assert {link.removeprefix("#") for link in page.links} <= set(page.ids)
    sections = [one for one in page.ids if one.startswith("part-")]
    assert len(sections) == page.tags.count("h2") > 3
    assert [f"#{one}" for one in sections] == [one for one in page.links if one.startswith("#part-")]


def test_the_verdict_comes_before_the_list_of_sections() -> None:
    page = html_file(worn(), "owner")

    assert page.index(verdict_sentence(worn())) < page.index('<nav class="contents"') < page.index('id="part-1"')


def test_no_font_and_no_style_sheet_is_asked_for() -> None:
    page = html_file(worn(), "buyer")

    assert not re.search(r"url\(|@import|@font-face", page)
    assert "width=device-width" in page


def test_another_reader_is_refused_and_leaves_no_file(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="no reader"):
        write_html(worn(), "seller", tmp_path / "page.html")
    assert list(tmp_path.iterdir()) == []


def test_photos_lie_inside_the_page_without_what_the_camera_hid(tmp_path: Path) -> None:
    camera_photo(tmp_path / "a.jpg", orientation=6)
    page = html_file(named("a.jpg"), "owner", tmp_path)
    addresses = [one for one in parsed(page).addresses if one]

    assert len(addresses) == 1
    head, _, content = addresses[0].partition(",")
    assert head == "data:image/jpeg;base64"
    with Image.open(io.BytesIO(base64.b64decode(content))) as picture:
        picture.load()
        assert picture.height > picture.width
        assert not picture.getexif()
    assert "img-src data:" in page


def test_a_photo_that_is_not_there_is_told(tmp_path: Path) -> None:
    page = html_file(named("a.jpg"), "owner", tmp_path)

    assert parsed(page).addresses == []
    assert "a.jpg" in page
