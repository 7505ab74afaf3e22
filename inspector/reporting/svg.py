"""Small drawings as inline SVG: the mark of each level and the bar of a coverage. Knows no part, no rule."""

from __future__ import annotations

from html import escape

# One shape a level, told apart without colour. Drawn in a box of 24 by 24; `I` is the ink, `P` the paper.
_SHAPES = {
    "stop": '<rect x="2" y="2" width="20" height="20" fill="I"/>',
    "repair": '<path d="M12 2 L23 22 L1 22 Z" fill="I"/>',
    "plan": '<circle cx="12" cy="12" r="9.5" fill="P" stroke="I" stroke-width="2.4"/>'
    '<path d="M12 2.5 A9.5 9.5 0 0 1 12 21.5 Z" fill="I"/>',
    "watch": '<circle cx="12" cy="12" r="9.5" fill="P" stroke="I" stroke-width="2.4"/>'
    '<circle cx="12" cy="12" r="3" fill="I"/>',
    "unseen": '<rect x="3" y="3" width="18" height="18" fill="P" stroke="I" stroke-width="2.2"'
    ' stroke-dasharray="3.6 2.7"/>',
    "sound": '<path d="M3 12 L21 12" stroke="I" stroke-width="3.6" fill="none"/>',
    "suspected": '<path d="M12 1.5 L22.5 12 L12 22.5 L1.5 12 Z" fill="P" stroke="I" stroke-width="2.2"'
    ' stroke-dasharray="3.6 2.7"/>',
}
INK, PAPER = "#16202c", "#ffffff"
BAR_WIDTH, BAR_HEIGHT = 160, 12


def mark(level: str, title: str) -> str:
    """The shape of a level, named by `title` for those who hear the page."""
    return (
        f'<svg class="mark" viewBox="0 0 24 24" width="24" height="24" role="img">'
        f"<title>{escape(title)}</title>{mark_shape(level)}</svg>"
    )


def mark_shape(level: str) -> str:
    """The shape of a level in a box of 24 by 24, for use inside another drawing."""
    return _SHAPES[level].replace('"I"', f'"{INK}"').replace('"P"', f'"{PAPER}"')


def coverage_bar(looked: int, expected: int, title: str) -> str:
    """A bar: the filled part of its length is what was looked at."""
    filled = 0.0 if expected == 0 else BAR_WIDTH * min(looked, expected) / expected
    return (
        f'<svg class="bar" viewBox="0 0 {BAR_WIDTH + 2} {BAR_HEIGHT + 2}" width="{BAR_WIDTH + 2}"'
        f' height="{BAR_HEIGHT + 2}" role="img"><title>{escape(title)}</title>'
        f'<rect x="1" y="1" width="{BAR_WIDTH}" height="{BAR_HEIGHT}" fill="{PAPER}" stroke="{INK}"'
        f' stroke-width="1"/>'
        f'<rect x="1" y="1" width="{filled:.1f}" height="{BAR_HEIGHT}" fill="{INK}"/></svg>'
    )
