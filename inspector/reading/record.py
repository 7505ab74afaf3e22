"""Read a record file (YAML or JSON) into an `Inspection`. Raises Faults with all faults of the file."""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path
from typing import Any

from inspector.knowledge.faults import Fault, Faults, not_allowed
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import contains
from inspector.knowledge.yamlfile import MOST_BYTES, Document, decode, parse
from inspector.knowledge.yamlfile import Path as Where
from inspector.quantities.units import Amount, NotAnAmount, parse_amount
from inspector.reading.addresses import Addresses
from inspector.reading.inspection import PURPOSES, Inspection, Purpose
from inspector.reading.observed import ObservationReader
from inspector.reading.values import NotAValue, read_day, read_odometer

_SECTIONS = {
    "": ("machine", "inspection", "limits", "work done", "observations", "remarks", "invented"),
    "machine": ("kind", "name", "year", "odometer", "vin", "without"),
    "inspection": ("purpose", "date", "odometer", "horizon", "country", "request", "tried"),
}
COUNTRIES = re.compile(r"[A-Z]{2}")


def read_record(path: Path, knowledge: Knowledge, today: date | None = None) -> Inspection:
    """Read the record at `path`. Raises Faults; a missing or unreadable file is a fault, too."""
    name = str(path)
    try:
        if path.is_file() and path.stat().st_size > MOST_BYTES:
            raise Faults([Fault(name, 1, 1, f"the file is larger than {MOST_BYTES} bytes; that is no record")])
        raw = path.read_bytes()
    except OSError as error:
        reason = "there is no such file" if isinstance(error, FileNotFoundError) else str(error.strerror)
        raise Faults([Fault(name, 1, 1, reason)]) from None
    document = parse(decode(raw, name), name)
    return read_document(document, path.parent, knowledge, today or date.today())


def read_document(document: Document, folder: Path | None, knowledge: Knowledge, today: date) -> Inspection:
    """Read a parsed record; photo files are looked for in `folder` (None: not at all). Raises Faults."""
    return _Reader(document, folder, knowledge, today).read()


class _Reader:
    def __init__(self, document: Document, folder: Path | None, knowledge: Knowledge, today: date) -> None:
        self.document = document
        self.folder = folder
        self.known = knowledge
        self.today = today
        self.faults: list[Fault] = []

    def fault(self, path: Where, text: str, *, key: bool = False) -> None:
        self.faults.append(self.document.fault(path, text, key=key))

    def read(self) -> Inspection:
        data = self.document.data
        if not isinstance(data, dict):
            raise Faults([self.document.fault((), "a record has headings: machine, inspection, observations")])
        self._headings((), data, _SECTIONS[""])
        machine = self._section("machine")
        visit = self._section("inspection")
        kind = self._kind(machine)
        day = self._day(visit)
        self._unreadable_parts(kind)
        result = self._inspection(machine, visit, kind, day)
        if self.faults:
            raise Faults(self.faults)
        return result

    def _unreadable_parts(self, kind: str | None) -> None:
        if kind is None:
            raise Faults(self.faults)  # without the kind no part can be judged known or unknown

    def _inspection(
        self, machine: dict[str, Any], visit: dict[str, Any], kind: str | None, day: date
    ) -> Inspection:
        assert kind is not None
        addresses = Addresses(self.known, self.known.machines[kind])
        reader = ObservationReader(self.document, self.folder, self.known, addresses, day)
        odometer = self._odometer(machine, visit)
        months, km = self._horizon(visit)
        inspection = Inspection(
            kind=kind,
            purpose=self._purpose(visit),
            day=day,
            odometer=odometer,
            horizon_months=months,
            horizon_km=km,
            country=self._country(visit),
            year=self._year(machine, day),
            vin=self._vin(machine),
            name=self._text(("machine", "name"), machine.get("name")),
            request=self._text(("inspection", "request"), visit.get("request")),
            tried=self._texts(("inspection", "tried"), visit.get("tried")),
            remarks=self._texts(("remarks",), self.document.data.get("remarks")),
            invented=str(self.document.data.get("invented", "no")).lower() in ("yes", "true"),
            without=reader.without(machine.get("without")),
            limits=reader.limits(self.document.data.get("limits")),
            work=reader.work(self.document.data.get("work done")),
            observations=reader.observations(self.document.data.get("observations")),
        )
        self.faults += reader.faults
        self._readings_in_order(inspection)
        for part, place, name in inspection.observations:
            if any(p == part and contains(w, place) for p, w in inspection.without):
                text = f"the machine is said to be without `{part} @ {place}`, yet `{name}` of it is noted"
                self.fault(("machine", "without"), text)
        return inspection

    def _readings_in_order(self, inspection: Inspection) -> None:
        """A noted reading of the odometer cannot lie above today's."""
        now = inspection.odometer
        for observation in inspection.observations.values():
            prop = self.known.properties[observation.part][observation.name]
            amount = getattr(observation.value, "amount", None)
            if prop.kind == "odometer" and amount is not None and now is not None and amount.base > now.base:
                text = f"`{observation.name}` at {amount.typed} lies above the odometer of this day, {now.typed}"
                self.faults.append(Fault(self.document.name, observation.line, 1, text))

    def _section(self, name: str) -> dict[str, Any]:
        section = self.document.data.get(name)
        if section is None:
            self.fault((), f"the heading `{name}` is missing")
            return {}
        if not isinstance(section, dict):
            self.fault((name,), f"`{name}` must have headings below it: {', '.join(_SECTIONS[name])}")
            return {}
        self._headings((name,), section, _SECTIONS[name])
        return section

    def _headings(self, path: Where, section: dict[str, Any], allowed: tuple[str, ...]) -> None:
        for name in section:
            if name not in allowed:
                self.fault((*path, name), not_allowed("the heading", name, allowed), key=True)

    def _kind(self, machine: dict[str, Any]) -> str | None:
        kinds = {entry.called: kind for kind, entry in self.known.machines.items() if not entry.abstract}
        given = machine.get("kind")
        if given is None:
            self.fault(("machine",), f"`kind` of the machine is missing. Allowed: {', '.join(kinds)}")
            return None
        word = str(given).strip().lower() if isinstance(given, str) else ""
        if word in kinds or word in kinds.values():
            return kinds.get(word, word)
        self.fault(("machine", "kind"), not_allowed("the machine kind", str(given), kinds))
        return None

    def _day(self, visit: dict[str, Any]) -> date:
        given = visit.get("date")
        if given is None:
            self.fault(("inspection",), "`date` of the inspection is missing, such as 2026-05-17")
            return self.today
        try:
            return read_day(self._plain(given), self.today)
        except NotAValue as error:
            self.fault(("inspection", "date"), str(error))
            return self.today

    def _purpose(self, visit: dict[str, Any]) -> Purpose:
        given = " ".join(self._plain(visit.get("purpose")).lower().split())
        if given in PURPOSES:
            return given
        if "purpose" not in visit:
            self.fault(("inspection",), f"`purpose` is missing. Allowed: {', '.join(PURPOSES)}")
        else:
            self.fault(("inspection", "purpose"), not_allowed("the purpose", given, PURPOSES))
        return PURPOSES[0]

    def _odometer(self, machine: dict[str, Any], visit: dict[str, Any]) -> Amount | None:
        found: list[Amount] = []
        for section, table in (("machine", machine), ("inspection", visit)):
            given = table.get("odometer")
            if given is None or self._plain(given).lower() in ("unknown", "not known"):
                continue
            try:
                found.append(read_odometer(self._plain(given)))
            except NotAnAmount as error:
                self.fault((section, "odometer"), str(error))
        if len(found) == 2 and abs(found[0].base - found[1].base) > 0.5:
            text = f"`machine` says {found[0].typed}, `inspection` says {found[1].typed}; give the reading once"
            self.fault(("inspection", "odometer"), text)
        return found[0] if found else None

    def _horizon(self, visit: dict[str, Any]) -> tuple[float, float]:
        months, km = 12.0, 5000.0
        given = visit.get("horizon")
        if given is None:
            return months, km
        parts = given if isinstance(given, list) else re.split(r",| and | or ", self._plain(given))
        for part in parts:
            try:
                months = parse_amount(self._plain(part), "time").base
            except NotAnAmount:
                try:
                    km = parse_amount(self._plain(part), "distance").base
                except NotAnAmount:
                    text = f"`{part}` is neither a time nor a distance, such as `6 months, 4000 km`"
                    self.fault(("inspection", "horizon"), text)
        if not (0 < months <= 120 and 0 < km <= 100_000):
            self.fault(("inspection", "horizon"), "the horizon lies within 10 years and 100 000 km")
        return months, km

    def _country(self, visit: dict[str, Any]) -> str | None:
        given = visit.get("country")
        if given is None:
            return None
        code = self._plain(given).upper()
        code = "GB" if code == "UK" else code
        if not COUNTRIES.fullmatch(code):
            self.fault(
                ("inspection", "country"), f"`{given}` is not a country code of two letters, such as GB or DE"
            )
        return code

    def _year(self, machine: dict[str, Any], day: date) -> int | None:
        given = machine.get("year")
        if given is None:
            return None
        text = self._plain(given)
        if not re.fullmatch(r"\d{4}", text) or not 1900 <= int(text) <= day.year + 1:
            self.fault(("machine", "year"), f"`{text}` is not a year from 1900 to {day.year + 1}")
            return None
        return int(text)

    def _vin(self, machine: dict[str, Any]) -> str | None:
        given = machine.get("vin")
        if given is None:
            return None
        vin = self._plain(given).upper().replace(" ", "")
        if not re.fullmatch(r"[A-Z0-9*-]{5,20}", vin):
            self.fault(("machine", "vin"), f"`{given}` is not a frame number: 5 to 20 letters and figures")
        elif len(vin) == 17 and re.search("[IOQ]", vin):
            self.fault(("machine", "vin"), f"`{given}`: the letters I, O and Q are never used in a VIN (ISO 3779)")
        return vin

    def _plain(self, value: Any) -> str:
        return value.strip() if isinstance(value, str) else ""

    def _text(self, path: Where, value: Any) -> str | None:
        if value is None:
            return None
        if not isinstance(value, str):
            self.fault(path, "plain text is wanted here")
            return None
        if len(value) > 4000:
            self.fault(path, f"the text has {len(value)} characters; at most 4000")
        return value.strip()

    def _texts(self, path: Where, value: Any) -> tuple[str, ...]:
        entries = value if isinstance(value, list) else [value]
        texts = (self._text((*path, i) if isinstance(value, list) else path, e) for i, e in enumerate(entries))
        return tuple(text for text in texts if text)
