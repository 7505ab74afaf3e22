"""Read the sections about parts that are no observations: own limits, work done, what is not there."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, Literal

from inspector.knowledge.faults import not_allowed, shown
from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import WHOLE
from inspector.knowledge.observables import Property
from inspector.knowledge.yamlfile import Path as Where
from inspector.quantities.units import Amount, NotAnAmount, base_unit, parse_amount
from inspector.reading.addresses import Addresses, UnknownAddress, plain
from inspector.reading.collector import Collector
from inspector.reading.inspection import OwnLimit

_LIMIT = re.compile(
    r"(?P<sense>at least|at most|from)\s+(?P<first>.+?)(?:\s+to\s+(?P<second>.+?))?\s*(?:\((?P<origin>[^()]*)\))?",
    re.IGNORECASE,
)
_LONGEST_LIMIT = 200
_ORIGINS: dict[str, Literal["stamped on the part", "the machine's manual"]] = {
    "stamped": "stamped on the part",
    "manual": "the machine's manual",
}
Placed = tuple[Where, tuple[str, str]]


class SectionReader:
    """Reads limits, work and what the machine is without, collecting every fault."""

    def __init__(self, notes: Collector, knowledge: Knowledge, addresses: Addresses) -> None:
        self.notes = notes
        self.known = knowledge
        self.addresses = addresses

    def limits(self, data: Any) -> tuple[OwnLimit, ...]:
        """The section `limits`: what the stamp or the manual says."""
        found: dict[tuple[str, str, str], tuple[Where, OwnLimit | None]] = {}
        for address, entries in self.notes.mapping(("limits",), data).items():
            path: Where = ("limits", address)
            try:
                part, region = self.addresses.part_and_region(address)
            except UnknownAddress as error:
                self.notes.fault(path, str(error), key=True)
                continue
            takes = [n for n, p in self.known.properties[part].items() if p.dimension and self._given(part, n)]
            for heading, text in self.notes.mapping(path, entries).items():
                here = (*path, heading)
                name = plain(heading).replace(" ", "_")
                if name not in takes:
                    wrong = not_allowed(f"`{part}`: a limit of", heading, takes, most=30)
                    self.notes.fault(here, wrong, key=True)
                elif (part, region, name) in found:
                    line = self.notes.document.place(found[part, region, name][0], key=True)[0]
                    twice = f"a limit of `{part} {name}` stands in line {line} already; keep one of them"
                    self.notes.fault(here, twice, key=True)
                else:
                    found[part, region, name] = (here, self._limit(here, part, region, name, text))
        return tuple(limit for _, limit in found.values() if limit is not None)

    def _given(self, part: str, name: str) -> bool:
        return self.known.given_limit(part, name) is not None

    def _limit(self, path: Where, part: str, region: str, name: str, text: Any) -> OwnLimit | None:
        prop = self.known.properties[part][name]
        short = isinstance(text, str) and len(text) <= _LONGEST_LIMIT
        match = _LIMIT.fullmatch(" ".join(text.split())) if short else None
        if match is None or bool(match["second"]) != (match["sense"].lower() == "from"):
            example = f"1.5 {base_unit(str(prop.dimension))}"
            wanted = f"`at least {example} (stamped)`, `at most {example} (manual)` or `from .. to ..`"
            self.notes.fault(path, f"{shown(text)} is no limit. Write {wanted}")
            return None
        word = (match["origin"] or "manual").strip().lower()
        if word not in _ORIGINS:
            self.notes.fault(path, not_allowed("the origin", word, _ORIGINS))
            return None
        try:
            first = parse_amount(match["first"], str(prop.dimension))
            second = parse_amount(match["second"], str(prop.dimension)) if match["second"] else None
        except NotAnAmount as error:
            self.notes.fault(path, str(error))
            return None
        least = None if match["sense"].lower() == "at most" else first
        most: Amount | None = first if least is None else second
        if not self._believable(path, prop, least, most):
            return None
        return OwnLimit(part, None if region == WHOLE else region, name, least, most, _ORIGINS[word])

    def _believable(self, path: Where, prop: Property, least: Amount | None, most: Amount | None) -> bool:
        for one in (least, most):
            if one is not None and not prop.derive:
                low, high = prop.plausible_range()
                if not low <= one.base <= high:
                    self.notes.fault(path, f"`{one}` is not believable here; from {prop.plausible} is")
                    return False
            elif one is not None and one.base < 0:
                self.notes.fault(path, f"`{one}` is not believable here; a limit of this is never below nought")
                return False
        if least is not None and most is not None and least.base > most.base:
            self.notes.fault(path, f"`from {least} to {most}` is the wrong way round; the smaller one comes first")
            return False
        return True

    def without(self, data: Any) -> list[Placed]:
        """`machine: without`: parts this machine does not have."""
        return self._listed(("machine", "without"), data, self.addresses.part_and_region)

    def work(self, data: Any) -> list[Placed]:
        """The list `work done`, each as `what @ place`."""
        return self._listed(("work done",), data, self.addresses.work)

    def _listed(self, path: Where, data: Any, read: Callable[[str], tuple[str, str]]) -> list[Placed]:
        found: dict[tuple[str, str], Where] = {}
        for where, text in self.notes.texts(path, data):
            try:
                one = read(text)
            except UnknownAddress as error:
                self.notes.fault(where, str(error))
                continue
            if one in found:
                line = self.notes.document.place(found[one])[0]
                self.notes.fault(where, f"{shown(text)} stands in line {line} already; keep one of them")
            found.setdefault(one, where)
        return [(where, one) for one, where in found.items()]
