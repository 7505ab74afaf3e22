"""Merge the observations of two part records, look by look.

A look that one did not make and the other did is no contradiction: the one that was made is taken, and it is told.
"""

from __future__ import annotations

from typing import Any

from inspector.knowledge.wording import words
from inspector.knowledge.yamlfile import Path
from inspector.noting.merge_parts import Judge, Part, same_value, shown
from inspector.reading.addresses import Addresses, plain
from inspector.reading.inspection import Silent, Value
from inspector.reading.values import SILENCE_HEADINGS

Key = tuple[str, str, str]
_HEADINGS = {"not looked at": "not checked", "could not see": "could not see", "does not apply": "does not apply"}
_RANK = tuple(_HEADINGS)  # who could not see has looked; who says there is none knows more still


class LookMerger:
    """The observations of both records under one set of headings."""

    def __init__(self, judge: Judge, addresses: Addresses) -> None:
        self.judge = judge
        self.addresses = addresses
        self.entries = tuple(_entries(part, addresses) for part in judge.parts)

    def observations(self) -> dict[str, dict[str, Any]]:
        """Plain data of the section `observations`."""
        first, second = (part.inspection.observations for part in self.judge.parts)
        looks: dict[str, dict[str, Any]] = {}
        for key in dict.fromkeys((*first, *second)):
            part, place, name = key
            heading = part if len(self.addresses.machine.parts[part]) == 1 else f"{part} @ {place}"
            looks.setdefault(heading, {})[name.replace("_", " ")] = self._look(key)
        return looks

    def line(self, side: int, key: Key) -> str:
        """The line of one record in which a look stands."""
        path, entry = self.entries[side][key]
        return self.judge.parts[side].told(path, shown(entry))

    def _look(self, key: Key) -> Any:
        one, other = (part.inspection.observations.get(key) for part in self.judge.parts)
        if one is None or other is None:
            return self.entries[0 if other is None else 1][key][1]
        return self._with_extras(key, self._main(key, one.value, other.value))

    def _main(self, key: Key, one: Value | Silent, other: Value | Silent) -> dict[str, Any]:
        """The answer that holds, without notes and photos."""
        if isinstance(one, Silent) and isinstance(other, Silent) and one.state == other.state:
            reasons = dict.fromkeys(silent.reason for silent in (one, other) if silent.reason)
            reason, heading = "; ".join(reasons), _HEADINGS[one.state]
            return {"value": f"{heading}: {reason}" if reason else heading}
        ranks = [_RANK.index(value.state) if isinstance(value, Silent) else None for value in (one, other)]
        if ranks[0] is None and ranks[1] is None:
            assert not isinstance(one, Silent)
            assert not isinstance(other, Silent)
            side = 0 if same_value(one, other) else self._pick(key)
        elif "does not apply" in (getattr(one, "state", ""), getattr(other, "state", "")):
            unlooked = 0 in ranks  # that there is none does not contradict that nobody looked
            side = self._take(key, ranks.index(2)) if unlooked else self._pick(key)
        elif None in ranks:
            side = self._take(key, ranks.index(None))
        else:
            side = self._take(key, ranks.index(1))
        opened = _opened(self.entries[side][key][1])
        return {name: text for name, text in opened.items() if name not in ("note", "photo", "earlier")}

    def _pick(self, key: Key, more: str = "") -> int:
        return self.judge.pick(_what(key) + more, (self.line(0, key), self.line(1, key)))

    def _take(self, key: Key, side: int) -> int:
        text: str = words()["merge"]["taken"].format(
            what=_what(key), taken=self.line(side, key), left=self.line(1 - side, key)
        )
        self.judge.result.taken.append(text)
        return side

    def _with_extras(self, key: Key, kept: dict[str, Any]) -> Any:
        """The answer with the notes of both, a photo of either, and all earlier readings."""
        entries = [_opened(found[key][1]) for found in self.entries]
        notes = list(dict.fromkeys(one["note"] for one in entries if one.get("note")))
        photos = list(dict.fromkeys(one["photo"] for one in entries if one.get("photo")))
        earlier = [before for one in entries for before in one.get("earlier") or ()]
        if notes:
            kept["note"] = " / ".join(notes)
        if photos:
            kept["photo"] = photos[self._pick(key, ", photo") if len(photos) == 2 else 0]
        if earlier:
            kept["earlier"] = [one for number, one in enumerate(earlier) if one not in earlier[:number]]
        return kept["value"] if set(kept) == {"value"} else kept


def _what(key: Key) -> str:
    return f"{key[0]} @ {key[1]}: {key[2].replace('_', ' ')}"


def _entries(part: Part, addresses: Addresses) -> dict[Key, tuple[Path, Any]]:
    """Where each look stands in the document, and what stands there; what is said of a part goes to each look."""
    found: dict[Key, tuple[Path, Any]] = {}
    for address, looks in (part.document.data.get("observations") or {}).items():
        of, place = addresses.part_and_place(address)
        path: Path = ("observations", address)
        single = isinstance(looks, dict) and len(looks) == 1 and plain(next(iter(looks))) in SILENCE_HEADINGS
        if single or not isinstance(looks, dict):
            asked = (name for name, prop in addresses.known.properties[of].items() if prop.asked)
            found |= {(of, place, name): (path, looks) for name in asked}
            continue
        for heading, entry in looks.items():
            found[of, place, addresses.property(of, heading)[0]] = ((*path, heading), entry)
    return found


def _opened(entry: Any) -> dict[str, Any]:
    return dict(entry) if isinstance(entry, dict) else {"value": entry}
