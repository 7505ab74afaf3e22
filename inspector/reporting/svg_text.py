"""Text inside a drawing: how wide it is in the report's font, and an element that keeps to that width.

A drawing is laid out by the renderer with the thinnest letters of a variable font; so each text carries its width.
"""

from __future__ import annotations

from functools import cache
from html import escape

from inspector.reporting.assets import own_font

INK, GREY, PAPER = "#16202c", "#4a5563", "#ffffff"
FAMILY = "Report, Source Sans 3, Noto Sans, sans-serif"
SIZE = 10.5  # px; 8 points on paper
_UNKNOWN = 0.6  # em; a letter that the font lacks


@cache
def _advances(bold: bool) -> dict[int, float]:
    """Width of every letter in em."""
    font = own_font()
    glyphs = font.getGlyphSet(location={"wght": 700 if bold else 400})
    em = font["head"].unitsPerEm
    return {letter: glyphs[name].width / em for letter, name in font.getBestCmap().items() if letter < 0x2200}


def width(text: str, size: float = SIZE, bold: bool = False) -> float:
    """How wide a text is, in px."""
    advances = _advances(bold)
    return size * sum(advances.get(ord(letter), _UNKNOWN) for letter in text)


def label(
    x: float, y: float, text: str, *, size: float = SIZE, bold: bool = False, anchor: str = "start", ink: str = INK
) -> str:
    """A text with its foot at `y`, at `x` by its start, middle or end."""
    weight = ' font-weight="700"' if bold else ""
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" font-family="{FAMILY}" font-size="{size}"{weight} fill="{ink}"'
        f' text-anchor="{anchor}" textLength="{width(text, size, bold):.1f}">{escape(text)}</text>'
    )


def wrapped(text: str, most: float, size: float = SIZE, bold: bool = False) -> list[str]:
    """Lines of at most `most` px; a word longer than that stands alone."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width(longer, size, bold) <= most:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def picture(kind: str, wide: float, high: float, title: str, inside: str) -> str:
    """A whole drawing, named by `title` for those who hear the page."""
    return (
        f'<svg class="{kind}" viewBox="0 0 {wide:g} {high:g}" width="{wide:g}" height="{high:g}" role="img">'
        f"<title>{escape(title)}</title>{inside}</svg>"
    )
