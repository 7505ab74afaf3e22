"""The page on a phone: a whole story, cut short and taken up again; photos; no network; the way back."""

from __future__ import annotations

import json
import zipfile
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from playwright.sync_api import expect

from inspector import assess
from inspector.knowledge.library import knowledge
from inspector.knowledge.yamlfile import Document, parse
from inspector.reading.inspection import Silent
from inspector.reading.opening import opened_record
from inspector.reading.record import read_document
from inspector.weighing.assessment import Assessment
from tests.browser.conftest import MakePhone
from tests.browser.filling import Key, W, add_photo, answer, go, look, own_limit, saved, stop_of

SAMPLES = Path(__file__).resolve().parents[2] / "samples"
TODAY = date(2026, 11, 1)
# as the sample has them: a least for the disc, a most for the age of the oil, beside the day of its change
OWN_LIMITS: tuple[tuple[Key, str, str], ...] = (
    (("brake disc", "front left", "thickness"), "4.5 mm", "stamped"),
    (("final drive", "rear", "oil_changed"), "24 months", "manual"),
)
PADS: Key = ("brake pad", "front left inner", "friction_material_thickness")


def by_hand(name: str, drop: tuple[str, ...] = ()) -> dict[str, Any]:
    """A sample's record as plain data, without what the page does not ask for."""
    text = (SAMPLES / name / "record.yaml").read_text(encoding="utf-8")
    data: dict[str, Any] = parse(text, name).data
    for heading in ("invented", *drop):
        data.pop(heading, None)
    data["inspection"].pop("horizon", None)
    return data


def judged(data: dict[str, Any]) -> Assessment:
    return assess(read_document(Document("by hand", data), None, knowledge(), TODAY))


def essence(assessment: Assessment) -> Any:
    """What stands, where, how bad, and what is unseen."""
    entries = (*assessment.findings, *assessment.causes)
    standing = [(entry.rule, entry.place, entry.level, entry.says) for entry in entries]
    return assessment.verdict, standing, [(e.part, e.place, e.name, e.because) for e in assessment.unseen]


def looks(data: dict[str, Any], machine: str = "shaft_drive") -> dict[Key, Any]:
    """Every single look of a record; a part that is silent as a whole is silent in each of its looks."""
    found: dict[Key, Any] = {}
    places = knowledge().machines[machine].parts
    for address, entries in data["observations"].items():
        part, _, place = address.partition(" @ ")
        place = place or places[part][0]
        if isinstance(entries, str):
            asked = [n for n, p in knowledge().properties[part].items() if p.asked and p.moment != "service"]
            entries = dict.fromkeys(asked, entries)
        for name, entry in entries.items():
            found[part, place, name] = entry
    return found


def thinned(data: dict[str, Any]) -> dict[str, Any]:
    """The record with half of its choices left out, so that a person at a slow machine is done in time."""
    known: Any = knowledge().properties
    kept: dict[str, dict[str, Any]] = {}
    for turn, ((part, place, name), entry) in enumerate(looks(data).items()):
        if turn % 2 == 0 or known[part][name].kind not in ("choice", "yes_no") or isinstance(entry, dict):
            kept.setdefault(f"{part} @ {place}", {})[name] = entry
    return {**data, "observations": kept}


@pytest.fixture
def located_photo(tmp_path: Path) -> Path:
    """A large picture that says where it was taken and on which phone."""
    picture = Image.new("RGB", (3000, 2000), "grey")
    exif = Image.Exif()
    exif[0x010F] = "a phone"
    exif.get_ifd(0x8825)[2] = (51.0, 28.0, 40.0)
    path = tmp_path / "camera.jpg"
    picture.save(path, exif=exif)
    assert b"a phone" in path.read_bytes()
    return path


def test_a_whole_story_cut_short_and_taken_up_again_is_judged_as_the_record_by_hand(
    phone: MakePhone, tmp_path: Path, located_photo: Path
) -> None:
    hand = thinned(by_hand("before_purchase"))
    mine = phone("before purchase", "full", lasting=True)
    page = mine.open()
    stops, story = stop_of(page), looks(hand)
    order = sorted(story, key=lambda key: stops[key])
    half = len(order) // 2

    page.get_by_label("What you call this machine").fill(hand["machine"]["name"])
    page.get_by_label("Year", exact=True).fill(hand["machine"]["year"])
    page.get_by_label("Distance counter").fill("61,400")  # thousands with a comma, as many people write
    page.get_by_label("Day (year-month-day)").fill(hand["inspection"]["date"])
    page.get_by_label("Country (two letters)").fill("gb")
    page.get_by_label("What is asked for").fill(hand["inspection"]["request"])
    at = -1
    for number, key in enumerate(order):
        if number == half:
            mine.close()  # the phone dies
            page = mine.open()
            dialog = page.get_by_role("dialog", name=W["away_title"])
            expect(dialog).to_contain_text(
                knowledge().properties[order[half - 1][0]][order[half - 1][2]].ask or ""
            )
            dialog.get_by_role("button", name=W["away_yes"]).click()
            at = -1
        if stops[key] != at:
            at = stops[key]
            go(page, f"{at + 1} ")
        answer(page, key, story[key])
        if key == PADS:
            add_photo(page, key, located_photo)
    for key, typed, origin in OWN_LIMITS:
        go(page, f"{stops[key] + 1} ")
        own_limit(page, key, typed, origin)
    go(page, "Save")
    page.get_by_label("What was said").fill(hand["remarks"][0])
    archive = saved(page, tmp_path)

    with opened_record(archive, knowledge(), TODAY) as (inspection, folder):
        assert essence(assess(inspection)) == essence(judged(hand))
        assert inspection.odometer is not None
        assert inspection.odometer.base == 61_400
        assert inspection.remarks == tuple(hand["remarks"])
        name = inspection.observations[PADS].photo
        assert name is not None
        with Image.open(folder / name) as picture:
            assert max(picture.size) == 1600
            assert dict(picture.getexif()) == {}  # neither the place nor the phone came along
        assert b"a phone" not in (folder / name).read_bytes()
    assert not folder.exists()
    assert mine.asked_network == []
    assert mine.errors == []


def test_the_nearly_empty_sample_comes_out_the_same(phone: MakePhone, tmp_path: Path) -> None:
    mine = phone("before purchase", "short")
    page = mine.open()
    page.get_by_label("Day (year-month-day)").fill("2026-07-05")
    go(page, "5 Rear")
    answer(page, ("tyre", "rear", "tread_centre"), "4.2 mm")
    archive = saved(page, tmp_path)

    with zipfile.ZipFile(archive) as opened:
        assert opened.testzip() is None  # the checksums that our own zip writer made hold
        assert opened.namelist() == ["record.json"]
        record = json.loads(opened.read("record.json"))
    assert record["observations"] == {"tyre @ rear": {"tread_centre": "4.2 mm"}}
    with opened_record(archive, knowledge(), TODAY) as (inspection, _):
        assert essence(assess(inspection)) == essence(judged(by_hand("nearly_empty")))


def test_a_photo_outlives_the_death_of_the_phone(phone: MakePhone, tmp_path: Path, located_photo: Path) -> None:
    mine = phone(lasting=True)
    page = mine.open()
    go(page, "2 Front wheel")
    add_photo(page, PADS, located_photo)
    mine.close()
    page = mine.open()
    page.get_by_role("button", name=W["away_no"]).click()  # leads back to that look
    expect(look(page, PADS).locator("img")).to_be_visible()
    answer(page, PADS, "3.1 mm")
    with zipfile.ZipFile(saved(page, tmp_path)) as opened:
        assert sorted(opened.namelist()) == [
            "photos/brake_pad_front_left_inner_friction_material_thickness.jpg",
            "record.json",
        ]


def test_one_who_was_away_is_asked_again_and_one_who_was_not_is_left_alone(phone: MakePhone) -> None:
    page = phone().open()
    page.clock.install()
    go(page, "2 Front wheel")
    answer(page, PADS, "3.1 mm")
    hide = "(state) => { Object.defineProperty(document, 'visibilityState', {value: state, configurable: true});"
    hide += " document.dispatchEvent(new Event('visibilitychange')); }"
    page.evaluate(hide, "hidden")
    page.clock.fast_forward(20_000)
    page.evaluate(hide, "visible")
    expect(page.get_by_role("dialog")).to_have_count(0)
    page.evaluate(hide, "hidden")
    page.clock.fast_forward(120_000)
    page.evaluate(hide, "visible")
    dialog = page.get_by_role("dialog", name="You were away; is this still right?")
    expect(dialog).to_contain_text("3.1 mm")
    dialog.get_by_role("button", name=W["away_no"]).click()
    expect(look(page, PADS).get_by_label(W["number"]).first).to_be_focused()


def test_could_not_see_keeps_what_was_typed_and_can_be_taken_back(phone: MakePhone, tmp_path: Path) -> None:
    page = phone().open()
    go(page, "2 Front wheel")
    answer(page, PADS, "3.1 mm")
    group = look(page, PADS)
    group.get_by_role("button", name=W["could_not_see"]).click()
    expect(group.get_by_label(W["number"]).first).to_be_disabled()
    with opened_record(saved(page, tmp_path), knowledge()) as (inspection, _):
        assert inspection.observations[PADS].value == Silent("could not see", None)
    go(page, "2 Front wheel")
    group.get_by_role("button", name=W["could_not_see"]).click()
    with opened_record(saved(page, tmp_path), knowledge()) as (inspection, _):
        value = inspection.observations[PADS].value
        assert not isinstance(value, Silent)
        assert value.typed == "3.1 mm"


def test_after_a_service_only_what_was_worked_on_is_asked(phone: MakePhone, tmp_path: Path) -> None:
    page = phone("after own service", "full").open()
    key: Key = ("brake caliper", "rear", "springs_and_shims")
    page.get_by_role("group", name="Were brake pads taken out or renewed at this end?").get_by_label(
        "front"
    ).check()
    go(page, r"\d After the work")
    expect(look(page, ("brake caliper", "front left", "springs_and_shims"))).to_have_count(1)
    expect(look(page, key)).to_have_count(0)
    with opened_record(saved(page, tmp_path), knowledge()) as (inspection, _):
        assert inspection.work == (("brake_pads", "front"),)


def test_an_empty_page_is_made_only_after_a_second_yes(phone: MakePhone) -> None:
    mine = phone()
    page = mine.open()
    page.get_by_label("What you call this machine").fill("the blue one")
    go(page, "Save")
    page.get_by_role("button", name=W["again"]).click()
    page.get_by_role("button", name=W["again_no"]).click()
    go(page, "1 Papers")
    mine.close()
    page = mine.open()
    go(page, "Save")
    page.get_by_role("button", name=W["again"]).click()
    page.get_by_role("button", name=W["again_yes"]).click()
    expect(page.get_by_label("What you call this machine")).to_have_value("")
    mine.close()
    expect(mine.open().get_by_label("What you call this machine")).to_have_value("")
