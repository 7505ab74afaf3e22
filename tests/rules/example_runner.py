"""Run the examples that stand in the rule files through the real reading, deriving and judging steps."""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from datetime import date
from typing import Any

from inspector.deriving.facts import Facts, derive_facts
from inspector.judging.judge import Finding, Judgement, judge
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import related
from inspector.knowledge.rules import Example, Rule
from inspector.knowledge.yamlfile import Document
from inspector.reading.record import read_document

HEADINGS = {"fires_on": "yes", "stays_quiet_on": "no", "leaves_open": "open"}


def examples(rule: Rule) -> Iterator[tuple[str, Example]]:
    """Every example of a rule with the answer it must get."""
    for heading, answer in HEADINGS.items():
        for example in getattr(rule.examples, heading):
            yield answer, example


def variants(example: Example) -> Iterator[dict[str, dict[str, Any]]]:
    """`seen`, once for every combination of the values that are given as lists."""
    slots = [
        (address, name, value if isinstance(value, list) else [value])
        for address, looks in example.seen.items()
        for name, value in looks.items()
    ]
    for values in itertools.product(*(choices for _, _, choices in slots)):
        seen: dict[str, dict[str, Any]] = {address: {} for address in example.seen}
        for (address, name, _), value in zip(slots, values, strict=True):
            seen[address][name] = value
        yield seen


def facts(knowledge: Knowledge, rule: Rule, example: Example, seen: dict[str, dict[str, Any]]) -> Facts:
    """The facts of one variant of an example. Raises Faults when the example is no proper record."""
    kind = _kind(knowledge, {rule.about, *map(_part, seen), *map(_part, example.given)})
    service = bool(example.work) or any(
        knowledge.properties[_part(address)][name].moment == "service"
        for address, looks in seen.items()
        for name in looks
        if name in knowledge.properties.get(_part(address), {})
    )
    data = {
        "machine": {"kind": kind, **example.machine},
        "inspection": {
            "purpose": "after own service" if service else "before purchase",
            "date": example.date,
            "odometer": example.odometer,
            "country": example.country,
        },
        "work done": list(example.work),
        "limits": example.given,
        "observations": seen,
    }
    document = Document(f"example of {rule.id}: {example.case}", data)
    inspection = read_document(document, None, knowledge, date.fromisoformat(example.date))
    return derive_facts(inspection, knowledge)


def _kind(knowledge: Knowledge, parts: set[str]) -> str:
    """The first machine kind that has every part the example speaks of."""
    return next(
        kind
        for kind, machine in knowledge.machines.items()
        if not machine.abstract and all(part in machine.parts for part in parts if part)
    )


def _part(address: str) -> str:
    return address.partition("@")[0].strip()


def answer(knowledge: Knowledge, rule: Rule, example: Example, seen: dict[str, dict[str, Any]]) -> str:
    """`yes`, `no` or `open`: what the rule answers at the places the example speaks of."""
    return answer_in(judge(facts(knowledge, rule, example, seen), knowledge), rule, example)


def answer_in(judged: Judgement, rule: Rule, example: Example) -> str:
    """The same, in a judgement already made."""
    places = _places(judged, rule, example)
    mine = [one for one in judged.findings if one.rule.id == rule.id and one.place in places]
    if any(one.hidden_by is None for one in mine):
        return "yes"
    if mine:
        return "no"  # told by the worse finding it gives way to
    if any(one.rule.id == rule.id and one.place in places for one in judged.open):
        return "open"
    return "no"


def strength_in(judged: Judgement, rule: Rule, example: Example) -> tuple[Any, ...]:
    """Answer, and how many backers and refuters counted."""
    mine = [f for f in (*judged.findings, *judged.ruled_out) if f.rule.id == rule.id]
    return (answer_in(judged, rule, example), sorted(_weights(mine)))


def _weights(findings: list[Finding]) -> list[tuple[str, int, bool]]:
    return [(f.place, f.backed, f.refuted) for f in findings]


def _places(judged: Judgement, rule: Rule, example: Example) -> set[str]:
    own = judged.facts.machine.parts[rule.about]
    addressed = [(_part(a), a.partition("@")[2].strip()) for a in example.seen]
    direct = {place or own[0] for part, place in addressed if part == rule.about}
    if direct:
        return direct
    mentioned = [place for _, place in addressed if place]
    mentioned += [work.partition("@")[2].strip() for work in example.work]
    return {place for place in own if not mentioned or any(related(place, other) for other in mentioned)}
