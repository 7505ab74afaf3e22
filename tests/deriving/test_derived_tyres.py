"""Repair, load, speed and the pressure of a warm tyre."""

from __future__ import annotations

import pytest

from inspector.knowledge.library import knowledge
from inspector.quantities.tyres import SPEEDS_KMH
from tests.deriving.looks import fact, measured, sentences, word

TYRE = "tyre @ rear"


def repair(symbol: str, hole: str, place: str = "middle half", before: str = "0") -> str:
    looks = {"speed_symbol": symbol, "hole_size": hole, "hole_place": place, "earlier_repairs": before}
    return word(fact(TYRE, "repair_allowed", {TYRE: looks}))


def test_the_repair_standard_for_motorcycle_tyres() -> None:
    """BS AU 159f: up to J 6 mm and two repairs, up to V 3 mm and one, above V none, middle half only."""
    assert repair("J", "6 mm", before="1") == "allowed"
    assert repair("J", "6.5 mm") == "hole too large"
    assert repair("J", "3 mm", before="2") == "too many repairs"
    assert repair("V", "3 mm") == "allowed"
    assert repair("V", "3.5 mm") == "hole too large"
    assert repair("H", "2 mm", before="1") == "too many repairs"
    assert repair("W", "1 mm") == "not for this speed letter"
    assert repair("Z", "1 mm") == "not for this speed letter"
    assert repair("H", "2 mm", "sidewall") == "outside the middle half"
    assert repair("H", "2 mm", "not known") == "not known"


@pytest.mark.parametrize(
    ("index", "load", "over"),
    [("58", "236 kg", 0), ("58", "280 kg", 44), ("73", "365 kg", 0), ("90", "600 kg", 0)],  # published load table
)
def test_the_load_figure_against_the_axle(index: str, load: str, over: float) -> None:
    found = fact(TYRE, "overload", {TYRE: {"load_index": index, "axle_load": load}})

    assert measured(found).amount.base == over
    assert found.limits["carries the axle"].standing == ("beyond" if over else "within")


def test_the_speed_letter_against_the_top_speed() -> None:
    def fits(symbol: str, top: str) -> str:
        observations = {TYRE: {"speed_symbol": symbol}, "machine": {"top_speed": top}}
        return word(fact(TYRE, "speed_fit", observations))

    assert fits("H", "210 km/h") == "fits"  # H stands between U and V
    assert fits("U", "210 km/h") == "letter too slow"
    assert fits("(W)", "290 km/h") == "not known"  # more than 270


def test_every_speed_letter_can_be_written() -> None:
    assert set(knowledge().properties["tyre"]["speed_symbol"].choices) == {*SPEEDS_KMH, "not known"}


@pytest.mark.parametrize(
    ("warm", "heat", "cold"),
    [("2.74 bar", "40 °C", 2.5), ("2.98 bar", "60 °C", 2.5), ("18.7 psi", "50 °F", 1.378)],
)
def test_a_warm_tyre_worked_back_to_20_degrees(warm: str, heat: str, cold: float) -> None:
    """Gas law, 2.5 bar at 20 degrees; 18.7 psig at 50 °F was 20 psig at 70 °F on a page."""
    found = fact(TYRE, "pressure_at_20", {TYRE: {"warm_pressure": warm, "tyre_temperature": heat}})

    assert measured(found).amount.base / 100 == pytest.approx(cold, abs=0.02)


def test_a_guess_at_the_warmth_makes_the_pressure_less_sure() -> None:
    def doubt(heat: str) -> float:
        looks = {"warm_pressure": "2.9 bar ± 0.05 bar", "tyre_temperature": heat}
        return measured(fact(TYRE, "pressure_at_20", {TYRE: looks})).uncertainty

    assert doubt("60 °C ± 20 °C") > 3 * doubt("60 °C ± 2 °C")


def test_a_tyre_that_shows_its_pressure_only_when_warm_is_low() -> None:
    looks = {
        "warm_pressure": "2.9 bar ± 0.05 bar",
        "tyre_temperature": "60 °C ± 3 °C",
        "specified_pressure": "2.9 bar",
    }

    assert "by -16%" in sentences({TYRE: looks})["wheels_and_tyres/warm_pressure_low"]
