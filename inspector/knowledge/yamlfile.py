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

MOST_DEEP = 16
MOST_BYTES = 2_000_000
Path = tuple[str | int, ...]
_NULL = {"", "~", "null", "Null", "NULL"}
_LOADER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@dataclass(frozen=True)
class Document:
    """Data of one file; `place(path)` gives the line and column of what stands there."""

    name: str
    data: Any
    values: dict[Path, tuple[int, int]] = field(default_factory=dict)
    keys: dict[Path, tuple[int, int]] = field(default_factory=dict)

    def place(self, path: Path, *, key: bool = False) -> tuple[int, int]:
        """Line and column of the value (or the key) at `path`, or of the nearest thing around it."""
        table = self.keys if key else self.values
        while path:
            if path in table or path in self.values:
                return table.get(path) or self.values[path]
            path = path[:-1]
        return (1, 1)

    def fault(self, path: Path, text: str, *, key: bool = False) -> Fault:
        """A fault of this file at `path`."""
        return Fault(self.name, *self.place(path, key=key), text)


def decode(raw: bytes, name: str) -> str:
    """Text of a file. Raises Faults when it is too large, empty or no UTF-8."""
    if len(raw) > MOST_BYTES:
        raise Faults([Fault(name, 1, 1, f"the file has {len(raw)} bytes; at most {MOST_BYTES} are read")])
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        raise Faults([Fault(name, line, 1, "this is not UTF-8 text; save the file as UTF-8")]) from None
    if not text.strip():
        raise Faults([Fault(name, 1, 1, "the file is empty")])
    return text


def parse(text: str, name: str) -> Document:
    """Parse one YAML or JSON document. Raises Faults with every fault found, or the first broken syntax."""
    if text.lstrip().startswith("{"):
        text = _join_surrogates(text)
    builder = _Builder(name)
    try:
        for event in yaml.parse(text, Loader=_LOADER):
            builder.take(event)
    except yaml.MarkedYAMLError as error:
        raise Faults([*builder.faults, _syntax_fault(error, text, name)]) from None
    except yaml.reader.ReaderError as error:
        line = text.count("\n", 0, error.position) + 1
        raise Faults([Fault(name, line, 1, "a control character stands here; remove it")]) from None
    if builder.faults:
        raise Faults(builder.faults)
    return Document(name, builder.root, builder.values, builder.keys)


def _join_surrogates(text: str) -> str:
    r"""JSON writes an emoji as two escapes (`\ud83d\ude00`); YAML knows only the character itself."""
    pair = re.compile(r"(?<!\\)((?:\\\\)*)\\u([dD][89abAB]\w\w)\\u([dD][c-fC-F]\w\w)")

    def join(match: re.Match[str]) -> str:
        high, low = int(match[2], 16), int(match[3], 16)
        return match[1] + chr(0x10000 + ((high - 0xD800) << 10) + (low - 0xDC00))

    return pair.sub(join, text)


def _syntax_fault(error: yaml.MarkedYAMLError, text: str, name: str) -> Fault:
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark else (1, 1)
    problem = (error.problem or error.context or "broken YAML").strip()
    tip = ""
    if "mapping values are not allowed" in problem:
        tip = ' Tip: put quotes around a text that contains ": ", or indent this line under its heading'
    elif "\\t" in problem or "\t" in (text.splitlines() or [""])[min(line, len(text.splitlines())) - 1][:column]:
        tip = " Tip: indent with blanks, not with the tabulator key"
    elif "expected <block end>" in problem:
        tip = " Tip: this line is not in line with the ones above it"
    return Fault(name, line, column, f"this is not valid YAML: {problem}.{tip}")


@dataclass
class _Open:
    """A mapping or list under construction."""

    path: Path
    data: Any
    key: str | None = None


class _Builder:
    """Builds plain data from YAML events without recursion, so that no nesting can break it."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.root: Any = None
        self.values: dict[Path, tuple[int, int]] = {}
        self.keys: dict[Path, tuple[int, int]] = {}
        self.faults: list[Fault] = []
        self._open: list[_Open] = []
        self._documents = 0

    def take(self, event: yaml.Event) -> None:
        """Take the next event of the stream."""
        if isinstance(event, yaml.DocumentStartEvent):
            self._documents += 1
            if self._documents > 1:
                self._stop(event, "a second document starts here (`---`); one file holds one record")
        elif isinstance(event, yaml.AliasEvent):
            self._stop(event, "aliases (`*name`) are not used here; write the value out")
        elif isinstance(event, yaml.ScalarEvent):
            self._check(event)
            self._scalar(event)
        elif isinstance(event, yaml.MappingStartEvent | yaml.SequenceStartEvent):
            self._check(event)
            if len(self._open) >= MOST_DEEP:
                self._stop(event, f"nested more than {MOST_DEEP} deep; nothing here needs that")
            container: Any = {} if isinstance(event, yaml.MappingStartEvent) else []
            self._open.append(_Open(self._put(container, event), container))
        elif isinstance(event, yaml.MappingEndEvent | yaml.SequenceEndEvent):
            self._open.pop()

    def _mark(self, event: yaml.Event) -> tuple[int, int]:
        mark = event.start_mark
        return (mark.line + 1, mark.column + 1) if mark is not None else (1, 1)

    def _stop(self, event: yaml.Event, text: str) -> None:
        raise Faults([*self.faults, Fault(self.name, *self._mark(event), text)])

    def _check(self, event: yaml.NodeEvent) -> None:
        if event.anchor:
            self._stop(event, "anchors (`&name`) are not used here; write the value out")
        tag = getattr(event, "tag", None)
        if tag not in (None, "!"):
            self._stop(event, f"tags (`{tag}`) are not used here; write plain text")

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        top = self._open[-1] if self._open else None
        if top is not None and isinstance(top.data, dict) and top.key is None:
            top.key = event.value.strip()
            path = (*top.path, top.key)
            if top.key in top.data:
                first = self.keys[path][0]
                text = f"`{top.key}` stands here a second time (first in line {first}); keep one of them"
                self.faults.append(Fault(self.name, *self._mark(event), text))
            self.keys.setdefault(path, self._mark(event))
            return
        plain = event.implicit[0] and event.style in (None, "")
        self._put(None if plain and event.value in _NULL else event.value, event)

    def _put(self, value: Any, event: yaml.Event) -> Path:
        if not self._open:
            self.root = value
            self.values[()] = self._mark(event)
            return ()
        top = self._open[-1]
        if isinstance(top.data, list):
            path: Path = (*top.path, len(top.data))
            top.data.append(value)
        elif top.key is None:
            self._stop(event, "a heading must be plain text, not a list or a mapping")
            raise AssertionError("unreachable")
        else:
            path = (*top.path, top.key)
            top.data[top.key] = value
            top.key = None
        self.values[path] = self._mark(event)
        return path
