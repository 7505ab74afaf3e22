"""A phone: the system's chromium at phone size, with a folder of its own that outlives a closed page."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, Playwright, sync_playwright

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
PHONE = {"viewport": {"width": 390, "height": 780}, "has_touch": True, "is_mobile": True, "device_scale_factor": 2}


class Phone:
    """Opens the page, closes the whole browser, opens it again; counts what would have gone to a network."""

    def __init__(self, driver: Playwright, folder: Path, file: Path, scheme: str = "light") -> None:
        self.driver, self.folder, self.file, self.scheme = driver, folder, file, scheme
        self.asked_network: list[str] = []
        self.errors: list[str] = []
        self.context: BrowserContext | None = None

    def open(self) -> Page:
        """The page, in a browser without network."""
        self.context = self.driver.chromium.launch_persistent_context(
            str(self.folder), executable_path=CHROMIUM, args=QUIET, color_scheme=self.scheme, **PHONE
        )
        self.context.route(re.compile(r"^(https?|wss?|ftp):"), self._refuse)
        self.context.on("request", self._note)
        self.context.set_offline(True)
        page = self.context.pages[0]
        page.set_default_timeout(10_000)
        page.on("pageerror", lambda error: self.errors.append(str(error)))
        page.on("console", self._console)
        page.goto(self.file.as_uri())
        page.wait_for_selector("main h1")
        return page

    def close(self) -> None:
        """As a phone that dies: the page is not asked."""
        if self.context is not None:
            self.context.close()
            self.context = None

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


MakePhone = Callable[..., Phone]


@pytest.fixture
def phone(driver: Playwright, tmp_path: Path) -> Iterator[MakePhone]:
    """Makes the page for a purpose and a depth, and a phone to open it with."""
    with ExitStack() as opened:

        def make(
            purpose: Purpose = "before purchase",
            depth: Depth = "core",
            kind: str = "shaft_drive",
            scheme: str = "light",
        ) -> Phone:
            file = tmp_path / "page.html"
            write_page(make_plan(knowledge(), kind, purpose, depth), knowledge(), file)
            made = Phone(driver, tmp_path / f"phone {scheme}", file, scheme)
            opened.callback(made.close)
            return made

        yield make
