"""Delegated Regulation (EU) 2024/3173, Annex II: grid, words, steps; the worked chair of its forerunners."""

import math

import pytest

from inspector.weighing.risk import (
    CHANCE,
    CHANCE_BANDS,
    grid_level,
    risk_range,
    risk_words,
    story_probability,
)

LETTERS = {"serious": "S", "high": "H", "medium": "M", "low": "L"}


@pytest.mark.parametrize(
    ("probability", "row"),
    [
        (0.6, "HSSS"),
        (0.2, "MSSS"),
        (0.02, "MSSS"),
        (2e-3, "LHSS"),
        (2e-4, "LMHS"),
        (2e-5, "LLMH"),
        (2e-6, "LLLM"),
        (5e-7, "LLLL"),
    ],
)
def test_every_cell_of_the_grid(probability, row):
    # 3.6.2
    assert "".join(LETTERS[grid_level(probability, severity)] for severity in (1, 2, 3, 4)) == row


@pytest.mark.parametrize(
    ("edge", "severity", "upper"),
    [
        (0.5, 1, "high"),
        (0.1, 1, "medium"),
        (0.01, 1, "medium"),
        (0.001, 2, "high"),
        (0.0001, 3, "high"),
        (1e-05, 4, "high"),
        (1e-06, 4, "medium"),
    ],
)
def test_a_tie_takes_the_upper_row(edge, severity, upper):
    # index and grid of the law disagree about the edges (3.4.4 against 3.6.2); the more cautious is taken
    assert grid_level(edge, severity) == upper


@pytest.mark.parametrize(("edge", "severity", "lower"), [(0.5, 1, "medium"), (1e-2, 1, "low"), (1e-6, 4, "low")])
def test_just_under_an_edge_takes_the_lower_row(edge, severity, lower):
    assert grid_level(edge * (1 - 1e-6), severity) == lower


def test_a_product_that_should_meet_an_edge_meets_it():
    product = 0.03 * (1 / 3) * 0.1

    assert product < 1e-3  # by the last bit only
    assert grid_level(product, 2) == "high"


def test_folding_chair_of_the_forerunners():
    # Decision 2010/15/EU and Implementing Decision (EU) 2019/417, section 6.1: 1 x 1/50 x 1/10 x 1 = 1/500
    probability = math.prod([1, 1 / 50, 1 / 10, 1])

    assert probability == pytest.approx(1 / 500)
    assert grid_level(probability, 1) == "low"


@pytest.mark.parametrize(
    ("steps", "severity", "probability", "words"),
    [
        ((0.95, 0.3, 0.05, 0.3), 3, 4.3e-3, "high to serious"),
        ((1, 0.02, 0.3, 0.3), 4, 1.8e-3, "serious"),
        ((0.3, 0.02, 0.2, 0.2), 4, 2.4e-4, "high to serious"),
        ((0.4, 0.2, 0.01, 0.1), 2, 8e-5, "low to medium"),
    ],
)
def test_stories_of_our_own(steps, severity, probability, words):
    # illustrations, calculated by the rule of 3.4.2; the step values are no data
    assert math.prod(steps) == pytest.approx(probability, rel=0.02)
    assert risk_words(math.prod(steps), severity) == words


@pytest.mark.parametrize(
    ("word", "above", "up_to"),
    [
        ("very frequent", 0.5, 1),
        ("frequent", 0.1, 0.5),
        ("common", 1e-2, 1e-1),
        ("occasional", 1e-3, 1e-2),
        ("unlikely", 1e-4, 1e-3),
        ("unusual", 1e-5, 1e-4),
        ("rare", 1e-6, 1e-5),
    ],
)
def test_chance_words(word, above, up_to):
    # 3.4.4
    assert CHANCE_BANDS[word] == pytest.approx((above, up_to))
    assert above < CHANCE[word] < up_to


def test_the_rarest_word_stays_under_one_in_a_million():
    assert 0 < CHANCE["extremely rare"] < 1e-6


def test_a_story_multiplies_its_steps():
    # 3.4.2
    assert story_probability(["certain", "common", "frequent"]) == pytest.approx(
        CHANCE["common"] * CHANCE["frequent"]
    )


@pytest.mark.parametrize("steps", [[], ["certain"] * 6])
def test_a_story_has_at_most_five_steps(steps):
    # 3.2.4
    with pytest.raises(ValueError, match="one to 5 steps"):
        story_probability(steps)


def test_an_unknown_word_is_refused():
    with pytest.raises(ValueError, match="no chance word"):
        story_probability(["certain", "perhaps"])


def test_ten_times_a_near_certain_chance_stays_a_chance():
    assert risk_range(0.7, 1) == ("medium", "high", "high")


@pytest.mark.parametrize(("probability", "severity"), [(-0.1, 1), (1.1, 1), (math.nan, 1), (0.5, 0), (0.5, 5)])
def test_nonsense_is_refused(probability, severity):
    with pytest.raises(ValueError, match=r"must lie|is 1, 2, 3 or 4"):
        grid_level(probability, severity)
