"""Findings in short, what was ruled out, and scales on the page."""

from __future__ import annotations

import re

from inspector.knowledge.wording import words
from inspector.reporting.html import to_html
from tests.records import assessed
from tests.reporting.cases import worn
from tests.reporting.test_html import Reader


def test_what_was_ruled_out_says_what_speaks_against_it() -> None:
    against = worn().findings[1].evidence[0].model_copy(update={"note": "tried twice"})
    thought_of = worn().causes[0].model_copy(update={"label": "", "title": "Thing", "ruled_out_by": (against,)})
    text = Reader(to_html(worn().model_copy(update={"ruled_out": (thought_of,)}), "owner")).words
    told = text[text.index(words()["heading"]["ruled_out"]) :]

    assert f"Thing {thought_of.part.capitalize()}, {thought_of.place}." in told
    name = against.name.replace("_", " ")
    assert f"{words()['kind'][against.kind].capitalize()} {name}: {against.value}" in told
    assert "“tried twice”" in told


def test_findings_to_plan_or_watch_are_short_and_lose_nothing_that_matters() -> None:
    page = to_html(worn(), "owner")
    articles = re.findall(r'<article class="(finding[^"]*)" id="entry-(\d+)">(.*?)</article>', page, re.DOTALL)
    by_label = {entry.label: entry for entry in worn().findings}

    assert {label for _, label, _ in articles} == set(by_label)
    for kind, label, inside in articles:
        entry, text = by_label[label], Reader(inside).words
        assert ("short" in kind) == (entry.level in ("plan", "watch"))
        assert ("What may happen" in text) == (entry.level in ("stop", "repair"))
        assert f"Class: {words()['class'][entry.class_name]}" in text
        assert f"{words()['label']['sure']}: {entry.certainty}" in text
        for action in entry.do:
            assert action.step in text
            assert f"{words()['by']['owner'][action.by]}:" in text
        for one in entry.evidence:
            assert one.limit is None or (one.limit in text and (one.limit_origin or "") in text)
        for cited in entry.sources:
            assert re.search(rf"\[\d+\] {re.escape(cited.at)} \({words()['known'][cited.known]}\)", text)
        for caution in worn().cautions:
            assert caution.id not in entry.cautions or caution.title in text


def test_only_a_mechanic_sees_every_measured_value_drawn() -> None:
    drawn = [one for one in worn().measurements if one.scale is not None and one.scale.spread]

    assert drawn
    assert to_html(worn(), "mechanic").count('class="small-scale"') >= len(drawn)
    assert "small-scale" not in to_html(worn(), "buyer").split("</style>")[1]


def test_a_worn_pad_has_its_scale_beside_what_was_measured() -> None:
    pad = assessed({"brake pad @ rear inner": {"friction_material_thickness": "1.1 mm with caliper"}})
    page = to_html(pad, "buyer")
    drawn = page[page.index('<aside class="drawn">') : page.index("</aside>")]

    assert "Scale: friction material thickness of the brake pad, rear inner: 1.1 mm, ± 0.1 mm" in drawn
    assert "at least 1.5 mm</text>" in drawn
    assert "1.1 mm</text>" in drawn
