"""Engine oil: the grade filled, and the laboratory sheet of the drained oil."""

from __future__ import annotations

import pytest

from inspector.knowledge.library import knowledge
from inspector.quantities.oils import against_engine_grade, engine_band, engine_grade_match
from tests.deriving.looks import fact, sentences, word

ENGINE, SAMPLE = "engine @ engine", "engine oil sample @ engine"


@pytest.mark.parametrize(
    ("filled", "specified", "answer"),
    [
        ("10W-40", "10W-40", "same"),
        ("5W-40", "10W-40", "same"),  # flows in more cold, warm the same
        ("10W-30", "10W-40", "thinner"),
        ("20W-50", "10W-40", "thicker"),
        ("15W-40", "10W-40", "stiffer in the cold"),
        ("40", "10W-40", "stiffer in the cold"),
    ],
)
def test_the_grade_filled_against_the_grade_asked_for(filled: str, specified: str, answer: str) -> None:
    """SAE J300, January 2015."""
    looks = {"oil_grade_filled": filled, "oil_grade_specified": specified}

    assert word(fact(ENGINE, "grade_match", {ENGINE: looks})) == answer


@pytest.mark.parametrize(
    ("found", "answer"),
    [
        ("12.4 mm²/s", "thinner than its grade"),  # a 40 has 12.5 to below 16.3
        ("12.5 mm²/s", "in its grade"),
        ("16.3 mm²/s", "thicker than its grade"),
    ],
)
def test_the_drained_oil_is_held_against_its_grade(found: str, answer: str) -> None:
    observations = {ENGINE: {"oil_grade_filled": "10W-40"}, SAMPLE: {"viscosity_100": found}}

    assert word(fact(SAMPLE, "viscosity_against_grade", observations)) == answer


@pytest.mark.parametrize(
    ("cold", "hot", "answer"),
    [
        ("73.30 mm²/s", "8.86 mm²/s", "belong together"),  # ASTM D2270, 5.1.4: index 92
        ("22.83 mm²/s", "5.05 mm²/s", "belong together"),  # ASTM D2270, 6.1.4: index 156
        ("8.86 mm²/s", "55 mm²/s", "do not belong together"),
        ("900 mm²/s", "13.5 mm²/s", "do not belong together"),
        ("25 mm²/s", "13.5 mm²/s", "do not belong together"),
    ],
)
def test_two_viscosities_that_cannot_be_of_one_oil(cold: str, hot: str, answer: str) -> None:
    looks = {"viscosity_40": cold, "viscosity_100": hot}

    assert word(fact(SAMPLE, "sheet_viscosities", {SAMPLE: looks})) == answer


@pytest.mark.parametrize(
    ("name", "over", "under"),
    [
        # lubricant handbook of 2004: warn above
        ("iron", "120 ppm ± 2 ppm", "80 ppm ± 2 ppm"),  # 100
        ("chromium", "14 ppm ± 1 ppm", "7 ppm ± 1 ppm"),  # 10
        ("copper", "25 ppm ± 1 ppm", "15 ppm ± 1 ppm"),  # 20
        ("aluminium", "25 ppm ± 1 ppm", "15 ppm ± 1 ppm"),  # 20
        ("lead", "30 ppm ± 1 ppm", "20 ppm ± 1 ppm"),  # 25
        ("tin", "14 ppm ± 1 ppm", "7 ppm ± 1 ppm"),  # 10
        ("silicon", "25 ppm ± 1 ppm", "15 ppm ± 1 ppm"),  # 20
        ("water", "0.15 %", "0.05 %"),  # 0.1 %
        ("fuel", "6.5 %", "3 %"),  # 5 %
    ],
)
def test_the_warning_figures_of_the_handbook(name: str, over: str, under: str) -> None:
    rule = f"engine/sample_{name}"

    assert rule in sentences({SAMPLE: {name: over}})
    assert rule not in sentences({SAMPLE: {name: under}})


def test_every_grade_of_the_list_is_one_that_the_table_knows() -> None:
    looks = knowledge().properties["engine"]
    offered = [grade for grade in looks["oil_grade_filled"].choices if grade != "not known"]

    assert len(offered) == 21
    for name in ("oil_grade_specified", "topped_up_grade"):
        assert set(looks[name].choices) == {*offered, "not known"}
    for grade in offered:
        assert engine_grade_match(grade, grade) == "same"
        assert against_engine_grade(engine_band(grade).low, grade) == "in its grade"


def test_the_owner_reads_it_in_words() -> None:
    says = sentences({ENGINE: {"oil_grade_filled": "10W-30", "oil_grade_specified": "10W-40"},
                      SAMPLE: {"silicon": "40 ppm"}})  # fmt: skip

    assert says["engine/oil_grade_thinner"].endswith("is thinner than the grade the manual asks for.")
    assert "40 ppm of silicon; the line is 20 ppm" in says["engine/sample_silicon"]
