"""How deep a bolt is screwed in, against the depth that is usual for the material around it.

Lengths in mm. Knows no part and no rule.
"""

from __future__ import annotations

from typing import Literal

from inspector.quantities.arrays import positive

Depth = Literal["as deep as usual", "less deep than usual", "less than half as deep as usual"]

USUAL_ENGAGEMENT: dict[str, tuple[float, float]] = {"steel": (1.0, 1.0), "aluminium": (1.5, 2.0)}
"""Usual depth in diameters for a steel bolt in this material (handbook pages; a forum: 3 for aluminium)."""


def engagement(depth: float, diameter: float, into: str) -> Depth:
    """How a depth of thread stands to the usual one: one diameter in steel, one and a half in aluminium.

    Raises ValueError unless both lengths are positive, and for another material. Source: handbook pages on
    threads; the half is an own choice.
    """
    if into not in USUAL_ENGAGEMENT:
        raise ValueError(f"{into!r} is no material of the table. Use one of: {', '.join(USUAL_ENGAGEMENT)}.")
    share = float(positive("The depth", depth)) / float(positive("The diameter", diameter))
    usual, _ = USUAL_ENGAGEMENT[into]
    if share >= usual:
        return "as deep as usual"
    return "less deep than usual" if share >= usual / 2 else "less than half as deep as usual"
