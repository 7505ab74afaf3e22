"""The assessment as plain text for a terminal of a given width."""

from __future__ import annotations

from inspector.knowledge.wording import words
from inspector.reporting.costs_text import cost_lines
from inspector.reporting.due_text import due_lines
from inspector.reporting.front import ACT_NOW
from inspector.reporting.jobs import HANDS
from inspector.reporting.lines import bullet, heading, paragraph
from inspector.reporting.places import at, titled
from inspector.reporting.words import looks_made, ride_answer, verdict_first, verdict_more, verdict_sentence
from inspector.weighing.assessment import Assessment, Evidence, FindingEntry, UnseenEntry

_MOST_UNSEEN_LINES = 12


def to_text(assessment: Assessment, reader: str, width: int) -> str:
    """What was found, worst first, then what is suspected, what was not seen and what to do."""
    lines = _head(assessment, reader, width)
    lines += _findings(assessment, reader, width)
    lines += _causes(assessment, width)
    lines += _ahead(assessment, width)
    lines += due_lines(assessment, width)
    lines += _unseen(assessment, width)
    lines += _jobs(assessment, reader, width)
    lines += cost_lines(assessment, width)
    lines += _cautions(assessment, width)
    lines += ["", *paragraph(words()["text"]["private"], width)]
    return "\n".join(lines)


def _head(assessment: Assessment, reader: str, width: int) -> list[str]:
    visit, wording = assessment.visit, words()
    facts = [visit.name, visit.kind, str(visit.year) if visit.year else None, visit.odometer]
    lines = paragraph(", ".join(fact for fact in facts if fact), width)
    lines += paragraph(f"{wording['purpose'][visit.purpose]}, {visit.date}".capitalize(), width)
    if visit.invented:
        lines += paragraph(wording["text"]["invented"], width)
    level = wording["level"][assessment.verdict.level]
    lines += ["", *paragraph(verdict_sentence(assessment), width, "  ", f"[{level.upper()}] ")]
    for more in (*verdict_more(assessment), verdict_first(assessment)):
        lines += paragraph(more, width, "  ")
    lines += paragraph(" ".join(ride_answer(assessment, reader)), width, "  ")
    return lines


def _findings(assessment: Assessment, reader: str, width: int) -> list[str]:
    if not assessment.findings:
        return []
    lines = heading(words()["heading"]["findings"], width)
    for level in dict.fromkeys(entry.level for entry in assessment.findings):
        lines += ["", *paragraph(f"{words()['level'][level]}: {words()['level_means'][level]}", width)]
        for entry in assessment.findings:
            if entry.level == level:
                lines += _finding(entry, reader, width)
    return lines


def _finding(entry: FindingEntry, reader: str, width: int) -> list[str]:
    lines = bullet(titled(entry.title, entry.place), width, f"{entry.label}.", " ")
    indent = " " * 5
    lines += paragraph(entry.says, width, indent)
    if entry.level in ACT_NOW:
        lines += paragraph(entry.means, width, indent)
    lines += paragraph(_grounds(entry), width, indent)
    for action in entry.do if entry.level in ACT_NOW else entry.do[:1]:
        lines += bullet(f"{words()['by'][reader][action.by]}: {action.step}", width, ">", indent)
    if entry.explained_by:
        lines += paragraph(_said("explained_by", labels=", ".join(entry.explained_by)), width, indent)
    return lines


def _grounds(entry: FindingEntry) -> str:
    """Class, risk, how sure, and where the class comes from, in one line."""
    parts = [words()["class"][entry.class_name]]
    if entry.risk is not None:
        parts.append(_said("risk", risk=entry.risk.words))
    parts.append(entry.certainty)
    parts += dict.fromkeys(_tool(evidence) for evidence in entry.evidence if evidence.tool)
    source = entry.sources[0]
    cited = _said("source", title=source.title, at=source.at, standing=source.standing, known=source.known)
    return f"({'; '.join(parts)}. {cited})"


def _tool(evidence: Evidence) -> str:
    return _said("by_eye") if evidence.tool == "by eye" else _said("with_tool", tool=evidence.tool)


def _causes(assessment: Assessment, width: int) -> list[str]:
    if not assessment.causes and not assessment.ruled_out:
        return []
    lines = heading(words()["heading"]["causes"], width)
    if assessment.causes:
        lines += paragraph(words()["text"]["suspected"], width)
    for entry in assessment.causes:
        cause = _said("cause", title=titled(entry.title, entry.place), strength=entry.certainty)
        lines += bullet(cause, width, f"{entry.label}.", " ")
        signs = ", ".join(sorted(entry.symptoms, key=int))
        told = [_said("signs", labels=signs) if signs else "", entry.settled_by or ""]
        lines += paragraph(" ".join(text for text in told if text), width, " " * 5)
    for entry in assessment.ruled_out:
        lines += bullet(_said("ruled_out", title=titled(entry.title, entry.place)), width)
    return lines


def _said(name: str, **values: object) -> str:
    """One of the fixed words that only a terminal needs."""
    return str(words()["terminal"][name].format(**values))


def _unseen(assessment: Assessment, width: int) -> list[str]:
    lines: list[str] = []
    if assessment.look_next:
        lines += heading(words()["heading"]["look_next"], width)
        for entry in assessment.look_next:
            lines += bullet(f"{at(entry.part, entry.place)}: {entry.ask} {_cost(entry)}", width)
    if assessment.unseen:
        lines += heading(words()["heading"]["unseen"], width)
        grouped = _by_part(assessment.unseen)
        for part, names in list(grouped.items())[:_MOST_UNSEEN_LINES]:
            lines += bullet(f"{part}: {', '.join(names)}", width)
        if len(grouped) > _MOST_UNSEEN_LINES:
            rest = sum(len(names) for names in list(grouped.values())[_MOST_UNSEEN_LINES:])
            lines += bullet(_said("more_unseen", number=rest), width)
    if assessment.coverage:
        lines += ["", *paragraph(looks_made(assessment), width)]
    return lines


def _cost(entry: UnseenEntry) -> str:
    tools = f", {', '.join(entry.tools)}" if entry.tools else ""
    why = words()["because"][entry.because] + (f": {entry.reason}" if entry.reason else "")
    return f"({why}; {entry.minutes:g} min{tools})"


def _by_part(entries: tuple[UnseenEntry, ...]) -> dict[str, list[str]]:
    """Names of unseen properties by part and place; those that decide come first and carry a star."""
    grouped: dict[str, list[str]] = {}
    for entry in sorted(entries, key=lambda e: not e.critical):
        star = "*" if entry.critical else ""
        grouped.setdefault(at(entry.part, entry.place), []).append(f"{entry.name.replace('_', ' ')}{star}")
    return grouped


def _jobs(assessment: Assessment, reader: str, width: int) -> list[str]:
    if not assessment.jobs:
        return []
    lines = heading(words()["heading"]["jobs"], width)
    for by in HANDS:
        for job in assessment.jobs:
            if job.by == by and job.level in ACT_NOW:
                lines += bullet(f"{words()['by'][reader][by]}: {job.step} ({', '.join(job.labels)})", width, ">")
    return lines


def _cautions(assessment: Assessment, width: int) -> list[str]:
    lines = heading(words()["heading"]["cautions"], width)
    for caution in assessment.cautions:
        lines += bullet(f"{caution.title}. {caution.text}", width, "!")
    return lines


def _ahead(assessment: Assessment, width: int) -> list[str]:
    """What wears, with its forecast; left out when nothing that wears was measured."""
    lines: list[str] = []
    for one in assessment.measurements:
        if one.forecast:
            what = f"{at(one.part, one.place)}, {one.name.replace('_', ' ')}: {one.value}"
            lines += bullet(f"{what}. {one.forecast}", width)
    if not lines:
        return []
    intro = paragraph(words()["text"]["ahead_intro"], width, "  ")
    return [*heading(words()["heading"]["ahead"], width), *intro, *lines]
