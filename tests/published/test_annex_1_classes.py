"""Directive 2014/45/EU, Annex I: a rule takes a class the annex gives its item, or a worse one and says so."""

import re
from pathlib import Path

import pytest
import yaml

from inspector.knowledge.library import knowledge

ANNEX = yaml.safe_load((Path(__file__).parent / "directive_2014_45_annex_1.yaml").read_text(encoding="utf-8"))
ORDER = ["none", "minor", "major", "dangerous"]
RULES = {rule.id: rule for rule in knowledge().rules.values()}
OFFICIAL = [rule for rule in RULES.values() if rule.official]
OURS = re.compile(r"\b(ours?|our|we)\b")
PLACE = re.compile(r"^Annex I (\d+(?:\.\d+)+)((?:,? (?:and )?\([a-h]\))*)$")

CITED = [
    (rule, citation)
    for rule in RULES.values()
    for citation in rule.sources
    if citation.source == "eu_2014_45" and citation.at.startswith("Annex I")
]


def classes_of(item: str) -> set[str]:
    """The classes the annex gives to an item and all items below it."""
    below = [letters for name, letters in ANNEX.items() if name == item or name.startswith(item + ".")]
    return {entry["class"] for letters in below for entry in letters.values()}


def classes_at(place: str) -> set[str]:
    """The classes of the very letters that a citation names, in all their degrees."""
    found = PLACE.match(place)
    if found is None:
        raise ValueError(f"not a place in the annex: {place}")
    letters = re.findall(r"\(([a-h])\)", found[2]) or ["whole"]
    entries = ANNEX[found[1]]
    missing = [letter for letter in letters if letter not in entries]
    if missing:
        raise ValueError(f"{place}: the annex has no {missing}")
    return {entry["class"] for name, entry in entries.items() if name.split()[0] in letters}


def objection(class_: str, allowed: set[str], reason: str) -> str | None:
    """Why a class may not stand beside those of the annex; None where it may."""
    if not allowed:
        return "the table does not know the item"
    if class_ in allowed:
        return None
    if ORDER.index(class_) < max(map(ORDER.index, allowed)):
        return f"{class_} is none of {sorted(allowed)}"
    return None if OURS.search(reason) else f"{class_} is worse than {sorted(allowed)}; its reason must say ours"


@pytest.mark.parametrize("item", ANNEX)
def test_the_degrees_of_a_letter_rise(item):
    for letter in {name.split()[0] for name in ANNEX[item]}:
        degrees = [ANNEX[item].get(letter + tail) for tail in ("", " worse", " worst")]
        ranks = [ORDER.index(degree["class"]) for degree in degrees if degree]
        assert ranks == sorted(set(ranks))
        assert ranks[0] > 0


@pytest.mark.parametrize("rule", OFFICIAL, ids=lambda rule: rule.id)
def test_a_rule_takes_a_class_of_its_items(rule):
    allowed = set().union(*map(classes_of, rule.official))

    assert all(classes_of(item) for item in rule.official)
    assert objection(rule.class_, allowed, rule.class_reason) is None


@pytest.mark.parametrize(("rule", "citation"), CITED, ids=lambda value: getattr(value, "id", None))
def test_a_citation_names_letters_that_carry_its_classes(rule, citation):
    allowed = classes_at(citation.at)
    named = set(re.findall(r"\b(minor|major|dangerous)\b", citation.gives))

    assert citation.known == "read"
    assert named
    assert named <= allowed


@pytest.mark.parametrize(("rule", "citation"), CITED, ids=lambda value: getattr(value, "id", None))
def test_a_class_that_its_letters_do_not_carry_is_called_ours(rule, citation):
    places = [other.at for one, other in CITED if one is rule]
    allowed = set().union(*map(classes_at, places))

    assert rule.class_ in allowed or not rule.official or OURS.search(rule.class_reason)


@pytest.mark.parametrize(
    ("class_", "allowed", "reason", "holds"),
    [
        ("major", {"major", "dangerous"}, "the official class", True),
        ("minor", {"major", "dangerous"}, "ours, as it is small", False),
        ("minor", {"major"}, "the official class", False),
        ("major", {"minor", "dangerous"}, "ours", False),
        ("dangerous", {"major"}, "ours, as the rear hangs on this bolt", True),
        ("dangerous", {"major"}, "the official class", False),
        ("major", set(), "ours", False),
    ],
)
def test_what_may_stand_beside_the_annex(class_, allowed, reason, holds):
    assert (objection(class_, allowed, reason) is None) is holds


# read off the annex once more, apart from the table: pads, discs, stands, seats, tread
@pytest.mark.parametrize(
    ("rule", "class_"),
    [
        ("brakes/pad_wear_mark_reached", "major"),
        ("brakes/pad_wear_mark_gone", "dangerous"),
        ("brakes/disc_cracked", "dangerous"),
        ("hydraulics/fluid_below_minimum", "minor"),
        ("hydraulics/fluid_gone", "dangerous"),
        ("frame/stand_may_drop", "dangerous"),
        ("frame/seat_loose", "dangerous"),
        ("frame/fitting_loose", "major"),
        ("steering_and_suspension/grip_loose", "major"),
        ("wheels_and_tyres/wear_bar_level", "major"),
        ("wheels_and_tyres/tread_below_legal", "dangerous"),
    ],
)
def test_well_known_defects(rule, class_):
    assert RULES[rule].class_ == class_


@pytest.mark.parametrize("place", ["Annex I 1.1.13 (z)", "Annex I 1.1.13", "Annex I", "Annex I 9.9 (a)"])
def test_a_place_that_is_not_there_is_refused(place):
    with pytest.raises((ValueError, KeyError)):
        classes_at(place)
