"""Chromium as a person starts it: with sound, slow timers in hidden pages, and pages that are really hidden.

The driver's own way of starting it mutes it and makes every page believe that it is in front.
"""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

from playwright.sync_api import Browser as Joined
from playwright.sync_api import CDPSession

from tests.browser.chromium import ARGUMENTS, PROGRAM, Chromium, driver
from tests.browser.engines import Options
from tests.browser.processes import DIES_WITH_US, end_started_with, wait_until
from tests.timing.sound_card import RecordedCard, hurry

# With a larger buffer the null sink's clock runs some 70 millionths fast.
SOUND = ("--audio-buffer-size=480",)
START_SECONDS = 30


class ChromiumByHand(Chromium):
    """Chromium on a recorded sound card."""

    _joined: Joined
    _process: subprocess.Popen[bytes]

    def __init__(self, profile: Path, options: Options, card: RecordedCard) -> None:
        self._card = card
        super().__init__(profile, options)

    def _start(self) -> None:
        told = self.profile / "DevToolsActivePort"
        told.unlink(missing_ok=True)
        size = f"--window-size={self.options.width},{self.options.height}"
        place = [
            "--headless",
            "--remote-debugging-port=0",
            f"--user-data-dir={self.profile}",
            size,
            "about:blank",
        ]
        self._process = subprocess.Popen(
            [*DIES_WITH_US, PROGRAM, *ARGUMENTS, *SOUND, *self.options.arguments, *place],
            env={**os.environ, "PULSE_SERVER": self._card.server},
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        wait_until(lambda: told.exists() and told.read_text().count("\n") > 0, "Chromium", START_SECONDS)
        port = told.read_text().split()[0]
        self._joined = driver().chromium.connect_over_cdp(f"http://127.0.0.1:{port}", no_defaults=True)
        self.context = self._joined.contexts[0]
        self.context.add_init_script(self.options.all_preload)
        self.page = self.context.pages[0]

    def _forget(self) -> None:
        self._process.wait()

    def _quit(self) -> None:
        self._joined.close()
        end_started_with(self.profile)
        self._process.wait()

    def devtools(self) -> CDPSession:
        """A session with the page's own developer tools."""
        return self.context.new_cdp_session(self.page)

    def ready_the_sound(self) -> bool:
        """Start what carries the sound, at real-time priority; False where that is not allowed.

        What begins at ordinary priority stumbles, and then the sound server guesses its delay wrongly for
        half a minute. To be called once the page has been clicked.
        """
        self.wait_for("async () => { await (window.readied = new AudioContext()).resume(); return true; }")
        services = [process for process, words in self._processes() if "audio.mojom.AudioService" in words]
        hurried = min(map(hurry, services), default=False)
        self.evaluate("() => window.readied.close()")
        return hurried

    def _processes(self) -> list[tuple[int, str]]:
        found = []
        for folder in Path("/proc").glob("[0-9]*"):
            try:
                words = (folder / "cmdline").read_bytes().decode(errors="replace")
            except OSError:
                continue
            if f"--user-data-dir={self.profile}" in words and "--type=" in words:
                found.append((int(folder.name), words))
        return found
