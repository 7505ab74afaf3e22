"""The sentence of a verdict and what stands beside it, in the fixed words of the reports."""

from __future__ import annotations

from collections.abc import Mapping

from inspector.knowledge.wording import words
from inspector.weighing.assessment import Assessment, Verdict

READERS = ("buyer", "owner", "mechanic")


def verdict_sentence(assessment: Assessment) -> str:
    """The one sentence that answers the reader, with its reason; chosen by purpose and level."""
    verdict = assessment.verdict
    sentences = words()["verdict"][assessment.visit.purpose.replace(" ", "_")]
    deciding = sum(system.critical_expected for system in assessment.coverage)
    filled: str = sentences[_key(verdict, sentences)].format(
        reason=_reason(verdict),
        critical_unseen=_critical(verdict.critical_unseen),
        critical_expected=deciding,
        first_unseen=verdict.first_unseen or "",
    )
    return filled


def ride_answer(assessment: Assessment, reader: str) -> tuple[str, str]:
    """The question of riding it and its short answer for this reader."""
    ride = words()["ride"][reader]
    return ride["question"], ride[_key(assessment.verdict, ride)]


def _key(verdict: Verdict, table: Mapping[str, str]) -> str:
    """The level; where only property is at stake, the words for that, if there are any."""
    special = f"{verdict.level}_property"
    return special if verdict.leading_to == "property" and special in table else verdict.level


def verdict_more(assessment: Assessment) -> tuple[str, ...]:
    """What belongs beside the sentence: findings of the same level, deciding things that are unseen."""
    verdict, parts = assessment.verdict, words()["verdict_parts"]
    lines = []
    if verdict.leading is not None and verdict.others:
        key = "others_one" if verdict.others == 1 else "others_many"
        lines.append(parts[key].format(others=verdict.others))
    if _also_unseen(verdict):
        lines.append(parts["also_unseen"].format(critical_unseen=_critical(verdict.critical_unseen)))
    return tuple(lines)


def verdict_first(assessment: Assessment) -> str:
    """Which deciding thing to look at first, where there is no list of them beside the verdict."""
    verdict = assessment.verdict
    if not _also_unseen(verdict) or not verdict.first_unseen:
        return ""
    return str(words()["verdict_parts"]["first_unseen"].format(first_unseen=verdict.first_unseen))


def _also_unseen(verdict: Verdict) -> bool:
    return verdict.level != "unseen" and verdict.critical_unseen > 0


def is_cause(label: str | None) -> bool:
    """Whether a label is that of a suspected cause (a letter), not of a finding (a number)."""
    return label is not None and not label.isdigit()


def _reason(verdict: Verdict) -> str:
    if verdict.leading_title is None:
        return ""
    kind = "reason_cause" if is_cause(verdict.leading) else "reason_finding"
    parts = words()["verdict_parts"]
    text: str = parts[kind].format(title=verdict.leading_title, place=verdict.leading_place)
    return text


def _critical(number: int) -> str:
    parts = words()["verdict_parts"]
    text: str = parts["critical_one" if number == 1 else "critical_many"].format(number=number)
    return text


def looks_made(assessment: Assessment) -> str:
    """How many of the looks that were expected were made, and of those that decide."""
    systems = assessment.coverage
    text: str = words()["text"]["coverage"].format(
        looked=sum(system.looked for system in systems),
        expected=sum(system.expected for system in systems),
        critical_looked=sum(system.critical_looked for system in systems),
        critical_expected=sum(system.critical_expected for system in systems),
    )
    return text
