"""Machine kinds: which parts sit at which places. Places contain one another by their first words."""

from __future__ import annotations

from inspector.knowledge.model import Entry, Text, YesNo

WHOLE = "whole machine"


class MachineFile(Entry):
    """A machine kind as written: its own parts and what it takes over from another kind."""

    called: Text
    is_a: Text | None = None
    abstract: YesNo = False
    parts: dict[Text, tuple[Text, ...]] = {}
    optional_parts: tuple[Text, ...] = ()


class Machine(Entry):
    """A machine kind with all it has: part -> places, and the parts many machines lack."""

    id: Text
    called: Text
    abstract: bool
    parts: dict[str, tuple[str, ...]]
    optional_parts: frozenset[str]

    def related_places(self, part: str, zone: str) -> tuple[str, ...]:
        """Places of `part` that contain `zone` or lie in it."""
        return tuple(place for place in self.parts.get(part, ()) if related(place, zone))


def contains(outer: str, inner: str) -> bool:
    """Whether the place `outer` contains `inner`: `front` contains `front left`; all is in the whole machine."""
    return outer == WHOLE or inner == outer or inner.startswith(outer + " ")


def related(one: str, other: str) -> bool:
    """Whether one of two places contains the other."""
    return contains(one, other) or contains(other, one)


def resolve(files: dict[str, MachineFile], kind: str) -> Machine:
    """A machine kind with everything it inherits. The `is_a` chain has been checked for circles."""
    own = files[kind]
    parts, optional = dict(own.parts), set(own.optional_parts)
    if own.is_a is not None:
        base = resolve(files, own.is_a)
        parts = {**base.parts, **parts}
        optional |= base.optional_parts
    return Machine(
        id=kind, called=own.called, abstract=own.abstract, parts=parts, optional_parts=frozenset(optional)
    )
