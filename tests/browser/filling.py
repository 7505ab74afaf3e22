"""Fill in the page as a person does: by what is written on it."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

from playwright.sync_api import Locator, Page

from inspector.knowledge.wording import words

W = words()["sheet_page"]
Key = tuple[str, str, str]
SILENCES = {"not checked": W["not_checked"], "could not see": W["could_not_see"]}


def stop_of(page: Page) -> dict[Key, int]:
    """Which stop each look is at, from what the page carries."""
    data = json.loads(page.locator("#data").text_content() or "")
    props = data["props"]
    return {(props[prop]["part"], place, props[prop]["name"]): stop for stop, prop, place, _ in data["looks"]}


def go(page: Page, title: str) -> None:
    """To a stop, by the list of stops; `title` is how its line begins."""
    page.get_by_role("button", name=W["stops"], exact=True).click()
    page.locator("#stops").get_by_role("button", name=re.compile(f"^{title}")).click()


def look(page: Page, key: Key) -> Locator:
    """The group of one look."""
    return page.locator(f'[data-key="{"|".join(key)}"]')


def answer(page: Page, key: Key, entry: Any) -> None:
    """Give one answer, in the form that a record has."""
    group = look(page, key)
    value, tool, note = parts(entry)
    silent = next((button for word, button in SILENCES.items() if value.startswith(word)), None)
    if silent is not None:
        group.locator("button", has_text=silent).click()
        note = re.sub(r"^(not checked|could not see)[:, ]*", "", value) or note
    elif group.locator("input[type=radio]").count():
        group.locator(f'input[type=radio][value="{value}"]').check()
    elif group.get_by_label(W["month"]).count():
        for label, part in zip((W["year"], W["month"], W["day"]), value.split("-"), strict=False):
            group.get_by_label(label).fill(part)
    elif group.get_by_label(W["unit"]).count():
        number, _, unit = value.partition(" ")
        group.get_by_label(W["unit"]).first.select_option(unit)
        group.get_by_label(W["number"]).first.fill(number)
    else:
        group.get_by_role("textbox").first.fill(value)
    if tool:
        group.get_by_label(W["tool"]).select_option(tool)
    if note:
        opened = group.locator("details", has_text=W["more"]).last
        if opened.get_attribute("open") is None:
            opened.locator("summary").click()
        group.get_by_label(W["note"]).fill(note)


def parts(entry: Any) -> tuple[str, str | None, str | None]:
    """Value, tool and note of an answer in a record."""
    given = entry if isinstance(entry, dict) else {"value": entry}
    value, _, tool = given["value"].partition(" with ")
    if value.endswith(" by eye"):
        value, tool = value.removesuffix(" by eye"), "by eye"
    return value, given.get("tool") or tool or None, given.get("note")


def add_photo(page: Page, key: Key, photo: Path) -> None:
    """Hand a picture to the look, as the camera does."""
    group = look(page, key)
    opened = group.locator("details", has_text=W["more"]).last
    if opened.get_attribute("open") is None:
        opened.locator("summary").click()
    group.locator("input[type=file]").first.set_input_files(photo)
    group.locator("img").wait_for()


def own_limit(page: Page, key: Key, typed: str, origin: str) -> None:
    """Type in what the part or the manual allows; with two boxes, into the first."""
    group = look(page, key)
    group.get_by_text(W["own_limit"], exact=True).click()
    field = group.locator("details", has_text=W["own_limit"]).locator("fieldset").first
    number, _, unit = typed.partition(" ")
    field.get_by_label(W["unit"]).select_option(unit)
    field.locator("input").first.fill(number)
    field.get_by_label(W["limit_from"]).select_option(origin)


def saved(page: Page, folder: Path) -> Path:
    """Save, and where the download lies."""
    page.get_by_role("button", name=W["stops"], exact=True).click()
    page.locator("#stops").get_by_role("button", name=W["save_title"], exact=True).click()
    with page.expect_download() as started:
        page.get_by_role("button", name=W["save"], exact=True).click()
    target = folder / started.value.suggested_filename
    started.value.save_as(target)
    return target
