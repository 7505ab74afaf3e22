"""The frame number by itself, readings in order of date, distance each year."""

from __future__ import annotations

import pytest

from tests.deriving.looks import fact, measured, sentences, word

PAPERS, COUNTER = "papers @ whole machine", "odometer record @ whole machine"
KIND = "shaft drive motorcycle"
ONES = "1" * 17
"""A published number whose check digit fits; its tenth place stands for 2001 and 2031."""


def number(name: str, market: str, **machine: str) -> str | None:
    found = fact(PAPERS, name, {PAPERS: {"market": market}}, machine={"kind": KIND, **machine})
    return word(found) if found.seen else None


@pytest.mark.parametrize(
    ("vin", "market", "answer"),
    [
        (ONES, "united states or canada", "fits"),
        (ONES, "china", "fits"),
        ("11111211111111111", "united states or canada", "does not fit"),
        ("1111121111111111", "united states or canada", "not seventeen characters"),
        ("11111211111111111", "not known", "not known"),
        ("11111211111111111", "elsewhere", None),  # EU, UK, Japan and Australia ask for none
    ],
)
def test_the_check_digit_counts_where_the_law_asks_for_one(vin: str, market: str, answer: str | None) -> None:
    """49 CFR 565."""
    assert number("vin_check", market, vin=vin) == answer


@pytest.mark.parametrize(
    ("vin", "year", "answer"),
    [
        (ONES, "2001", "fits"),
        (ONES, "2000", "fits"),  # model years begin in the summer before
        (ONES, "2012", "does not fit"),
        (f"{'1' * 9}T{'1' * 7}", "1996", "fits"),  # T stands for 1996 and 2026
        (f"{'1' * 9}T{'1' * 7}", "2025", "fits"),
        (f"{'1' * 9}T{'1' * 7}", "2010", "does not fit"),
        (f"{'1' * 9}0{'1' * 7}", "2012", "no year there"),
    ],
)
def test_both_rounds_of_the_year_letters_are_tried(vin: str, year: str, answer: str) -> None:
    assert number("vin_year", "united states or canada", vin=vin, year=year) == answer


def test_a_machine_from_before_the_long_numbers_is_left_alone() -> None:
    assert number("vin_check", "united states or canada", vin="1234567", year="1974") is None


def test_the_number_itself_is_never_printed() -> None:
    machine = {"kind": KIND, "vin": "11111211111111111", "year": "2012"}
    says = sentences({PAPERS: {"market": "united states or canada"}}, machine=machine)

    assert {"papers/check_digit_wrong", "papers/frame_number_year_differs"} <= set(says)
    assert not any("1111" in sentence for sentence in says.values())


@pytest.mark.parametrize(
    ("readings", "answer"),
    [
        ("2019-05 18 200 km; 2022-06-12 24 900 km", "rise"),
        ("2022-06 24 900 km; 2019-05: 18 200 km", "rise"),
        ("2019-05 71 000 km; 2022-06 38 000 km", "falls"),
        ("2019-05 30 000 km; 2022-06 21 000 km", "falls unless miles were meant"),  # 21 000 mi are 33 800 km
        ("2019-05 18 600 mi; 2022-06 31 000 km", "rise"),
        ("2022-06 52 000 km", "falls unless miles were meant"),  # today's 40 000 km would be 64 400
        ("2022-06 70 000 km", "falls"),  # today's 40 000 km lie below it
        ("last year about twenty thousand", "cannot be read"),
        ("2019-13 18 200 km", "cannot be read"),
        ("2030-01 18 200 km", "cannot be read"),
        (";", "cannot be read"),
    ],
)
def test_distance_cannot_run_backwards(readings: str, answer: str) -> None:
    assert word(fact(COUNTER, "readings_order", {COUNTER: {"readings_list": readings}})) == answer


def test_distance_each_year_from_the_first_registration() -> None:
    """40 000 km on 1 June 2026, first registered eight years before."""
    found = measured(fact(COUNTER, "distance_each_year", {COUNTER: {"first_registered": "2018-06-01"}}))

    assert found.typed == "5000 km"
    assert found.uncertainty == 0


def test_the_year_of_build_alone_leaves_half_a_year_open() -> None:
    found = measured(fact(COUNTER, "distance_each_year", {}, machine={"kind": KIND, "year": "2022"}))

    assert found.amount.base == pytest.approx(10_000, rel=0.03)
    assert found.uncertainty == pytest.approx(790, rel=0.1)


def test_what_was_written_down_counts_first_and_a_new_machine_has_no_average() -> None:
    written = {"distance_a_year": "6000 km", "first_registered": "2018-06-01"}

    assert measured(fact(COUNTER, "distance_each_year", {COUNTER: written})).typed == "6000 km"
    assert not fact(COUNTER, "distance_each_year", {COUNTER: {"first_registered": "2026-01"}}).seen
