"""Coolant by its share of glycol, held against the coldest night."""

from __future__ import annotations

import pytest

from tests.deriving.looks import fact, measured, sentences

COOLING, USE = "cooling system @ engine", "use @ whole machine"


def freezes(**looks: str) -> float:
    return measured(fact(COOLING, "mix_frost_point", {COOLING: looks})).amount.base


@pytest.mark.parametrize(
    ("kind", "share", "by", "celsius"),
    [
        # CoolProp 8.0.0 by mass; Lange's Handbook, table 5.13, for propylene glycol by volume
        ("ethylene glycol", "33 %", "mass", -17),
        ("ethylene glycol", "50 %", "mass", -36),
        ("propylene glycol", "50 %", "mass", -32),
        ("propylene glycol", "30 %", "volume", -13),
        ("propylene glycol", "50 %", "volume", -33),
    ],
)
def test_when_a_mix_freezes(kind: str, share: str, by: str, celsius: int) -> None:
    assert freezes(glycol_kind=kind, glycol_share=share, share_by=by) == celsius


def test_half_and_half_of_the_usual_kind_is_good_to_about_37() -> None:
    """Trade pages: 50 % by volume, about -37 °C; ASTM D3306 asks for -36.4 at least (from memory)."""
    found = freezes(glycol_kind="ethylene glycol", glycol_share="50 %", share_by="volume")
    assert -40 <= found <= -36.4


def test_what_is_not_told_counts_as_the_weaker() -> None:
    known = freezes(glycol_kind="ethylene glycol", glycol_share="40 %", share_by="volume")

    assert freezes(glycol_kind="not known", glycol_share="40 %") > known


def test_more_glycol_than_sixty_percent_is_no_better() -> None:
    assert freezes(glycol_kind="ethylene glycol", glycol_share="90 %", share_by="mass") == -51


def test_a_reading_counts_before_a_reckoned_mix() -> None:
    looks = {
        "glycol_kind": "ethylene glycol",
        "glycol_share": "50 %",
        "share_by": "volume",
        "frost_point": "-18 °C",
    }
    found = fact(COOLING, "frost_reserve", {COOLING: looks, USE: {"coldest_night": "-15 °C"}})

    assert measured(found).amount.base == pytest.approx(3)


def test_the_night_is_colder_than_the_mix_bears() -> None:
    observations = {COOLING: {"frost_point": "-12 °C ± 1 °C"}, USE: {"coldest_night": "-20 °C"}}
    says = sentences(observations)

    assert says["cooling/freezes_in_coldest_night"].endswith(
        "coldest night that was written down is colder than this coolant bears; "
        "from its freezing point to that night it is -8 °C."
    )
    assert "cooling/mix_weak" not in says
