"""Find the part, place and property that a record means, or say what is allowed."""

from __future__ import annotations

from inspector.knowledge.faults import not_allowed
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import Machine, contains
from inspector.knowledge.observables import Property


class UnknownAddress(ValueError):
    """A part, place or property that this machine does not have."""


class Addresses:
    """What may be named in a record about one machine kind."""

    def __init__(self, knowledge: Knowledge, machine: Machine) -> None:
        self.known = knowledge
        self.machine = machine

    def part_and_place(self, text: str) -> tuple[str, str]:
        """`part @ place`, or `part` where it sits at one place only. Raises UnknownAddress."""
        part, places = self._part(text)
        given = text.partition("@")[2]
        place = " ".join(given.lower().split())
        if not place:
            if len(places) == 1:
                return part, places[0]
            raise UnknownAddress(f"`{part}` sits at several places; write `{part} @ {places[0]}`. "
                                 f"Places: {', '.join(places)}")  # fmt: skip
        if place not in places:
            raise UnknownAddress(not_allowed(f"`{part}`: the place", place, places))
        return part, place

    def part_and_region(self, text: str) -> tuple[str, str]:
        """`part`, or `part @ region` where the region contains at least one place of the part."""
        part, places = self._part(text)
        region = " ".join(text.partition("@")[2].lower().split()) or "whole machine"
        if not any(contains(region, place) for place in places):
            raise UnknownAddress(not_allowed(f"`{part}`: the place", region, places))
        return part, region

    def _part(self, text: str) -> tuple[str, tuple[str, ...]]:
        part = " ".join(text.partition("@")[0].lower().replace("_", " ").split())
        places = self.machine.parts.get(part)
        if places is None:
            raise UnknownAddress(not_allowed("the part", part, self.machine.parts, most=30))
        return part, places

    def property(self, part: str, text: str) -> tuple[str, Property]:
        """The property of `part` that is meant. Raises UnknownAddress."""
        name = "_".join(text.lower().replace("_", " ").split())
        entry = self.known.properties[part].get(name)
        if entry is None or not entry.asked:
            asked = [n for n, p in self.known.properties[part].items() if p.asked]
            raise UnknownAddress(not_allowed(f"`{part}`: the property", text.strip(), asked, most=40))
        return name, entry
