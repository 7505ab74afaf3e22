"""Paragraphs, headings and bullets within a width: all that terminal text is laid out with."""

from __future__ import annotations

import re
import textwrap
import unicodedata

_BLANKS = re.compile(r"[^\S\u00a0\u202f]+")
_JOINERS = "\u200c\u200d"  # they shape letters and emoji and move nothing


def printable(text: str) -> str:
    """Text without control characters, which a terminal would obey instead of showing."""
    return "".join(c if c in "\n\t" or c in _JOINERS or unicodedata.category(c)[0] != "C" else "�" for c in text)


def columns(text: str) -> int:
    """How many columns of a terminal a text takes: signs of East Asia and emoji take two, accents none."""
    return sum(_columns(character) for character in text)


def _columns(character: str) -> int:
    if unicodedata.category(character) in ("Mn", "Me", "Cf"):
        return int(character == "\ufe0f")  # it asks for the wide picture of the sign before it
    return 2 if unicodedata.east_asian_width(character) in ("W", "F") else 1


def paragraph(text: str, width: int, indent: str = "", first: str | None = None) -> list[str]:
    """Lines of at most `width` columns; `first` stands before the first line in place of `indent`."""
    flat = " ".join(_BLANKS.split(printable(text).strip()))  # a space that must not break stays one
    first = indent if first is None else first
    if flat.isascii() or all(_columns(character) == 1 for character in flat):
        return textwrap.wrap(flat, width, initial_indent=first, subsequent_indent=indent)
    return _wrap_wide(flat, width, first, indent)


def _wrap_wide(text: str, width: int, first: str, indent: str) -> list[str]:
    """Greedy filling by columns; a word longer than a line is cut where the line ends."""
    lines, line, empty = [], first, True
    for word in text.split(" "):
        if not empty and columns(line) + 1 + columns(word) > width:
            lines.append(line)
            line, empty = indent, True
        line += "" if empty else " "
        for character in word:
            if not empty and columns(line) + _columns(character) > width:
                lines.append(line)
                line = indent
            line, empty = line + character, False
    return [*lines, line] if not empty else lines


def bullet(text: str, width: int, mark: str = "-", indent: str = "  ") -> list[str]:
    """A paragraph with a hanging mark."""
    return paragraph(text, width, indent + " " * (len(mark) + 1), f"{indent}{mark} ")


def heading(text: str, width: int) -> list[str]:
    """A heading with an empty line before it."""
    return ["", *paragraph(text[:1].upper() + text[1:], width)]
