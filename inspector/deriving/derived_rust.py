"""Rust: the share of a face as the published grades name it."""

from __future__ import annotations

from inspector.deriving.amounts import NOT_LOOKED_AT, Looks
from inspector.quantities.grades import rust_words
from inspector.reading.inspection import Silent, Word


def rust_grade(looks: Looks) -> Word | Silent:
    """Both published grades of the rusted share."""
    share = looks.measured("rust_area")
    return NOT_LOOKED_AT if share is None else Word(rust_words(share.amount.base))
