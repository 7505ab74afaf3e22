"""Read YAML (and JSON) into plain data with the line and column of every value.

Scalars stay text, so that `on`, `010` and `12:30` mean what was typed; an empty value is None. Refused, each
with its place: duplicate keys, anchors and aliases, tags, several documents, nesting beyond `MOST_DEEP`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

import yaml

from inspector.knowledge.faults import Fault, Faults
from inspector.knowledge.yaml_faults import syntax_fault

MOST_DEEP = 16
MOST_BYTES = 2_000_000
Path = tuple[str | int, ...]
# of the heading (None in a list), of the value, and what lies below the value
Spot = tuple[Any, Any, "dict[str | int, Spot] | None"]
_NULL = {"", "~", "null", "Null", "NULL"}
_LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_NO_TEXT = re.compile("[^\t\n\r\x20-\x7e\x85\xa0-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_PAIR = re.compile(r"(?<!\\)((?:\\\\)*)\\u([dD][89abAB][0-9a-fA-F]{2})\\u([dD][c-fC-F][0-9a-fA-F]{2})")
_PAIR_GIVES_UP = 11  # columns: twelve characters become one


@dataclass(frozen=True)
class Document:
    """Data of one file; `place(path)` gives the line and column of what stands there."""

    name: str
    data: Any
    spots: Spot | None = None
    faults: tuple[Fault, ...] = ()
    pairs: dict[int, list[int]] = field(default_factory=dict)

    def place(self, path: Path, *, key: bool = False) -> tuple[int, int]:
        """Line and column of the value (or the key) at `path`, or of the nearest thing around it."""
        spot = self.spots
        if spot is None:
            return (1, 1)
        whole = True
        for step in path:
            below = spot[2]
            if below is None or step not in below:
                whole = False
                break
            spot = below[step]
        mark = spot[0] if spot[0] is not None and (key or not whole) else spot[1]
        return _place(mark, self.pairs)

    def fault(self, path: Path, text: str, *, key: bool = False) -> Fault:
        """A fault of this file at `path`."""
        return Fault(self.name, *self.place(path, key=key), text)


def _place(mark: Any, pairs: dict[int, list[int]]) -> tuple[int, int]:
    line, column = (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)
    return line, column + _PAIR_GIVES_UP * sum(1 for one in pairs.get(line, ()) if one < column)


def decode(raw: bytes, name: str) -> str:
    """Text of a file. Raises Faults when it is too large, empty or no UTF-8."""
    if len(raw) > MOST_BYTES:
        raise Faults(
            [Fault(name, 1, 1, f"the file is larger than {MOST_BYTES // 1_000_000} MB; that is too much")]
        )
    if raw[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise Faults([Fault(name, 1, 1, "this text is saved as UTF-16; save the file as UTF-8")])
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = raw[: error.start].decode("utf-8-sig", "replace")
        words = "this is not UTF-8 text; save the file as UTF-8, or is it no text file at all?"
        raise Faults([Fault(name, *_line_and_column(before, len(before)), words)]) from None
    if not text.strip():
        raise Faults([Fault(name, 1, 1, "the file is empty")])
    return text


def _line_and_column(text: str, position: int) -> tuple[int, int]:
    before = re.split(r"\r\n|\r|\n", text[:position])
    return len(before), len(before[-1]) + 1


def refuse_strange(text: str, name: str, at: tuple[int, int] | None = None) -> None:
    """Raise Faults for a character that no text has; `at` is the place when the text is one cell of a table."""
    strange = _NO_TEXT.search(text)
    if strange is not None:
        words = f"a character that no text has (number {ord(strange[0])}) stands here; is this a text file?"
        raise Faults([Fault(name, *(at or _line_and_column(text, strange.start())), words)])


def parse(text: str, name: str, *, keep_faults: bool = False) -> Document:
    """Parse one YAML or JSON document. Raises Faults with every fault found, or the first broken syntax.

    With `keep_faults` a document that can be read in spite of its faults carries them instead.
    """
    refuse_strange(text, name)
    pairs: dict[int, list[int]] = {}
    if text.lstrip().startswith("{"):
        text = _join_surrogates(text, pairs)
    builder = _Builder(name, pairs)
    loader = _LOADER(text)
    try:
        builder.build(loader)
    except yaml.MarkedYAMLError as error:
        fault = syntax_fault(error, text, name, builder.last(text.splitlines()), builder.long_quote())
        raise Faults([*builder.faults, fault]) from None
    finally:
        loader.dispose()
    if builder.faults and not keep_faults:
        raise Faults(builder.faults)
    return Document(name, builder.root, builder.spots, tuple(builder.faults), pairs)


def _join_surrogates(text: str, pairs: dict[int, list[int]]) -> str:
    r"""JSON writes an emoji as two escapes (`\ud83d\ude00`); YAML knows only the character itself."""

    def join(match: re.Match[str]) -> str:
        high, low = int(match[2], 16), int(match[3], 16)
        line, column = _line_and_column(text, match.end(1))
        found = pairs.setdefault(line, [])
        found.append(column - _PAIR_GIVES_UP * len(found))
        return match[1] + chr(0x10000 + ((high - 0xD800) << 10) + (low - 0xDC00))

    return _PAIR.sub(join, text)


class _Builder:
    """Builds plain data from YAML events without recursion, so that no nesting can break it."""

    def __init__(self, name: str, pairs: dict[int, list[int]]) -> None:
        self.name = name
        self.pairs = pairs
        self.root: Any = None
        self.spots: Spot | None = None
        self.faults: list[Fault] = []
        self._open: list[tuple[Any, dict[str | int, Spot]]] = []
        self._key: str | None = None
        self._key_mark: Any = None
        self._last: Any = None
        self._documents = 0

    def build(self, loader: Any) -> None:
        """Take every event of the stream."""
        next_event = loader.get_event
        while True:
            event = next_event()
            kind = type(event)
            if kind is yaml.ScalarEvent:
                if event.tag is not None or event.anchor is not None:
                    self._check(event)
                self._scalar(event)
            elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
                self._check(event)
                self._enter(event, {} if kind is yaml.MappingStartEvent else [])
            elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
                self._open.pop()
            elif kind is yaml.StreamEndEvent:
                return
            else:
                self._other(event)
            self._last = event

    def last(self, lines: list[str]) -> tuple[int, int]:
        """Where the last thing that could be read ended; a text without quotes must end in its first line."""
        event = self._last
        if type(event) is yaml.ScalarEvent and event.style in (None, "") and event.start_mark is not None:
            first = event.start_mark.line
            if event.end_mark is not None and event.end_mark.line > first and first < len(lines):
                return first + 1, len(lines[first].rstrip()) + 1
        return _place(event.end_mark if event is not None else None, self.pairs)

    def long_quote(self) -> tuple[int, int] | None:
        """Where the last thing began, if it stands between quotes and runs over several lines."""
        event = self._last
        if type(event) is not yaml.ScalarEvent or event.style not in ("'", '"') or event.start_mark is None:
            return None
        runs_on = event.end_mark is not None and event.end_mark.line > event.start_mark.line
        return _place(event.start_mark, self.pairs) if runs_on else None

    def _fault(self, event: yaml.Event, text: str) -> Fault:
        return Fault(self.name, *_place(event.start_mark, self.pairs), text)

    def _other(self, event: yaml.Event) -> None:
        if isinstance(event, yaml.AliasEvent):
            text = "a text cannot begin with `*` unless quotes stand around it"
            self.faults.append(self._fault(event, text))
            self._scalar(yaml.ScalarEvent(None, None, (False, True), "*", event.start_mark, event.end_mark, "'"))
        elif isinstance(event, yaml.DocumentStartEvent):
            self._documents += 1
            if self._documents > 1:
                text = "a second record starts here (`---`); one file holds one record"
                raise Faults([*self.faults, self._fault(event, text)])

    def _check(self, event: yaml.NodeEvent) -> None:
        for sign, given in (("&", event.anchor), ("!", getattr(event, "tag", None))):
            if given is not None and given != "!":
                text = f"a text cannot begin with `{sign}` unless quotes stand around it"
                self.faults.append(self._fault(event, text))

    def _enter(self, event: yaml.Event, container: Any) -> None:
        if len(self._open) >= MOST_DEEP:
            text = f"nested more than {MOST_DEEP} deep; nothing here needs that"
            raise Faults([*self.faults, self._fault(event, text)])
        below: dict[str | int, Spot] = {}
        self._put(container, event.start_mark, below)
        self._open.append((container, below))

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        if self._key is None and self._open and type(self._open[-1][0]) is dict:
            self._key, self._key_mark = event.value.strip(), event.start_mark
            below = self._open[-1][1]
            if self._key in below:
                first = _place(below[self._key][0], self.pairs)[0]
                text = f"`{self._key}` stands in line {first} already; keep one of them"
                self.faults.append(self._fault(event, text))
            return
        value: str | None = event.value
        if value in _NULL and event.implicit[0] and event.style in (None, ""):
            value = None
        self._put(value, event.start_mark, None)

    def _put(self, value: Any, mark: Any, below: dict[str | int, Spot] | None) -> None:
        if not self._open:
            self.root, self.spots = value, (None, mark, below)
            return
        container, spots = self._open[-1]
        if type(container) is list:
            spots[len(container)] = (None, mark, below)
            container.append(value)
        elif self._key is None:
            line, column = _place(mark, self.pairs)
            text = "a heading must be plain text; put quotes around it if it holds brackets"
            raise Faults([*self.faults, Fault(self.name, line, column, text)])
        else:
            container[self._key] = value
            spots[self._key] = (self._key_mark, mark, below)
            self._key = None
