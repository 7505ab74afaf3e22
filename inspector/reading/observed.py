"""Read the sections of a record that name parts: observations, own limits, work done, what is not there."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path
from typing import Any, Literal

from inspector.knowledge.faults import Fault, not_allowed
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import WHOLE
from inspector.knowledge.observables import Property
from inspector.knowledge.yamlfile import Document
from inspector.knowledge.yamlfile import Path as Where
from inspector.quantities.units import Amount, NotAnAmount, parse_amount
from inspector.reading.addresses import Addresses, UnknownAddress
from inspector.reading.inspection import Observation, OwnLimit, Silent, Value
from inspector.reading.values import LONGEST_TEXT, NotAValue, read_silence, read_value

_LIMIT = re.compile(
    r"(?P<sense>at least|at most|from)\s+(?P<first>.+?)(?:\s+to\s+(?P<second>.+?))?\s*(?:\((?P<origin>[^()]*)\))?"
)
_EXTRAS = ("value", "tool", "note", "photo", "not checked", "could not see", "does not apply")


class ObservationReader:
    """Reads everything of a record that is said about parts, collecting every fault."""

    def __init__(
        self, document: Document, folder: Path | None, knowledge: Knowledge, addresses: Addresses, today: date
    ) -> None:
        self.document = document
        self.folder = folder
        self.known = knowledge
        self.addresses = addresses
        self.today = today
        self.faults: list[Fault] = []

    def _fault(self, path: Where, text: str, *, key: bool = False) -> None:
        self.faults.append(self.document.fault(path, text, key=key))

    def _mapping(self, path: Where, data: Any) -> dict[str, Any]:
        if data is None:
            return {}
        if not isinstance(data, dict):
            self._fault(path, f"`{path[-1]}` must have headings below it, not {_shown(data)}")
            return {}
        return data

    def observations(self, data: Any) -> dict[tuple[str, str, str], Observation]:
        """The section `observations`."""
        found: dict[tuple[str, str, str], Observation] = {}
        for address, looks in self._mapping(("observations",), data).items():
            path: Where = ("observations", address)
            try:
                part, place = self.addresses.part_and_place(address)
            except UnknownAddress as error:
                self._fault(path, str(error), key=True)
                continue
            if isinstance(looks, str):
                self._whole_part(path, part, place, looks, found)
                continue
            for heading, value in self._mapping(path, looks).items():
                try:
                    name, prop = self.addresses.property(part, heading)
                except UnknownAddress as error:
                    self._fault((*path, heading), str(error), key=True)
                    continue
                self._add(found, self._one((*path, heading), part, place, name, prop, value))
        return found

    def _add(self, found: dict[tuple[str, str, str], Observation], one: Observation | None) -> None:
        if one is None:
            return
        key = (one.part, one.place, one.name)
        if key in found:
            text = f"`{one.name}` of `{one.part} @ {one.place}` stands in line {found[key].line} already; keep one"
            self.faults.append(Fault(self.document.name, one.line, 1, text))
        else:
            found[key] = one

    def _whole_part(
        self, path: Where, part: str, place: str, text: str, found: dict[tuple[str, str, str], Observation]
    ) -> None:
        silent = read_silence(text)
        if silent is None:
            allowed = "`not checked: reason`, `could not see`, `does not apply`, or properties below it"
            self._fault(path, f"`{text[:60]}` says nothing about `{part}` as a whole. Allowed: {allowed}")
            return
        line = self.document.place(path)[0]
        for name, prop in self.known.properties[part].items():
            if prop.asked:
                self._add(found, Observation(part, place, name, silent, line=line))

    def _one(self, path: Where, part: str, place: str, name: str, prop: Property, data: Any) -> Observation | None:
        line = self.document.place(path, key=True)[0]
        if data is None:
            self._fault(path, f"`{name}` is empty; write the value, or `not checked: reason`")
            return None
        if isinstance(data, list):
            self._fault(path, f"`{name}` takes one value, not a list")
            return None
        extras: dict[str, Any] = data if isinstance(data, dict) else {"value": data}
        for heading in extras:
            if heading not in _EXTRAS:
                self._fault((*path, heading), not_allowed("the heading", heading, _EXTRAS), key=True)
                return None
        value = self._value(path, prop, extras, isinstance(data, dict))
        note = extras.get("note")
        if note is not None and (not isinstance(note, str) or len(note) > LONGEST_TEXT):
            self._fault((*path, "note"), f"a note is plain text of at most {LONGEST_TEXT} characters")
            note = None
        photo = self._photo((*path, "photo"), extras["photo"]) if "photo" in extras else None
        return None if value is None else Observation(part, place, name, value, note, photo, line=line)

    def _value(self, path: Where, prop: Property, extras: dict[str, Any], nested: bool) -> Value | Silent | None:
        for heading in ("not checked", "could not see", "does not apply"):
            if heading in extras:
                if "value" in extras:
                    self._fault(path, f"both a value and `{heading}` stand here; keep one")
                reason = extras[heading]
                return read_silence(f"{heading}: {reason}" if reason else heading)
        given = extras.get("value")
        here = (*path, "value") if nested else path
        if not isinstance(given, str):
            self._fault(here, "`value` is missing or is no plain text")
            return None
        if extras.get("tool"):
            given = f"{given} with {extras['tool']}"
        try:
            return read_value(given, prop, self.known, self.today)
        except NotAValue as error:
            self._fault(here, str(error))
            return None

    def _photo(self, path: Where, given: Any) -> str | None:
        if not isinstance(given, str) or not given.strip():
            self._fault(path, "`photo` is the name of a picture file beside the record")
            return None
        if self.folder is None:
            return given
        folder = self.folder.resolve()
        try:
            target = (folder / given).resolve()
            if not target.is_relative_to(folder):
                self._fault(path, f"`{given}` lies outside the folder of the record; put the photo into it")
            elif not target.is_file():
                self._fault(path, f"there is no file `{given}` beside the record")
            else:
                return target.relative_to(folder).as_posix()
        except (OSError, ValueError) as error:
            self._fault(path, f"`{given[:60]}` is not a usable file name: {error}")
        return None

    def limits(self, data: Any) -> tuple[OwnLimit, ...]:
        """The section `limits`: what the stamp or the manual says."""
        found: list[OwnLimit] = []
        for address, entries in self._mapping(("limits",), data).items():
            path: Where = ("limits", address)
            try:
                part, region = self.addresses.part_and_region(address)
            except UnknownAddress as error:
                self._fault(path, str(error), key=True)
                continue
            for heading, text in self._mapping(path, entries).items():
                here = (*path, heading)
                name = "_".join(heading.lower().replace("_", " ").split())
                takes = [n for n in self.known.properties[part] if self.known.given_limit(part, n)]
                if name not in takes:
                    self._fault(here, not_allowed(f"`{part}`: a limit of", heading, takes, most=30), key=True)
                    continue
                limit = self._limit(here, part, region, name, text)
                if limit is not None:
                    found.append(limit)
        return tuple(found)

    def _limit(self, path: Where, part: str, region: str, name: str, text: Any) -> OwnLimit | None:
        prop = self.known.properties[part][name]
        match = _LIMIT.fullmatch(text.strip()) if isinstance(text, str) else None
        if match is None or bool(match["second"]) != (match["sense"] == "from"):
            self._fault(
                path, "write `at least 4.5 mm (stamped)`, `at most 0.3 mm (manual)` or `from 2 mm to 4 mm`"
            )
            return None
        origins: dict[str, Literal["stamped on the part", "the machine's manual"]] = {
            "stamped": "stamped on the part", "manual": "the machine's manual"}  # fmt: skip
        word = (match["origin"] or "manual").strip().lower()
        if word not in origins:
            self._fault(path, not_allowed("the origin", word, origins))
            return None
        try:
            first = parse_amount(match["first"], str(prop.dimension))
            second = parse_amount(match["second"], str(prop.dimension)) if match["second"] else None
        except NotAnAmount as error:
            self._fault(path, str(error))
            return None
        least = None if match["sense"] == "at most" else first
        most: Amount | None = first if match["sense"] == "at most" else second
        if not prop.derive and any(self._implausible(prop, one) for one in (least, most) if one):
            self._fault(path, f"`{text}` is not believable here; from {prop.plausible} is")
            return None
        return OwnLimit(part, None if region == WHOLE else region, name, least, most, origins[word])

    @staticmethod
    def _implausible(prop: Property, amount: Amount) -> bool:
        low, high = prop.plausible_range()
        return not low <= amount.base <= high

    def without(self, data: Any) -> tuple[tuple[str, str], ...]:
        """`machine: without`: parts this machine does not have."""
        return tuple(self._listed(("machine", "without"), data, self.addresses.part_and_region))

    def work(self, data: Any) -> tuple[tuple[str, str], ...]:
        """The list `work done`, each as `what @ place`."""

        def one(text: str) -> tuple[str, str]:
            what, _, place = text.partition("@")
            name, _ = self.addresses.property("work", what)
            _, where = self.addresses.part_and_place(f"work @ {place}")
            return name, where

        return tuple(self._listed(("work done",), data, one))

    def _listed(self, path: Where, data: Any, read: Any) -> list[tuple[str, str]]:
        entries = data if isinstance(data, list) else [] if data is None else [data]
        found: list[tuple[str, str]] = []
        for index, entry in enumerate(entries):
            here: Where = (*path, index) if isinstance(data, list) else path
            if not isinstance(entry, str):
                self._fault(here, "plain text is wanted here, such as `brake pads @ front`")
                continue
            try:
                one = read(entry)
            except UnknownAddress as error:
                self._fault(here, str(error))
                continue
            if one in found:
                self._fault(here, f"`{entry}` stands here twice; keep one of them")
            found.append(one)
        return found


def _shown(data: Any) -> str:
    return "a list" if isinstance(data, list) else f"`{str(data)[:60]}`"
