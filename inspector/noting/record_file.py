"""A record on disk that is filled answer by answer: each one is checked by the record reader, then saved whole.

The file is read again before each answer, so that what an editor saved meanwhile stays.
"""

from __future__ import annotations

import re
from collections import Counter
from datetime import date
from pathlib import Path
from typing import Any

from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.library import Knowledge
from inspector.knowledge.yamlfile import Document, decode, parse
from inspector.noting import round_trip
from inspector.reading.addresses import Addresses, UnknownAddress, plain
from inspector.reading.inspection import Inspection
from inspector.reading.record import read_bytes, read_document
from inspector.reading.values import SILENCE_HEADINGS
from inspector.reporting.files import write_whole

Key = tuple[str, str, str]
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
        """Read the file if it changed. Raises Faults; JSON is refused, it cannot hold a comment."""
        raw = read_bytes(self.path)
        if raw == self._raw:
            return
        text = decode(raw, str(self.path))
        if text.lstrip().startswith("{"):
            wrong = "this record is JSON; answers can be added to a YAML record only"
            raise Faults([Fault(str(self.path), 1, 1, wrong)])
        self._take(raw, self._parsed(text))

    def create(self, kind: str, purpose: str) -> None:
        """Write a new record that holds nothing but the machine kind, the purpose and the day."""
        called = self.known.machines[kind].called
        text = f"machine:\n  kind: {called}\n\ninspection:\n  purpose: {purpose}\n  date: {self.today.isoformat()}\n"
        self._save(text, self._parsed(text), b"")

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

    def answer(self, changes: dict[Key, Any]) -> None:
        """Set looks (None takes one out) and save. Raises Faults with what the record reader says against it."""
        self.read()
        addresses = Addresses(self.known, self.known.machines[self.inspection.kind])
        tree = self._tree()
        for key, value in changes.items():
            _change(tree, addresses, key, value, self.known)
        self._keep(tree, changes)

    def head(self, section: str, name: str | None, value: Any) -> None:
        """Set `section: name:`, or a whole section when there is no name; None takes it out. Raises Faults."""
        self.read()
        tree = self._tree()
        table, key = (tree, section) if name is None else (tree[section], name)
        if value is not None:
            round_trip.put(table, key, value)
        elif key in table:
            round_trip.remove(tree, table, key)
        self._keep(tree, {})

    def _tree(self) -> Any:
        assert self._raw is not None
        return round_trip.load(decode(self._raw, str(self.path)))

    def _parsed(self, text: str) -> Document:
        return parse(text, str(self.path), keep_faults=True)

    def _keep(self, tree: Any, changes: dict[Key, Any]) -> None:
        assert self._raw is not None
        before = decode(self._raw, str(self.path))
        text = round_trip.dump(tree, before)
        document = self._parsed(text)
        _refuse_loss(before, text)
        inspection = self.inspection
        self._save(text, document, self._raw)
        lost = [
            key
            for key, one in inspection.observations.items()
            if key not in changes and not _alike(one, self.inspection.observations.get(key))
        ]
        if lost:
            write_whole(self.path, before.encode())
            self._raw = None
            raise NotKept(f"{self.path}: the answer would have changed {lost[0]}, too; nothing was saved")

    def _save(self, text: str, document: Document, like: bytes) -> None:
        inspection = read_document(document, self.path.parent, self.known, self.today)
        raw = text.replace("\n", "\r\n").encode() if b"\r\n" in like else text.encode()
        write_whole(self.path, raw)
        self._raw, self._document, self._inspection = raw, document, inspection

    def _take(self, raw: bytes, document: Document) -> None:
        self._inspection = read_document(document, self.path.parent, self.known, self.today)
        self._raw, self._document = raw, document
