"""The walk round the machine: every question in order, for a purpose and a depth.

`questions` is the only place where the order is made; interview, sheet, page and table all take it from there.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, Literal

from inspector.knowledge.faults import Fault, not_allowed
from inspector.knowledge.machines import WHOLE, Machine, contains, related
from inspector.knowledge.model import Entry, Text
from inspector.knowledge.observables import Moment, Property
from inspector.knowledge.yamlfile import Document, Path

if TYPE_CHECKING:
    from inspector.knowledge.library import Knowledge

Purpose = Literal["before purchase", "after own service", "handover"]
PURPOSES: tuple[Purpose, ...] = ("before purchase", "after own service", "handover")
Depth = Literal["core", "short", "full"]
DEPTHS: tuple[Depth, ...] = ("core", "short", "full")
AGAIN = 0.5  # own choice
_KIND_ORDER = {"choice": 1, "yes_no": 1, "text": 2}  # everything else holds a number and comes first


class Stop(Entry):
    """One stop of the walk: what to do there and which looks are made there."""

    stop: Text
    do: Text
    looks: tuple[Text, ...] = ()
    moments: tuple[Moment, ...] = ()
    parts: tuple[Text, ...] = ()


class WalkRound(Entry):
    """The stops in order, and the looks of the two short lists by purpose."""

    stops: tuple[Stop, ...]
    core: dict[Purpose, tuple[Text, ...]]
    short: dict[Purpose, tuple[Text, ...]]

    def chosen(self, purpose: Purpose, depth: Depth) -> frozenset[str] | None:
        """The looks (`part/property`) of a depth; None when there is no choice among them."""
        if depth == "full":
            return None
        return frozenset((*self.core[purpose], *(self.short[purpose] if depth == "short" else ())))


@dataclass(frozen=True, slots=True)
class Question:
    """One look at one place, at its stop of the walk."""

    stop: int
    part: str
    place: str
    name: str
    prop: Property
    only_place: bool
    minutes: float

    @property
    def key(self) -> tuple[str, str, str]:
        """Part, place and property, as an inspection keeps them."""
        return self.part, self.place, self.name

    @property
    def address(self) -> str:
        """The heading of a record under which the answer stands."""
        return self.part if self.only_place else f"{self.part} @ {self.place}"


def asked_after_work(prop: Property, place: str, purpose: Purpose, work: Iterable[tuple[str, str]]) -> bool:
    """Whether a look of the moment `service` is made: after own work, at what was worked on (or at all)."""
    if purpose != "after own service":
        return False
    done = tuple(work)
    return not done or not prop.after or any(what in prop.after and related(where, place) for what, where in done)


def questions(
    knowledge: Knowledge,
    kind: str,
    purpose: Purpose,
    depth: Depth = "full",
    work: Iterable[tuple[str, str]] = (),
    without: Iterable[tuple[str, str]] = (),
) -> tuple[Question, ...]:
    """Every question of a machine kind in walk-round order.

    `work` holds what was done and where; `without` the parts (and the region) that the machine does not have.
    What was worked on is asked for as a whole (`work done`), so it is no question here.
    """
    walk, machine = knowledge.walk_round, knowledge.machines[kind]
    done, absent, chosen = tuple(work), tuple(without), walk.chosen(purpose, depth)
    found: list[tuple[tuple[int, ...], Question]] = []
    for part, places in machine.parts.items():
        for number, (name, prop) in enumerate(knowledge.properties[part].items()):
            if not prop.asked or prop.work or (chosen is not None and f"{part}/{name}" not in chosen):
                continue
            for turn, place in enumerate(places):
                if any(of == part and contains(where, place) for of, where in absent):
                    continue
                if prop.moment == "service" and not asked_after_work(prop, place, purpose, done):
                    continue
                stop, rank = _where(walk, part, place, name, prop)
                question = Question(stop, part, place, name, prop, len(places) == 1, prop.minutes)
                # a look that is named alone keeps its places together; else a place keeps its looks together
                order = (stop, *rank, turn, _KIND_ORDER.get(prop.kind, 0), number)
                found.append((order, question))
    return tuple(_timed(question for _, question in sorted(found, key=lambda pair: pair[0])))


def _timed(asked: Iterable[Question]) -> Iterator[Question]:
    """The same look at the next place of a stop takes half as long: tool in hand, the eye knows what to find."""
    begun: set[tuple[int, str, str]] = set()
    for one in asked:
        look = (one.stop, one.part, one.name)
        yield replace(one, minutes=one.minutes * AGAIN) if look in begun else one
        begun.add(look)


def _where(walk: WalkRound, part: str, place: str, name: str, prop: Property) -> tuple[int, tuple[int, int]]:
    """The number of the stop of a look, and its rank there."""
    look = f"{part}/{name}"
    for number, stop in enumerate(walk.stops):
        if look in stop.looks:
            return number, (0, stop.looks.index(look))
    home, rank = _home(walk, part, place)
    for number, stop in enumerate(walk.stops):
        if prop.moment in stop.moments and number != home:
            return number, (2, 1000 * home + rank)
    return home, (1, rank)


def _home(walk: WalkRound, part: str, place: str) -> tuple[int, int]:
    """The stop of a part at a place and its rank there. Raises KeyError: the knowledge was not checked."""
    best: tuple[int, int, int] | None = None
    for number, stop in enumerate(walk.stops):
        for rank, entry in enumerate(stop.parts):
            of, region = split(entry)
            words = 0 if region == WHOLE else len(region.split())
            if of == part and contains(region, place) and (best is None or words > best[0]):
                best = (words, number, rank)
    if best is None:
        raise KeyError(f"{part} @ {place}")
    return best[1], best[2]


def split(entry: str) -> tuple[str, str]:
    """`part @ region`, or `part` for all of its places."""
    part, _, region = entry.partition(" @ ")
    return part, region or WHOLE


def check_walk(
    knowledge: Knowledge, documents: Mapping[tuple[Any, ...], tuple[Document, Path]]
) -> Iterator[Fault]:
    """Every look and part that is named exists, none is named twice, and every part comes to a stop."""
    document = documents["walk_round",][0]
    walk, seen = knowledge.walk_round, {}  # type: ignore[var-annotated]
    for number, stop in enumerate(walk.stops):
        for heading in ("looks", "parts", "moments"):
            for rank, entry in enumerate(getattr(stop, heading)):
                path: Path = ("stops", number, heading, rank)
                wrong = None if heading == "moments" else _unknown(knowledge, entry, heading)
                if wrong is None and (heading, entry) in seen:
                    wrong = f"`{entry}` stands at the stop `{seen[heading, entry]}` already"
                seen[heading, entry] = stop.stop
                if wrong is not None:
                    yield document.fault(path, wrong)
    for depth in ("core", "short"):
        for purpose in PURPOSES:
            yield from _list_faults(knowledge, document, depth, purpose)
    for machine in knowledge.machines.values():
        yield from _lost(walk, machine, document)


def _list_faults(knowledge: Knowledge, document: Document, depth: str, purpose: Purpose) -> Iterator[Fault]:
    lists: dict[Purpose, tuple[str, ...]] = getattr(knowledge.walk_round, depth)
    if purpose not in lists:
        yield document.fault((depth,), f"the purpose `{purpose}` is missing", key=True)
    for rank, look in enumerate(lists.get(purpose, ())):
        before = (*knowledge.walk_round.core.get(purpose, ()), *lists[purpose][:rank])
        wrong = _unknown(knowledge, look, "looks")
        if wrong is None and look in (before if depth == "short" else lists[purpose][:rank]):
            wrong = f"`{look}` is in the list already"
        if wrong is not None:
            yield document.fault((depth, purpose, rank), wrong)


def _unknown(knowledge: Knowledge, entry: str, heading: str) -> str | None:
    """What is wrong with a look or a part that is named, if anything."""
    if heading == "parts":
        part, region = split(entry)
        places = [place for machine in knowledge.machines.values() for place in machine.parts.get(part, ())]
        if not places:
            return not_allowed("the part", part, knowledge.properties)
        fits = any(contains(region, place) for place in places)
        return None if fits else not_allowed(f"`{part}`: the place", region, dict.fromkeys(places))
    part = entry.partition("/")[0]
    asked = {f"{part}/{one}" for one, prop in knowledge.properties.get(part, {}).items() if prop.asked}
    known = asked if part in knowledge.properties else {f"{one}/.." for one in knowledge.properties}
    return None if entry in asked else not_allowed("the look", entry, sorted(known), most=30)


def _lost(walk: WalkRound, machine: Machine, document: Document) -> Iterator[Fault]:
    for part, places in machine.parts.items():
        for place in places:
            try:
                _home(walk, part, place)
            except KeyError:
                text = f"`{part} @ {place}` of a {machine.called} comes to no stop; name the part at one"
                yield document.fault(("stops",), text, key=True)
