"""Letters that no font at hand can show: found by setting them, and spelled out instead of printed as boxes.

The PDF brings its own font for Latin, Greek and Cyrillic; for every other letter the system's fonts are asked.
"""

from __future__ import annotations

import logging
import unicodedata
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from functools import cache

from inspector.reporting.assets import fetcher, own_font

_LOGGER = "weasyprint"
_WARNING = ".notdef glyph"  # so WeasyPrint begins its warning; its arguments are the letter and its number
_NOTHING_TO_SHOW = ("Cc", "Cf", "Mn", "Me", "Zs", "Zl", "Zp")  # controls, joiners, marks on letters, spaces


@cache
def own_letters() -> frozenset[int]:
    """Every letter that the font of the report can show on any machine."""
    return frozenset(own_font().getBestCmap())


def without_glyph(text: str, style: str) -> tuple[str, ...]:
    """Letters of a page that neither its own font nor one of the system can show, by their numbers."""
    doubtful = sorted(
        letter
        for letter in set(text)
        if ord(letter) not in own_letters() and unicodedata.category(letter) not in _NOTHING_TO_SHOW
    )
    if not doubtful:
        return ()
    from weasyprint import HTML

    page = f'<html lang="en-GB"><style>{style}</style><p>{" ".join(doubtful)}</p></html>'
    with _warned() as found:
        HTML(string=page, url_fetcher=fetcher(), base_url="asset:").write_pdf()
    return tuple(letter for letter in doubtful if letter in found)


@contextmanager
def _warned() -> Iterator[set[str]]:
    """Letters that are warned of meanwhile; the warnings themselves go nowhere else."""
    found: set[str] = set()
    logger = logging.getLogger(_LOGGER)

    def keep(record: logging.LogRecord) -> bool:
        if not record.msg.startswith(_WARNING):
            return True
        assert isinstance(record.args, tuple)
        found.add(str(record.args[0]))
        return False

    logger.addFilter(keep)
    try:
        yield found
    finally:
        logger.removeFilter(keep)


def spelled(letter: str) -> str:
    """A letter as a reader without a font can tell it: a sign by its name, any letter by its number in Unicode."""
    number = f"U+{ord(letter):04X}"
    name = unicodedata.name(letter, "").lower()
    return f"[{name}, {number}]" if name and unicodedata.category(letter).startswith("S") else f"[{number}]"


def replaced(text: str, letters: Iterable[str]) -> str:
    """The text with these letters spelled out."""
    return text.translate({ord(letter): spelled(letter) for letter in letters})
