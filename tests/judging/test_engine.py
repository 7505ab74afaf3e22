"""The engine gives what a naive fixpoint gives, in any order of facts, and leaves nothing behind."""

from __future__ import annotations

import random
import resource
import threading

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.judging.engine import Engine, RuleError
from inspector.judging.grammar import Conclusion, Pattern, Payload, Production, compile_rules
from inspector.judging.stages import conclude, engines_for
from inspector.knowledge.library import knowledge
from tests.judging.naive import fixpoint

WORDS = st.sampled_from(["red", "green", "blue"])
KEYS = ["a", "b", "c"]
RULES = [f"r{i}" for i in range(5)]


def item_patterns() -> st.SearchStrategy[Pattern]:
    several = st.sets(WORDS, min_size=1, max_size=2).map(lambda words: tuple(sorted(words)))
    conditions = st.dictionaries(st.sampled_from(KEYS), several, min_size=1, max_size=2)
    return conditions.map(lambda c: Pattern("item", (("part", ("pad",)), *c.items())))


def finding_patterns() -> st.SearchStrategy[Pattern]:
    return st.sampled_from(RULES).map(lambda rule: Pattern("finding", (("rule", (rule,)),)))


@st.composite
def programs(draw: st.DrawFn) -> list[Production]:
    productions = [
        Production((draw(item_patterns()),), "finding", rule)
        for rule in draw(st.lists(st.sampled_from(RULES), min_size=1, max_size=5))
    ]
    for rule in draw(st.lists(st.sampled_from(RULES), max_size=4)):
        # at most one look and different findings: no fact could serve two patterns (which the engine forbids)
        patterns = draw(st.lists(finding_patterns(), min_size=1, max_size=3, unique=True))
        if draw(st.booleans()):
            patterns.append(draw(item_patterns()))
        productions.append(Production(tuple(patterns), "finding", rule, "whole machine"))
    return productions


FACTS = st.lists(
    st.fixed_dictionaries({"a": WORDS, "b": WORDS, "c": WORDS, "place": st.sampled_from(["front", "rear"])}),
    max_size=6,
)


@settings(max_examples=60, deadline=None)
@given(programs(), FACTS, st.randoms(use_true_random=False))
def test_the_engine_agrees_with_a_naive_fixpoint_in_any_order(
    productions: list[Production], looks: list[Payload], shuffle: random.Random
) -> None:
    facts = [{"kind": "item", "part": "pad", **look} for look in looks]
    engine = Engine(productions)
    try:
        expected = fixpoint(productions, facts)
        for _ in range(3):
            shuffle.shuffle(facts)
            assert engine.run(facts) == expected
    finally:
        engine.close()


@pytest.fixture(scope="module")
def productions() -> list[Production]:
    return compile_rules(knowledge(), knowledge().machines["shaft_drive"])


def random_facts(productions: list[Production], seed: int) -> list[Payload]:
    """Facts that satisfy many of the real rules: for each part at each place, values that some rule tests."""
    chooser = random.Random(seed)
    machine = knowledge().machines["shaft_drive"]
    tested: dict[str, dict[str, set[str]]] = {}
    for production in productions:
        for pattern in production.patterns:
            head = dict(pattern.conditions)
            for key, words in pattern.conditions:
                if pattern.kind == "item" and key not in ("part", "place"):
                    tested.setdefault(head["part"][0], {}).setdefault(key, set()).update(words)
    facts = []
    for part, places in machine.parts.items():
        for place in places:
            looks = {
                k: chooser.choice(sorted(v)) for k, v in tested.get(part, {}).items() if chooser.random() < 0.7
            }
            facts.append({"kind": "item", "part": part, "place": place, **looks})
    chooser.shuffle(facts)
    return facts


def test_the_real_rules_agree_with_a_naive_fixpoint_in_any_order(productions: list[Production]) -> None:
    engine = Engine(productions)
    concluded = 0
    for seed in range(6):
        facts = random_facts(productions, seed)
        result = engine.run(facts)
        assert result == fixpoint(productions, facts)
        assert engine.run(list(reversed(facts))) == result
        concluded += len(result)
    assert concluded > 1000
    engine.close()


def test_in_stages_the_same_follows_as_all_at_once(productions: list[Production]) -> None:
    for seed in range(6):
        facts = random_facts(productions, seed)
        result = conclude(facts, engines_for(knowledge(), "shaft_drive"))
        assert result == fixpoint(productions, facts)
        assert {one.kind for one in result} == {"finding", "member"}


def test_nothing_is_left_from_one_session_to_the_next(productions: list[Production]) -> None:
    """1,100 sessions: the engine refuses the 1,025th live one, so each must really be gone."""
    engine = Engine(productions)
    full, empty = random_facts(productions, 1), [{"kind": "item", "part": "nothing", "place": "x"}]
    expected = engine.run(full)
    for _ in range(1100):
        assert engine.run(empty) == frozenset()
    assert engine.run(full) == expected
    engine.close()


def test_memory_stays_flat_over_many_sessions(productions: list[Production]) -> None:
    """The full count of 20,000 assessments is run by tests/benchmarks/many_assessments.py."""
    engine = Engine(productions)
    facts = random_facts(productions, 2)[:12]
    for _ in range(100):
        engine.run(facts)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    for _ in range(800):
        engine.run(facts)
    grown = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before
    assert grown < 6_000, f"grew by {grown} kB"
    engine.close()


def test_an_error_in_a_rule_is_raised_with_the_name_of_the_rule() -> None:
    broken = Production((Pattern("item", (("part", ("pad",)),)),), "finding", "brakes/broken")
    engine = Engine([broken])
    with pytest.raises(RuleError, match="brakes/broken"):
        engine.run([{"kind": "item", "part": "pad"}])  # no place to conclude anything at
    fine = engine.run([{"kind": "item", "part": "pad", "place": "rear"}])
    assert fine == {Conclusion("finding", "brakes/broken", "rear")}
    engine.close()


@pytest.mark.parametrize(
    "fact",
    [
        {"note": "x" * 70_000},
        {"a b": "word"},
        {"number": 1.5},
        {"sid": "other"},
    ],
)
def test_a_fact_the_engine_would_compare_wrongly_is_refused(fact: dict[str, str]) -> None:
    engine = Engine([Production((Pattern("item", (("part", ("pad",)),)),), "finding", "r")])
    with pytest.raises(ValueError, match="is not a short word"):
        engine.run([{"kind": "item", "part": "pad", **fact}])
    assert engine.run([]) == frozenset()
    engine.close()


def test_several_threads_may_use_one_engine(productions: list[Production]) -> None:
    engine = Engine(productions)
    facts = [random_facts(productions, seed) for seed in range(4)]
    expected = [engine.run(one) for one in facts]
    wrong: list[int] = []

    def work(number: int) -> None:
        for _ in range(4):
            if engine.run(facts[number]) != expected[number]:
                wrong.append(number)

    threads = [threading.Thread(target=work, args=(number,)) for number in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert wrong == []
    engine.close()
