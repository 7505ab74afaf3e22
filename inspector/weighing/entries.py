"""Findings and suspected causes with their level, risk, order and labels."""

from __future__ import annotations

from dataclasses import dataclass, replace

from inspector.judging.judge import Finding, Judgement
from inspector.knowledge.kept import once
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import Class, Harm
from inspector.weighing.assessment import EFFORTS, LEVELS, Cited, FindingEntry, LevelName, Risk, ToDo
from inspector.weighing.risk import combine_classes, risk_range, risk_words, story_probability
from inspector.weighing.wording import certainty, evidence, sentence

MOST_RIVALS = 3
_RISKS = ("serious", "high", "medium", "low")
_STRENGTHS = ("strong", "medium", "weak")


def level_of(class_: Class, due: bool) -> LevelName:
    """The level a class leads to (2014/45/EU Art. 7 and 9; own choice for `plan` and remarks)."""
    if class_ == "dangerous":
        return "stop"
    if class_ == "major":
        return "repair"
    return "plan" if due else "watch"


def risk_of(harm: Harm | None) -> Risk | None:
    """Risk of a rule's story by the published grid."""
    if harm is None:
        return None
    probability = story_probability([step.chance for step in harm.story])
    severity = int(harm.severity)
    return Risk(
        level=risk_range(probability, severity)[1],
        words=risk_words(probability, severity),
        severity=severity,
        to=harm.to,
        story=tuple(f"{step.step} ({step.chance})" for step in harm.story),
    )


@dataclass(frozen=True)
class Entries:
    """All that stands, in the order of print."""

    findings: tuple[FindingEntry, ...]
    causes: tuple[FindingEntry, ...]
    ruled_out: tuple[FindingEntry, ...]


def make_entries(judgement: Judgement, knowledge: Knowledge) -> Entries:
    """Level, order and label every finding; put symptoms and causes in touch with each other."""
    plain = [f for f in judgement.findings if not f.rule.is_suspicion and f.hidden_by is None]
    suspected = [f for f in judgement.findings if f.rule.is_suspicion and f.hidden_by is None]
    classes = _classes(judgement, knowledge)
    maker = _Maker(knowledge, classes)
    numbered = _ordered([(f, maker.entry(f)) for f in plain])
    labels = {finding.key: str(number) for number, (finding, _) in enumerate(numbered, 1)}
    kept = strongest_rivals(_ordered([(f, maker.entry(f)) for f in suspected]))
    letters = {finding.key: _letter(number) for number, (finding, _) in enumerate(kept)}
    shown = _shown(judgement)
    kept = [(replace(f, symptoms=tuple(dict.fromkeys(shown.get(k, k) for k in f.symptoms))), e) for f, e in kept]
    findings = tuple(
        entry.model_copy(update={"label": labels[f.key], "explained_by": _causes_of(f, kept, letters)})
        for f, entry in numbered
    )
    causes = tuple(
        entry.model_copy(update={"label": letters[f.key], "symptoms": _labels(f, labels)}) for f, entry in kept
    )
    ruled_out = tuple(
        maker.entry(f).model_copy(update={"ruled_out_by": tuple({evidence(g): None for g in f.refuters})})
        for f in judgement.ruled_out
    )
    return Entries(findings, causes, ruled_out)


def _shown(judgement: Judgement) -> dict[tuple[str, str], tuple[str, str]]:
    """For a finding that is not shown, the worse one that stands in its place."""
    hidden = {f.key: (f.hidden_by, f.place) for f in judgement.findings if f.hidden_by is not None}
    shown = {}
    for key in hidden:
        worse = hidden[key]
        while worse in hidden:
            worse = hidden[worse]
        shown[key] = worse
    return shown


def _classes(judgement: Judgement, knowledge: Knowledge) -> dict[tuple[str, str], Class]:
    """Class of each finding; a cause is at least as bad as its worst symptom."""
    classes: dict[tuple[str, str], Class] = {f.key: f.rule.class_ for f in judgement.findings}
    for finding in judgement.findings:
        symptoms = [classes[key] for key in finding.symptoms if key in classes]
        classes[finding.key] = combine_classes([finding.rule.class_, *symptoms])
    return classes


class _Maker:
    def __init__(self, knowledge: Knowledge, classes: dict[tuple[str, str], Class]) -> None:
        self.known = knowledge
        self.classes = classes

    def entry(self, finding: Finding) -> FindingEntry:
        rule = finding.rule
        class_ = self.classes.get(finding.key, rule.class_)
        return FindingEntry(
            label="",
            rule=rule.id,
            title=rule.title,
            part=rule.about,
            place=finding.place,
            system=rule.system,
            level=level_of(class_, rule.due),
            class_name=class_,
            class_reason=rule.class_reason,
            official=rule.official,
            risk=_risk(self.known, rule.id),
            certainty=certainty(finding, self.known),
            says=sentence(finding),
            means=rule.means,
            evidence=tuple({evidence(ground): None for ground in finding.grounds}),
            do=_steps(self.known, rule.id),
            confirm=rule.confirm,
            mistaken_for=rule.mistaken_for,
            cautions=rule.cautions,
            sources=_sources(self.known, rule.id),
            effort=rule.effort,
            settled_by=rule.settled_by,
        )


@once
def _risk(knowledge: Knowledge, rule: str) -> Risk | None:
    return risk_of(knowledge.rules[rule].harm)


@once
def _steps(knowledge: Knowledge, rule: str) -> tuple[ToDo, ...]:
    return tuple(ToDo(step=action.step, by=action.by) for action in knowledge.rules[rule].do)


@once
def _sources(knowledge: Knowledge, rule: str) -> tuple[Cited, ...]:
    return tuple(
        Cited(
            source=citation.source,
            title=knowledge.sources[citation.source].title,
            at=citation.at,
            gives=citation.gives,
            standing=knowledge.sources[citation.source].standing,
            known=citation.known,
        )
        for citation in knowledge.rules[rule].sources
    )


Pair = tuple[Finding, FindingEntry]


def harms_property(entry: FindingEntry) -> bool:
    """Whether the harm of a finding is to property only; what may hurt someone comes before it."""
    return entry.risk is not None and entry.risk.to == "property"


def _ordered(pairs: list[Pair]) -> list[Pair]:
    """Worst level first; within it what harms a person, by risk, strength, and what is cheapest to settle."""

    def rank(pair: Pair) -> tuple[int, bool, int, int, int, str, str]:
        _, entry = pair
        risk = _RISKS.index(entry.risk.level) if entry.risk else len(_RISKS)
        strength = _STRENGTHS.index(entry.certainty) if entry.certainty in _STRENGTHS else 0
        level, effort = LEVELS.index(entry.level), EFFORTS.index(entry.effort)
        return (level, harms_property(entry), risk, strength, effort, entry.rule, entry.place)

    return sorted(pairs, key=rank)


def strongest_rivals(pairs: list[Pair]) -> list[Pair]:
    """At most three causes for one symptom, most dangerous first; the order of `pairs` decides."""
    used: dict[tuple[str, str], int] = {}
    kept = []
    for finding, entry in pairs:
        symptoms = finding.symptoms or (finding.key,)
        if all(used.get(key, 0) >= MOST_RIVALS for key in symptoms):
            continue
        for key in symptoms:
            used[key] = used.get(key, 0) + 1
        kept.append((finding, entry))
    return kept


def _letter(number: int) -> str:
    return chr(ord("A") + number) if number < 26 else f"A{number - 25}"


def _labels(cause: Finding, labels: dict[tuple[str, str], str]) -> tuple[str, ...]:
    return tuple(labels[key] for key in cause.symptoms if key in labels)


def _causes_of(finding: Finding, causes: list[Pair], letters: dict[tuple[str, str], str]) -> tuple[str, ...]:
    return tuple(letters[cause.key] for cause, _ in causes if finding.key in cause.symptoms)
