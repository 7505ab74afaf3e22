"""The first page: one page for every sample and reader, and the answer to that reader's question."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from inspector import assess, read
from inspector.knowledge.library import knowledge
from inspector.knowledge.wording import words
from inspector.reporting.assets import fetcher
from inspector.reporting.front import make_front
from inspector.reporting.html import to_html, to_paper
from inspector.reporting.words import READERS
from inspector.weighing.assessment import EFFORTS, Assessment
from tests.records import assessed
from tests.reporting.test_html import Reader

SAMPLES = Path(__file__).resolve().parents[2] / "samples"
NAMES = sorted(path.parent.name for path in SAMPLES.glob("*/record.yaml"))
LATER_PARTS = ('<section class="answer-sheet">', '<section class="later-pages">', "<section>\n<h2>Findings")


@cache
def sample(name: str) -> Assessment:
    return assess(read(SAMPLES / name / "record.yaml"))


def first_part(page: str) -> str:
    """The document up to where the pages behind the first one begin."""
    end = min(page.index(mark) for mark in LATER_PARTS if mark in page)
    return page[:end]


def front_of(assessment: Assessment, reader: str) -> str:
    text = Reader(to_html(assessment, reader)).words
    return text[: text.rindex(words()["heading"]["findings"])]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", NAMES)
def test_what_belongs_on_the_first_page_fits_on_it(name: str, paper: str) -> None:
    from weasyprint import HTML
    from weasyprint.text.fonts import FontConfiguration

    for reader in READERS:
        html = first_part(to_paper(sample(name), reader, size=paper))
        laid_out = HTML(string=html, url_fetcher=fetcher(), base_url="asset:").render(
            font_config=FontConfiguration()
        )
        assert len(laid_out.pages) == 1, reader


def test_a_buyer_sees_the_five_largest_jobs_and_what_nobody_proved() -> None:
    assessment = sample("before_purchase")
    front, text = make_front(assessment, "buyer"), front_of(assessment, "buyer")

    efforts = [EFFORTS.index(one.price) for one in front.dearest]
    assert len(efforts) == 5
    assert efforts == sorted(efforts, reverse=True)
    left = [e for e in assessment.findings if e.level in ("stop", "repair", "plan")]
    assert max(EFFORTS.index(e.effort) for e in left) == efforts[0]
    for one in front.dearest:
        assert f"{', '.join(one.labels)} {one.title} {one.where}: {one.price}" in text
    # aged rubber and a warped disc are suspected only, and each would cost a medium job
    assert [cause.rule for cause in front.unproved_causes] == [
        "wheels_and_tyres/aged_tyre_with_tread",
        "brakes/overheated_disc",
    ]
    assert all(group.entries[0].effort in ("large", "very large") for group in front.unproved_looks)
    assert front.unproved_looks
    for group in front.unproved_looks:
        assert (
            f"{group.entries[0].ask} {group.part}: {group.where}; could be a {group.entries[0].effort} job" in text
        )


def test_an_owner_sees_what_was_left_over_and_what_comes_due() -> None:
    assessment = sample("after_service")
    text = front_of(assessment, "owner")

    assert words()["heading"]["left_over"] in text
    assert words()["left_over"]["parts_left_over"] in text
    due = assessment.due[0]
    assert due.at is not None
    assert text.index(words()["heading"]["due_front"]) < text.index(f"At {due.at}")


@pytest.mark.parametrize(
    ("noted", "said"),
    [
        ({"interrupted": "yes and not repeated"}, "the work was interrupted and carried on"),
        ({"interrupted": "not checked"}, "Not answered: Were you interrupted"),
        ({"interrupted": "yes and repeated"}, words()["left_over"]["interrupted"]),
    ],
)
def test_work_that_was_interrupted_is_said_and_so_is_that_nobody_answered(
    noted: dict[str, str], said: str
) -> None:
    record = assessed({"machine": noted}, purpose="after own service", **{"work done": ["brake_pads @ front"]})
    text = front_of(record, "owner")

    assert said in text
    assert words()["heading"]["left_over"] not in front_of(sample("before_purchase"), "owner")


def test_the_looks_at_what_was_left_over_exist_and_no_worse_rule_hides_their_findings() -> None:
    known = knowledge()
    for name in words()["left_over"]:
        assert name in known.properties["machine"]
        reading = [rule for rule in known.rules.values() if any(name in tests for tests in rule.cases())]
        assert reading
        assert all(not rule.gives_way_to for rule in reading)


def test_a_mechanic_finds_room_for_an_answer_beside_each_finding() -> None:
    assessment = sample("handover_brake")
    page = first_part(to_html(assessment, "mechanic"))
    text = front_of(assessment, "mechanic")

    rows = page[page.index('<table class="answers') :].split("</table>")[0].split("<tr>")[2:]
    assert len(rows) == 5
    assert all(row.count("<td></td>") == 3 for row in rows)
    for name in ("cause_found", "correction", "torque", "signature"):
        assert words()["label"][name] in text
    # the condition under which the brake tightens was noted, and stands beside what was seen
    assert "“after about 15 minutes in town" in text
    for cause in assessment.causes:
        assert f"{cause.label} {cause.title} ({cause.place})" in text


def test_rows_that_find_no_room_on_the_first_page_follow_on_a_sheet() -> None:
    urgent = make_front(sample("stood_for_years"), "mechanic")
    few = make_front(sample("handover_brake"), "mechanic")

    assert [group.first.level for group in urgent.answers_over] == ["repair"] * len(urgent.answers_over)
    labels = [label for group in (*urgent.answers.shown, *urgent.answers_over) for label in group.labels]
    wanted = [e.label for e in sample("stood_for_years").findings if e.level in ("stop", "repair")]
    assert set(wanted) <= set(labels)
    assert few.answers_over == ()
    assert few.blank_over == 0


def test_each_reader_is_spoken_to_as_the_one_who_acts() -> None:
    assessment = sample("before_purchase")

    assert "You: Do not push a gauge on it" in Reader(to_html(assessment, "buyer")).words
    assert "Owner:" not in Reader(to_html(assessment, "buyer")).words
    assert "Owner: Do not push a gauge on it" in Reader(to_html(assessment, "mechanic")).words
