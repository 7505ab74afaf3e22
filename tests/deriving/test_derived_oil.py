"""The laboratory sheet of the drained drive oil."""

from __future__ import annotations

import pytest

from inspector.knowledge.library import knowledge
from inspector.quantities.oils import against_gear_grade, gear_band, gear_grade_match
from inspector.quantities.units import parse_amount
from tests.deriving.looks import fact, measured, sentences, word

SAMPLE = "oil sample @ rear"


def derived(name: str, **looks: str) -> str:
    return word(fact(SAMPLE, name, {SAMPLE: looks}))


def test_less_iron_on_a_shorter_run_is_the_worse_result() -> None:
    """240 ppm on 12 000 km are 20 for each 1000 km, 180 ppm on 4000 km are 45 (plain division)."""
    old = fact(SAMPLE, "iron_rate", {SAMPLE: {"iron": "240 ppm", "fill_distance": "12 000 km"}})
    new = fact(SAMPLE, "iron_rate", {SAMPLE: {"iron": "180 ppm", "fill_distance": "4000 km"}})

    assert measured(old).amount.base == pytest.approx(20)
    assert measured(new).amount.base == pytest.approx(45)
    assert measured(new).typed == "45 ppm/1000 km"
    assert old.limits["usual rate"].standing == "within"
    assert new.limits["usual rate"].standing == "beyond"


def test_the_trend_of_iron_goes_by_distance_not_by_the_figure() -> None:
    looks = {"iron": "180 ppm", "fill_distance": "4000 km", "earlier_iron": "240 ppm"}

    assert derived("iron_trend", **looks, earlier_distance="12 000 km") == "rising"
    assert derived("iron_trend", **looks, earlier_distance="6000 km") == "as before"


@pytest.mark.parametrize(
    ("index", "zone"),
    [("216", "no action"), ("217", "monitor"), ("270", "monitor"), ("271", "action")],
)
def test_the_debris_index_in_the_table_for_wheel_drives(index: str, zone: str) -> None:
    """Memo of an equipment dealer's oil laboratory, 2008; heavy machines."""
    assert derived("pq_zone", pq_index=index) == zone


def test_a_rise_by_half_counts_whatever_the_figure() -> None:
    assert derived("pq_trend", pq_index="90", earlier_pq_index="60") == "rising"
    assert derived("pq_trend", pq_index="85", earlier_pq_index="60") == "as before"


def test_two_numbers_up_in_the_particle_code_are_four_times_as_many() -> None:
    """19/16/10 is the published code of 3000, 500 and 7 particles per ml (ISO 4406)."""
    now = {"cleanliness_code": "19/16/10"}

    assert derived("code_trend", **now, earlier_cleanliness_code="17/15/10") == "dirtier"
    assert derived("code_trend", **now, earlier_cleanliness_code="18/15/9") == "as before"
    assert derived("code_trend", **now, earlier_cleanliness_code="21/16/10") == "cleaner"
    assert derived("code_trend", **now, earlier_cleanliness_code="16/19/10") == "no code"
    assert derived("code_trend", **now, earlier_cleanliness_code="quite clean") == "no code"
    assert derived("code_trend", **now, earlier_cleanliness_code=f"{'9' * 1500}/1/1") == "no code"


@pytest.mark.parametrize(
    ("found", "answer"),
    [
        ("12.9 mm²/s", "thinner than its grade"),  # 14 % under a new 15.0: out of a 90, which begins at 13.5
        ("13.5 mm²/s", "in its grade"),
        ("18.5 cSt", "thicker than its grade"),  # SAE J306: a 90 ends below 18.5
    ],
)
def test_the_drained_oil_is_held_against_the_grade_that_was_filled(found: str, answer: str) -> None:
    observations = {"final drive @ rear": {"oil_grade_filled": "75W-90"}, SAMPLE: {"viscosity_100": found}}

    assert word(fact(SAMPLE, "viscosity_against_grade", observations)) == answer


@pytest.mark.parametrize(
    ("filled", "specified", "answer"),
    [
        ("75W-90", "80W-90", "same"),  # flows in more cold, warm the same
        ("80W-90", "75W-90", "stiffer in the cold"),  # -26 in place of -40 degrees
        ("90", "75W-90", "stiffer in the cold"),
        ("75W-80", "75W-90", "thinner"),
        ("75W-140", "75W-90", "thicker"),
    ],
)
def test_the_grade_filled_against_the_grade_asked_for(filled: str, specified: str, answer: str) -> None:
    """SAE J306, February 2019."""
    looks = {"oil_grade_filled": filled, "oil_grade_specified": specified}

    assert word(fact("final drive @ rear", "grade_match", {"final drive @ rear": looks})) == answer


def test_every_grade_of_the_list_is_one_that_the_table_knows() -> None:
    looks = knowledge().properties["final drive"]
    offered = [grade for grade in looks["oil_grade_filled"].choices if grade != "not known"]

    assert len(offered) == 20
    for name in ("oil_grade_specified", "topped_up_grade"):
        assert set(looks[name].choices) == {*offered, "not known"}
    for grade in offered:
        assert gear_grade_match(grade, grade) == "same"
        assert against_gear_grade(gear_band(grade).low, grade) == "in its grade"


def test_large_particles_without_fine_iron_are_the_serious_pattern() -> None:
    both = {"pq_index": "300", "iron": "420 ppm ± 10 ppm"}
    large = {"pq_index": "300", "iron": "60 ppm ± 5 ppm"}

    assert "final_drive/sample_large_particles" in sentences({SAMPLE: large})
    assert "final_drive/sample_debris_high" not in sentences({SAMPLE: large})  # told by the worse finding
    assert "final_drive/sample_debris_high" in sentences({SAMPLE: both})


def test_no_sample_leaves_nothing_unseen() -> None:
    assert not fact(SAMPLE, "iron_rate", {}).expected
    assert not fact(SAMPLE, "water", {SAMPLE: {"iron": "20 ppm"}}).unseen


@pytest.mark.parametrize(
    ("typed", "dimension", "base"),
    [
        ("0.04 %", "ppm", 400),  # a part in a hundred is 10 000 parts in a million
        ("15 cSt", "viscosity", 15),  # 1 cSt is 1 mm²/s
        ("100 mph", "speed", 160.9344),  # NIST SP 811: the mile is 1.609344 km
        ("100 lb", "mass", 45.359237),  # NIST SP 811: the pound is 0.45359237 kg
        ("10 m/s", "speed", 36),
        ("10 ppm/1000 mi", "ppm per distance", 6.2137119),
    ],
)
def test_the_units_of_these_figures(typed: str, dimension: str, base: float) -> None:
    assert parse_amount(typed, dimension).base == pytest.approx(base, rel=1e-8)
