"""What is wrong with a file that is no YAML, in plain words and at the place where it really stands."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

import yaml

from inspector.knowledge.faults import Fault

Mark = tuple[int, int]
_SAME_COLUMN = "headings that belong together start in the same column"


def syntax_fault(
    error: yaml.MarkedYAMLError, text: str, name: str, last: Mark, long_quote: Mark | None = None
) -> Fault:
    """The fault behind an error of the YAML library.

    `last` is where the last readable thing ended, `long_quote` where it began if it is a quoted text that runs
    over several lines: its closing quote was probably forgotten, and the next quote in the file taken for it.
    """
    problem = f"{error.context or ''}: {error.problem or ''}"
    begun, here = _mark(error.context_mark), _mark(error.problem_mark) or _mark(error.context_mark) or (1, 1)
    around = _Around(text.splitlines() or [""], begun or here, here, last)
    if long_quote is not None:
        return Fault(name, *long_quote, _open_quote(replace(around, begun=long_quote))[1])
    for pattern, sentence in _SENTENCES:
        if re.search(pattern, problem):
            place, words = sentence(around)
            return Fault(name, *place, words)
    words = "this cannot be read; look at the quotes, the colons and the blanks at the beginning of the line"
    return Fault(name, *here, words)


def _mark(mark: yaml.Mark | None) -> Mark | None:
    return None if mark is None else (mark.line + 1, mark.column + 1)


@dataclass(frozen=True)
class _Around:
    """The lines of the file and the three places that may be at fault."""

    lines: list[str]
    begun: Mark
    here: Mark
    last: Mark

    def line(self, number: int) -> str:
        return self.lines[number - 1] if 0 < number <= len(self.lines) else ""

    @property
    def before(self) -> str:
        """What stands in the line before the fault."""
        return self.line(self.here[0])[: self.here[1] - 1]

    @property
    def sign(self) -> str:
        """The character at the fault."""
        return self.line(self.here[0])[self.here[1] - 1 : self.here[1]]

    def line_above(self) -> int:
        """Number of the last line above that says something, or 0."""
        for number in range(self.here[0] - 1, 0, -1):
            if self.line(number).strip() and not self.line(number).lstrip().startswith("#"):
                return number
        return 0


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _open_quote(a: _Around) -> tuple[Mark, str]:
    quote = a.line(a.begun[0])[a.begun[1] - 1 : a.begun[1]] or '"'
    return a.begun, f"the text that begins here with {quote} has no closing {quote}"


def _open_bracket(a: _Around) -> tuple[Mark, str]:
    opened = a.line(a.begun[0])[a.begun[1] - 1 : a.begun[1]]
    closing = {"[": "]", "{": "}"}.get(opened, "}")
    return a.last, f"a comma or the closing {closing} is missing after this ({opened} opened in line {a.begun[0]})"


def _no_start(a: _Around) -> tuple[Mark, str]:
    if a.sign == "\t" or not a.sign:
        return _tabulator(a)
    sign = "a back quote" if a.sign == "`" else f"`{a.sign}`"
    return a.here, f"a text cannot begin with {sign} unless quotes stand around it"


def _tabulator(a: _Around) -> tuple[Mark, str]:
    return a.here, "a tabulator stands here; indent with blanks (the space bar) instead"


def _second_colon(a: _Around) -> tuple[Mark, str]:
    if re.search(r":\s", a.before):
        return a.here, 'a second colon stands in this line; put quotes around the text after the first: a: "b: c"'
    above = a.line_above()
    text = a.line(above)
    if above and not re.search(r":(\s|$)", text) and _indent(text) == _indent(a.line(a.here[0])):
        place = (above, _indent(text) + 1)
        if ":" in text:
            return place, "a blank is missing after the colon; write `heading: value`"
        return place, "the colon after the heading is missing; write `heading: value`"
    column = _indent(a.line(a.here[0])) + 1
    return (a.here[0], column), f"this line is indented further than the line above allows; {_SAME_COLUMN}"


def _no_heading(a: _Around) -> tuple[Mark, str]:
    if a.before.strip(" -"):
        return a.here, "this stands after the end of the value; put the whole text between one pair of quotes"
    if a.sign == "-":
        return a.here, "a list entry (`- `) stands among headings; indent it under its own heading"
    if a.sign == ":":
        return a.here, "the heading before this colon is missing"
    return a.here, f"this line is not in line with the ones above it; {_SAME_COLUMN}"


def _after_the_end(a: _Around) -> tuple[Mark, str]:
    if a.lines[0].startswith(" "):
        return a.here, f"this line stands further left than the first one; {_SAME_COLUMN}"
    return a.here, "the record has ended before this; remove it, or the bracket or dots that end the record"


_SENTENCES: tuple[tuple[str, Callable[[_Around], tuple[Mark, str]]], ...] = (
    ("end of stream", _open_quote),
    (r"',' or", _open_bracket),
    ("tab character", _tabulator),
    ("cannot start any token", _no_start),
    ("mapping values", _second_colon),
    ("document start", _after_the_end),
    (
        "could not find expected ':'",
        lambda a: (a.begun, "the colon after the heading is missing; write `heading: value`"),
    ),
    ("sequence entries", lambda a: (a.here, "a list entry (`- `) must stand on a line of its own")),
    (
        "unknown escape",
        lambda a: (a.here, "a backslash inside double quotes has a meaning of its own; use single quotes"),
    ),
    ("hexa?decimal|Unicode character", lambda a: (a.here, r"this `\u...` names no character")),
    ("(alias|anchor)", lambda a: (a.begun, "a text cannot begin with `*` or `&` unless quotes stand around it")),
    (" tag", lambda a: (a.begun, "a text cannot begin with `!` unless quotes stand around it")),
    ("node content", lambda a: (a.here, f"a text cannot begin with `{a.sign}` unless quotes stand around it")),
    (
        "block scalar",
        lambda a: (a.here, "after `|` or `>` the text begins on the next line; or put quotes around the text"),
    ),
    ("directive|incompatible", lambda a: ((a.here[0], 1), "a line that begins with `%` means nothing here")),
    ("depth|flow level", lambda a: (a.here, "nested too deep; nothing here needs that")),
    ("expected key|block end", _no_heading),
)
