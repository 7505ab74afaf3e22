"""Put what was not looked at on few lines: one part, its places, and the names of the looks."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from inspector.weighing.assessment import UnseenEntry


def at(part: str, place: str) -> str:
    """Part and place as one phrase; a place that says nothing new is left out."""
    return part if place in (part, "whole machine") else f"{part}, {place}"


def titled(title: str, place: str) -> str:
    """A title with its place in brackets, unless the place is the whole machine."""
    return title if place == "whole machine" else f"{title} ({place})"


@dataclass(frozen=True, slots=True)
class Group:
    """Looks at one part that are unseen in the same way at all the places named."""

    part: str
    places: tuple[str, ...]
    entries: tuple[UnseenEntry, ...]

    @property
    def where(self) -> str:
        """The places as one phrase."""
        return ", ".join(self.places)

    @property
    def alike(self) -> tuple[tuple[UnseenEntry, ...], ...]:
        """The looks, those that are unseen for one reason together."""
        rows: dict[tuple[str, str | None], list[UnseenEntry]] = {}
        for entry in self.entries:
            rows.setdefault((entry.because, entry.reason), []).append(entry)
        return tuple(tuple(row) for row in rows.values())


def by_part(entries: Iterable[UnseenEntry]) -> tuple[Group, ...]:
    """One group a part; places that lack the same looks for the same reason share it. Keeps the order."""
    rows: dict[tuple[str, str], list[UnseenEntry]] = {}
    for entry in entries:
        rows.setdefault((entry.part, entry.place), []).append(entry)
    groups: dict[tuple[object, ...], Group] = {}
    for (part, place), found in rows.items():
        key = (part, frozenset((e.name, e.because, e.reason) for e in found))
        before = groups.get(key)
        places = (*before.places, place) if before else (place,)
        groups[key] = Group(part, places, before.entries if before else tuple(found))
    parts = list(dict.fromkeys(group.part for group in groups.values()))
    return tuple(sorted(groups.values(), key=lambda group: parts.index(group.part)))


def by_look(entries: Iterable[UnseenEntry]) -> tuple[Group, ...]:
    """One group a look: the same question at several places is asked once. Keeps the order."""
    groups: dict[tuple[str, ...], list[UnseenEntry]] = {}
    for entry in entries:
        groups.setdefault((entry.part, entry.name, entry.because), []).append(entry)
    return tuple(
        Group(found[0].part, tuple(dict.fromkeys(_with_reason(e) for e in found)), (found[0],))
        for found in groups.values()
    )


def _with_reason(entry: UnseenEntry) -> str:
    return f"{entry.place} ({entry.reason})" if entry.reason else entry.place
