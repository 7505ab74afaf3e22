"""The result of an assessment as plain data: what every report, and nothing but the report, is made from."""

from __future__ import annotations

from typing import Literal, get_args

from inspector.knowledge.rules import Effort
from inspector.weighing.upkeep import Costs, DueEntry, Part

LevelName = Literal["stop", "repair", "plan", "watch", "sound", "unseen"]
LEVELS: tuple[LevelName, ...] = ("stop", "repair", "plan", "watch", "unseen", "sound")
EFFORTS: tuple[str, ...] = get_args(Effort)
UnseenBecause = Literal["not looked at", "could not see", "cannot tell", "limit not known"]


class Evidence(Part):
    """One look that a finding rests on."""

    part: str
    place: str
    name: str
    value: str
    kind: Literal["measured", "seen", "worked out"]
    tool: str | None = None
    limit: str | None = None
    limit_origin: str | None = None
    note: str | None = None
    photo: str | None = None


class Risk(Part):
    """The published grid's level, and the levels if the guessed chance were ten times smaller or larger."""

    level: Literal["serious", "high", "medium", "low"]
    words: str
    severity: int
    to: Literal["person", "property"]
    story: tuple[str, ...]


class ToDo(Part):
    """One thing to do and by whom."""

    step: str
    by: Literal["owner", "licensed mechanic"]


class Cited(Part):
    """A source as printed, with its standing and how we know what it says."""

    source: str
    title: str
    at: str
    gives: str
    standing: str
    known: str


class FindingEntry(Part):
    """A finding or a suspected cause, ready to be printed."""

    label: str
    rule: str
    title: str
    part: str
    place: str
    system: str
    level: LevelName
    class_name: Literal["none", "minor", "major", "dangerous"]
    class_reason: str
    official: tuple[str, ...]
    risk: Risk | None
    certainty: str
    says: str
    means: str
    evidence: tuple[Evidence, ...]
    do: tuple[ToDo, ...]
    confirm: str
    mistaken_for: tuple[str, ...]
    cautions: tuple[str, ...]
    sources: tuple[Cited, ...]
    effort: str
    symptoms: tuple[str, ...] = ()
    settled_by: str | None = None
    explained_by: tuple[str, ...] = ()
    ruled_out_by: tuple[Evidence, ...] = ()


class UnseenEntry(Part):
    """A look that was expected and not made, or that could not decide."""

    part: str
    place: str
    name: str
    because: UnseenBecause
    reason: str | None
    critical: bool
    ask: str
    look: str
    tools: tuple[str, ...]
    minutes: float
    could_show: tuple[str, ...]
    worst: Literal["none", "minor", "major", "dangerous"]
    effort: str = "none"  # size of the largest job it could show


class Job(Part):
    """Work that follows from findings, for one pair of hands."""

    by: Literal["owner", "licensed mechanic"]
    step: str
    labels: tuple[str, ...]
    level: LevelName


class SystemCoverage(Part):
    """How much of one system was looked at."""

    system: str
    looked: int
    expected: int
    critical_looked: int
    critical_expected: int


class CautionEntry(Part):
    """A caution in full."""

    id: str
    title: str
    text: str


class Verdict(Part):
    """The one answer, with what it rests on; the sentence is chosen by the report."""

    level: LevelName
    leading: str | None
    leading_title: str | None
    leading_place: str | None
    leading_to: Literal["person", "property"] | None
    others: int
    critical_unseen: int
    first_unseen: str | None


class Visit(Part):
    """Which machine, when, for what."""

    kind: str
    name: str | None
    year: int | None
    vin: str | None
    odometer: str | None
    purpose: str
    date: str
    country: str | None
    horizon: str
    next_look: str
    request: str | None
    asking_price: str | None = None
    tried: tuple[str, ...]
    remarks: tuple[str, ...]
    work: tuple[str, ...]
    invented: bool


class Scale(Part):
    """The figures of a drawing: value, uncertainty and limit in the unit that was typed."""

    unit: str
    value: float
    spread: float
    at_least: float | None
    at_most: float | None
    new: float | None = None
    by_horizon: float | None = None


class Reading(Part):
    """One reading of a part that wears: how far the machine had gone, what was read, how far it may be off."""

    odometer: float
    value: float
    spread: float
    new_part: bool = False


class Wear(Part):
    """The figures of a chart over distance: every reading, the last is today's; the limit; when it is reached.

    `low` to `high` is the way from today to the limit, as a range. Both are None when none can be told; `high`
    alone is None when the part may not wear at all.
    """

    unit: str
    distance_unit: str
    readings: tuple[Reading, ...]
    limit: float
    limit_words: str
    limit_origin: str
    horizon: float
    low: float | None = None
    high: float | None = None


class Measurement(Part):
    """A measured value with its tool and the limit it stands to, finding or not."""

    part: str
    place: str
    name: str
    value: str
    kind: Literal["measured", "worked out"]
    tool: str | None
    uncertainty: str
    limit: str | None
    limit_origin: str | None
    standing: str | None
    forecast: str | None = None
    scale: Scale | None = None
    wear: Wear | None = None
    metric: str | None = None
    imperial: str | None = None


class Assessment(Part):
    """Everything a report says."""

    visit: Visit
    verdict: Verdict
    findings: tuple[FindingEntry, ...]
    causes: tuple[FindingEntry, ...]
    ruled_out: tuple[FindingEntry, ...]
    look_next: tuple[UnseenEntry, ...]
    unseen: tuple[UnseenEntry, ...]
    jobs: tuple[Job, ...]
    due: tuple[DueEntry, ...]
    costs: Costs | None = None
    shown_units: Literal["typed", "metric", "imperial"] = "typed"
    measurements: tuple[Measurement, ...]
    coverage: tuple[SystemCoverage, ...]
    cautions: tuple[CautionEntry, ...]
    rules_judged: int
    version: str
