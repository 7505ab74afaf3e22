"""Read the section `observations`: what was seen of each part, with notes and photos."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

from inspector.knowledge.faults import shown
from inspector.knowledge.library import Knowledge
from inspector.knowledge.observables import Property
from inspector.knowledge.yamlfile import Path as Where
from inspector.reading.addresses import Addresses, UnknownAddress, plain
from inspector.reading.collector import Collector
from inspector.reading.history import HistoryReader
from inspector.reading.inspection import Observation, Silent, Value
from inspector.reading.photos import NoPhoto, photo
from inspector.reading.values import SILENCE_HEADINGS, NotAValue, read_silence, read_value, silence

Key = tuple[str, str, str]
_EXTRAS = ("value", "readings", "tool", "note", "photo", "earlier", *SILENCE_HEADINGS)


class ObservationReader:
    """Reads everything that was seen, collecting every fault."""

    def __init__(
        self, notes: Collector, folder: Path | None, knowledge: Knowledge, addresses: Addresses, today: date
    ) -> None:
        self.notes = notes
        self.folder = folder
        self.known = knowledge
        self.addresses = addresses
        self.today = today
        self.found: dict[Key, Observation] = {}
        self.paths: dict[Key, Where] = {}
        self.history = HistoryReader(notes, knowledge, today)
        self._headings: dict[tuple[str, str], str] = {}

    def observations(self, data: Any) -> dict[Key, Observation]:
        """The section `observations`."""
        for address, looks in self.notes.mapping(("observations",), data).items():
            path: Where = ("observations", address)
            try:
                part, place = self.addresses.part_and_place(address)
            except UnknownAddress as error:
                self.notes.fault(path, str(error), key=True)
                continue
            first = self._headings.setdefault((part, place), address)
            if first != address:
                line = self.notes.document.place(("observations", first), key=True)[0]
                text = f"`{part} @ {place}` stands in line {line} already, as {shown(first)}; keep one heading"
                self.notes.fault(path, text, key=True)
            self._part(path, part, place, looks)
        return self.found

    def _part(self, path: Where, part: str, place: str, looks: Any) -> None:
        if looks is None:
            text = f"nothing stands below `{path[-1]}`; write what was seen, or `not checked: reason`"
            self.notes.fault(path, text, key=True)
        elif isinstance(looks, str):
            self._whole_part(path, part, place, looks)
        elif isinstance(looks, dict) and len(looks) == 1 and plain(next(iter(looks))) in SILENCE_HEADINGS:
            ((heading, reason),) = looks.items()
            silent = self._silence((*path, heading), plain(heading), reason)
            if silent is not None:
                self._everything(path, part, place, silent)
        else:
            for heading, value in self.notes.mapping(path, looks).items():
                here = (*path, heading)
                try:
                    name, prop = self.addresses.property(part, heading)
                except UnknownAddress as error:
                    self.notes.fault(here, str(error), key=True)
                    continue
                self._add(here, self._one(here, part, place, name, prop, value))

    def _add(self, path: Where, one: Observation | None) -> None:
        if one is None:
            return
        key = (one.part, one.place, one.name)
        if key in self.found:
            line = self.found[key].line
            text = f"`{one.name}` of `{one.part} @ {one.place}` stands in line {line} already; keep one of them"
            self.notes.fault(path, text, key=True)
        else:
            self.found[key], self.paths[key] = one, path

    def _whole_part(self, path: Where, part: str, place: str, text: str) -> None:
        silent = read_silence(text)
        if silent is None:
            allowed = "`not checked: reason`, `could not see`, `does not apply`, or properties below it"
            self.notes.fault(path, f"{shown(text)} says nothing about `{part}` as a whole. Allowed: {allowed}")
            return
        self._everything(path, part, place, silent)

    def _everything(self, path: Where, part: str, place: str, silent: Silent) -> None:
        line = self.notes.document.place(path, key=True)[0]
        for name, prop in self.known.properties[part].items():
            if prop.asked:
                self._add(path, Observation(part, place, name, silent, line=line))

    def _one(self, path: Where, part: str, place: str, name: str, prop: Property, data: Any) -> Observation | None:
        if data is None:
            self.notes.fault(path, f"`{name}` is empty; write the value, or `not checked: reason`", key=True)
            return None
        if isinstance(data, list):
            self.notes.fault(path, f"`{name}` takes one value, not a list")
            return None
        extras: dict[str, Any] = data if isinstance(data, dict) else {"value": data}
        self.notes.headings(path, extras, _EXTRAS)
        value = self._value(path, name, prop, extras, nested=isinstance(data, dict))
        note = self.notes.text((*path, "note"), extras.get("note"))
        picture = self._photo((*path, "photo"), extras["photo"]) if "photo" in extras else None
        before = self.history.earlier((*path, "earlier"), prop, extras["earlier"]) if "earlier" in extras else ()
        line = self.notes.document.place(path, key=True)[0]
        return None if value is None else Observation(part, place, name, value, note, picture, before, line)

    def _value(
        self, path: Where, name: str, prop: Property, extras: dict[str, Any], *, nested: bool
    ) -> Value | Silent | None:
        given = [heading for heading in ("value", "readings", *SILENCE_HEADINGS) if heading in extras]
        if len(given) != 1:
            several = f"{' and '.join(f'`{one}`' for one in given)} stand here together; keep one of them"
            missing = f"`{name}` has no `value`; write it, or `not checked: reason`"
            self.notes.fault((*path, given[-1]) if given else path, several if given else missing, key=True)
        if given == ["readings"]:
            tool = self.notes.text((*path, "tool"), extras.get("tool"))
            return self.history.mean((*path, "readings"), prop, extras["readings"], tool)
        for heading in given:
            if heading in SILENCE_HEADINGS:
                if "tool" in extras:
                    self.notes.fault((*path, "tool"), "a tool is named, but no value stands here", key=True)
                return self._silence((*path, heading), heading, extras[heading])
        if "value" not in given:
            return None
        here = (*path, "value") if nested else path
        text = self.notes.text(here, extras["value"])
        if text is None:
            if extras["value"] is None or extras["value"] == "":
                self.notes.fault(here, f"`{name}` is empty; write the value, or `not checked: reason`", key=True)
            return None
        tool = self._tool((*path, "tool"), prop, text, extras["tool"]) if "tool" in extras else None
        try:
            return read_value(f"{text} with {tool}" if tool else text, prop, self.known, self.today)
        except NotAValue as error:
            self.notes.fault(here, str(error))
            return None

    def _silence(self, path: Where, heading: str, reason: Any) -> Silent | None:
        try:
            return silence(heading, self.notes.text(path, reason))
        except NotAValue as error:
            self.notes.fault(path, str(error))
            return None

    def _tool(self, path: Where, prop: Property, value: str, given: Any) -> str | None:
        tool = self.notes.text(path, given)
        if tool is not None and prop.kind != "quantity":
            self.notes.fault(path, "a tool goes only with a measured amount; put it into `note`", key=True)
            return None
        if tool is not None and (" with " in value.lower() or read_silence(value)):
            self.notes.fault(path, "the value does not go with this `tool`; name one tool, with a value", key=True)
            return None
        return tool

    def _photo(self, path: Where, given: Any) -> str | None:
        try:
            return photo(self.folder, given)
        except NoPhoto as error:
            self.notes.fault(path, str(error))
            return None
