"""Whatever is filled into a sheet comes back: chance answers to the core sheet of every kind and purpose."""

from __future__ import annotations

import html
import io
import random
import re
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import ArrayObject, DictionaryObject, NameObject, TextStringObject

from inspector.knowledge.library import knowledge
from inspector.knowledge.walk_round import PURPOSES, Purpose
from inspector.knowledge.yamlfile import Document
from inspector.quantities.units import base_unit, convert
from inspector.reading.opening import opened_record
from inspector.reading.record import read_document
from inspector.reading.sheet_fields import field_name
from inspector.reporting.sheet_paper import sheet_html, sheet_pdf
from inspector.reporting.sheet_plan import Ask, LimitAsk, Plan, make_plan

KNOWN = knowledge()
KINDS = [kind for kind, machine in KNOWN.machines.items() if not machine.abstract]
TODAY = date(2026, 6, 1)
ON = "/on"


class Filler:
    """Fills in a sheet by chance, and writes the same by hand as a record."""

    def __init__(self, plan: Plan, seed: int) -> None:
        self.dice = random.Random(seed)
        self.fields: dict[str, str] = {field_name("inspection", "date"): "2026-05-01"}
        self.record: dict[str, Any] = {
            "machine": {"kind": KNOWN.machines[plan.kind].called},
            "inspection": {"purpose": plan.purpose, "date": "2026-05-01"},
            "observations": {},
        }
        for name, text in (
            ("name", "Grüne 2½, „die alte“"),
            ("odometer", "41 200 km"),
            ("vin", "XX0AB12C3DE456789"),
        ):
            self._head("machine", name, text)
        self._head("inspection", "request", "Is it worth\nthe money?")
        for work, _, places in plan.works:
            for place in places:
                if self.dice.random() < 0.3:
                    self.fields[field_name("work", work, place)] = ON
                    self.record.setdefault("work done", []).append(f"{work.replace('_', ' ')} @ {place}")
        for ask in (ask for stop in plan.stations for block in stop.blocks for ask in block.asks):
            self._ask(ask)

    def _head(self, section: str, name: str, text: str) -> None:
        self.fields[field_name(section, name)] = self.record[section][name] = text

    def _ask(self, ask: Ask) -> None:
        tool = self.dice.choice([None, *(name for name, _ in ask.tools)])
        measured = False
        for place in ask.places:
            entry = self._entry(ask, place)
            if entry is None:
                continue
            if ask.tools and tool and "value" in entry:
                entry["tool"], measured = tool, True
            self.record["observations"].setdefault(f"{ask.part} @ {place}", {})[ask.name] = entry
        if measured:
            self.fields[field_name("tool", ask.part, ask.name, ", ".join(ask.places), str(tool))] = ON
        for limit in ask.limits:
            if self.dice.random() < 0.5:
                self._limit(ask, limit)

    def _entry(self, ask: Ask, place: str) -> dict[str, Any] | None:
        look = (ask.part, place, ask.name)
        turn = self.dice.random()
        if turn < 0.2:
            return None
        note = self.dice.choice(["", "am Rand, 2,5 mm: naß", "“worn” | 50 % (left)."])
        if note:
            self.fields[field_name("note", *look)] = note
        if turn < 0.4:
            heading = self.dice.choice(["could not see", "does not apply"])
            self.fields[field_name("unseen", *look, heading)] = ON
            return {heading: note or None}
        return {"value": self._value(ask, look), **({"note": note} if note else {})}

    def _value(self, ask: Ask, look: tuple[str, str, str]) -> str:
        prop = ask.prop
        words = list(prop.words()) if prop.kind in ("choice", "yes_no") else []
        if prop.kind in ("date", "odometer") and self.dice.random() < 0.3:
            words = ["unknown"]
        if words:
            word = self.dice.choice(words)
            self.fields[field_name("word", *look, word)] = ON
            return word
        typed, value = self._typed(ask)
        self.fields[field_name("value", *look, ask.unit)] = typed
        return value

    def _typed(self, ask: Ask) -> tuple[str, str]:
        """What stands in the box, and what it says in a record."""
        prop = ask.prop
        if prop.kind == "quantity":
            low, high = prop.plausible_range()
            unit = self.dice.choice(ask.units)
            base = base_unit(str(prop.dimension))
            ends = sorted(convert(end, base, unit, str(prop.dimension)) for end in (low, high))
            number = f"{self.dice.uniform(*ends):.4f}"
            value = f"{number} {unit}"
            if unit != ask.unit:
                return value, value
            return self.dice.choice([number, value, number.replace(".", ",")]), value
        fixed = {
            "count": "3",
            "tyre_code": "2222",
            "date": "2024-05",
            "odometer": "39 000 km",
            "text": "Ja: naß, 1,5",
        }
        text = "1" if prop.kind == "count" and prop.plausible_range()[1] < 3 else fixed[prop.kind]
        return text, text

    def _limit(self, ask: Ask, limit: LimitAsk) -> None:
        places = ", ".join(ask.places)
        ends = limit.senses if self.dice.random() < 0.5 else limit.senses[:1]
        amounts = {sense: f"{number} {limit.unit}" for sense, number in zip(ends, ("0.5", "0.7"), strict=False)}
        if ask.prop.kind == "quantity" and not limit.about and ask.prop.plausible_range()[1] < 1:
            return
        for sense, amount in amounts.items():
            self.fields[field_name("limit", ask.part, places, limit.name, sense, limit.unit)] = amount
        origin = self.dice.choice(["stamped", "manual"])
        self.fields[field_name("origin", ask.part, places, limit.name, origin)] = ON
        text = (
            f"from {amounts['at least']} to {amounts['at most']}"
            if len(amounts) == 2
            else " ".join(*amounts.items())
        )
        for place in ask.places:
            self.record.setdefault("limits", {}).setdefault(f"{ask.part} @ {place}", {})[limit.name] = (
                f"{text} ({origin})"
            )


def form(inputs: dict[str, str]) -> PdfWriter:
    """A PDF that holds nothing but the fields of a sheet, as drawing each sheet would take too long."""
    writer = PdfWriter()
    page = writer.add_blank_page(600, 800)
    widgets = ArrayObject()
    for name, tag in inputs.items():
        kind = "/Btn" if 'type="checkbox"' in tag else "/Tx"
        widget = {"/Type": "/Annot", "/Subtype": "/Widget", "/FT": kind}
        made = DictionaryObject({NameObject(key): NameObject(value) for key, value in widget.items()})
        made[NameObject("/T")] = TextStringObject(name)
        given = re.search(r'value="([^"]+)"', tag)
        if given is not None:
            made[NameObject("/V")] = TextStringObject(html.unescape(given[1]))
        widgets.append(writer._add_object(made))
    page[NameObject("/Annots")] = widgets
    return writer


def filled(writer: PdfWriter, fields: dict[str, str], path: Path) -> Path:
    left = dict(fields)
    for page in writer.pages:
        for widget in (one.get_object() for one in page.get("/Annots", ())):
            text = left.pop(str(widget.get("/T")), None)
            if text is not None:
                widget[NameObject("/V")] = NameObject(text) if widget["/FT"] == "/Btn" else TextStringObject(text)
    assert left == {}, "no such field on the sheet"
    writer.write(path)
    return path


def comes_back(writer: PdfWriter, filler: Filler, path: Path) -> None:
    expected = read_document(Document("by hand", filler.record), None, KNOWN, TODAY)
    with opened_record(filled(writer, filler.fields, path), KNOWN, TODAY) as (inspection, _):
        looks = {key: replace(one, line=0) for key, one in inspection.observations.items()}
        assert looks == {key: replace(one, line=0) for key, one in expected.observations.items()}
        assert set(inspection.limits) == set(expected.limits)
        assert set(inspection.work) == set(expected.work)
        whole = {"observations": {}, "limits": (), "work": ()}
        assert replace(inspection, **whole) == replace(expected, **whole)


@pytest.mark.parametrize("purpose", PURPOSES)
@pytest.mark.parametrize("kind", KINDS)
def test_chance_answers_to_the_core_sheet_come_back_as_they_would_stand_in_a_record(
    kind: str, purpose: Purpose, tmp_path: Path
) -> None:
    plan = make_plan(KNOWN, kind, purpose, "core")
    inputs = re.findall(r"<(?:input|textarea)[^>]*>", sheet_html(plan, KNOWN))
    named = {html.unescape(found[1]): one for one in inputs if (found := re.search(r'name="([^"]+)"', one))}
    assert len(named) == len(inputs) > 150
    for seed in range(4):
        filler = Filler(plan, seed)
        assert len(filler.record["observations"]) > 8
        comes_back(form(named), filler, tmp_path / f"{seed}.pdf")


def test_the_drawn_sheet_takes_the_same_answers(tmp_path: Path) -> None:
    plan = make_plan(KNOWN, "chain_drive", "before purchase", "core")
    drawn = sheet_pdf(plan, KNOWN)
    comes_back(PdfWriter(clone_from=PdfReader(io.BytesIO(drawn))), Filler(plan, 9), tmp_path / "sheet.pdf")
