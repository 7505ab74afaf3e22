"""One clear message for each fault of a file: where, what was found, what is allowed, the nearest word."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, order=True)
class Fault:
    """A fault at a line and column (counted from 1) of a file."""

    file: str
    line: int
    column: int
    text: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}: {self.text}"


class Faults(Exception):
    """All faults of the input together; nobody has to mend one to see the next."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(sorted(set(faults)))
        super().__init__("\n".join(map(str, self.faults)))


def nearest(word: str, allowed: Iterable[str]) -> str | None:
    """The allowed word most like `word`, or None when none is near."""
    by_folded = {candidate.casefold(): candidate for candidate in allowed}
    found = difflib.get_close_matches(word.casefold(), by_folded, n=1, cutoff=0.6)
    return by_folded[found[0]] if found else None


def not_allowed(what: str, word: str, allowed: Iterable[str], most: int = 12) -> str:
    """`what` does not know `word`: the sentence with the nearest word and what is allowed."""
    choices = list(allowed)
    near = nearest(word, choices)
    hint = f" Did you mean `{near}`?" if near else ""
    listed = ", ".join(choices[:most]) + (f", and {len(choices) - most} more" if len(choices) > most else "")
    return f"{what} `{word}` is not known.{hint} Allowed: {listed or 'none'}"
