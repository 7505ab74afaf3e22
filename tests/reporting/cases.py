"""Assessments to print: with findings and suspected causes, nearly empty, in order, hostile."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from typing import Any

from inspector.knowledge.library import knowledge
from inspector.weighing.assessment import Assessment
from tests.records import assessed, good_observations

LONG = "x" * 2000
FILE = Path(__file__).as_uri()  # a file that is there, so that it would be found
OUTSIDE = "http" + "://nowhere.invalid/"
HOSTILE = f"<img src={FILE}><img src='{OUTSIDE}a.png'>"
FETCHES = (
    f"<link rel=stylesheet href='{OUTSIDE}s.css'><style>@import '{FILE}';"
    f"*{{display:none;background:url({OUTSIDE}b.png)}}</style>"
    f"<a rel=attachment href='{FILE}'>a</a><object data='{FILE}'></object>"
)


@cache
def worn() -> Assessment:
    """A machine with findings of every level and with suspected causes, after the owner's own work."""
    looks: dict[str, dict[str, Any]] = {
        "brake pad @ front left inner": {
            "friction_material_thickness": {"value": "1.1 mm", "tool": "caliper", "note": "thin at its end"},
            "wear_mark": "gone",
        },
        "brake pad @ front left outer": {"friction_material_thickness": "2.9 mm"},
        "brake control @ front": {"feel": "spongy", "pumps_up": "yes", "brake_lamp_works": "yes"},
        "brake circuit @ front": {"fluid_level": "between marks", "hose_condition": "good", "unions": "dry"},
        "tyre @ front": {"tread_centre": "3.2 mm", "date_code": "1417", "cracks": "fine", "damage": "none"},
        "final drive @ rear": {"oil_look": "milky", "breather_end": "looped low", "oil_leak": "damp"},
    }
    extra = {
        "work done": ["brake_fluid @ front"],
        "remarks": ["The lever was firm before I changed the fluid."],
        "invented": "yes",
    }
    return assessed(looks, purpose="handover", **extra)


@cache
def nearly_empty() -> Assessment:
    """Hardly anything was looked at."""
    return assessed({"tyre @ front": {"cracks": "none"}})


@cache
def in_order() -> Assessment:
    """Everything was looked at, and all of it was good."""
    stamped = {"brake disc": {"thickness": "at least 4.5 mm (stamped)"}}
    return assessed(good_observations(knowledge(), "shaft_drive"), limits=stamped)


@cache
def hostile() -> Assessment:
    """Every free text of the record tries to reach out, or is hard to set."""
    plain = worn()
    visit = plain.visit.model_copy(
        update={
            "name": f"{HOSTILE} machine",
            "request": FETCHES,
            "tried": (LONG, HOSTILE),
            "remarks": (LONG, "من فضلك افحص الفرامل", "前ブレーキが柔らかい", "🔧 end", "{{ 7 * 191 }} {x}"),
        }
    )
    first = plain.findings[0]
    noted = first.evidence[0].model_copy(update={"note": FETCHES + LONG, "photo": "../<b>.jpg"})
    finding = first.model_copy(update={"evidence": (noted, *first.evidence[1:])})
    return plain.model_copy(update={"visit": visit, "findings": (finding, *plain.findings[1:])})


def squeezed(text: str) -> str:
    """Text without white space: a PDF breaks lines where it likes."""
    return re.sub(r"\s+", "", text)
