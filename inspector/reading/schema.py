"""The record's JSON Schema, made from the observables, so that an editor can offer and check words."""

from __future__ import annotations

from typing import Any

from inspector.knowledge.library import Knowledge
from inspector.knowledge.observables import Property
from inspector.quantities.units import DIMENSIONS, units_of
from inspector.reading.inspection import PURPOSES

_SILENCES = ("not checked", "could not see", "does not apply")
_SILENCE = r"^(not checked|not looked at|could not see|does not apply)\b"
_REASON = {"type": ["string", "null"], "description": "why, if you like"}
_TEXT = {"type": "string", "minLength": 1}
_ODOMETER = {"type": "string", "description": "with its unit, such as 41 200 km", "pattern": r"\d"}


def record_schema(knowledge: Knowledge) -> dict[str, Any]:
    """JSON Schema (2020-12) of a record about any machine kind."""
    kinds = {kind: entry for kind, entry in knowledge.machines.items() if not entry.abstract}
    addresses: dict[str, dict[str, Any]] = {}
    for machine in kinds.values():
        for part, places in machine.parts.items():
            reference = _see(part)
            names = [f"{part} @ {place}" for place in places] + ([part] if len(places) == 1 else [])
            addresses |= dict.fromkeys(names, reference)
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A record of what was seen on a motorcycle",
        "type": "object",
        "additionalProperties": False,
        "required": ["machine", "inspection"],
        "properties": {
            "invented": {"enum": ["yes", "no", True, False], "description": "yes for an example nobody rode"},
            "machine": _machine([entry.called for entry in kinds.values()]),
            "inspection": _visit(),
            "limits": _limits(knowledge),
            "work done": _texts("what @ where, such as brake pads @ front"),
            "remarks": _texts("anything else, in your own words"),
            "observations": {
                "type": "object",
                "properties": addresses,
                "additionalProperties": False,
            },
        },
        "$defs": _definitions(knowledge),
    }


def _see(name: str) -> dict[str, Any]:
    return {"$ref": f"#/$defs/{name.replace(' ', '_')}"}


def _definitions(knowledge: Knowledge) -> dict[str, Any]:
    """The silences, every look once, and every part with the looks that it has under both spellings."""
    found: dict[str, Any] = {"silence": {"type": "string", "pattern": _SILENCE}, "reason": _REASON}
    for part, entries in knowledge.properties.items():
        looks = {name: entry for name, entry in entries.items() if entry.asked}
        key = part.replace(" ", "_")
        found |= {f"{key}.{name}": _look(entry) for name, entry in looks.items()}
        spelled = {way: _see(f"{key}.{name}") for name in looks for way in (name, name.replace("_", " "))}
        unseen = {"propertyNames": {"enum": list(_SILENCES)}, "minProperties": 1, "maxProperties": 1}
        silent = {"type": "object", "additionalProperties": _see("reason"), **unseen}
        found[key] = {"anyOf": [_see("silence"), _object(spelled), silent]}
    return found


def _object(properties: dict[str, Any], required: list[str] | None = None) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": properties,
        "required": required or [],
        "additionalProperties": False,
    }


def _texts(description: str) -> dict[str, Any]:
    return {"description": description, "anyOf": [_TEXT, {"type": "array", "items": _TEXT}]}


def _machine(kinds: list[str]) -> dict[str, Any]:
    return _object(
        {
            "kind": {"enum": kinds},
            "name": {**_TEXT, "description": "what you call it; no need for a brand"},
            "year": {"type": ["integer", "string"]},
            "odometer": _ODOMETER,
            "vin": _TEXT,
            "without": _texts("parts it does not have, such as brake disc @ front right"),
        },
        ["kind"],
    )


def _visit() -> dict[str, Any]:
    return _object(
        {
            "purpose": {"enum": list(PURPOSES)},
            "date": {"type": "string", "pattern": r"^\d{4}-\d{1,2}(-\d{1,2})?$"},
            "odometer": _ODOMETER,
            "horizon": _texts("until when to look ahead, such as 6 months, 4000 km"),
            "country": {"type": "string", "pattern": "^[A-Za-z]{2}$"},
            "request": {**_TEXT, "description": "what you want of the reader, in one sentence"},
            "tried": _texts("what was tried already"),
            "asking price": {**_TEXT, "description": "what the seller asks, such as 3 200 EUR"},
        },
        ["purpose", "date"],
    )


def _limits(knowledge: Knowledge) -> dict[str, Any]:
    return {
        "description": "limits that the machine gives: at least 4.5 mm (stamped), at most 0.3 mm (manual)",
        "type": "object",
        "propertyNames": {"pattern": f"^({'|'.join(knowledge.properties)})( @ .+)?$"},
        "additionalProperties": {"type": "object", "additionalProperties": {"type": "string"}},
    }


_EARLIER = {
    "description": "readings from before, each with the odometer of that day",
    "type": "array",
    "items": _object(
        {
            "value": _TEXT,
            "tool": _TEXT,
            "odometer": _TEXT,
            "date": _TEXT,
            "new part": {"enum": ["yes", "no", True, False]},
        },
        ["value", "odometer"],
    ),
}


def _look(entry: Property) -> dict[str, Any]:
    plain = _plain(entry)
    extras: dict[str, Any] = {"value": plain, "tool": _TEXT, "note": _TEXT, "photo": _TEXT}
    if entry.kind == "quantity":
        extras |= {"readings": {"type": "array", "items": plain, "minItems": 2}, "earlier": _EARLIER}
    nested = _object(extras | dict.fromkeys(_SILENCES, _see("reason")))
    return {"description": f"{entry.ask} {entry.look}", "anyOf": [plain, nested]}


def _plain(entry: Property) -> dict[str, Any]:
    if entry.kind in ("choice", "yes_no"):
        words: list[Any] = list(entry.words())
        return {"anyOf": [{"enum": words + ([True, False] if entry.kind == "yes_no" else [])}, _see("silence")]}
    if entry.kind == "quantity":
        assert entry.dimension in DIMENSIONS
        units = ", ".join(units_of(entry.dimension))
        return {"type": "string", "description": f"a number and a unit ({units}); {entry.plausible}"}
    if entry.kind == "count":
        return {"type": ["integer", "string"]}
    return {"type": ["string", "integer"]}
