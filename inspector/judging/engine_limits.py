"""What the engine can bear, checked when rules are loaded, because beyond it the engine hangs or crashes."""

from __future__ import annotations

import itertools
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator

from inspector.judging.grammar import Pattern, Production, compile_rules
from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.kept import once
from inspector.knowledge.library import Knowledge

MOST_PRODUCTIONS = 4000  # 4,096 are taken, the next is refused
MOST_SIBLINGS = 500  # with 512 different tests under one parent the engine never returns
MOST_ALIKE = 250  # 256 rules with the very same pattern fire wrongly
MOST_HITS = 60  # one fact that satisfies more than 64 tests of one parent is lost
MOST_FACTS = 16  # patterns in one production
MOST_CHOICES = 14  # tests of several words in one pattern; with 15 the engine refuses the rule


def over_the_limits(productions: Iterable[Production]) -> Iterator[tuple[str, str]]:
    """(rule, reason) for every rule that goes beyond what the engine can bear."""
    rules = list(productions)
    if len(rules) > MOST_PRODUCTIONS:
        yield rules[-1].rule, f"{len(rules)} productions; the engine takes {MOST_PRODUCTIONS}"
    alike = Counter(pattern for rule in rules for pattern in rule.patterns)
    siblings: dict[tuple[object, ...], set[tuple[str, str]]] = defaultdict(set)
    for rule in rules:
        if len(rule.patterns) > MOST_FACTS:
            yield rule.rule, f"gathers {len(rule.patterns)} members; the engine joins {MOST_FACTS}"
        if any(_may_be_one_fact(one, other) for one, other in itertools.combinations(rule.patterns, 2)):
            yield rule.rule, "two of its members could be the same fact; the engine gives each fact to one only"
        for pattern in rule.patterns:
            if alike[pattern] > MOST_ALIKE:
                yield rule.rule, f"{alike[pattern]} rules test exactly the same"
            if sum(len(words) > 1 for _, words in pattern.conditions) > MOST_CHOICES:
                yield rule.rule, f"more than {MOST_CHOICES} tests with several words each"
            for depth, (key, words) in enumerate(pattern.conditions):
                parent = (pattern.kind, *pattern.conditions[:depth])
                siblings[parent] |= {(key, word) for word in words}
                if len(siblings[parent]) > MOST_SIBLINGS:
                    yield rule.rule, f"{len(siblings[parent])} different tests beside one another"
                if len({key for key, _ in siblings[parent]}) > MOST_HITS:
                    yield rule.rule, f"one fact could satisfy more than {MOST_HITS} tests at once"


def _may_be_one_fact(one: Pattern, other: Pattern) -> bool:
    """Whether one fact could satisfy both patterns: nothing in them contradicts."""
    told = dict(one.conditions)
    if one.kind != other.kind:
        return False
    return all(set(told.get(key, words)) & set(words) for key, words in other.conditions)


def check_engine(knowledge: Knowledge) -> None:
    """Raise Faults when the rules of any machine kind go beyond what the engine can bear."""
    faults: list[Fault] = []
    for kind, machine in knowledge.machines.items():
        if not machine.abstract:
            try:
                checked_productions(knowledge, kind)
            except Faults as found:
                faults += found.faults
    if faults:
        raise Faults(faults)


@once
def checked_productions(knowledge: Knowledge, kind: str) -> list[Production]:
    """The compiled rules of a machine kind, within what the engine can bear. Raises Faults."""
    machine = knowledge.machines[kind]
    productions = compile_rules(knowledge, machine)
    faults = [
        Fault(f"rules/findings/{rule}.yaml", 1, 1, f"{reason} (machine kind `{machine.called}`)")
        for rule, reason in over_the_limits(productions)
    ]
    if faults:
        raise Faults(faults)
    return productions
