"""Letters that no font can show are named, never printed as boxes."""

from __future__ import annotations

import logging
from io import BytesIO

import pytest
from pypdf import PdfReader

from inspector.knowledge.wording import words
from inspector.reporting import pdf
from inspector.reporting.glyphs import own_letters, replaced, spelled, without_glyph
from inspector.reporting.html import page_style, to_html
from inspector.weighing.assessment import Assessment
from tests.reporting.cases import nearly_empty, squeezed, worn

NOBODY = "\ue123"  # for private use: no font of a system can be expected to show it
NOTES = ("前ブレーキが柔らかい", f"a {NOBODY} b", "🔧 end", "من فضلك", "brake ≥ 1.5 mm, Ωμ, Щ")


def noted(*remarks: str) -> Assessment:
    return worn().model_copy(update={"visit": worn().visit.model_copy(update={"remarks": remarks})})


def test_a_record_in_the_letters_of_our_font_asks_for_no_other() -> None:
    latin = "".join(
        chr(n) for n in (*range(0x20, 0x7F), *range(0xA1, 0x180), 0x394, 0x416, 0x2013, 0x201C, 0x2265)
    )

    assert {ord(letter) for letter in latin} <= own_letters()
    assert without_glyph(latin, page_style("a4")) == ()


def test_letters_without_a_glyph_are_found_and_those_with_one_are_not() -> None:
    found = without_glyph(f"Ab é {NOBODY} \u200d\ufe0f", page_style("a4"))

    assert found == (NOBODY,)


def test_a_sign_is_spelled_by_its_name_and_a_letter_by_its_number() -> None:
    assert spelled("🔧") == "[wrench, U+1F527]"
    assert spelled("前") == "[U+524D]"
    assert replaced("前 and 🔧 and é", "前🔧") == "[U+524D] and [wrench, U+1F527] and é"


def test_the_pdf_prints_no_box_and_names_what_it_could_not_show(caplog: pytest.LogCaptureFixture) -> None:
    with caplog.at_level(logging.WARNING, logger="weasyprint"):
        content = pdf.to_pdf(noted(*NOTES), "owner")
    text = squeezed("".join(page.extract_text() for page in PdfReader(BytesIO(content)).pages))

    assert [record.message for record in caplog.records if "notdef" in record.message] == []
    assert squeezed(f"a {spelled(NOBODY)} b") in text
    told = text[text.index(squeezed(words()["heading"]["spelled_out"])) :]
    assert spelled(NOBODY) in told
    assert "brake≥1.5mm,Ωμ,Щ" in text


def test_a_page_without_such_letters_says_nothing_of_it_and_the_screen_keeps_them() -> None:
    plain = PdfReader(BytesIO(pdf.to_pdf(nearly_empty(), "owner")))

    assert squeezed(words()["heading"]["spelled_out"]) not in squeezed(
        "".join(p.extract_text() for p in plain.pages)
    )
    for note in NOTES:
        assert note in to_html(noted(*NOTES), "owner")
