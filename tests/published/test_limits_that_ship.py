"""The limits in rules/ hold the published figures, seen through a record as a user writes it."""

from __future__ import annotations

import pytest

from inspector.deriving.facts import derive_facts
from inspector.deriving.limits import Band
from inspector.knowledge.library import knowledge
from tests.records import record


def band(part: str, place: str, name: str, limit: str, looks: dict[str, str], country: str = "GB") -> Band:
    facts = derive_facts(record({f"{part} @ {place}": looks}, country=country), knowledge())
    found = facts.items[part, place][name].limits[limit].band
    assert found is not None
    return found


# FMVSS No. 116 (49 CFR 571.116) S5.1.1 and S5.1.2: least dry and wet equilibrium reflux boiling points, °C and °F
@pytest.mark.parametrize(
    ("fluid", "dry", "wet", "dry_f", "wet_f"),
    [
        ("dot 3", 205, 140, 401, 284),
        ("dot 4", 230, 155, 446, 311),
        ("dot 5.1", 260, 180, 500, 356),
        ("dot 5", 260, 180, 500, 356),
    ],
)
def test_boiling_points_by_class(fluid: str, dry: float, wet: float, dry_f: float, wet_f: float) -> None:
    looks = {"boiling_point": "150 °C", "fluid_class_required": fluid}
    for limit, celsius, fahrenheit in (("dry minimum", dry, dry_f), ("wet minimum", wet, wet_f)):
        found = band("brake circuit", "front", "boiling_point", limit, looks)

        assert found.at_least == celsius
        assert found.at_least * 9 / 5 + 32 == pytest.approx(fahrenheit, abs=0.5)


# UK: 1.0 mm (tyre law, machines above 50 cc). Germany: section 36 StVZO, 1.6 mm. Austria: section 4(4) KDV,
# 1.6 mm. New Zealand: 1.5 mm (VIRM, older notice). Maryland COMAR 11.14.03.05: 1/32 in. Not listed: the
# strictest, own choice.
@pytest.mark.parametrize(
    ("country", "least"),
    [("GB", 1.0), ("DE", 1.6), ("AT", 1.6), ("NZ", 1.5), ("US", 0.8), ("IT", 1.0), ("FR", 1.0), ("SE", 1.6)],
)
def test_least_tread_by_country(country: str, least: float) -> None:
    looks = {"tread_centre": "4 mm", "tread_left": "4 mm", "tread_right": "4 mm"}

    assert band("tyre", "rear", "least_tread", "legal minimum", looks, country).at_least == least


# Older UK motorcycle manual: 1.5 mm proud of the backing; since 2018 below 1.0 mm is dangerous (from memory).
@pytest.mark.parametrize(("limit", "least"), [("wear limit", 1.5), ("bare minimum", 1.0)])
def test_least_friction_material(limit: str, least: float) -> None:
    looks = {"friction_material_thickness": "4 mm"}

    assert band("brake pad", "rear inner", "friction_material_thickness", limit, looks).at_least == least


# DVSA motorcycle manual 5.2.2: lateral distortion of a rim, steel 4 mm, aluminium alloy 2 mm
@pytest.mark.parametrize(("material", "most"), [("steel", 4.0), ("alloy", 2.0)])
def test_rim_run_out_by_material(material: str, most: float) -> None:
    looks = {"rim_material": material, "rim_runout_side": "1 mm"}

    assert band("wheel", "front", "rim_runout_side", "run-out limit", looks).at_most == most


def test_disc_run_out() -> None:
    """A factory manual page for a motorcycle: service limit 0.30 mm."""
    assert band("brake disc", "rear", "runout", "runout limit", {"runout": "0.1 mm"}).at_most == 0.30


def test_a_quarter_of_the_spline_area_pitted_is_the_published_end() -> None:
    """TM 55-1520-240-23, 6-36.2: corrosion or pits over at most 25 % of the spline area."""
    found = band("splines", "rear wheel side", "rust_area", "pitted share", {"rust_area": "10 %"})

    assert found.at_most == 25
