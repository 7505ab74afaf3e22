"""What stands on the first page, for the one question of its reader: chosen and shortened, never computed anew."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from inspector.knowledge.wording import words
from inspector.reporting.alike import Alike, alike
from inspector.reporting.costs_text import money_range
from inspector.reporting.places import Group, by_look, by_part
from inspector.weighing.assessment import EFFORTS, LEVELS, Assessment, FindingEntry, Measurement
from inspector.weighing.costing import to_pay
from inspector.weighing.upkeep import DueEntry

ACT_NOW = ("stop", "repair")
LATER = ("plan", "watch")
_COSTLY = ("large", "very large")
_MOST = {"act now": 5, "later": 3, "groups": 4, "measured": 3, "due": 4, "dearest": 5}
_MOST_UNPROVED, _MOST_SUSPECTED = 4, 2
_MOST_LOOKS = {"buyer": 5, "owner": 4, "mechanic": 5}
_MOST_LOOKS_ALONE = 9  # where nothing has to be mended there is room for more
ANSWERS, _ROWS = 5, 13

_T = TypeVar("_T")


@dataclass(frozen=True)
class Shortened(Generic[_T]):
    """The first entries of a list and how many are left out here; the whole list stands further on."""

    shown: tuple[_T, ...]
    left: int


@dataclass(frozen=True)
class Dear:
    """One piece of work with what it costs, in money or as a size."""

    labels: tuple[str, ...]
    title: str
    where: str
    price: str


@dataclass(frozen=True)
class LeftOver:
    """What was noted of one way to leave work unfinished: a finding, a question nobody answered, or neither."""

    said: str
    found: Alike | None = None
    open: bool = False


@dataclass(frozen=True)
class Front:
    """The lists of a first page."""

    act_now: Shortened[Alike]
    later: Shortened[Alike]
    looks: Shortened[Group]
    groups: Shortened[Group]
    answers: Shortened[Alike]
    answers_over: tuple[Alike, ...]
    blank_here: int
    blank_over: int
    suspected: tuple[FindingEntry, ...]
    measured: Shortened[Measurement]
    dearest: tuple[Dear, ...]
    unproved_causes: tuple[FindingEntry, ...]
    unproved_looks: tuple[Group, ...]
    left_over: tuple[LeftOver, ...]
    due: Shortened[DueEntry]


def make_front(assessment: Assessment, reader: str) -> Front:
    """Choose what the first page for `reader` shows."""
    standing = alike(sorted((*assessment.findings, *assessment.causes), key=lambda e: LEVELS.index(e.level)))
    act_now = [group for group in standing if group.first.level in ACT_NOW]
    groups = alike(assessment.findings)
    here, over = groups[:ANSWERS], [group for group in groups[ANSWERS:] if group.first.level in ACT_NOW]
    critical = [entry for entry in assessment.unseen if entry.critical]
    looks = _first(by_look(critical), _MOST_LOOKS[reader] if act_now else _MOST_LOOKS_ALONE)
    causes = _costly_causes(assessment)
    return Front(
        act_now=_first(act_now, _MOST["act now"]),
        later=_first([group for group in standing if group.first.level in LATER], _MOST["later"]),
        looks=looks,
        groups=_first(by_part(critical), _MOST["groups"]),
        answers=Shortened(here, len(assessment.findings) - sum(len(group.entries) for group in here)),
        answers_over=tuple(over),
        blank_here=ANSWERS - len(here),
        blank_over=max(_ROWS - len(over), 2) if over else 0,
        suspected=assessment.causes[:3],
        measured=_first(_measured(assessment.measurements), _MOST["measured"]),
        dearest=_dearest(assessment),
        unproved_causes=causes,
        unproved_looks=_costly_looks(assessment, looks)[: _MOST_UNPROVED - len(causes)],
        left_over=_left_over(assessment),
        due=_first(assessment.due, _MOST["due"]),
    )


def _first(entries: Sequence[_T], most: int) -> Shortened[_T]:
    """All entries if hardly more than `most`, else the first ones: one line saved is not worth a gap."""
    if len(entries) <= most + 1:
        return Shortened(tuple(entries), 0)
    return Shortened(tuple(entries[:most]), len(entries) - most)


def _measured(measurements: Iterable[Measurement]) -> list[Measurement]:
    """Those beyond a limit first, then those too near it, then the rest in the order of the record."""
    order = ("beyond", "cannot tell", "within")

    def rank(one: Measurement) -> int:
        return order.index(one.standing) if one.standing in order else len(order)

    return sorted(measurements, key=rank)


def _dearest(assessment: Assessment) -> tuple[Dear, ...]:
    """What costs most of what was found: in money where there are prices, else by the size of the job."""
    costs = assessment.costs
    if costs is not None:
        lines = sorted(costs.lines, key=lambda line: -line.high)[: _MOST["dearest"]]
        return tuple(
            Dear(line.labels, line.title, line.place, money_range(line.low, line.high, costs.currency))
            for line in lines
        )
    groups = sorted(alike(to_pay(assessment.findings)), key=lambda group: -EFFORTS.index(group.first.effort))
    return tuple(
        Dear(group.labels, group.first.title, group.where, group.first.effort)
        for group in groups[: _MOST["dearest"]]
    )


def _costly_causes(assessment: Assessment) -> tuple[FindingEntry, ...]:
    """Suspicions that nobody has proved and that would cost most."""
    costly = [entry for entry in assessment.causes if EFFORTS.index(entry.effort) >= EFFORTS.index("medium")]
    return tuple(sorted(costly, key=lambda e: -EFFORTS.index(e.effort))[:_MOST_SUSPECTED])


def _costly_looks(assessment: Assessment, named: Shortened[Group]) -> tuple[Group, ...]:
    """Looks that nobody made and that could show a large job, without those that the page names already."""
    known = {(entry.part, entry.name) for group in named.shown for entry in group.entries}
    costly = [e for e in assessment.unseen if e.effort in _COSTLY and (e.part, e.name) not in known]
    return by_look(sorted(costly, key=lambda e: -EFFORTS.index(e.effort)))


def _left_over(assessment: Assessment) -> tuple[LeftOver, ...]:
    """After the owner's own work: was a part left, was the work interrupted, did it feel different afterwards."""
    if assessment.visit.purpose != "after own service":
        return ()
    return tuple(_one_left(assessment, name, said) for name, said in words()["left_over"].items())


def _one_left(assessment: Assessment, name: str, said: str) -> LeftOver:
    found = [f for f in assessment.findings if any(one.name == name for one in f.evidence)]
    if found:
        return LeftOver(found[0].says, alike(found)[0])
    asked = next((one.ask for one in assessment.unseen if one.name == name), None)
    return LeftOver(said) if asked is None else LeftOver(asked, open=True)
