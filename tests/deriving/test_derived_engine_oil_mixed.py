"""Engine oil topped up with another grade, and how stiff it gets in the coldest night."""

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
