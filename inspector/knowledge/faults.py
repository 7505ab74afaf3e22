"""One clear message for each fault of a file: where, what was found, what is allowed, the nearest word."""

from __future__ import annotations

import difflib
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass

_LONGEST_WORD = 60


@dataclass(frozen=True, order=True)
class Fault:
    """A fault at a line and column (counted from 1) of a file."""

    file: str
    line: int
    column: int
    text: str

    def __str__(self) -> str:
        return _one_line(f"{self.file}:{self.line}:{self.column}: {self.text}")


class Faults(Exception):
    """All faults of the input together; nobody has to mend one to see the next."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(sorted(set(faults)))
        super().__init__("\n".join(map(str, self.faults)))


def _one_line(text: str) -> str:
    """The text with what a terminal would obey (line ends, escapes, changes of direction) made visible."""
    return "".join(c if unicodedata.category(c)[0] not in "CZ" or c == " " else _visible(c) for c in text)


def _visible(character: str) -> str:
    return " " if character.isspace() else "�"


def shown(found: object) -> str:
    """What was found, in back quotes and cut to a bearable length, or a plain word for what is no text."""
    if found is None:
        return "nothing"
    if isinstance(found, dict | list):
        return "a list" if isinstance(found, list) else "headings"
    text = " ".join(str(found).split())
    return f"`{text if len(text) <= _LONGEST_WORD else text[: _LONGEST_WORD - 1] + '…'}`"


def nearest(word: str, allowed: Iterable[str]) -> str | None:
    """The allowed word most like `word`, or None when none is near."""
    if len(word) > _LONGEST_WORD:
        return None
    by_folded = {candidate.casefold(): candidate for candidate in allowed}
    found = difflib.get_close_matches(word.casefold(), by_folded, n=1, cutoff=0.6)
    return by_folded[found[0]] if found else None


def not_allowed(what: str, word: str, allowed: Iterable[str], most: int = 12) -> str:
    """`what` does not know `word`: the sentence with the nearest word and what is allowed."""
    choices = list(allowed)
    near = nearest(word, choices)
    hint = f" Did you mean `{near}`?" if near else ""
    listed = ", ".join(choices[:most]) + (f", and {len(choices) - most} more" if len(choices) > most else "")
    return f"{what} {shown(word)} is not known.{hint} Allowed: {listed or 'none'}"
