"""A phone: the system's chromium at phone size; a lasting one keeps its folder when the browser is closed."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, sync_playwright

from inspector.knowledge.library import knowledge
from inspector.knowledge.walk_round import Depth, Purpose
from inspector.reporting.sheet_page import write_page
from inspector.reporting.sheet_plan import make_plan

CHROMIUM = shutil.which("chromium")
QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
PHONE: dict[str, Any] = {
    "reduced_motion": "reduce",
    "viewport": {"width": 390, "height": 780},
    "has_touch": True,
    "is_mobile": True,
    "device_scale_factor": 2,
}


class Phone:
    """Opens the page, closes it, opens it again; counts what would have gone to a network."""

    def __init__(self, driver: Playwright, browser: Browser, file: Path, scheme: str, lasting: bool) -> None:
        self.driver, self.browser, self.file, self.lasting = driver, browser, file, lasting
        self.settings: dict[str, Any] = {**PHONE, "color_scheme": scheme}
        self.asked_network: list[str] = []
        self.errors: list[str] = []
        self.context: BrowserContext | None = None
        self.lacks = ""  # a script that takes from the browser, or gives it, what other phones lack or have

    def open(self) -> Page:
        """The page, in a browser without network."""
        if self.context is None:
            self.context = self._context()
            self.context.route(re.compile(r"^(https?|wss?|ftp):"), self._refuse)
            self.context.on("request", self._note)
            self.context.set_offline(True)
            self.context.add_init_script(self.lacks)
        page = self.context.pages[0] if self.context.pages else self.context.new_page()
        page.set_default_timeout(20_000)
        page.on("pageerror", lambda error: self.errors.append(str(error)))
        page.on("console", self._console)
        page.goto(self.file.as_uri())
        page.wait_for_selector("main h1")
        return page

    def _context(self) -> BrowserContext:
        if not self.lasting:
            return self.browser.new_context(**self.settings)
        return self.driver.chromium.launch_persistent_context(
            str(self.file.parent / "phone"), executable_path=CHROMIUM, args=QUIET, **self.settings
        )

    def close(self) -> None:
        """The page, and on a lasting phone the whole browser, as if it died: the page is not asked."""
        if self.context is not None and self.lasting:
            self.context.close()
            self.context = None
        elif self.context is not None:
            for page in self.context.pages:
                page.close()

    def put_away(self) -> None:
        """At the end of a test."""
        if self.context is not None:
            self.context.close()

    def _refuse(self, route: Any) -> None:
        self.asked_network.append(route.request.url)
        route.abort()

    def _note(self, request: Any) -> None:
        if not request.url.startswith(("blob:", "data:")) and request.url != self.file.as_uri():
            self.asked_network.append(request.url)

    def _console(self, message: Any) -> None:
        if message.type in ("error", "warning"):
            self.errors.append(message.text)


@pytest.fixture(scope="session")
def driver() -> Iterator[Playwright]:
    if CHROMIUM is None:
        pytest.skip("chromium is not installed; on Debian: apt-get install chromium")
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def browser(driver: Playwright) -> Iterator[Browser]:
    started = driver.chromium.launch(executable_path=CHROMIUM, args=QUIET)
    yield started
    started.close()


MakePhone = Callable[..., Phone]


@pytest.fixture
def phone(driver: Playwright, browser: Browser, tmp_path: Path) -> Iterator[MakePhone]:
    """Makes the page for a purpose and a depth, and a phone to open it with."""
    with ExitStack() as opened:

        def make(
            purpose: Purpose = "before purchase",
            depth: Depth = "core",
            kind: str = "shaft_drive",
            scheme: str = "light",
            lasting: bool = False,
        ) -> Phone:
            file = tmp_path / "page.html"
            write_page(make_plan(knowledge(), kind, purpose, depth), knowledge(), file)
            made = Phone(driver, browser, file, scheme, lasting)
            opened.callback(made.put_away)
            return made

        yield make
