"""The whole rulebook as a PDF, from the same data that judges: for a licensed mechanic to read and to correct."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from itertools import chain
from pathlib import Path

from inspector.knowledge.fingerprint import rules_fingerprint
from inspector.knowledge.library import Knowledge
from inspector.knowledge.limits import Limit
from inspector.knowledge.model import Citation
from inspector.knowledge.rules import Rule
from inspector.knowledge.wording import words
from inspector.reporting.carried import short
from inspector.reporting.conditions import condition_lines, limit_text
from inspector.reporting.due_text import day_text
from inspector.reporting.files import write_whole
from inspector.reporting.html import PAPERS, environment
from inspector.reporting.pdf import printed
from inspector.weighing.weigh import program_version


@dataclass(frozen=True)
class CitedLine:
    """A citation with the number of its source in the list at the end."""

    number: int
    at: str
    gives: str
    known: str


@dataclass(frozen=True)
class RuleCard:
    """One rule as it is printed."""

    rule: Rule
    conditions: tuple[tuple[str, str], ...]
    gives_way_to: tuple[str, ...]
    sources: tuple[CitedLine, ...]


@dataclass(frozen=True)
class LimitRow:
    """One limit with where it comes from and where others differ."""

    what: str
    name: str
    figures: str
    origin: str
    sources: tuple[CitedLine, ...]
    others_say: tuple[CitedLine, ...]


@dataclass(frozen=True)
class Chapter:
    """One system: its limits and its rules."""

    id: str
    title: str
    limits: tuple[LimitRow, ...]
    cards: tuple[RuleCard, ...]


def write_rulebook(knowledge: Knowledge, path: Path, day: date, size: str = "a4") -> int:
    """Write the book to `path`; the number of its pages. Raises ValueError for another paper, and OSError."""
    from pypdf import PdfReader

    content = printed(rulebook_html(knowledge, day, size), day.isoformat())
    write_whole(path, content)
    return len(PdfReader(path).pages)


def rulebook_html(knowledge: Knowledge, day: date, size: str = "a4") -> str:
    """The book as the HTML that the PDF is drawn from."""
    if size not in PAPERS:
        raise ValueError(f"`{size}` is no size of paper. Allowed: {', '.join(PAPERS)}")
    book = _Book(knowledge)
    return (
        environment()
        .get_template("rulebook.html")
        .render(
            chapters=book.chapters(),
            sources=[(number, knowledge.sources[name]) for name, number in book.numbers.items()],
            w=words(),
            rules=len(knowledge.rules),
            version=program_version(),
            fingerprint=short(rules_fingerprint()),
            day=day_text(day.isoformat()),
            iso_day=day.isoformat(),
            paper=PAPERS[size],
        )
    )


class _Book:
    def __init__(self, knowledge: Knowledge) -> None:
        self.known = knowledge
        self.numbers = {name: number for number, name in enumerate(knowledge.sources, 1)}

    def chapters(self) -> tuple[Chapter, ...]:
        """One for each system, in the order of the rules."""
        systems = dict.fromkeys(rule.system for rule in self.known.rules.values())
        return tuple(self._chapter(system) for system in systems)

    def _chapter(self, system: str) -> Chapter:
        rules = [rule for rule in self.known.rules.values() if rule.system == system]
        limits = [
            self._limit(part, name, limit_name, limit)
            for (part, name), named in self.known.limits.items()
            if self._home(part, name) == system
            for limit_name, limit in named.items()
        ]
        title = system.replace("_", " ")
        return Chapter(system, title[:1].upper() + title[1:], tuple(limits), tuple(map(self._card, rules)))

    def _home(self, part: str, name: str) -> str:
        """The chapter of a limit: where the rules are that test it, else those about its part, else the first."""
        rules = self.known.rules.values()
        testing = (rule.system for rule in rules if rule.about == part and any(name in t for t in rule.cases()))
        about = (rule.system for rule in rules if rule.about == part)
        return next(chain(testing, about, (rule.system for rule in rules)))

    def _card(self, rule: Rule) -> RuleCard:
        return RuleCard(
            rule=rule,
            conditions=tuple(condition_lines(rule, self.known)),
            gives_way_to=tuple(f"“{self.known.rules[one].title}”" for one in rule.gives_way_to),
            sources=self._cited(rule.sources),
        )

    def _limit(self, part: str, name: str, limit_name: str, limit: Limit) -> LimitRow:
        return LimitRow(
            what=f"{part}: {name.replace('_', ' ')}",
            name=limit_name,
            figures=limit_text(limit),
            origin=limit.origin,
            sources=self._cited(limit.sources),
            others_say=self._cited(limit.others_say),
        )

    def _cited(self, citations: Iterable[Citation]) -> tuple[CitedLine, ...]:
        return tuple(CitedLine(self.numbers[one.source], one.at, one.gives, one.known) for one in citations)
