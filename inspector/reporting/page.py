"""What stands on a page, as finished words: chosen, grouped and shortened, never computed anew."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.knowledge.wording import words
from inspector.reporting.alike import Alike, alike
from inspector.reporting.citations import SourceLine, source_lines
from inspector.reporting.due_text import day_text
from inspector.reporting.front import ACT_NOW, Front, make_front
from inspector.reporting.jobs import JobLine, job_lines
from inspector.reporting.places import Group, by_look, by_part
from inspector.reporting.words import READERS, looks_made, ride_answer, verdict_more, verdict_sentence
from inspector.weighing.assessment import Assessment, FindingEntry, Measurement, Visit

MOST_HEADER = 56


@dataclass(frozen=True)
class Page:
    """Everything a template prints, for one reader."""

    reader: str
    title: str
    lead: str
    machine: str
    header: str
    summary: str
    day: str
    level: str
    sentence: str
    more: tuple[str, ...]
    question: str
    answer: str
    identity: tuple[tuple[str, str], ...]
    front: Front
    by_level: tuple[tuple[str, tuple[Alike, ...]], ...]
    jobs: tuple[tuple[str, tuple[JobLine, ...]], ...]
    ahead: tuple[tuple[str, tuple[tuple[Measurement, ...], ...]], ...]
    by: dict[str, str]
    unseen_critical: tuple[Group, ...]
    unseen_other: tuple[Group, ...]
    look_next: tuple[Group, ...]
    sources: tuple[SourceLine, ...]
    source_numbers: dict[str, int]
    looks: str
    cautions: dict[str, str]
    measured_groups: tuple[tuple[Measurement, ...], ...]
    in_full: tuple[str, ...] = ACT_NOW


def make_page(assessment: Assessment, reader: str) -> Page:
    """Choose and word what the page for `reader` shows. Raises ValueError for another reader."""
    if reader not in READERS:
        raise ValueError(f"`{reader}` is no reader of a report. Allowed: {', '.join(READERS)}")
    wording, visit, level = words(), assessment.visit, assessment.verdict.level
    sources = source_lines([*assessment.findings, *assessment.causes])
    machine = visit.name or visit.kind
    return Page(
        reader=reader,
        title=wording["title"][reader],
        lead=wording["reader"][reader],
        machine=machine,
        summary=_summary(visit),
        header=shortened(machine, MOST_HEADER),
        day=day_text(visit.date),
        level=level,
        sentence=verdict_sentence(assessment),
        more=verdict_more(assessment),
        question=ride_answer(assessment, reader)[0],
        answer=ride_answer(assessment, reader)[1],
        identity=_identity(visit),
        by_level=_by_level(assessment.findings),
        front=make_front(assessment, reader),
        jobs=job_lines(assessment),
        ahead=_ahead(assessment.measurements),
        by=wording["by"][reader],
        unseen_critical=by_part(entry for entry in assessment.unseen if entry.critical),
        unseen_other=by_part(entry for entry in assessment.unseen if not entry.critical),
        look_next=by_look(assessment.look_next),
        sources=sources,
        source_numbers={source.title: source.number for source in sources},
        looks=looks_made(assessment),
        measured_groups=_measured_alike(assessment.measurements),
        cautions={caution.id: caution.title for caution in assessment.cautions},
    )


def shortened(text: str, most: int) -> str:
    """At most `most` characters of one line of text."""
    line = " ".join(text.split())
    return line if len(line) <= most else line[: most - 1].rstrip() + "…"


def _by_level(entries: Iterable[FindingEntry]) -> tuple[tuple[str, tuple[Alike, ...]], ...]:
    found = alike(entries)
    levels = dict.fromkeys(group.first.level for group in found)
    return tuple((level, tuple(g for g in found if g.first.level == level)) for level in levels)


def _ahead(measurements: Iterable[Measurement]) -> tuple[tuple[str, tuple[tuple[Measurement, ...], ...]], ...]:
    """What wears, by what can be told of it; readings of one kind at several places together."""
    told: dict[str, dict[tuple[str, str, str], list[Measurement]]] = {}
    for one in measurements:
        if one.forecast:
            key = (one.part, one.name, one.uncertainty)
            told.setdefault(one.forecast, {}).setdefault(key, []).append(one)
    return tuple((text, tuple(tuple(found) for found in kinds.values())) for text, kinds in told.items())


def _summary(visit: Visit) -> str:
    """The machine in one line below its name; only the end of its frame number, which is private."""
    ends = words()["label"]["vin_ends"].format(last=visit.vin[-6:]) if visit.vin else None
    year = str(visit.year) if visit.year else None
    kind = visit.kind if visit.name else None  # without a name the kind is the heading above
    known = (kind, year, visit.odometer, ends, day_text(visit.date))
    return ", ".join(fact for fact in known if fact)


def _identity(visit: Visit) -> tuple[tuple[str, str], ...]:
    """What a reader compares with the papers, the whole frame number too; kind and day stand in the line above."""
    label, nothing = words()["label"], words()["text"]["not_given"]
    rows = (
        (label["year"], str(visit.year) if visit.year else None),
        (label["odometer"], visit.odometer),
        (label["vin"], visit.vin),
        (label["country"], visit.country),
        (label["horizon"], visit.horizon),
    )
    return tuple((name, value or nothing) for name, value in rows)


def _measured_alike(measurements: Iterable[Measurement]) -> tuple[tuple[Measurement, ...], ...]:
    """Readings of one kind that stand alike to the same limit share a line, whatever their places."""
    groups: dict[tuple[object, ...], list[Measurement]] = {}
    for one in measurements:
        limit = (one.limit, one.limit_origin, one.standing)
        groups.setdefault((one.part, one.name, one.tool, one.uncertainty, limit), []).append(one)
    return tuple(tuple(group) for group in groups.values())
