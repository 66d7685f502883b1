"""A browser on a device whose clocks, sleep, sight and storage a test commands, in any engine.

    device = Device(launch("chromium", preload=DEVICE), server)
    device.pass_time(30)
    device.sleep(41)
    device.kill(away=20)

Time stands still but for these calls, so no test rests on how quick the machine is. No sound: see device.js.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.engines import Browser

COOKIE = "device_wall"
DEVICE = (Path(__file__).parent / "device.js").read_text()


class Device:
    """The browser it wraps, with time. All times are in seconds."""

    def __init__(self, browser: Browser, server: Server) -> None:
        self.browser = browser
        self.server = server

    def pass_time(self, seconds: float) -> None:
        """Let time go by while the page lives, in sight or hidden."""
        self._ask("pass", seconds * 1000)

    def freeze(self, seconds: float) -> None:
        """Stop the page while the device runs on."""
        self._ask("freeze", seconds * 1000)

    def sleep(self, seconds: float) -> None:
        """Send the device to sleep: only its wall clock runs on."""
        self._ask("sleep", seconds * 1000)

    def move_clock(self, seconds: float) -> None:
        """Set the device's wall clock forward, or back."""
        self._ask("moveClock", seconds * 1000)

    def hide(self) -> None:
        """Put the page out of sight."""
        self._ask("show", False)

    def show(self) -> None:
        """Bring the page into sight again."""
        self._ask("show", True)

    def storage(self, mood: str) -> None:
        """The mood of the page's storage: "well", "full", "gone"; or "silent", in the next page too."""
        self._ask("storage", mood)

    def drop_connections(self) -> None:
        """Close the page's connections to its storage without a word."""
        self._ask("drop")

    def settle(self) -> None:
        """Wait until everything written is stored, or refused."""
        self._ask("settle")

    def now(self) -> float:
        """The wall clock, in seconds since 1970."""
        return float(self.browser.evaluate("() => device.clocks().wall")) / 1000

    def open(self, address: str, away: float = 0) -> None:
        """Leave the page, and open another of the app's addresses so many seconds later."""
        self._carry(self.now() + away)
        self.browser.open(self.server.url + address)

    def reload(self, away: float = 0) -> None:
        """Load the page anew, which takes so long."""
        self._carry(self.now() + away)
        self.browser.reload()

    def kill(self, address: str, away: float) -> None:
        """Kill the browser (Chromium) at one blow, and open an address in it so many seconds later."""
        assert isinstance(self.browser, Chromium), "only there can a cookie be set before the first page"
        wall = round((self.now() + away) * 1000)
        self.browser.kill()
        self.browser.reopen()
        self.browser.context.add_cookies([{"name": COOKIE, "value": str(wall), "url": self.server.url}])
        self.browser.open(self.server.url + address)

    def new_tab(self, address: str) -> None:
        """Open an address in a tab of its own, which hides this one."""
        self.hide()
        self._carry(self.now())
        self.browser.new_tab()
        self.browser.open(self.server.url + address)

    def turn_to_tab(self, number: int) -> None:
        """Bring another tab to the front; while it was behind, its page was stopped."""
        self.hide()
        now = self.now()
        self.browser.turn_to_tab(number)
        self._ask("skip", round((now - self.now()) * 1000))
        self.show()

    def close_other_tabs(self) -> None:
        """Close every tab but this one (Chromium)."""
        assert isinstance(self.browser, Chromium), "only there can tabs be closed"
        for page in self.browser.context.pages:
            if page != self.browser.page:
                page.close()

    def _carry(self, wall_s: float) -> None:
        self.browser.evaluate(
            "(told) => { document.cookie = told; }", f"{COOKIE}={round(wall_s * 1000)}; path=/"
        )

    def _ask(self, what: str, *given: Any) -> None:
        self.browser.evaluate(f"async (...given) => {{ await device.{what}(...given); }}", *given)
