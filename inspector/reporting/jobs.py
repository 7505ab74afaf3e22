"""The list to tick off: the steps of one finding together, for one pair of hands."""

from __future__ import annotations

from dataclasses import dataclass

from inspector.weighing.assessment import Assessment

HANDS = ("owner", "licensed mechanic")


@dataclass(frozen=True)
class JobLine:
    """What to do about the findings named."""

    labels: tuple[str, ...]
    level: str
    text: str


def job_lines(assessment: Assessment) -> tuple[tuple[str, tuple[JobLine, ...]], ...]:
    """By who does it, in the order of the findings; nobody without a job."""
    found = []
    for by in HANDS:
        steps: dict[tuple[tuple[str, ...], str], list[str]] = {}
        for job in assessment.jobs:
            if job.by == by:
                steps.setdefault((job.labels, job.level), []).append(job.step)
        lines = tuple(JobLine(labels, level, " ".join(done)) for (labels, level), done in steps.items())
        if lines:
            found.append((by, lines))
    return tuple(found)
