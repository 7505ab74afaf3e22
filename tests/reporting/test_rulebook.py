"""The rulebook: every rule and limit in it, conditions in words, real pages with room for a pencil."""

from __future__ import annotations

import dataclasses
import html
import re
from datetime import date
from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner
from pypdf import PdfReader

from inspector.cli import cli
from inspector.knowledge.library import Knowledge, knowledge
from inspector.reporting.conditions import condition_lines, limit_text
from inspector.reporting.rulebook import rulebook_html, write_rulebook
from tests.reporting.cases import squeezed

DAY = date(2026, 6, 1)
MM = 72 / 25.4


@cache
def whole() -> str:
    page = html.unescape(rulebook_html(knowledge(), DAY))
    return squeezed(re.sub(r"<[^>]+>", "", page))


@cache
def few() -> Knowledge:
    """One rule of each system: a whole book takes half a minute."""
    known = knowledge()
    first = {rule.system: name for name, rule in reversed(known.rules.items()) if not rule.is_cause}
    rules = {name: known.rules[name] for name in sorted(first.values())}
    plain = {name: rule.model_copy(update={"gives_way_to": ()}) for name, rule in rules.items()}
    return dataclasses.replace(known, rules=plain)


def test_every_rule_is_in_it_with_all_that_a_mechanic_needs() -> None:
    for rule in knowledge().rules.values():
        for text in (rule.title, rule.id, rule.says, rule.means, rule.class_reason.rstrip("."), rule.confirm):
            assert squeezed(text) in whole(), rule.id
        for text in (*rule.mistaken_for, *(a.step for a in rule.do), *(s.gives for s in rule.sources)):
            assert squeezed(text) in whole(), rule.id
        for step in rule.harm.story if rule.harm else ():
            assert squeezed(f"{step.step} ({step.chance})") in whole(), rule.id
        for _, condition in condition_lines(rule, knowledge()):
            assert squeezed(condition) in whole(), rule.id


def test_every_limit_is_in_it_and_where_others_differ() -> None:
    for (part, name), limits in knowledge().limits.items():
        for limit_name, limit in limits.items():
            head = f"{part[:1].upper()}{part[1:]}: {name.replace('_', ' ')}, {limit_name}:"
            assert squeezed(head) in whole()
            for one in (*limit.sources, *limit.others_say):
                assert squeezed(f"{one.at}: {one.gives}") in whole()


def test_every_source_stands_at_the_end_with_its_standing_and_every_number_leads_there() -> None:
    page = rulebook_html(knowledge(), DAY)
    ids, links = set(re.findall(r' id="([^"]+)"', page)), set(re.findall(r'href="#([^"]+)"', page))

    assert links <= ids
    assert len([one for one in ids if one.startswith("source-")]) == len(knowledge().sources)
    for source in knowledge().sources.values():
        assert squeezed(source.title) in whole()


@pytest.mark.parametrize(
    ("rule", "expected"),
    [
        (
            "brakes/pad_below_limit",
            [("When", "friction material thickness is beyond the wear limit (at least 1.5 mm; the stamp or the "
                      "manual wins)")],
        ),
        (
            "reassembly/second_look_due",
            [("When", "second look done is no and distance since work reaches the recheck distance (at most "
                      "50 km) before the next look")],
        ),
    ],
)  # fmt: skip
def test_conditions_are_words_with_figures(rule: str, expected: list[tuple[str, str]]) -> None:
    assert list(condition_lines(knowledge().rules[rule], knowledge())) == expected


def test_a_cause_names_the_findings_it_gathers_by_their_titles() -> None:
    cause = next(rule for rule in knowledge().rules.values() if rule.is_suspicion and rule.gathers[0].rule)
    first = cause.gathers[0].rule
    assert first is not None
    before, text = next(iter(condition_lines(cause, knowledge())))

    assert before == "Gathers"
    assert f"“{knowledge().rules[first].title}” [{first}]" in text


def test_a_limit_by_country_names_each() -> None:
    limit = knowledge().limits["tyre", "least_tread"]["legal minimum"]

    assert {f"{country}: at least {bounds.at_least}" for country, bounds in limit.cases.items()} <= set(
        limit_text(limit).split("; ")
    )


@pytest.mark.parametrize(("size", "width"), [("a4", 210), ("letter", 215.9)])
def test_the_pages_leave_a_margin_to_write_in(tmp_path: Path, size: str, width: float) -> None:
    path = tmp_path / "book.pdf"
    pages = write_rulebook(few(), path, DAY, size)
    reader = PdfReader(path)
    starts: list[float] = []
    for page in reader.pages:
        page.extract_text(
            visitor_text=lambda text, cm, tm, *_: starts.append(tm[4] * cm[0] + cm[4]) if text.strip() else None
        )

    assert pages == len(reader.pages)
    assert abs(float(reader.pages[0].mediabox.width) - width * MM) < 1
    assert max(starts) < (width - 58) * MM
    root = reader.trailer["/Root"]
    assert b"pdfuaid:part" in root["/Metadata"].get_object().get_data()
    outline = [" ".join(str(one.title).split()) for one in _flat(reader.outline)]
    assert {rule.title for rule in few().rules.values()} <= set(outline)


def _flat(outline: list[object]) -> list[object]:
    return [one for entry in outline for one in (_flat(entry) if isinstance(entry, list) else [entry])]


def test_the_same_rules_on_the_same_day_give_the_same_bytes(tmp_path: Path) -> None:
    for name in ("a.pdf", "b.pdf"):
        write_rulebook(few(), tmp_path / name, DAY)

    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()


def test_the_command_needs_a_file_and_only_the_book_takes_one(tmp_path: Path) -> None:
    def run(*arguments: str) -> tuple[int, str]:
        result = CliRunner().invoke(cli, ["rules", *arguments], catch_exceptions=False)
        return result.exit_code, result.output

    assert run("book")[0] == 2
    assert run("book", str(tmp_path))[0] == 2
    code, text = run("brakes/pad_below_limit", str(tmp_path / "a.pdf"))
    assert (code, list(tmp_path.iterdir())) == (2, [])
    assert "inspector rules book FILE.pdf" in text
