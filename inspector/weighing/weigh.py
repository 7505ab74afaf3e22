"""Weigh a judgement into an assessment: verdict, order, jobs, what was not seen, cautions."""

from __future__ import annotations

from functools import cache
from importlib.metadata import PackageNotFoundError, version

from inspector.judging.judge import Judgement
from inspector.knowledge.library import Knowledge
from inspector.quantities.units import convert, number_text
from inspector.reading.inspection import Inspection
from inspector.weighing.assessment import (
    LEVELS,
    Assessment,
    CautionEntry,
    FindingEntry,
    Job,
    LevelName,
    UnseenEntry,
    Verdict,
    Visit,
)
from inspector.weighing.coming import add_months
from inspector.weighing.due import due_entries
from inspector.weighing.entries import Entries, harms_property, make_entries
from inspector.weighing.measured import measurements
from inspector.weighing.unseen import coverage, look_next, unseen_entries


def weigh(judgement: Judgement, knowledge: Knowledge) -> Assessment:
    """Turn the answers of the rules into everything a report says."""
    entries = make_entries(judgement, knowledge)
    unseen = unseen_entries(judgement, knowledge)
    inspection = judgement.facts.inspection
    standing = [*entries.findings, *entries.causes]
    asked_next = look_next(unseen)
    return Assessment(
        visit=_visit(inspection, judgement.facts.machine.called),
        verdict=_verdict(standing, unseen),
        findings=entries.findings,
        causes=entries.causes,
        ruled_out=entries.ruled_out,
        look_next=asked_next,
        unseen=unseen,
        jobs=_jobs(entries),
        due=due_entries(judgement.facts, knowledge),
        measurements=measurements(judgement.facts, knowledge),
        coverage=coverage(judgement, knowledge),
        cautions=_cautions(standing, asked_next, knowledge),
        rules_judged=len(knowledge.rules),
        version=program_version(),
    )


@cache
def program_version() -> str:
    """The version of this program, as far as it was installed."""
    try:
        return version("inspector")
    except PackageNotFoundError:  # run from a checkout that was never installed
        return "not installed"


def _visit(inspection: Inspection, called: str) -> Visit:
    odometer = inspection.odometer.typed if inspection.odometer else None
    unit = inspection.odometer.unit if inspection.odometer else "km"
    months = number_text(inspection.horizon_months)
    distance = number_text(convert(inspection.horizon_km, "km", unit, "distance"))
    return Visit(
        kind=called,
        name=inspection.name,
        year=inspection.year,
        vin=inspection.vin,
        odometer=odometer,
        purpose=inspection.purpose,
        date=inspection.day.isoformat(),
        country=inspection.country,
        horizon=f"{months} months or {distance} {unit}",
        next_look=add_months(inspection.day, inspection.horizon_months).isoformat(),
        request=inspection.request,
        asking_price=inspection.asking_price.typed if inspection.asking_price else None,
        tried=inspection.tried,
        remarks=inspection.remarks,
        work=tuple(f"{what.replace('_', ' ')}, {place}" for what, place in inspection.work),
        invented=inspection.invented,
    )


def _verdict(standing: list[FindingEntry], unseen: tuple[UnseenEntry, ...]) -> Verdict:
    """Never better than the worst finding, and never sound while a critical item is unseen."""
    critical = [entry for entry in unseen if entry.critical]
    worst = min(standing, key=lambda e: (LEVELS.index(e.level), harms_property(e)), default=None)
    level: LevelName = worst.level if worst is not None else "sound"
    if critical and level not in ("stop", "repair"):
        level = "unseen"
    leading = worst if worst is not None and level == worst.level else None
    return Verdict(
        level=level,
        leading=leading.label if leading else None,
        leading_title=leading.title if leading else None,
        leading_place=leading.place if leading else None,
        leading_to=leading.risk.to if leading and leading.risk else None,
        others=max(sum(entry.level == level for entry in standing) - 1, 0),
        critical_unseen=len(critical),
        first_unseen=f"{critical[0].part}, {critical[0].place}: {critical[0].ask}" if critical else None,
    )


def _jobs(entries: Entries) -> tuple[Job, ...]:
    """Every step once, in the order of the findings, with the labels of all findings that ask for it."""
    labels: dict[tuple[str, str], list[FindingEntry]] = {}
    for entry in sorted((*entries.findings, *entries.causes), key=lambda e: LEVELS.index(e.level)):
        for action in entry.do:
            labels.setdefault((action.by, action.step), []).append(entry)
    return tuple(
        Job(
            by="owner" if by == "owner" else "licensed mechanic",
            step=step,
            labels=tuple(dict.fromkeys(e.label for e in asking)),
            level=min((e.level for e in asking), key=LEVELS.index),
        )
        for (by, step), asking in labels.items()
    )


def _cautions(
    standing: list[FindingEntry], asked_next: tuple[UnseenEntry, ...], knowledge: Knowledge
) -> tuple[CautionEntry, ...]:
    """Cautions of the findings and of the looks that are asked for next, then those that always stand."""
    ids = [caution for entry in standing for caution in entry.cautions]
    for asked in asked_next:
        ids += knowledge.properties[asked.part][asked.name].cautions
    ids += [name for name, caution in knowledge.cautions.items() if caution.always]
    return tuple(
        CautionEntry(id=name, title=knowledge.cautions[name].title, text=knowledge.cautions[name].text)
        for name in dict.fromkeys(ids)
    )
