"""Chromium, through Playwright; `page` and `context` are there for what only this engine can be asked."""

from __future__ import annotations

import atexit
import contextlib
import os
from collections.abc import Iterator
from functools import cache
from typing import Any

from playwright.sync_api import BrowserContext, ElementHandle, Page, Playwright, sync_playwright
from playwright.sync_api import Error as PlaywrightError

from tests.browser.engines import Browser, NotYetError, PageLeftError
from tests.browser.targets import QUERY, Target

PROGRAM = "/usr/bin/chromium"
# Quiet on the network, and able to run as root.
ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
# Playwright adds these so that tests run faster than a phone would; a test about throttling drops them.
KINDER_THAN_PHONES = [
    "--disable-background-timer-throttling",
    "--disable-backgrounding-occluded-windows",
    "--disable-renderer-backgrounding",
    "--disable-back-forward-cache",
]
CLICK_MILLISECONDS = 15_000
PAGE_OF_FAILURE_MILLISECONDS = 2000


@cache
def driver() -> Playwright:
    """One for all browsers of this process: starting it takes as long as starting a browser."""
    playwright = sync_playwright().start()
    atexit.register(playwright.stop)
    return playwright


class Chromium(Browser):
    """Debian's Chromium with a persistent profile."""

    name = "chromium"
    page: Page
    context: BrowserContext

    def _start(self) -> None:
        options = self.options
        self.context = driver().chromium.launch_persistent_context(
            self.profile,
            executable_path=PROGRAM,
            headless=True,
            args=[*ARGUMENTS, *options.arguments],
            env={**os.environ, "HOME": str(options.home)} if options.home else None,
            ignore_default_args=KINDER_THAN_PHONES if options.throttled else None,
            viewport={"width": options.width, "height": options.height},
            color_scheme="dark" if options.dark else "light",
            reduced_motion="reduce" if options.reduced_motion else "no-preference",
        )
        self.context.add_init_script(options.all_preload)
        self.page = self.context.pages[0]

    def _forget(self) -> None:
        with contextlib.suppress(PlaywrightError):
            self.context.close()

    def _quit(self) -> None:
        self._forget()

    def open(self, url: str) -> None:
        try:
            self._go(url)
        except PlaywrightError as error:
            # The browser's own page about the failure would else break into what is opened next.
            with contextlib.suppress(PlaywrightError):
                self.page.wait_for_url("chrome-error://**", timeout=PAGE_OF_FAILURE_MILLISECONDS)
            raise AssertionError(f"{self.name} cannot open {url}: {error.message}") from None

    def _go(self, url: str) -> None:
        """Go there; once more when the page about an earlier failure broke in by trying again."""
        try:
            self.page.goto(url)
        except PlaywrightError as error:
            if "chrome-error:" not in error.message:
                raise
            self.page.goto(url)

    def reload(self) -> None:
        self.page.reload()

    def evaluate(self, function: str, *arguments: Any) -> Any:
        with self._telling():
            return self.page.evaluate(f"(given) => ({function})(...given)", list(arguments))

    def press(self, key: str) -> None:
        self.page.keyboard.press(key)

    def resize(self, width: int, height: int) -> None:
        self.page.set_viewport_size({"width": width, "height": height})

    def new_tab(self) -> int:
        self.page = self.context.new_page()
        return len(self.context.pages) - 1

    def turn_to_tab(self, number: int) -> None:
        self.page = self.context.pages[number]
        self.page.bring_to_front()

    def wish(self, *, dark: bool | None = None, reduced_motion: bool | None = None) -> None:
        """Change the person's wishes while the page stays open; None leaves one as it is."""
        schemes = {None: None, True: "dark", False: "light"}
        motions = {None: None, True: "reduce", False: "no-preference"}
        self.page.emulate_media(color_scheme=schemes[dark], reduced_motion=motions[reduced_motion])  # type: ignore[arg-type]

    def _picture(self) -> bytes:
        return self.page.screenshot()

    def _elements(self, target: Target) -> list[ElementHandle]:
        with self._telling():
            found = self.page.evaluate_handle(f"(target) => {QUERY}.find(target)", target.as_json())
            handles = [handle.as_element() for handle in found.get_properties().values()]
        return [handle for handle in handles if handle is not None]

    @contextlib.contextmanager
    def _telling(self) -> Iterator[None]:
        try:
            yield
        except PlaywrightError as error:
            kind = PageLeftError if "Execution context was destroyed" in error.message else AssertionError
            raise kind(f"{self.name}: {error.message}") from None

    def _click(self, element: ElementHandle) -> None:
        try:
            element.click(timeout=CLICK_MILLISECONDS, no_wait_after=True)
        except PlaywrightError as error:
            raise NotYetError(error.message) from None

    def _fill(self, element: ElementHandle, text: str) -> None:
        try:
            element.fill("", timeout=CLICK_MILLISECONDS)
            element.type(text)
        except PlaywrightError as error:
            raise NotYetError(error.message) from None
