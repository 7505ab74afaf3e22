"""Engine and drive oil topped up with another grade, and how stiff an engine oil gets in the coldest night."""

from __future__ import annotations

import pytest

from inspector.reading.inspection import Silent
from tests.deriving.looks import fact, measured, sentences, word

ENGINE = "engine @ engine"
FILLED = {"oil_grade_specified": "10W-40", "oil_grade_filled": "10W-40", "oil_volume": "3 l"}
SHEET = {"oil_viscosity_40": "165 mm²/s", "oil_viscosity_100": "18.6 mm²/s"}


def topped_up(grade: str, volume: str, **more: str) -> dict[str, dict[str, str]]:
    return {ENGINE: {**FILLED, "topped_up_grade": grade, "topped_up_volume": volume, **more}}


def test_the_mix_lies_between_both_oils_by_their_shares() -> None:
    """A 40 is 12.5 to 16.3 mm²/s, so 14.4 in the middle, and a 20 is 8.1: a third of it gives 11.8."""
    found = measured(fact(ENGINE, "mixed_viscosity", topped_up("0W-20", "1 l")))

    assert found.amount.base == pytest.approx(11.8, abs=0.1)
    assert 0.4 < found.uncertainty < 1.2


def test_a_data_sheet_counts_before_the_middle_of_a_grade() -> None:
    looks = topped_up("10W-40", "0 ml", oil_viscosity_100="13.1 mm²/s ± 0.1 mm²/s")
    found = measured(fact(ENGINE, "mixed_viscosity", looks))

    assert found.amount.base == pytest.approx(13.1, abs=0.02)
    assert found.uncertainty == pytest.approx(0.1, rel=0.05)


def test_more_topped_up_than_the_engine_holds_is_all_of_it() -> None:
    found = measured(fact(ENGINE, "mixed_viscosity", topped_up("10W-30", "4 l")))

    assert found.amount.base == pytest.approx((9.3 + 12.5) / 2, rel=0.001)


@pytest.mark.parametrize(
    ("grade", "volume", "answer"),
    [
        ("10W-40", "1 l", "in the grade asked for"),
        ("10W-30", "200 ml", "in the grade asked for"),
        ("10W-30", "1.2 l", "near the thin end of the grade"),
        ("0W-20", "1.5 l", "thinner than the grade asked for"),
        ("20W-50", "1.2 l", "near the thick end of the grade"),
        ("10W-60", "1.5 l", "thicker than the grade asked for"),
    ],
)
def test_the_mix_against_the_grade_of_the_manual(grade: str, volume: str, answer: str) -> None:
    assert word(fact(ENGINE, "mix_against_grade", topped_up(grade, volume))) == answer


def test_without_a_grade_in_the_manual_the_one_filled_counts() -> None:
    looks = topped_up("0W-20", "1.5 l", oil_grade_specified="not known")

    assert word(fact(ENGINE, "mix_against_grade", looks)) == "thinner than the grade asked for"


@pytest.mark.parametrize("missing", ["oil_volume", "topped_up_volume", "topped_up_grade", "oil_grade_filled"])
def test_nothing_is_said_of_a_mix_of_which_half_is_unknown(missing: str) -> None:
    looks = topped_up("0W-20", "1.5 l")
    del looks[ENGINE][missing]

    assert isinstance(fact(ENGINE, "mix_against_grade", looks).value, Silent)


def test_the_report_tells_the_mix_in_words() -> None:
    assert sentences(topped_up("0W-20", "1.5 l"))["engine/topped_up_thinner"] == (
        "Engine: with the oil that was topped up, the engine oil is thinner than the grade asked for."
    )


def test_the_oil_in_the_coldest_night() -> None:
    """D341 carries 165 and 18.6 mm²/s to 38 000 at -25 °C; a quarter of that is in doubt."""
    looks = {ENGINE: SHEET, "use @ whole machine": {"coldest_night": "-25 °C"}}
    found = measured(fact(ENGINE, "cold_viscosity", looks))

    assert found.amount.base == pytest.approx(38_000, rel=0.01)
    assert found.uncertainty == pytest.approx(9500, rel=0.01)
    assert "about as thick as 38000 mm²/s in the coldest night" in sentences(looks)["engine/oil_stiff_in_the_cold"]


@pytest.mark.parametrize(
    "sheet",
    [
        {"oil_viscosity_40": "18.6 mm²/s", "oil_viscosity_100": "18.6 mm²/s"},  # not of one oil
        {"oil_viscosity_40": "500 mm²/s", "oil_viscosity_100": "26 mm²/s"},  # no liquid at 60 below
        {"oil_viscosity_40": "165 mm²/s"},
    ],
)
def test_nothing_is_said_of_an_oil_whose_figures_do_not_carry_so_far(sheet: dict[str, str]) -> None:
    looks = {ENGINE: sheet, "use @ whole machine": {"coldest_night": "-60 °C"}}

    assert isinstance(fact(ENGINE, "cold_viscosity", looks).value, Silent)


DRIVE = "final drive @ rear"


def drive(grade: str, volume: str, asked: str = "75W-90", filled: str = "75W-90") -> dict[str, dict[str, str]]:
    looks = {"oil_grade_specified": asked, "oil_grade_filled": filled, "oil_specified": "180 ml"}
    return {DRIVE: {**looks, "topped_up_grade": grade, "topped_up_volume": volume}}


@pytest.mark.parametrize(
    ("looks", "answer"),
    [
        (drive("75W-90", "60 ml"), "in the grade asked for"),
        (drive("80", "90 ml"), "thinner than the grade asked for"),
        (drive("80", "40 ml"), "near the thin end of the grade"),
        (drive("85W-140", "90 ml"), "thicker than the grade asked for"),
        (drive("85W-140", "90 ml", asked="75W"), "in the grade asked for"),  # a band without an upper end
    ],
)
def test_the_mixed_oil_of_a_drive(looks: dict[str, dict[str, str]], answer: str) -> None:
    """SAE J306: an 80 has 8.5 to 11, a 90 13.5 to 18.5, a 140 24 to 32.5 mm²/s at 100 °C."""
    assert word(fact(DRIVE, "mix_against_grade", looks)) == answer


def test_a_grade_without_an_upper_end_has_no_middle_to_reckon_with() -> None:
    assert isinstance(fact(DRIVE, "mixed_viscosity", drive("75W", "60 ml")).value, Silent)
