"""Findings that say the same of several places: one entry, every number, place and value still there."""

from __future__ import annotations

import re

from inspector.knowledge.wording import words
from inspector.reporting.alike import alike
from inspector.reporting.html import to_html
from inspector.reporting.jobs import job_lines
from tests.records import assessed
from tests.reporting.cases import worn
from tests.reporting.test_html import Reader

THIN = {
    "brake disc @ front left": {"thickness": "4.6 mm with caliper"},
    "brake disc @ front right": {"thickness": "4.65 mm with caliper"},
}
STAMPED = {"brake disc @ front": {"thickness": "at least 4.5 mm (stamped)"}}


def test_two_discs_close_to_their_minimum_are_one_entry_with_both_values() -> None:
    assessment = assessed(THIN, limits=STAMPED)
    (group,) = [g for g in alike(assessment.findings) if g.first.rule == "brakes/disc_near_limit"]
    page = to_html(assessment, "buyer")
    article = re.search(
        rf'<article class="finding[^>]*id="entry-{group.labels[0]}">.*?</article>', page, re.DOTALL
    )

    assert article is not None
    text = Reader(article[0]).words
    assert group.where == "front left, front right"
    assert f"{group.labels[0]}, {group.labels[1]} {group.first.title} Brake disc, front left, front right." in text
    for entry in group.entries:
        assert entry.says in text
        assert f'href="#entry-{entry.label}"' in page
        assert page.count(f'id="entry-{entry.label}"') == 1
    assert "4.6 mm" in text
    assert "4.65 mm" in text
    assert text.count(group.first.means) == 1
    # 0.1 mm and 0.15 mm from the stamp with the same caliper: not equally sure, so each says how sure it is
    sure = words()["label"]["sure"]
    assert text.count(f"{sure}: ") == (1 if group.certainty else 2)


def test_no_finding_is_lost_and_none_of_another_kind_is_joined() -> None:
    groups = alike(worn().findings)

    assert sorted(e.label for g in groups for e in g.entries) == sorted(e.label for e in worn().findings)
    for group in groups:
        assert len({(e.rule, e.level, e.means, e.do, e.sources) for e in group.entries}) == 1


def test_every_step_stands_once_in_the_list_to_tick_off() -> None:
    lines = job_lines(worn())

    assert [by for by, _ in lines] == ["owner", "licensed mechanic"]
    for job in worn().jobs:
        holding = [line for by, found in lines if by == job.by for line in found if job.step in line.text]
        assert [line.labels for line in holding] == [job.labels]
