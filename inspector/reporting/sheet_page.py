"""The page for the phone: one file with everything in it, that works without a network."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from pathlib import Path
from typing import Any

from inspector.knowledge.library import Knowledge
from inspector.knowledge.machines import WHOLE
from inspector.knowledge.observables import Property
from inspector.knowledge.shipped import shipped
from inspector.knowledge.walk_round import Question
from inspector.knowledge.wording import words
from inspector.quantities.units import DIMENSIONS, base_unit, convert, units_of
from inspector.reading.values import MOST_ODOMETER_KM
from inspector.reporting.files import write_whole
from inspector.reporting.html import environment
from inspector.reporting.sheet_paper import left_out, minutes, total
from inspector.reporting.sheet_plan import Plan, measuring, own_limits, units

# section of the record and heading; the kind and the purpose are those of the page
_HEAD = (
    ("machine", "name"),
    ("machine", "vin"),
    ("machine", "odometer"),
    ("machine", "year"),
    ("inspection", "date"),
    ("inspection", "country"),
    ("inspection", "request"),
)


def write_page(plan: Plan, knowledge: Knowledge, path: Path) -> None:
    """Write the page to `path`; the file is whole or as it was. Raises OSError."""
    write_whole(path, page_html(plan, knowledge).encode())


def page_html(plan: Plan, knowledge: Knowledge) -> str:
    """The page as HTML."""
    from markupsafe import Markup

    data = json.dumps(page_data(plan, knowledge), ensure_ascii=False, separators=(",", ":"))
    for sign in "<>&":  # so that no text can end the script that holds it
        data = data.replace(sign, f"\\u{ord(sign):04x}")
    template = environment().get_template("sheet_page.html")
    return template.render(
        plan=plan,
        w=words(),
        machine=knowledge.machines[plan.kind].called,
        css=Markup((shipped("report_templates") / "sheet_page.css").read_text(encoding="utf-8")),
        script=Markup(_script()),
        data=Markup(data),
    )


def _script() -> str:
    folder = shipped("report_templates") / "sheet_page"
    files = sorted((one for one in folder.iterdir() if one.name.endswith(".js")), key=lambda one: one.name)
    return '"use strict";\n(() => {\n' + "\n".join(one.read_text(encoding="utf-8") for one in files) + "})();\n"


def page_data(plan: Plan, knowledge: Knowledge) -> dict[str, Any]:
    """What the script works with: words, questions, units and the limits of what can be believed."""
    t = words()["sheet"]
    keys = list(dict.fromkeys((one.part, one.name) for one in plan.questions))
    props = [_look(knowledge, one.part, one.name, one.prop) for one in _one_a_look(plan.questions).values()]
    stops = list(dict.fromkeys(one.stop for one in plan.questions))
    told = {name for look in props for name in look["cautions"]}
    machine = knowledge.machines[plan.kind]
    parts = {one.part for one in plan.questions}
    return {
        "id": f"{plan.kind}, {plan.purpose}, {plan.depth}",
        "kind": machine.called,
        "purpose": plan.purpose,
        "words": {
            **words()["sheet_page"],
            **{key: t[key] for key in ("minutes_one", "minutes_many", "hours_many")},
        },
        "total": total(plan),
        "left_out": left_out(plan),
        **{key: t[key] for key in ("how_title", "how", "photos_title", "photos", "tools_title", "work_title")},
        **{key: t[key] for key in ("work_intro", "cautions_title", "caution")},
        "bring": _bring(plan),
        "head": _HEAD,
        "head_words": {**t["head"], "odometer": words()["sheet_page"]["odometer"], "remarks": t["remarks"]},
        "first_cautions": [{"title": one.title, "text": one.text} for one in plan.cautions],
        "cautions": {name: _caution(knowledge, name) for name in sorted(told)},
        "whole": WHOLE,
        "units": {dimension: _units(dimension) for dimension in DIMENSIONS},
        "odometer_units": units_of("distance")[:2],
        "stops": [{"title": one.title, "do": one.do} for one in plan.stations],
        "props": props,
        "looks": [[stops.index(q.stop), keys.index((q.part, q.name)), q.place, q.minutes] for q in plan.questions],
        "works": plan.works,
        "done": [f"{work} @ {place}" for work, place in plan.done],
        "optional": [part for part in machine.parts if part in machine.optional_parts and part in parts],
    }


def _one_a_look(asked: tuple[Question, ...]) -> Mapping[tuple[str, str], Question]:
    found: dict[tuple[str, str], Question] = {}
    for one in asked:
        found.setdefault((one.part, one.name), one)
    return found


def _bring(plan: Plan) -> str:
    listed = ", ".join(plan.bring)
    return f"{listed[:1].upper()}{listed[1:]}." if listed else str(words()["sheet"]["tools_none"])


def _caution(knowledge: Knowledge, name: str) -> dict[str, str]:
    return {"title": knowledge.cautions[name].title, "text": knowledge.cautions[name].text}


def _units(dimension: str) -> list[tuple[str, float, float]]:
    """Each unit with its factor and the reading it shows at nought of the base unit."""
    base = base_unit(dimension)
    found = []
    for unit in units_of(dimension):
        factor = convert(1.0, unit, base, dimension) - convert(0.0, unit, base, dimension)
        found.append((unit, factor, convert(0.0, base, unit, dimension)))
    return found


def _look(knowledge: Knowledge, part: str, name: str, prop: Property) -> dict[str, Any]:
    unit, others = units(prop)
    return {
        "part": part,
        "name": name,
        "kind": prop.kind,
        "ask": prop.ask,
        "look": prop.look,
        "time": minutes(prop.minutes),
        "critical": prop.critical,
        "moment": prop.moment,
        "after": prop.after,
        "cautions": prop.cautions,
        "choices": [(word, prop.choices.get(word, "")) for word in prop.words()]
        if prop.kind in ("choice", "yes_no")
        else [],
        "unit": unit,
        "units": others,
        "tools": measuring(prop, knowledge),
        "limits": [asdict(one) for one in own_limits(knowledge, part, name)],
        **_believable(prop),
    }


def _believable(prop: Property) -> dict[str, Any]:
    if prop.kind == "odometer":
        most = MOST_ODOMETER_KM
        return {"dimension": "distance", "low": 0, "high": most, "plausible": f"0 km to {most} km"}
    if prop.kind not in ("quantity", "count"):
        return {}
    low, high = prop.plausible_range()
    return {"dimension": prop.dimension, "low": low, "high": high, "plausible": prop.plausible}
