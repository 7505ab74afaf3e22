"""A record on disk that is filled answer by answer: each one is checked by the record reader, then saved whole.

The file is read again before each answer, so that what an editor saved meanwhile stays.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

from inspector.knowledge.library import Knowledge
from inspector.knowledge.yamlfile import Document, decode, parse
from inspector.noting import round_trip
from inspector.noting.plain_record import from_json, plain_json
from inspector.reading.addresses import Addresses, UnknownAddress, plain
from inspector.reading.inspection import Inspection, Observation
from inspector.reading.record import read_bytes, read_document
from inspector.reading.values import SILENCE_HEADINGS
from inspector.reporting.files import write_whole

Key = tuple[str, str, str]
_COMMENT = re.compile(r"(?:^|\s)#\s*(\S.*?)\s*$", re.MULTILINE)
_REPLACED = ("value", "readings", "tool", *SILENCE_HEADINGS)


class NotKept(RuntimeError):
    """The record could not be changed without changing something else; nothing was saved."""


class RecordFile:
    """One record file; `inspection` is what it says now."""

    def __init__(self, path: Path, knowledge: Knowledge, today: date) -> None:
        self.path = path
        self.known = knowledge
        self.today = today
        self._raw: bytes | None = None
        self._document = Document(str(path), {})
        self._inspection: Inspection | None = None

    @property
    def inspection(self) -> Inspection:
        """What the file says, as of the last reading or saving."""
        assert self._inspection is not None
        return self._inspection

    def read(self) -> None:
        """Read the file if it changed. Raises Faults."""
        raw = read_bytes(self.path)
        if raw == self._raw:
            return
        text = decode(raw, str(self.path))
        document = self._parsed(text)
        self._inspection = read_document(document, self.path.parent, self.known, self.today)
        self._raw, self._document = raw, document

    def create(self, kind: str, purpose: str) -> None:
        """Write a new record that holds nothing but the machine kind, the purpose and the day."""
        called = self.known.machines[kind].called
        text = f"machine:\n  kind: {called}\n\ninspection:\n  purpose: {purpose}\n  date: {self.today}\n"
        if self.path.suffix.lower() == ".json":
            visit = {"purpose": purpose, "date": str(self.today)}
            text = plain_json({"machine": {"kind": called}, "inspection": visit})
        document = self._parsed(text)
        self._save(text, document, read_document(document, self.path.parent, self.known, self.today))

    def entry(self, key: Key) -> Any:
        """What stands in the record for a look, as plain data; None when nothing does."""
        self.read()
        addresses = Addresses(self.known, self.known.machines[self.inspection.kind])
        address = _address(self._document.data.get("observations"), addresses, key)
        if address is None:
            return None
        looks = self._document.data["observations"][address]
        heading = _heading(looks, key[2])
        if heading is not None:
            return looks[heading]
        return looks if isinstance(looks, str) else None

    def without(self) -> list[str]:
        """The parts that the machine is said not to have, as they are written."""
        self.read()
        given = self._document.data["machine"].get("without")
        return list(given) if isinstance(given, list) else [given] if given else []

    def answer(self, changes: dict[Key, Any]) -> None:
        """Set looks (None takes one out) and save. Raises Faults with what the record reader says against it."""
        self.read()
        addresses = Addresses(self.known, self.known.machines[self.inspection.kind])
        tree = self._tree()
        for key, value in changes.items():
            _change(tree, addresses, key, value)
        self._keep(tree, changes)

    def head(self, section: str, name: str | None, value: Any) -> None:
        """Set `section: name:`, or a whole section when there is no name; None takes it out. Raises Faults."""
        self.read()
        tree = self._tree()
        table, key = (tree, section) if name is None else (tree[section], name)
        old = table.get(key)
        if value is None:
            if key in table:
                round_trip.remove(tree, table, key)
        elif isinstance(old, list) and isinstance(value, list) and value[: len(old)] == old:
            round_trip.append(old, value[len(old) :])
        elif isinstance(old, list) and isinstance(value, list) and old[: len(value)] == value:
            round_trip.shorten(old, len(value))
        else:
            round_trip.put(table, key, value, apart=name is None)
        self._keep(tree, {})

    def _tree(self) -> Any:
        assert self._raw is not None
        text = decode(self._raw, str(self.path))
        data = from_json(text)
        return round_trip.load(text) if data is None else round_trip.node(data)

    def _parsed(self, text: str) -> Document:
        return parse(text, str(self.path), keep_faults=True)

    def _keep(self, tree: Any, changes: dict[Key, Any]) -> None:
        """Save the changed tree, unless it is refused by the reader or says something else besides the change."""
        assert self._raw is not None
        before = decode(self._raw, str(self.path))
        text = round_trip.dump(tree, before) if from_json(before) is None else plain_json(tree)
        document = self._parsed(text)
        inspection = read_document(document, self.path.parent, self.known, self.today)
        old, new = (_without_lines(one, changes) for one in (self.inspection, inspection))
        if old != new or Counter(_COMMENT.findall(before)) - Counter(_COMMENT.findall(text)):
            raise NotKept(f"{self.path}: the answer would have changed something else, too; nothing was saved")
        self._save(text, document, inspection)

    def _save(self, text: str, document: Document, inspection: Inspection) -> None:
        raw = text.encode()
        if self._raw is not None and b"\r\n" in self._raw:
            raw = raw.replace(b"\n", b"\r\n")
        write_whole(self.path, raw)
        self._raw, self._document, self._inspection = raw, document, inspection


def _without_lines(inspection: Inspection, changes: Iterable[Key]) -> dict[Key, Observation]:
    """The observations that a change must leave as they are; their lines may move."""
    return {key: replace(one, line=0) for key, one in inspection.observations.items() if key not in changes}


def _address(observations: Any, addresses: Addresses, key: Key) -> str | None:
    """The heading of the record that means this part at this place, however it is spelled."""
    for address in observations or ():
        try:
            if addresses.part_and_place(address) == key[:2]:
                return str(address)
        except UnknownAddress:
            continue
    return None


def _heading(looks: Any, name: str) -> str | None:
    """The heading below a part that means this property, however it is spelled."""
    if not isinstance(looks, dict):
        return None
    return next((str(one) for one in looks if plain(one).replace(" ", "_") == name), None)


def _change(tree: Any, addresses: Addresses, key: Key, value: Any) -> None:
    """Set or take out (None) one look in the tree."""
    part, place, name = key
    if not tree.get("observations"):
        round_trip.put(tree, "observations", {}, apart=True)
    observations = tree["observations"]
    address = _address(observations, addresses, key)
    if address is None:
        if value is not None:
            fresh = part if len(addresses.machine.parts[part]) == 1 else f"{part} @ {place}"
            round_trip.put(observations, fresh, {name.replace("_", " "): value})
        return
    whole = _whole(observations[address])
    if whole is not None:
        asked = [one for one, prop in addresses.known.properties[part].items() if prop.asked]
        round_trip.put(observations, address, {one.replace("_", " "): whole for one in asked})
    looks = observations[address]
    heading = _heading(looks, name)
    if value is not None:
        _set(looks, heading or name.replace("_", " "), value)
    elif heading is not None and len(looks) > 1:
        round_trip.remove(observations, looks, heading)
    elif heading is not None and len(observations) > 1:
        round_trip.remove(tree, observations, address)
    elif heading is not None:
        round_trip.remove(tree, tree, "observations")


def _whole(looks: Any) -> str | None:
    """What is said of a part as a whole, such as `not checked: no stand`."""
    if not isinstance(looks, dict):
        return str(looks)
    heading = next(iter(looks), "")
    if len(looks) == 1 and plain(heading) in SILENCE_HEADINGS:
        return f"{plain(heading)}: {looks[heading]}" if looks[heading] else plain(heading)
    return None


def _set(looks: Any, heading: str, value: Any) -> None:
    """Write an answer; where a note or a photo stands beside the old one, they stay."""
    old = looks.get(heading)
    if not isinstance(old, dict):
        round_trip.put(looks, heading, value)
        return
    wanted = value if isinstance(value, dict) else {"value": value}
    gone = [one for one in old if one not in wanted and (isinstance(value, dict) or one in _REPLACED)]
    for one, text in wanted.items():
        if one not in old or old[one] != text:
            round_trip.put(old, one, text)
    for one in gone:
        round_trip.remove(looks, old, one)
