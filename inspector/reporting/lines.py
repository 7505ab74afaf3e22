"""Paragraphs, headings and bullets within a width: all that terminal text is laid out with."""

from __future__ import annotations

import textwrap
import unicodedata


def printable(text: str) -> str:
    """Text without control characters, which a terminal would obey instead of showing."""
    return "".join(c if c in "\n\t" or unicodedata.category(c)[0] != "C" else "�" for c in text)


def paragraph(text: str, width: int, indent: str = "", first: str | None = None) -> list[str]:
    """Lines of at most `width` characters; `first` stands before the first line in place of `indent`."""
    return textwrap.wrap(
        " ".join(printable(text).split()),
        width,
        initial_indent=indent if first is None else first,
        subsequent_indent=indent,
    )


def bullet(text: str, width: int, mark: str = "-", indent: str = "  ") -> list[str]:
    """A paragraph with a hanging mark."""
    return paragraph(text, width, indent + " " * (len(mark) + 1), f"{indent}{mark} ")


def heading(text: str, width: int) -> list[str]:
    """A heading with an empty line before it."""
    return ["", *textwrap.wrap(printable(text[:1].upper() + text[1:]), width)]
