"""The report as HTML: what stands on the page for each reader, and that hostile text stays text."""

from __future__ import annotations

import re
import subprocess
import sys
from html.parser import HTMLParser

import pytest

from inspector.knowledge.library import knowledge
from inspector.knowledge.wording import words
from inspector.reporting.html import to_html
from inspector.reporting.page import make_page
from inspector.reporting.words import READERS, verdict_more, verdict_sentence
from inspector.weighing.assessment import LEVELS
from tests.reporting.cases import HOSTILE, hostile, in_order, nearly_empty, worn

CASES = {"worn": worn, "nearly empty": nearly_empty, "in order": in_order}
ADDRESSES = {"src", "href", "data", "action", "poster", "background", "srcset", "cite"}
CLOSED = {"meta", "br", "rect", "path", "circle", "link", "img"}


class Reader(HTMLParser):
    """Text by heading, tags, and every address of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.addresses: list[str] = []
        self.open: list[str] = []
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.addresses += [value or "" for name, value in attrs if name in ADDRESSES]
        if tag not in CLOSED:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag, "a tag is closed that is not open"

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] not in ("style", "title"):
            self.text += data

    @property
    def words(self) -> str:
        """The text with single spaces."""
        return " ".join(self.text.split())


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("case", CASES)
def test_a_page_says_its_verdict_and_every_finding_and_closes_every_tag(case: str, reader: str) -> None:
    assessment = CASES[case]()

    page = Reader(to_html(assessment, reader))

    assert page.open == []
    for text in (verdict_sentence(assessment), *verdict_more(assessment)):
        assert text in page.words
    for entry in (*assessment.findings, *assessment.causes):
        assert f"{entry.label} {entry.title}" in page.words
        assert entry.says in page.words
        assert entry.confirm in page.words


def test_the_worn_machine_has_every_level_and_causes() -> None:
    levels = {entry.level for entry in worn().findings}

    assert levels == {"stop", "repair", "plan", "watch"}
    assert worn().causes


@pytest.mark.parametrize("reader", READERS)
def test_findings_stand_worst_first_and_causes_after_them_as_suspected(reader: str) -> None:
    text = Reader(to_html(worn(), reader)).words
    text = text[text.rindex(words()["heading"]["findings"]) :]
    bands = [f"{words()['level'][level]}. {words()['level_means'][level]}" for level in LEVELS[:4]]

    places = [text.index(band) for band in bands]
    causes = text.index(words()["heading"]["causes"])
    assert places == sorted(places)
    assert causes > places[-1]
    for entry in worn().causes:
        head = text.index(f"{entry.label} {entry.title}")
        assert head > causes
        assert text[head : head + 200].count(f"Suspected, {entry.certainty}.") == 1


def test_what_was_seen_stands_apart_from_what_follows() -> None:
    page = to_html(worn(), "owner")
    for part in re.findall(r'<article class="(?:finding|cause)".*?</article>', page, re.DOTALL):
        facts = re.findall(r'<div class="facts">(.*?)</div>', part, re.DOTALL)
        assert len(facts) <= 1
        assert all("follows" not in fact and "What may happen" not in fact for fact in facts)
    for entry in worn().findings:
        for one in entry.evidence:
            assert f'<span class="how">{words()["kind"][one.kind].capitalize()}</span>' in page


@pytest.mark.parametrize("reader", READERS)
def test_hostile_text_is_shown_as_text_and_asks_for_nothing(reader: str) -> None:
    page = Reader(to_html(hostile(), reader))

    assert not {"img", "link", "object", "script", "b href"} & set(page.tags)
    assert [a for a in page.addresses if not a.startswith("#")] == []
    assert HOSTILE in page.words
    assert "1337" not in page.words
    assert "{{ 7 * 191 }} {x}" in page.words


@pytest.mark.parametrize("case", CASES)
def test_a_page_names_no_outside_address(case: str) -> None:
    page = to_html(CASES[case](), "buyer")

    assert re.findall(r"https?:|file:|asset:|url\(|@import", page) == []


def test_an_unknown_reader_is_refused_with_the_allowed_ones() -> None:
    with pytest.raises(ValueError, match="Allowed: buyer, owner, mechanic"):
        to_html(worn(), "seller")


def test_two_hundred_unseen_looks_take_few_lines() -> None:
    page = make_page(nearly_empty(), "buyer")

    assert len(nearly_empty().unseen) > 150
    lines = len(page.unseen_critical) + len(page.unseen_other)
    assert lines < len(nearly_empty().unseen) / 4
    shown = [
        (group.part, place, entry.name)
        for group in (*page.unseen_critical, *page.unseen_other)
        for place in group.places
        for entry in group.entries
    ]
    assert sorted(shown) == sorted((e.part, e.place, e.name) for e in nearly_empty().unseen)


def test_an_invented_record_says_so_and_another_does_not() -> None:
    note = words()["text"]["invented"]

    assert note in to_html(worn(), "buyer")
    assert note not in to_html(nearly_empty(), "buyer")


def test_the_whole_frame_number_stands_only_on_the_buyers_page() -> None:
    visit = worn().visit.model_copy(update={"vin": "ABC45678901234567"})
    assessment = worn().model_copy(update={"visit": visit})

    assert "ABC45678901234567" in to_html(assessment, "buyer")
    for reader in ("owner", "mechanic"):
        page = to_html(assessment, reader)
        assert "ABC45678901234567" not in page
        assert "234567" in page


def test_every_source_has_its_number_at_the_finding_and_its_standing_in_the_list() -> None:
    text = Reader(to_html(worn(), "mechanic")).words
    for entry in worn().findings:
        for cited in entry.sources:
            known = words()["known"][cited.known]
            listed = re.search(
                rf"\[(\d+)\] {re.escape(cited.title)} {words()['standing'][cited.standing]}\.", text
            )
            assert listed is not None
            assert f"[{listed[1]}] {cited.at} ({known})" in text
            assert f"{cited.at}: {cited.gives} ({known}; for " in text


def test_the_reports_never_call_anything_safe() -> None:
    known = knowledge()
    printed = [str(words()), *(f"{c.title} {c.text}" for c in known.cautions.values())]
    printed += [f"{rule.title} {rule.says} {rule.means}" for rule in known.rules.values()]

    assert [text for text in printed if re.search(r"\bsafe(ly)?\b", text, re.IGNORECASE)] == []


def test_nothing_heavy_is_loaded_before_a_report_is_made() -> None:
    code = (
        "import sys, inspector.reporting.html, inspector.reporting.pdf;"
        "print([m for m in ('weasyprint', 'jinja2', 'markupsafe', 'pandas') if m in sys.modules])"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert run.stdout.strip() == "[]"


def test_every_forecast_is_printed_with_its_value() -> None:
    first, *others = worn().measurements
    told = first.model_copy(update={"forecast": "Measure again after 900 km."})
    text = Reader(to_html(worn().model_copy(update={"measurements": (told, *others)}), "owner")).words

    assert words()["heading"]["ahead"] in text
    what = f"{told.part.capitalize()} {told.name.replace('_', ' ')}, {told.uncertainty}: {told.place} {told.value}"
    assert f"{what}. Measure again after 900 km." in text
