"""The page by keyboard, for a screen reader, in the dark and with a thumb."""

from __future__ import annotations

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.browser.conftest import MakePhone
from tests.browser.filling import W, go, look
from tests.browser.test_page import PADS

SMALLEST_TARGET = 44  # CSS pixels; WCAG 2.2 success criterion 2.5.5 asks for as much


def serious(page: Page) -> list[str]:
    found = Axe().run(page).response["violations"]
    return [
        f"{one['id']}: {one['nodes'][0]['html'][:120]}"
        for one in found
        if one["impact"] in ("serious", "critical")
    ]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_serious_on_any_view(phone: MakePhone, scheme: str) -> None:
    page = phone("after own service", "core", scheme=scheme).open()
    page.get_by_label("Year", exact=True).fill("19")  # a fault is shown, too
    assert serious(page) == []
    for _ in range(20):
        following = page.get_by_role("button", name=W["next"], exact=True)
        if following.is_disabled():
            break
        following.click()
        assert serious(page) == []
    page.get_by_role("button", name=W["again"]).click()
    assert serious(page) == []  # the dialog


def test_the_test_for_everyone_can_fail(phone: MakePhone) -> None:
    page = phone().open()
    page.evaluate("document.querySelector('label').remove()")
    assert any(found.startswith("label:") for found in serious(page))


def test_one_look_is_answered_by_keyboard_alone(phone: MakePhone) -> None:
    page = phone().open()
    following = page.get_by_role("button", name=W["next"], exact=True)
    for _ in range(2):
        following.focus()
        page.keyboard.press("Enter")
    expect(page.get_by_role("heading", level=1)).to_be_focused()
    group = look(page, ("tyre", "front", "cracks"))
    group.get_by_role("radio").first.focus()
    page.keyboard.press("Space")
    page.keyboard.press("ArrowDown")
    expect(group.get_by_role("radio").nth(1)).to_be_checked()
    page.keyboard.press("Tab")
    expect(group.get_by_role("button", name=W["could_not_see"])).to_be_focused()
    page.keyboard.press("Enter")
    expect(group.get_by_role("button", name=W["could_not_see"])).to_have_attribute("aria-pressed", "true")


def test_every_target_is_large_enough_for_a_thumb(phone: MakePhone) -> None:
    page = phone().open()
    go(page, "2 Front wheel")
    expect(look(page, PADS)).to_be_visible()
    targets = page.locator(
        "button:visible, input[type=text]:visible, select:visible, summary:visible, .choice:visible"
    )
    boxes = [one.bounding_box() for one in targets.all()]
    assert len(boxes) > 20
    assert [box for box in boxes if box is None or box["height"] < SMALLEST_TARGET] == []


def test_nothing_is_wider_than_the_phone(phone: MakePhone) -> None:
    page = phone().open()
    page.set_viewport_size({"width": 320, "height": 640})
    for _ in range(20):
        assert page.evaluate("document.documentElement.scrollWidth") <= 320
        following = page.get_by_role("button", name=W["next"], exact=True)
        if following.is_disabled():
            break
        following.click()
