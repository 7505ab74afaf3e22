"""A long descent in words; no temperature is ever printed."""

from __future__ import annotations

import pytest

from tests.deriving.looks import fact, sentences, word

USE = "use @ whole machine"
KIND = "chain drive motorcycle"


def heat(without: list[str] | None = None, **looks: str) -> str:
    machine = {"kind": KIND, **({"without": without} if without else {})}
    return word(fact(USE, "descent_heat", {USE: {"mountain_passes": "yes", **looks}}, machine=machine))


def test_a_small_hill_is_normal_whatever_the_load() -> None:
    """300 kg down 40 m are 118 kJ, with one stop from 40 km/h 136 kJ: 123 K in 2.4 kg of iron at most."""
    assert heat(pillion_or_luggage="no", descent_height="40 m") == "normal"


@pytest.mark.parametrize("load", ["no", "yes"])
def test_a_pass_of_a_thousand_metres_asks_for_a_low_gear(load: str) -> None:
    assert heat(pillion_or_luggage=load, descent_height="1000 m") == "strong"


def test_one_front_disc_and_a_drum_shed_less() -> None:
    loaded = {"pillion_or_luggage": "yes", "descent_height": "1000 m"}

    assert heat(**loaded) == "strong"
    assert heat(["brake disc @ front right", "brake disc @ rear"], **loaded) == "more than these brakes shed"


def test_the_weight_that_was_written_down_counts_before_a_guess() -> None:
    assert heat(laden_mass="650 kg", descent_height="2500 m") == "more than these brakes shed"
    assert (
        heat(laden_mass="650 kg", pillion_or_luggage="no", descent_height="2500 m")
        == "more than these brakes shed"
    )


def test_without_passes_nothing_is_said() -> None:
    assert not fact(USE, "descent_heat", {USE: {"mountain_passes": "no", "laden_mass": "500 kg"}}).seen


def test_the_sentence_names_no_temperature() -> None:
    for mass in ("300 kg", "800 kg"):
        says = sentences({USE: {"mountain_passes": "yes", "laden_mass": mass, "descent_height": "2500 m"}})
        told = [sentence for rule, sentence in says.items() if rule.startswith("brakes/descent")]
        assert len(told) == 1
        assert "°" not in told[0]
