"""What must hold of the knowledge as a whole, whoever adds to it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
import yaml

from inspector.knowledge.library import knowledge
from inspector.knowledge.model import Citation
from inspector.knowledge.rules import Rule, Tests
from inspector.weighing.assessment import LEVELS
from tests.records import assessed, good_observations

KNOWN = knowledge()
RULES = list(KNOWN.rules.values())
CATALOGUE = yaml.safe_load((Path(__file__).parent / "catalogue.yaml").read_text(encoding="utf-8"))
KINDS = [kind for kind, machine in KNOWN.machines.items() if not machine.abstract]
ALL_GOOD_WORDS = [0, 1, 2]


def all_tests(rule: Rule) -> Iterator[tuple[str, Tests]]:
    for tests in rule.cases():
        yield rule.about, tests
    for _, _, member in rule.members():
        for one in member.alternatives():
            if one.look is not None:
                yield one.look.part, one.look.tests


def test_every_file_below_findings_is_a_rule() -> None:
    files = list((Path(__file__).parents[2] / "rules" / "findings").rglob("*.yaml"))

    assert len(files) == len(RULES)
    assert len(RULES) >= 120


def test_every_row_of_the_catalogue_can_be_observed() -> None:
    covered = {row for entries in KNOWN.properties.values() for entry in entries.values() for row in entry.covers}

    assert set(CATALOGUE["observations"]) - covered == set()


@pytest.mark.parametrize("kind", ["chains", "mistakes"])
def test_every_cause_chain_and_every_mistake_is_a_rule(kind: str) -> None:
    covered = {row for rule in RULES for row in rule.covers}

    assert set(CATALOGUE[kind]) - covered == set()


def test_every_official_item_of_these_systems_is_carried_by_a_rule() -> None:
    covered = {item for rule in RULES for item in rule.official}
    missing = {
        item for item in CATALOGUE["official"] if not any(c == item or c.startswith(item + ".") for c in covered)
    }

    assert missing == set()


def test_every_observable_is_read_by_a_rule_or_marked_for_the_record_only() -> None:
    read = {(part, name) for rule in RULES for part, tests in all_tests(rule) for name in tests}
    for (part, _), limits in KNOWN.limits.items():
        read |= {(part, limit.by) for limit in limits.values() if limit.by}
    for _ in range(3):  # derived from derived
        for part, entries in KNOWN.properties.items():
            for name, entry in entries.items():
                if entry.derive is not None and (part, name) in read:
                    for address in (*entry.derive.of, *filter(None, [entry.derive.from_])):
                        other, _, source = address.rpartition(" ")
                        read.add((other or part, source))
    idle = [
        f"{part} {name}"
        for part, entries in KNOWN.properties.items()
        for name, entry in entries.items()
        if (part, name) not in read and not entry.record_only and not entry.work
    ]

    assert idle == []


def test_every_limit_is_tested_by_a_rule_or_carries_another_limit() -> None:
    tested = {
        (part, name, test.values[0])
        for rule in RULES
        for part, tests in all_tests(rule)
        for name, test in tests.items()
        if test.word in ("beyond", "within", "reaches")
    }
    for (part, name), limits in KNOWN.limits.items():
        for limit in limits.values():
            tested |= {(part, name, offset.limit) for offset in (limit.below, limit.above) if offset}
    idle = [
        (part, name, limit)
        for (part, name), limits in KNOWN.limits.items()
        for limit in limits
        if (part, name, limit) not in tested
    ]

    assert idle == []


def citations() -> Iterator[Citation]:
    for rule in RULES:
        yield from rule.sources
    for limits in KNOWN.limits.values():
        for limit in limits.values():
            yield from (*limit.sources, *limit.others_say)
    for table in (KNOWN.cautions, KNOWN.tools, KNOWN.wear):
        for entry in table.values():
            yield from entry.sources
    yield from KNOWN.stakes.sources


def test_every_source_is_cited() -> None:
    used_by_the_program_itself = {"eu_2024_3173"}  # the risk grid

    assert set(KNOWN.sources) - {citation.source for citation in citations()} - used_by_the_program_itself == set()


def test_every_caution_is_used() -> None:
    used = {caution for rule in RULES for caution in rule.cautions}
    used |= {c for entries in KNOWN.properties.values() for entry in entries.values() for c in entry.cautions}
    used |= {name for name, caution in KNOWN.cautions.items() if caution.always}

    assert set(KNOWN.cautions) - used == set()


def test_a_figure_from_memory_never_poses_as_read() -> None:
    """An own choice gives a reason; a reason is given only for what is ours or calculated here."""
    wrong = [
        citation
        for citation in citations()
        if (KNOWN.sources[citation.source].standing == "own choice") != (citation.known == "reason given")
        and KNOWN.sources[citation.source].standing in ("own choice",)
    ]

    assert wrong == []


@pytest.mark.parametrize("rule", [pytest.param(rule, id=rule.id) for rule in RULES])
def test_a_rule_says_what_was_seen_in_plain_words(rule: Rule) -> None:
    texts = [rule.title, rule.says, rule.means, rule.confirm, *(action.step for action in rule.do)]
    for text in texts:
        assert not re.search(r"\b(safe|unsafe|safely|guarantee\w*|obviously|simply)\b", text, re.IGNORECASE), text
        longest = max((len(s.split()) for s in re.split(r"(?<=[.!?:;])\s", text)), default=0)
        assert longest <= 34, f"a sentence of {longest} words: {text}"
    assert len(re.split(r"(?<=[.!?])\s+", rule.means.strip())) <= 4
    if rule.is_suspicion:
        assert re.search(r"\b(points?|suggests?|hints?|fits?|may|could|looks? like|speaks? for)\b", rule.says), (
            rule.says
        )


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("choice", ALL_GOOD_WORDS)
@pytest.mark.parametrize("purpose", ["before purchase", "after own service"])
def test_a_machine_in_good_order_gives_no_finding_above_watch(kind: str, choice: int, purpose: str) -> None:
    service = purpose == "after own service"
    observations = good_observations(KNOWN, kind, service=service, choice=choice)
    assessment = assessed(
        observations,
        kind=kind,
        purpose=purpose,
        limits={"brake disc": {"thickness": "at least 4.5 mm (stamped)"}},
        **({"work done": ["brake_pads @ front", "wheel @ rear"]} if service else {}),
    )
    above = [
        (entry.rule, entry.place)
        for entry in (*assessment.findings, *assessment.causes)
        if LEVELS.index(entry.level) < LEVELS.index("watch")
    ]

    assert above == []
    assert assessment.verdict.critical_unseen == 0
    assert assessment.verdict.level in ("sound", "watch")


@pytest.mark.parametrize("kind", KINDS)
def test_an_empty_record_gives_only_unseen(kind: str) -> None:
    assessment = assessed({}, kind=kind)

    assert assessment.findings == assessment.causes == ()
    assert assessment.verdict.level == "unseen"
    assert sum(system.looked for system in assessment.coverage) == 0


def test_no_two_rules_about_a_part_ask_exactly_the_same() -> None:
    seen: dict[str, str] = {}
    for rule in RULES:
        for tests in rule.cases():
            key = f"{rule.about}: {sorted((name, test.word, test.values) for name, test in tests.items())}"
            assert key not in seen or seen[key] == rule.id, (rule.id, seen.get(key))
            seen[key] = rule.id
