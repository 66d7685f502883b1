"""A session rowed in the browser while all it plays is recorded."""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np

from planner.timeline import Timeline
from tests.browser.app_server import Server
from tests.browser.engines import Options
from tests.browser.targets import button, heading
from tests.browser.writing import write_plan
from tests.timing.by_hand import ChromiumByHand
from tests.timing.expected import COUNT_IN, sounds_of
from tests.timing.hearing import Stumble, onsets, silences, stumbles
from tests.timing.matching import Matched, Moments, match
from tests.timing.plans import timeline_of
from tests.timing.seen import Frame, frames_of, picture_ms
from tests.timing.sound_card import RecordedCard

WITNESS = (Path(__file__).parent / "witness.js").read_text()
RINGS_OUT_SECONDS = 3.0
TOGETHER_SECONDS = 0.001

# What happens to the page from the tap that starts the session on; it may take as long as the session.
Disturbance = Callable[[ChromiumByHand], None]


@dataclass(frozen=True, slots=True)
class Recording:
    """What was heard and seen of a session; moments of `heard`, `stumbles`, `silences` are those of the tape.

    `at_once` says whether everything on the sound's way ran at real-time priority.
    """

    timeline: Timeline
    expected: Moments
    heard: Moments
    put: Moments
    frames: list[Frame]
    stumbles: list[Stumble]
    silences: list[tuple[float, float]]
    problems: list[str]
    load: float
    at_once: bool

    def matched(self, fitted_until: float = np.inf) -> Matched:
        """The sounds heard against the plan; offset and rate from those expected before a moment."""
        return match(self.expected, self.heard, fitted_until)

    def put_twice(self) -> int:
        """How many sounds were put on the audio clock twice at one moment: they are heard as one, louder."""
        return int(np.count_nonzero(np.diff(np.sort(self.put)) < TOGETHER_SECONDS))

    def picture_ms(self) -> Moments:
        """How far each frame was ahead of the sound."""
        return picture_ms(self.timeline, self.expected, self.put, self.frames)


def record(plan: str, disturb: Disturbance = lambda browser: None) -> Recording:
    """Row a plan to its end in a browser of its own, and record it."""
    load = os.getloadavg()[0]
    timeline = timeline_of(plan)
    with on_a_recorded_card() as (browser, card, server):
        open_plan(browser, server, plan)
        at_once = browser.ready_the_sound() and card.at_once
        card.record()
        browser.click(button("Start rowing"))
        ends = time.monotonic() + float(COUNT_IN + timeline.totals.seconds) + RINGS_OUT_SECONDS
        browser.see(button("Skip"))
        disturb(browser)
        time.sleep(max(0.0, ends - time.monotonic()))
        tape = card.stop()
        put = browser.evaluate("() => window.soundsSeenByTests.map(({ at }) => at)")
        noted = browser.evaluate("() => window.framesSeenByTests")
        problems = browser.problems()
    return Recording(
        timeline,
        np.array(sounds_of(timeline), dtype=np.float64),
        onsets(tape),
        np.array(put),
        frames_of(noted),
        stumbles(tape),
        silences(tape),
        problems,
        load,
        at_once,
    )


@contextmanager
def on_a_recorded_card() -> Iterator[tuple[ChromiumByHand, RecordedCard, Server]]:
    """A browser, the sound card it plays on, and the real server; all are ended on the way out."""
    with TemporaryDirectory(prefix="slipway-timing-", ignore_cleanup_errors=True) as folder:
        card, server = RecordedCard(), Server(Path(folder) / "data")
        try:
            server.start()
            browser = ChromiumByHand(Path(folder) / "profile", Options(preload=WITNESS), card)
            try:
                yield browser, card, server
            finally:
                browser.close()
        finally:
            server.kill()
            card.close()


def open_plan(browser: ChromiumByHand, server: Server, plan: str) -> None:
    """Write the plan, and go to the button that starts it."""
    write_plan(browser, server, plan)
    browser.see(heading(timeline_of(plan).plan.title))
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.see(button("Start rowing"))
