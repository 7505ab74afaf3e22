"""Turn facts into the few words that a finding carries: evidence, certainty, the sentence of a rule."""

from __future__ import annotations

from inspector.deriving.facts import Fact
from inspector.judging.judge import Finding, Ground
from inspector.knowledge.library import Knowledge
from inspector.knowledge.rules import LIMIT_TESTS, PLACEHOLDER
from inspector.knowledge.wording import words
from inspector.reading.inspection import Measured, Silent
from inspector.weighing.assessment import Evidence

# likelihood words as the IPCC defines them: > 99, > 90, > 66, > 50 %
_LIKELIHOOD = (
    (0.99, "virtually certain"),
    (0.90, "very likely"),
    (0.66, "likely"),
    (0.5, "more likely than not"),
)
_EYES = ("obvious", "moderate", "subtle")  # the harder the look, the later


def value_text(fact: Fact) -> str:
    """The value of a fact as the person typed it."""
    return "" if isinstance(fact.value, Silent) else fact.value.typed


def evidence(ground: Ground) -> Evidence:
    """A ground in print: value, tool, limit with its origin, note and photo."""
    fact, observation = ground.fact, ground.fact.observation
    limit = fact.limits.get(ground.test.values[0]) if ground.test.word in LIMIT_TESTS else None
    measured = isinstance(fact.value, Measured)
    return Evidence(
        part=fact.part,
        place=fact.place,
        name=fact.name,
        value=value_text(fact),
        kind="worked out" if fact.derived_from else "measured" if measured else "seen",
        tool=fact.value.tool if isinstance(fact.value, Measured) else None,
        limit=limit.band.words if limit and limit.band else None,
        limit_origin=limit.band.origin if limit and limit.band else None,
        note=observation.note if observation else None,
        photo=observation.photo if observation else None,
    )


def sentence(finding: Finding) -> str:
    """What the rule says, with its placeholders filled from the facts."""
    values = {"place": finding.place}
    for ground in finding.grounds:
        values[ground.fact.name] = value_text(ground.fact)
        if ground.test.word in LIMIT_TESTS:
            band = ground.fact.limits[ground.test.values[0]].band
            if band is not None:
                values.setdefault("limit", band.text)
                values.setdefault("limit_origin", band.origin)
    text = PLACEHOLDER.sub(lambda match: values.get(match[1], match[0]), finding.rule.says)
    return text[:1].upper() + text[1:]


def certainty(finding: Finding, knowledge: Knowledge) -> str:
    """How sure a finding is, in words."""
    rule = finding.rule
    if rule.is_suspicion:
        steps = ("weak", "medium", "strong")
        return steps[min(steps.index(rule.certainty) + finding.backed, 2)]
    if rule.certainty != "as good as the reading":
        return rule.certainty
    chances = [chance for ground in finding.grounds if (chance := _chance(ground)) is not None]
    if chances:
        least = min(chances)
        return next((word for bound, word in _LIKELIHOOD if least >= bound), "more likely than not")
    eyes = [
        knowledge.properties[g.fact.part][g.fact.name].eyes
        for g in finding.grounds
        if not g.fact.derived_from and g.test.word != "reaches"  # a forecast is as good as its readings
    ]
    if not eyes:
        return "as good as the reading"
    hardest = max(eyes, key=_EYES.index)
    missed = round(10 * (1 - knowledge.stakes.look_finds[hardest].sensitivity))
    seen = words()["seen"]
    return str(seen[hardest].format(missed=seen["counts"][missed]))


def _chance(ground: Ground) -> float | None:
    if ground.test.word not in ("beyond", "within") or not isinstance(ground.fact.value, Measured):
        return None
    chance = ground.fact.limits[ground.test.values[0]].chance
    if chance is None:
        return None
    return chance if ground.test.word == "beyond" else 1 - chance
