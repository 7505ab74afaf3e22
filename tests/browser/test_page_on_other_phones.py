"""What other phones lack or do otherwise: nothing is kept, nothing can be saved; and slips while typing."""

from __future__ import annotations

import base64
import json
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from playwright.sync_api import Page, expect

from inspector import assess
from inspector.knowledge.library import knowledge
from inspector.knowledge.walk_round import Purpose, questions
from inspector.knowledge.yamlfile import Document
from inspector.reading.opening import opened_record
from inspector.reading.record import read_document
from tests.browser.conftest import MakePhone
from tests.browser.filling import Key, W, add_photo, answer, go, look, saved
from tests.browser.test_page import PADS, TODAY, essence
from tests.records import good_value

OUTER: Key = ("brake pad", "front left outer", "friction_material_thickness")
SLACK: Key = ("chain", "rear", "slack")
KEEPS_NOTHING = """
    Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } });
    indexedDB.open = () => { throw new DOMException('no', 'SecurityError'); };
"""
# as the browsers of some phones do it: they share texts and pictures, but no zip
SHARES_TEXTS = """
    window.shared = null;
    navigator.canShare = ({ files }) => files.every((one) => ['text/plain', 'image/jpeg'].includes(one.type));
    navigator.share = async ({ files }) => { window.shared = files; };
"""


def record_of(page: Page) -> dict[str, Any]:
    """The record as text, as it stands on the last screen."""
    go(page, "Save")
    page.get_by_text(W["as_text"], exact=True).first.click()
    return dict(json.loads(page.get_by_label(W["as_text"]).input_value()))


def test_a_browser_that_keeps_nothing_says_so_first_and_saves_nevertheless(
    phone: MakePhone, tmp_path: Path
) -> None:
    mine = phone()
    mine.lacks = KEEPS_NOTHING
    page = mine.open()
    expect(page.locator("#kept")).to_have_text(W["not_kept"])
    expect(page.locator("#kept")).to_have_class("wrong")
    go(page, "2 Front wheel")
    picture = tmp_path / "pad.png"
    Image.new("RGB", (40, 30), "grey").save(picture)
    answer(page, PADS, "3.1 mm")
    add_photo(page, PADS, picture)
    expect(look(page, PADS).get_by_text(W["photo_lost"])).to_be_visible()
    go(page, "Save")
    expect(page.locator("#kept")).to_have_text(W["not_kept"])
    with opened_record(saved(page, tmp_path), knowledge()) as (inspection, folder):
        assert (folder / (inspection.observations[PADS].photo or "")).is_file()
    assert mine.errors == []


def test_where_saving_does_nothing_the_record_is_shared_as_text_and_pictures(
    phone: MakePhone, tmp_path: Path
) -> None:
    mine = phone()
    mine.lacks = SHARES_TEXTS
    page = mine.open()
    go(page, "2 Front wheel")
    picture = tmp_path / "pad.png"
    Image.new("RGB", (40, 30), "grey").save(picture)
    answer(page, PADS, "3.1 mm")
    add_photo(page, PADS, picture)
    go(page, "Save")
    page.get_by_role("button", name=W["share"]).click()
    expect(page.get_by_text(W["shared"])).to_be_visible()
    read = """async () => Promise.all([...window.shared].map(async (one) =>
        [one.name, btoa(String.fromCharCode(...new Uint8Array(await one.arrayBuffer())))]))"""
    for name, content in page.evaluate(read):
        (tmp_path / name).write_bytes(base64.b64decode(content))
    with opened_record(tmp_path / "record.txt", knowledge()) as (inspection, folder):
        assert inspection.observations[PADS].value.typed == "3.1 mm"  # type: ignore[union-attr]
        with Image.open(folder / (inspection.observations[PADS].photo or "")) as shown:
            assert shown.size == (40, 30)


def test_no_share_button_where_the_phone_shares_no_files(phone: MakePhone) -> None:
    mine = phone()
    mine.lacks = "navigator.canShare = undefined;"
    page = mine.open()
    go(page, "Save")
    expect(page.locator("#share")).to_be_hidden()


@pytest.mark.parametrize(
    ("typed", "unit", "said"),
    [
        ("1,8", "mm", "Read as 1.8 mm"),
        ("about two", "mm", W["not_a_number"]),
        ("1,250", "mm", W["which_comma"]),
        ("99", "mm", W["not_believable"].format(range="0 mm to 15 mm")),
        ("1/8", "in", "Read as 1/8 in"),
    ],
)
def test_a_number_is_read_or_its_fault_is_said_at_once(phone: MakePhone, typed: str, unit: str, said: str) -> None:
    page = phone().open()
    go(page, "2 Front wheel")
    group = look(page, PADS)
    group.get_by_label(W["unit"]).first.select_option(unit)
    group.get_by_label(W["number"]).first.fill(typed)
    expect(group.get_by_role("status").first).to_have_text(said)


def test_a_number_keeps_the_unit_and_tool_it_was_typed_with_when_others_are_chosen_later(phone: MakePhone) -> None:
    page = phone().open()
    go(page, "2 Front wheel")
    look(page, PADS).get_by_label(W["tool"]).select_option("caliper")
    look(page, PADS).get_by_label(W["number"]).first.fill("3.1")  # in mm, which nobody had to choose
    look(page, OUTER).get_by_label(W["unit"]).first.select_option("in")
    look(page, OUTER).get_by_label(W["number"]).first.fill("1/8")
    looks = record_of(page)["observations"]
    assert looks["brake pad @ front left inner"]["friction_material_thickness"] == {
        "value": "3.1 mm",
        "tool": "caliper",
    }
    assert looks["brake pad @ front left outer"]["friction_material_thickness"] == "1/8 in"
    go(page, "2 Front wheel")
    third = look(page, ("brake pad", "front right inner", "friction_material_thickness"))
    expect(third.get_by_label(W["unit"]).first).to_have_value("in")  # offered again, to be seen
    expect(third.get_by_label(W["tool"])).to_have_value("caliper")


def test_a_limit_of_the_machine_holds_for_all_places_of_the_stop_and_for_what_is_worked_out(
    phone: MakePhone,
) -> None:
    page = phone("before purchase", "full", kind="chain_drive").open()
    go(page, "2 Front wheel")
    group = look(page, PADS)
    group.get_by_text(W["own_limit"], exact=True).click()
    group.get_by_label(W["at_least"]).fill("2,2")
    expect(group.get_by_text(W["no_origin"])).to_be_visible()
    answer(page, PADS, "2.0 mm")
    answer(page, OUTER, "2.4 mm")
    assert "limits" not in record_of(page)
    expect(page.get_by_text(W["no_origin"])).to_be_visible()  # it is said once more where it is saved
    go(page, "2 Front wheel")
    look(page, PADS).get_by_label(W["limit_from"]).select_option("stamped")
    go(page, "5 Rear")
    group = look(page, SLACK)
    group.get_by_text(W["own_limit"], exact=True).click()
    for number, (label, typed) in enumerate(((W["at_least"], "20"), (W["at_most"], "30"))):
        group.get_by_label(label).fill(typed)
        group.get_by_label(W["limit_from"]).nth(number).select_option("manual")
    answer(page, SLACK, "45 mm")
    record = record_of(page)
    assert record["limits"] == {
        **{
            f"brake pad @ front {place}": {"friction_material_thickness": "at least 2.2 mm (stamped)"}
            for place in ("left inner", "left outer", "right inner", "right outer")
        },
        "chain @ rear": {
            "slack_tight_side": "at least 20 mm (manual)",
            "slack_loose_side": "at most 30 mm (manual)",
        },
    }
    found = assess(read_document(Document("page", record), None, knowledge(), date.today()))
    places = {(one.part, one.place) for one in found.findings}
    assert ("brake pad", "front left inner") in places
    assert ("brake pad", "front left outer") not in places
    assert any(one.part == "chain" for one in found.findings)


def test_a_photo_without_an_answer_is_named_and_the_list_of_open_looks_leads_back(
    phone: MakePhone, tmp_path: Path
) -> None:
    page = phone().open()
    go(page, "2 Front wheel")
    picture = tmp_path / "pad.png"
    Image.new("RGB", (40, 30), "grey").save(picture)
    add_photo(page, PADS, picture)
    go(page, "Save")
    expect(page.get_by_text(W["no_answer"])).to_be_visible()
    page.get_by_role("button", name="How much friction material is left").first.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("2 Front wheel")
    expect(look(page, PADS).get_by_label(W["number"]).first).to_be_focused()


def test_a_whole_core_list_comes_out_as_the_record_by_hand(phone: MakePhone, tmp_path: Path) -> None:
    purpose: Purpose = "after own service"
    mine = phone(purpose, "core", kind="belt_drive", lasting=True)
    page = mine.open()
    page.get_by_label("Day (year-month-day)").fill("2026-05-01")
    walk = questions(knowledge(), "belt_drive", purpose, "core")
    stops = list(dict.fromkeys(one.stop for one in walk))
    hand: dict[str, Any] = {}
    at = -1
    for number, one in enumerate(walk):
        if number == len(walk) // 2:
            mine.close()
            page = mine.open()
            page.get_by_role("dialog").get_by_role("button", name=W["away_yes"]).click()
            at = -1
        if one.stop != at:
            at = one.stop
            go(page, f"{stops.index(at) + 1} ")
        value = good_value(one.prop)
        answer(page, one.key, value)
        hand.setdefault(f"{one.part} @ {one.place}", {})[one.name] = value
    data = {
        "machine": {"kind": "belt drive motorcycle"},
        "inspection": {"purpose": purpose, "date": "2026-05-01"},
        "observations": hand,
    }
    expected = read_document(Document("by hand", data), None, knowledge(), TODAY)
    with opened_record(saved(page, tmp_path), knowledge(), TODAY) as (inspection, _):
        assert essence(assess(inspection)) == essence(assess(expected))
        assert inspection.observations.keys() == expected.observations.keys()
    assert mine.errors == []
