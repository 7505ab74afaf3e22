"""Two part records of one inspection made one. What contradicts is asked about, never settled in silence."""

from __future__ import annotations

from typing import Any

from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import WHOLE, contains
from inspector.knowledge.wording import words
from inspector.knowledge.yamlfile import Path
from inspector.noting.merge_looks import LookMerger
from inspector.noting.merge_parts import Contradiction, Judge, Merged, Part, Settle, at, listed
from inspector.reading.addresses import Addresses, plain
from inspector.reading.inspection import OwnLimit, Silent

_SINGLE: tuple[tuple[str, str], ...] = (
    ("machine", "name"),
    ("machine", "year"),
    ("machine", "vin"),
    ("machine", "odometer"),
    ("inspection", "horizon"),
    ("inspection", "country"),
    ("inspection", "request"),
    ("inspection", "asking price"),
)
_LISTS: tuple[tuple[str, ...], ...] = (
    ("machine", "without"),
    ("inspection", "tried"),
    ("work done",),
    ("remarks",),
)


class CannotMerge(ValueError):
    """The two records are not of one inspection; the message says what differs, with both lines."""


def merge(first: Part, second: Part, knowledge: Knowledge, settle: Settle) -> Merged:
    """The two records as one. Raises CannotMerge when the kind, the day or the purpose differ."""
    _same_inspection(first, second, knowledge)
    result = Merged()
    judge = Judge((first, second), settle, result)
    addresses = Addresses(knowledge, knowledge.machines[first.inspection.kind])
    _head(judge, knowledge)
    _limits(judge, addresses)
    looks = LookMerger(judge, addresses)
    observations = looks.observations()
    _missing_but_seen(judge, looks)
    remarks = result.data.pop("remarks", None)
    result.data |= {"observations": observations} if observations else {}
    result.data |= {"remarks": remarks} if remarks else {}
    return result


def _same_inspection(first: Part, second: Part, knowledge: Knowledge) -> None:
    one, other = first.inspection, second.inspection
    kinds = [knowledge.machines[each.kind].called for each in (one, other)]
    compared: tuple[tuple[Path, str | None, str | None], ...] = (
        (("machine", "kind"), kinds[0], kinds[1]),
        (("inspection", "date"), one.day.isoformat(), other.day.isoformat()),
        (("inspection", "purpose"), one.purpose, other.purpose),
        (("machine", "vin"), one.vin or other.vin, other.vin or one.vin),
        (("invented",), "yes" if one.invented else "no", "yes" if other.invented else "no"),
    )
    for path, a, b in compared:
        if a != b:
            text = words()["merge"]["differs"].format(what=": ".join(map(str, path)))
            raise CannotMerge("\n".join([text, f"  {first.told(path, a)}", f"  {second.told(path, b)}"]))


def _head(judge: Judge, knowledge: Knowledge) -> None:
    """Everything about the machine and the visit: what one leaves out the other adds; lists are joined."""
    first = judge.parts[0].inspection
    data = judge.result.data
    if first.invented:
        data["invented"] = "yes"
    data["machine"] = {"kind": knowledge.machines[first.kind].called}
    data["inspection"] = {"purpose": first.purpose, "date": first.day.isoformat()}
    for path in _SINGLE:
        value = _single(judge, path)
        if value is not None:
            data[path[0]][path[1]] = value
    for place in _LISTS:
        texts: dict[str, str] = {}
        for part in judge.parts:
            for text in listed(at(part.document.data, place)):
                texts.setdefault(plain(text), text)
        if texts:
            (data if len(place) == 1 else data[place[0]])[place[-1]] = list(texts.values())


def _single(judge: Judge, path: tuple[str, str]) -> Any:
    places: list[Path] = [_place(part, path) for part in judge.parts]
    values = [at(part.document.data, place) for part, place in zip(judge.parts, places, strict=True)]
    if values[0] in (None, "") or values[1] in (None, ""):
        return values[1] if values[0] in (None, "") else values[0]
    texts = [" / ".join(listed(value)) for value in values]
    if plain(texts[0]) == plain(texts[1]) or _same_meaning(judge, path[1]):
        return values[0]
    lines = (judge.parts[0].told(places[0], texts[0]), judge.parts[1].told(places[1], texts[1]))
    return values[judge.pick(": ".join(path), lines)]


def _place(part: Part, path: tuple[str, str]) -> Path:
    """Where a heading stands; the odometer may stand under `inspection` as well."""
    other = ("inspection", path[1])
    return other if at(part.document.data, path) is None and path[1] == "odometer" else path


def _same_meaning(judge: Judge, name: str) -> bool:
    """Whether both say the same in other words, such as 41 200 km and 41200 km."""
    one, other = (part.inspection for part in judge.parts)
    if name == "odometer":
        return bool(one.odometer and other.odometer and abs(one.odometer.base - other.odometer.base) < 0.5)
    if name == "horizon":
        return (one.horizon_months, one.horizon_km) == (other.horizon_months, other.horizon_km)
    return name in ("country", "vin", "year") and getattr(one, name) == getattr(other, name)


def _limits(judge: Judge, addresses: Addresses) -> None:
    """The limits of both; where both name one, they must agree."""
    found: dict[tuple[str, str, str], dict[int, Path]] = {}
    for side, part in enumerate(judge.parts):
        for address, below in (part.document.data.get("limits") or {}).items():
            of, region = addresses.part_and_region(address)
            for heading in below or ():
                name = plain(heading).replace(" ", "_")
                found.setdefault((of, region, name), {})[side] = ("limits", address, heading)
    merged: dict[str, dict[str, Any]] = {}
    for key, paths in found.items():
        texts = {side: at(judge.parts[side].document.data, path) for side, path in paths.items()}
        side = min(paths)
        if len(paths) == 2 and not _same_limit(judge, key):
            lines = (judge.parts[0].told(paths[0], texts[0]), judge.parts[1].told(paths[1], texts[1]))
            side = judge.pick(f"{key[0]}: {key[2].replace('_', ' ')}", lines)
        of, region, name = key
        heading = of if region == WHOLE else f"{of} @ {region}"
        merged.setdefault(heading, {})[name.replace("_", " ")] = texts[side]
    if merged:
        judge.result.data["limits"] = merged


def _same_limit(judge: Judge, key: tuple[str, str, str]) -> bool:
    found = []
    for part in judge.parts:
        for limit in part.inspection.limits:
            if (limit.part, limit.place or WHOLE, limit.name) == key:
                found.append(_bounds(limit))
    return found[0] == found[1]


def _bounds(limit: OwnLimit) -> tuple[object, ...]:
    bases = (None if one is None else round(one.base, 9) for one in (limit.at_least, limit.at_most))
    return (*bases, limit.origin)


def _missing_but_seen(judge: Judge, looks: LookMerger) -> None:
    """A part that one record says is missing and the other looked at: one of the records has to be mended."""
    for side, part in enumerate(judge.parts):
        for of, region in part.inspection.without:
            for key, one in judge.parts[1 - side].inspection.observations.items():
                absent = isinstance(one.value, Silent) and one.value.state == "does not apply"
                if key[0] == of and contains(region, key[1]) and not absent:
                    lines = [part.told(("machine", "without"), f"without {of}"), looks.line(1 - side, key)]
                    ordered = (lines[side], lines[1 - side])
                    judge.result.contradictions.append(Contradiction(f"{of} @ {key[1]}", ordered))
                    break
