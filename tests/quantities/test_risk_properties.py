"""Risk: what must hold for every story."""

from hypothesis import given
from hypothesis import strategies as st

from inspector.weighing.risk import (
    CHANCE,
    combine_classes,
    grid_level,
    risk_range,
    risk_words,
    story_probability,
)

ORDER = ("low", "medium", "high", "serious")
CHANCES = st.floats(0, 1)
SEVERITIES = st.integers(1, 4)
CLASSES = st.lists(st.sampled_from(["none", "minor", "major", "dangerous"]))
WORDS = st.lists(st.sampled_from(sorted(CHANCE)), min_size=1, max_size=5)


def rank(level: str) -> int:
    return ORDER.index(level)


@given(CHANCES, CHANCES, SEVERITIES, SEVERITIES)
def test_no_risk_falls_when_chance_or_severity_rises(chance, other_chance, severity, other_severity):
    less, more = sorted((chance, other_chance))
    milder, worse = sorted((severity, other_severity))

    assert rank(grid_level(less, milder)) <= rank(grid_level(more, worse))


@given(CHANCES, SEVERITIES)
def test_a_range_rises_and_holds_its_middle(chance, severity):
    low, middle, high = risk_range(chance, severity)

    assert rank(low) <= rank(middle) <= rank(high)
    assert middle == grid_level(chance, severity)
    assert risk_words(chance, severity) == (low if low == high else f"{low} to {high}")


@given(WORDS)
def test_a_further_step_never_makes_a_story_likelier(words):
    assert story_probability(words) <= min(CHANCE[word] for word in words) * (1 + 1e-12)


@given(WORDS, st.randoms())
def test_the_order_of_steps_does_not_matter(words, chance):
    shuffled = list(words)
    chance.shuffle(shuffled)

    for severity in (1, 2, 3, 4):
        assert grid_level(story_probability(words), severity) == grid_level(story_probability(shuffled), severity)


def test_rarer_words_stand_for_smaller_chances():
    chances = list(CHANCE.values())

    assert chances == sorted(chances, reverse=True)
    assert len(set(chances)) == len(chances)


@given(CLASSES, CLASSES)
def test_classes_combine_in_any_grouping(some, others):
    together = combine_classes([combine_classes(some), combine_classes(others)])

    assert combine_classes(some + others) == together
