"""The list of sources at the end of a report: every citation once, with the findings that rest on it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.weighing.assessment import Cited, FindingEntry


@dataclass(frozen=True)
class Passage:
    """One place in a source: what it gives, how that is known, and for which findings."""

    at: str
    gives: str
    known: str
    labels: tuple[str, ...]


@dataclass(frozen=True)
class SourceLine:
    """A source with its number and all its places that are cited."""

    number: int
    title: str
    standing: str
    passages: tuple[Passage, ...]


def source_lines(entries: Iterable[FindingEntry]) -> tuple[SourceLine, ...]:
    """Sources in the order in which the findings name them first."""
    used: dict[Cited, list[str]] = {}
    for entry in entries:
        for cited in entry.sources:
            used.setdefault(cited, []).append(entry.label)
    sources: dict[tuple[str, str], list[Passage]] = {}
    for cited, labels in used.items():
        passage = Passage(cited.at, cited.gives, cited.known, tuple(dict.fromkeys(labels)))
        sources.setdefault((cited.title, cited.standing), []).append(passage)
    return tuple(
        SourceLine(number, title, standing, tuple(found))
        for number, ((title, standing), found) in enumerate(sources.items(), 1)
    )
