"""Read a record file (YAML, JSON, or a table) into an `Inspection`. Raises Faults with all faults of the file."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from inspector.knowledge.faults import Fault, Faults, nearest, shown
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import Machine, contains, related
from inspector.knowledge.yamlfile import MOST_BYTES, Document, decode, parse
from inspector.quantities.units import Amount
from inspector.reading.addresses import Addresses
from inspector.reading.collector import Collector
from inspector.reading.inspection import Inspection, Observation, Silent, Word
from inspector.reading.observed import ObservationReader
from inspector.reading.sections import Placed, SectionReader
from inspector.reading.table import is_table, read_table
from inspector.reading.visit import VisitReader

_HEADINGS = ("machine", "inspection", "limits", "work done", "observations", "remarks", "invented")
Observations = dict[tuple[str, str, str], Observation]


def read_record(path: Path, knowledge: Knowledge, today: date | None = None) -> Inspection:
    """Read the record at `path`. Raises Faults; a missing or unreadable file is a fault, too."""
    return read_document(load_document(path), path.parent, knowledge, today or date.today())


def load_document(path: Path) -> Document:
    """The plain data of a record file of any form, with its places. Raises Faults."""
    raw, name = read_bytes(path), str(path)
    if is_table(path):
        return read_table(raw, path)
    return parse(decode(raw, name), name, keep_faults=True)


def read_bytes(path: Path) -> bytes:
    """The content of a record file, as far as it may be long. Raises Faults."""
    try:
        with path.open("rb") as file:
            return file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        reason = f"there is no such file{_neighbour(path)}"
    except IsADirectoryError:
        reason = "this is a folder; name the file in it that holds the record"
    except PermissionError:
        reason = "you have no right to read this file"
    except OSError as error:
        reason = f"this file cannot be read: {error.strerror or 'no reason is known'}"
    raise Faults([Fault(str(path), 1, 1, reason)])


def _neighbour(path: Path) -> str:
    try:
        near = nearest(path.name, sorted(one.name for one in path.parent.iterdir() if one.is_file()))
    except OSError:
        return ""
    return f". Did you mean `{path.with_name(near)}`?" if near else ""


def read_document(document: Document, folder: Path | None, knowledge: Knowledge, today: date) -> Inspection:
    """Read a parsed record; photo files are looked for in `folder` (None: not at all). Raises Faults."""
    notes, data = Collector(document), document.data
    if not isinstance(data, dict):
        notes.fault((), f"a record has the headings machine, inspection and observations; this is {shown(data)}")
        notes.finish()
    notes.headings((), data, _HEADINGS)
    head = VisitReader(notes, knowledge, today)
    kind, day, odometer = head.kind(), head.day(), head.odometer()
    addresses = Addresses(knowledge, knowledge.machines[kind] if kind else _any_machine(knowledge))
    sections = SectionReader(notes, knowledge, addresses)
    without, work = sections.without(head.machine.get("without")), sections.work(data.get("work done"))
    looks = ObservationReader(notes, folder, knowledge, addresses, day)
    observations = looks.observations(data.get("observations"))
    _readings_in_order(notes, looks, odometer)
    _contradictions(notes, without, work, observations)
    months, km = head.horizon()
    inspection = Inspection(
        kind=kind or "",
        purpose=head.purpose(),
        day=day,
        odometer=odometer,
        horizon_months=months,
        horizon_km=km,
        country=head.country(),
        year=head.year(day),
        vin=head.vin(),
        name=head.text("machine", "name"),
        request=head.text("inspection", "request"),
        asking_price=head.asking_price(),
        tried=head.tried(),
        remarks=tuple(text for _, text in notes.texts(("remarks",), data.get("remarks"))),
        invented=_invented(notes),
        without=tuple(one for _, one in without),
        limits=sections.limits(data.get("limits")),
        work=tuple(one for _, one in work),
        observations=observations,
    )
    notes.finish()
    return inspection


def _any_machine(knowledge: Knowledge) -> Machine:
    """All kinds in one, so that a record of unknown kind still gets its other faults told."""
    parts: dict[str, tuple[str, ...]] = {}
    for machine in knowledge.machines.values():
        for part, places in machine.parts.items():
            parts[part] = tuple(dict.fromkeys((*parts.get(part, ()), *places)))
    return Machine(id="any", called="any", abstract=True, parts=parts, optional_parts=frozenset())


def _invented(notes: Collector) -> bool:
    given = notes.text(("invented",), notes.document.data.get("invented"))
    word = (given or "no").lower()
    if word not in ("yes", "no", "true", "false"):
        notes.fault(("invented",), f"{shown(given)} must be yes (an example nobody rode) or no")
    return word in ("yes", "true")


def _readings_in_order(notes: Collector, looks: ObservationReader, now: Amount | None) -> None:
    """A noted reading of the odometer cannot lie above today's."""
    for key, observation in looks.found.items():
        prop = looks.known.properties[observation.part][observation.name]
        amount = getattr(observation.value, "amount", None)
        if prop.kind == "odometer" and amount is not None and now is not None and amount.base > now.base:
            text = f"`{observation.name}` at {amount} lies above the odometer of this day, {now}"
            notes.fault(looks.paths[key], text)
        for before in observation.earlier:
            if now is not None and before.odometer.base > now.base:
                text = (
                    f"a reading at {before.odometer} lies above the odometer of this day, {now}; which is right?"
                )
                notes.fault((*looks.paths[key], "earlier"), text)


def _contradictions(
    notes: Collector, without: list[Placed], work: list[Placed], observations: Observations
) -> None:
    _without_but_noted(notes, without, observations)
    _done_but_denied(notes, work, observations)


def _without_but_noted(notes: Collector, without: list[Placed], observations: Observations) -> None:
    for where, (part, region) in without:
        told: set[str] = set()
        for (of, place, _), one in observations.items():
            absent = isinstance(one.value, Silent) and one.value.state == "does not apply"
            if of == part and contains(region, place) and not absent and place not in told:
                told.add(place)
                text = f"the machine is said to be without `{part} @ {place}`, yet line {one.line} says how it was"
                notes.fault(where, text)


def _done_but_denied(notes: Collector, work: list[Placed], observations: Observations) -> None:
    for where, (what, place) in work:
        for (of, there, name), one in observations.items():
            denied = isinstance(one.value, Word) and one.value.word == "no"
            if of == "work" and name == what and related(there, place) and denied:
                text = f"`{what.replace('_', ' ')} @ {place}` is said to be done, yet line {one.line} says no"
                notes.fault(where, text)
