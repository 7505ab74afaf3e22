"""Find the part, place and property that a record means, or say what is allowed."""

from __future__ import annotations

from inspector.knowledge.faults import not_allowed, shown
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import Machine, contains
from inspector.knowledge.observables import Property


class UnknownAddress(ValueError):
    """A part, place or property that this machine does not have."""


def plain(text: str) -> str:
    """A name as the knowledge spells it: small letters, single blanks."""
    return " ".join(text.lower().replace("_", " ").split())


class Addresses:
    """What may be named in a record about one machine kind."""

    def __init__(self, knowledge: Knowledge, machine: Machine) -> None:
        self.known = knowledge
        self.machine = machine

    def part_and_place(self, text: str) -> tuple[str, str]:
        """`part @ place`, or `part` where it sits at one place only. Raises UnknownAddress."""
        part, places = self._part(text)
        return part, self._place(part, text.partition("@")[2], places)

    def part_and_region(self, text: str) -> tuple[str, str]:
        """`part`, or `part @ region` where the region contains at least one place of the part."""
        part, places = self._part(text)
        region = plain(text.partition("@")[2]) or "whole machine"
        if not any(contains(region, place) for place in places):
            raise UnknownAddress(not_allowed(f"`{part}`: the place", region, places))
        return part, region

    def work(self, text: str) -> tuple[str, str]:
        """`what @ place` of a work that was done. Raises UnknownAddress."""
        what, _, where = text.partition("@")
        works = {plain(name): name for name, entry in self.known.properties["work"].items() if entry.work}
        if plain(what) not in works:
            raise UnknownAddress(not_allowed("the work", what.strip(), works, most=40))
        return works[plain(what)], self._place(plain(what), where, self.machine.parts["work"])

    def _place(self, named: str, given: str, places: tuple[str, ...]) -> str:
        place = plain(given)
        if not place:
            if len(places) == 1:
                return places[0]
            allowed = ", ".join(places)
            raise UnknownAddress(f"`{named}` has several places; write `{named} @ {places[0]}`. Places: {allowed}")
        if place not in places:
            raise UnknownAddress(not_allowed(f"`{named}`: the place", place, places))
        return place

    def _part(self, text: str) -> tuple[str, tuple[str, ...]]:
        part = plain(text.partition("@")[0])
        places = self.machine.parts.get(part)
        if places is None:
            raise UnknownAddress(not_allowed("the part", part, self.machine.parts, most=30))
        return part, places

    def property(self, part: str, text: str) -> tuple[str, Property]:
        """The property of `part` that is meant. Raises UnknownAddress."""
        name = plain(text).replace(" ", "_")
        entry = self.known.properties[part].get(name)
        if entry is not None and not entry.asked:
            raise UnknownAddress(f"`{part}`: {shown(name)} is worked out from what you note; leave it out")
        if entry is None:
            asked = [n for n, p in self.known.properties[part].items() if p.asked]
            raise UnknownAddress(not_allowed(f"`{part}`: the property", text.strip(), asked, most=40))
        return name, entry
