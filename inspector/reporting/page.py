"""What stands on a page, as finished words: chosen, grouped and shortened, never computed anew."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from inspector.reporting.citations import SourceLine, source_lines
from inspector.reporting.places import Group, by_look, by_part
from inspector.reporting.words import READERS, ride_answer, verdict_more, verdict_sentence, words
from inspector.weighing.assessment import LEVELS, Assessment, FindingEntry, Measurement, Visit

MOST_ON_FIRST_PAGE = 5
MOST_LOOKS_ALONE = 13
MOST_LOOKS = {"buyer": 7, "owner": 5, "mechanic": 5}
MOST_LATER = 3
MOST_GROUPS = 4
MOST_MEASURED = 3
MOST_SYMPTOMS = 5
MOST_ANSWERS = 7
ANSWER_ROWS = 9
MOST_HEADER = 56
ACT_NOW = ("stop", "repair")
LATER = ("plan", "watch")


@dataclass(frozen=True)
class Shortened:
    """The first entries of a list and how many are left out here; the whole list stands further on."""

    shown: tuple[object, ...]
    left: int


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
    by_level: tuple[tuple[str, tuple[FindingEntry, ...]], ...]
    act_now: Shortened
    answers: tuple[FindingEntry, ...]
    blank_answers: int
    later: Shortened
    critical_looks: Shortened
    critical_groups: Shortened
    symptoms: Shortened
    measured: Shortened
    unseen_critical: tuple[Group, ...]
    unseen_other: tuple[Group, ...]
    look_next: tuple[Group, ...]
    sources: tuple[SourceLine, ...]
    looks: str
    cautions: dict[str, str]
    measured_groups: tuple[tuple[Measurement, ...], ...]
    in_full: tuple[str, ...] = ACT_NOW


def make_page(assessment: Assessment, reader: str) -> Page:
    """Choose and word what the page for `reader` shows. Raises ValueError for another reader."""
    if reader not in READERS:
        raise ValueError(f"`{reader}` is no reader of a report. Allowed: {', '.join(READERS)}")
    wording, visit, level = words(), assessment.visit, assessment.verdict.level
    critical = [entry for entry in assessment.unseen if entry.critical]
    entries = _worst_first([*assessment.findings, *assessment.causes])
    act_now = [entry for entry in entries if entry.level in ACT_NOW]
    machine = visit.name or visit.kind
    return Page(
        reader=reader,
        title=wording["title"][reader],
        lead=wording["reader"][reader],
        machine=machine,
        summary=_summary(visit),
        header=shortened(machine, MOST_HEADER),
        day=day_in_words(visit.date),
        level=level,
        sentence=verdict_sentence(assessment),
        more=verdict_more(assessment),
        question=ride_answer(assessment, reader)[0],
        answer=ride_answer(assessment, reader)[1],
        identity=_identity(visit),
        by_level=_by_level(assessment.findings),
        act_now=_first(act_now, MOST_ON_FIRST_PAGE),
        answers=tuple(act_now[:MOST_ANSWERS]),
        blank_answers=ANSWER_ROWS - len(act_now[:MOST_ANSWERS]),
        later=_first([e for e in entries if e.level in LATER], MOST_LATER),
        critical_looks=_first(by_look(critical), MOST_LOOKS[reader] if act_now else MOST_LOOKS_ALONE),
        critical_groups=_first(by_part(critical), MOST_GROUPS),
        symptoms=_first(assessment.findings, MOST_SYMPTOMS),
        measured=_first(_measured(assessment.measurements), MOST_MEASURED),
        unseen_critical=by_part(critical),
        unseen_other=by_part(entry for entry in assessment.unseen if not entry.critical),
        look_next=by_look(assessment.look_next),
        sources=source_lines([*assessment.findings, *assessment.causes]),
        looks=_looks(assessment),
        measured_groups=_alike(assessment.measurements),
        cautions={caution.id: caution.title for caution in assessment.cautions},
    )


def day_in_words(day: str) -> str:
    """A date in ISO form as people write it: 14 June 2026."""
    read = date.fromisoformat(day)
    return f"{read.day} {words()['months']['names'][read.month - 1]} {read.year}"


def shortened(text: str, most: int) -> str:
    """At most `most` characters of one line of text."""
    line = " ".join(text.split())
    return line if len(line) <= most else line[: most - 1].rstrip() + "…"


def _first(entries: Sequence[object], most: int) -> Shortened:
    """All entries if hardly more than `most`, else the first ones: one line saved is not worth a gap."""
    if len(entries) <= most + 1:
        return Shortened(tuple(entries), 0)
    return Shortened(tuple(entries[:most]), len(entries) - most)


def _worst_first(entries: list[FindingEntry]) -> list[FindingEntry]:
    return sorted(entries, key=lambda entry: LEVELS.index(entry.level))


def _by_level(entries: Iterable[FindingEntry]) -> tuple[tuple[str, tuple[FindingEntry, ...]], ...]:
    found = tuple(entries)
    levels = dict.fromkeys(entry.level for entry in found)
    return tuple((level, tuple(e for e in found if e.level == level)) for level in levels)


def _summary(visit: Visit) -> str:
    """The machine in one line below its name; only the end of its frame number, which is private."""
    ends = words()["label"]["vin_ends"].format(last=visit.vin[-6:]) if visit.vin else None
    year = str(visit.year) if visit.year else None
    kind = visit.kind if visit.name else None  # without a name the kind is the heading above
    known = (kind, year, visit.odometer, ends, day_in_words(visit.date))
    return ", ".join(fact for fact in known if fact)


def _identity(visit: Visit) -> tuple[tuple[str, str], ...]:
    """The machine's data with the whole frame number, for a reader who compares it with the papers."""
    label, nothing = words()["label"], words()["text"]["not_given"]
    rows = (
        (label["kind"], visit.kind),
        (label["year"], str(visit.year) if visit.year else None),
        (label["odometer"], visit.odometer),
        (label["vin"], visit.vin),
        (label["date"], day_in_words(visit.date)),
        (label["purpose"], words()["purpose"][visit.purpose]),
        (label["country"], visit.country),
        (label["horizon"], visit.horizon),
    )
    return tuple((name, value or nothing) for name, value in rows)


def _measured(measurements: Iterable[Measurement]) -> list[Measurement]:
    """Those beyond a limit first, then those too near it, then the rest in the order of the record."""
    order = ("beyond", "cannot tell", "within")

    def rank(one: Measurement) -> int:
        return order.index(one.standing) if one.standing in order else len(order)

    return sorted(measurements, key=rank)


def _alike(measurements: Iterable[Measurement]) -> tuple[tuple[Measurement, ...], ...]:
    """Readings of one kind that stand alike to the same limit share a line, whatever their places."""
    groups: dict[tuple[object, ...], list[Measurement]] = {}
    for one in measurements:
        limit = (one.limit, one.limit_origin, one.standing)
        groups.setdefault((one.part, one.name, one.tool, one.uncertainty, limit), []).append(one)
    return tuple(tuple(group) for group in groups.values())


def _looks(assessment: Assessment) -> str:
    systems = assessment.coverage
    text: str = words()["text"]["coverage"].format(
        looked=sum(system.looked for system in systems),
        expected=sum(system.expected for system in systems),
        critical_looked=sum(system.critical_looked for system in systems),
        critical_expected=sum(system.critical_expected for system in systems),
    )
    return text
