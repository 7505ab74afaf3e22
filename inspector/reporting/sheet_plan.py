"""What the sheet and the page ask for: the walk round, put into stops, parts and questions, with the minutes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import groupby

from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import WHOLE, related
from inspector.knowledge.model import Caution
from inspector.knowledge.observables import Property
from inspector.knowledge.walk_round import Depth, Purpose, Question, questions
from inspector.knowledge.wording import words

Work = tuple[str, str]
_AREA = {"before purchase": "viewing", "after own service": "reassembly", "handover": "viewing"}


@dataclass(frozen=True)
class LimitAsk:
    """A limit that the part or the manual may show: of the look itself, or of what is worked out from it alone."""

    name: str
    about: str  # what is worked out; empty for the look itself
    senses: tuple[str, ...]
    dimension: str
    unit: str
    units: tuple[str, ...]


@dataclass(frozen=True)
class Ask:
    """One question, asked once for all places of a part at a stop."""

    number: int
    part: str
    name: str
    prop: Property
    places: tuple[str, ...]
    tools: tuple[tuple[str, str], ...]
    takes: tuple[str, ...]
    unit: str
    units: tuple[str, ...]
    limits: tuple[LimitAsk, ...]
    cautions: tuple[Caution, ...]
    cautions_again: tuple[Caution, ...]
    minutes: float  # for all places together
    only_place: bool  # the machine has this part nowhere else


@dataclass(frozen=True)
class Block:
    """The questions about one part that come one after the other."""

    part: str
    asks: tuple[Ask, ...]


@dataclass(frozen=True)
class Station:
    """A stop of the walk with its blocks, and when it begins and ends."""

    number: int
    title: str
    do: str
    start: float
    end: float
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Plan:
    """All that is asked for, in the order of the walk."""

    kind: str
    purpose: Purpose
    depth: Depth
    stations: tuple[Station, ...]
    questions: tuple[Question, ...]
    left_out: int
    bring: tuple[str, ...]
    cautions: tuple[Caution, ...]
    works: tuple[tuple[str, str, tuple[str, ...]], ...]
    done: tuple[Work, ...]

    @property
    def minutes(self) -> float:
        """Of all looks together."""
        return self.stations[-1].end if self.stations else 0.0


def make_plan(
    knowledge: Knowledge, kind: str, purpose: Purpose, depth: Depth, done: tuple[Work, ...] = ()
) -> Plan:
    """The plan for a machine kind; `done` narrows the looks after a service to what was worked on."""
    asked = questions(knowledge, kind, purpose, depth, done)
    maker = _Maker(knowledge, purpose)
    stations: list[Station] = []
    start = 0.0
    for stop, found in groupby(asked, key=lambda one: one.stop):
        blocks = maker.blocks(list(found))
        end = start + sum(ask.minutes for block in blocks for ask in block.asks)
        walk = knowledge.walk_round.stops[stop]
        stations.append(Station(len(stations) + 1, walk.stop, walk.do, start, end, blocks))
        start = end
    return Plan(
        kind=kind,
        purpose=purpose,
        depth=depth,
        stations=tuple(stations),
        questions=asked,
        left_out=len(questions(knowledge, kind, purpose, "full", done)) - len(asked),
        bring=_bring(asked),
        cautions=tuple(maker.first.values()),
        works=works(knowledge, kind) if purpose == "after own service" else (),
        done=done,
    )


class _Maker:
    """Puts questions together; a caution is told in full where it first matters, then once more at each part."""

    def __init__(self, knowledge: Knowledge, purpose: Purpose) -> None:
        self.known = knowledge
        self.number = 0
        self.first = {
            name: caution
            for name, caution in knowledge.cautions.items()
            if _AREA[purpose] in caution.before or name == "manual_and_law_first"
        }
        self.told = set(self.first)
        self.told_here: set[str] = set()  # at the part that is being put together

    def blocks(self, asked: list[Question]) -> tuple[Block, ...]:
        """The blocks of one stop."""
        return tuple(
            Block(part, self._asks(list(found))) for part, found in groupby(asked, key=lambda one: one.part)
        )

    def _asks(self, asked: list[Question]) -> tuple[Ask, ...]:
        self.told_here = set(self.first)
        by_name: dict[str, list[Question]] = {}
        for one in asked:
            by_name.setdefault(one.name, []).append(one)
        return tuple(self._ask(found) for found in by_name.values())

    def _ask(self, found: list[Question]) -> Ask:
        self.number += 1
        first = found[0]
        new = [name for name in first.prop.cautions if name not in self.told]
        again = [name for name in first.prop.cautions if name in self.told and name not in self.told_here]
        self.told.update(new)
        self.told_here.update(first.prop.cautions)
        unit, others = units(first.prop)
        return Ask(
            number=self.number,
            part=first.part,
            name=first.name,
            prop=first.prop,
            places=tuple(one.place for one in found),
            tools=measuring(first.prop, self.known),
            takes=() if first.prop.kind == "quantity" else brought(first.prop.tools),
            unit=unit,
            units=others,
            limits=own_limits(self.known, first.part, first.name),
            cautions=tuple(self.known.cautions[name] for name in new),
            cautions_again=tuple(self.known.cautions[name] for name in again),
            minutes=sum(one.minutes for one in found),
            only_place=first.only_place,
        )


def units(prop: Property) -> tuple[str, tuple[str, ...]]:
    """The unit that people use for this, and all that may be used."""
    from inspector.quantities.units import units_of

    if prop.kind == "odometer":
        return "km", tuple(units_of("distance")[:2])
    if prop.kind != "quantity":
        return "", ()
    usual = prop.amount((prop.plausible or "").partition(" to ")[0]).unit
    return usual, tuple(units_of(str(prop.dimension)))


def measuring(prop: Property, knowledge: Knowledge) -> tuple[tuple[str, str], ...]:
    """The tools it may be measured with, each with what its reading may be off by."""
    if prop.kind != "quantity":
        return ()
    known = [tool for tool in prop.tools if tool in knowledge.tools]
    return tuple((tool, knowledge.tools[tool].gives.get(str(prop.dimension), "")) for tool in known)


def own_limits(knowledge: Knowledge, part: str, name: str) -> tuple[LimitAsk, ...]:
    """The limits of the machine itself that are asked for beside a look.

    A figure without any general limit may be limited to either side, so both are asked for.
    """
    from inspector.quantities.units import units_of

    found = []
    for other, prop in knowledge.properties[part].items():
        of_this = other == name or (
            prop.derive is not None and prop.derive.of == (name,) and not prop.derive.from_
        )
        given = knowledge.given_limit(part, other) if of_this else None
        if given is None or prop.kind != "quantity":
            continue
        limit = knowledge.limits[part, other][given]
        bounds = {"at least": limit.at_least, "at most": limit.at_most}
        senses = tuple(sense for sense, bound in bounds.items() if bound is not None) or tuple(bounds)
        usual = next((prop.amount(bound).unit for bound in bounds.values() if bound is not None), "")
        unit = units(prop)[0] if prop.plausible else usual
        about = "" if other == name else (prop.means or "").rstrip(".")
        found.append(
            LimitAsk(other, about, senses, str(prop.dimension), unit, tuple(units_of(str(prop.dimension))))
        )
    return tuple(found)


def brought(tools: Iterable[str]) -> tuple[str, ...]:
    """Those that somebody has to bring."""
    left_at_home = set(words()["sheet"]["not_brought"]["words"])
    return tuple(tool for tool in tools if tool not in left_at_home)


def _bring(asked: Sequence[Question]) -> tuple[str, ...]:
    """What the looks need, the most needed first; of several tools for one reading the first will do."""
    counted: Counter[str] = Counter()
    for one in asked:
        tools = brought(one.prop.tools)
        counted.update(tools[:1] if one.prop.kind == "quantity" else tools)
    return tuple(tool for tool, _ in counted.most_common())


def works(knowledge: Knowledge, kind: str) -> tuple[tuple[str, str, tuple[str, ...]], ...]:
    """What may have been done, how it is asked, and at which places of this kind it leads to a look."""
    machine = knowledge.machines[kind]
    found = []
    for work, prop in knowledge.properties["work"].items():
        if not prop.work:
            continue
        touched = {
            place
            for part, places in machine.parts.items()
            if part != "work" and any(work in one.after for one in knowledge.properties[part].values())
            for place in places
            if place != WHOLE
        }
        at = tuple(p for p in machine.parts["work"] if any(related(p, place) for place in touched))
        if at:
            found.append((work, prop.ask or "", at))
    return tuple(found)
