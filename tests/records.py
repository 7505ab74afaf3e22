"""Records made in code: a machine in good order, and any record from plain data."""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path
from typing import Any

from inspector import assess
from inspector.knowledge.library import Knowledge, knowledge
from inspector.knowledge.observables import Property
from inspector.knowledge.yamlfile import Document
from inspector.reading.inspection import Inspection
from inspector.reading.record import read_document
from inspector.weighing.assessment import Assessment

TODAY = date(2026, 6, 1)
RECENT = {"date": "2026-03", "odometer": "39 000 km", "tyre_code": "3624"}


def record(
    observations: dict[str, dict[str, Any]],
    *,
    kind: str = "shaft drive motorcycle",
    purpose: str = "before purchase",
    country: str = "GB",
    **sections: Any,
) -> Inspection:
    """An inspection from plain data, as a file with these headings would give it."""
    visit = {"purpose": purpose, "date": TODAY.isoformat(), "country": country, "odometer": "40 000 km"}
    data = {"machine": {"kind": kind}, "inspection": visit, "observations": observations, **sections}
    return read_document(Document("record", data), None, knowledge(), TODAY)


def assessed(observations: dict[str, dict[str, Any]], **more: Any) -> Assessment:
    """The assessment of a record from plain data."""
    return assess(record(observations, **more))


def good_value(prop: Property, choice: int = 0) -> str:
    """What a machine in good order shows for a property; `choice` picks among several good words."""
    word = prop.good[min(choice, len(prop.good) - 1)]
    return RECENT[prop.kind] if word == "recent" else word


def good_observations(
    known: Knowledge, kind: str, *, service: bool = False, optional: bool = False, choice: int = 0
) -> dict[str, dict[str, Any]]:
    """Every look of a machine kind, all good; with the optional looks and parts when `optional`."""
    machine = known.machines[kind]
    observations: dict[str, dict[str, Any]] = {}
    for part, places in machine.parts.items():
        if part in machine.optional_parts and not optional:
            continue
        for place in places:
            looks = {
                name: good_value(prop, choice)
                for name, prop in known.properties[part].items()
                if prop.asked
                and not prop.work
                and prop.good
                and (optional or not prop.optional)
                and (service or prop.moment != "service")
            }
            if looks:
                observations[f"{part} @ {place}"] = looks
    return observations


def photos_beside(sample: Path, folder: Path) -> None:
    """Copy the photos of a sample into a folder, where a copy of its record looks for them."""
    for photo in sample.parent.glob("*.jpg"):
        shutil.copy(photo, folder)
