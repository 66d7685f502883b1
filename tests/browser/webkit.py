"""WebKitGTK on a virtual screen, through its WebDriver; webkit_window.py is the browser around it."""

from __future__ import annotations

import json
import os
from pathlib import Path

from selenium import webdriver
from selenium.webdriver.webkitgtk.options import Options as WebKitOptions
from selenium.webdriver.webkitgtk.service import Service

from tests.browser.over_webdriver import OverWebDriver
from tests.browser.rig import silent_sound_card, virtual_screen

DRIVER = "/usr/bin/WebKitWebDriver"
WINDOW = Path(__file__).parent / "webkit_window.py"


class WebKit(OverWebDriver):
    """Debian's WebKitGTK in a bare window of our own, which unlike the stock one keeps its profile."""

    name = "webkit"

    def _start_driver(self) -> None:
        environment = {**os.environ, "DISPLAY": virtual_screen(), "PULSE_SERVER": silent_sound_card()}
        self._service = Service(DRIVER, env=environment)
        (self.profile / "options.json").write_text(self._window_options())
        capabilities = WebKitOptions()
        capabilities.binary_location = str(WINDOW)
        capabilities.add_argument(str(self.profile))
        self.driver = webdriver.WebKitGTK(options=capabilities, service=self._service)

    def _window_options(self) -> str:
        options = self.options
        return json.dumps(
            {
                "width": options.width,
                "height": options.height,
                "dark": options.dark,
                "reduced_motion": options.reduced_motion,
                "preload": options.all_preload,
            }
        )

    def open(self, url: str) -> None:
        super().open(url)
        # Its driver tells of no failure: our window shows a page that does.
        if failure := self.evaluate("() => document.documentElement.dataset.failure"):
            raise AssertionError(f"{self.name} cannot open {url}: {failure}")

    def resize(self, width: int, height: int) -> None:
        self.driver.set_window_size(width, height)
        self.wait_for("(width, height) => innerWidth === width && innerHeight === height", width, height)
