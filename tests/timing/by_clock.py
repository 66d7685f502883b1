"""A piece started by the clock: what the device's clock shows when each of its sounds is heard."""

from __future__ import annotations

import os
import time
from datetime import datetime, timedelta

import numpy as np

from tests.bench.measuring import Row
from tests.browser.targets import button, words
from tests.timing.expected import COUNT_IN, sounds_of
from tests.timing.matching import match
from tests.timing.plans import AFTER_A_GAP, timeline_of
from tests.timing.recording import RINGS_OUT_SECONDS, on_a_recorded_card, open_plan
from tests.timing.seen import device_times, frames_of

WITHIN_MS = 50.0
SOON = timedelta(seconds=20)


def by_clock_row(subject: str) -> Row:
    """Start a piece at the next whole minute, and compare all of it with the device's clock."""
    load = os.getloadavg()[0]
    timeline = timeline_of(AFTER_A_GAP)
    piece = next(segment for segment in timeline.segments if segment.part == "main")
    begins = float(COUNT_IN + piece.start)
    with on_a_recorded_card() as (browser, _, server):
        open_plan(browser, server, AFTER_A_GAP)
        browser.ready_the_sound()
        browser.click(button("Start rowing"))
        browser.see(button("Start now"), seconds=60)
        starts = (datetime.now() + SOON).replace(second=0, microsecond=0) + timedelta(minutes=1)
        browser.page.locator("input[type=time]").fill(f"{starts:%H:%M}")
        browser.click(button("Set"))
        browser.see(words(f"to the start at {starts:%H:%M}; it starts by itself"))
        length = float(timeline.totals.seconds) - float(piece.start) + RINGS_OUT_SECONDS
        time.sleep(max(0.0, starts.timestamp() + length - time.time()))
        put = np.array(browser.evaluate("() => window.soundsSeenByTests.map(({ at }) => at)"))
        frames = frames_of(browser.evaluate("() => window.framesSeenByTests"))
    sounds = np.array(sounds_of(timeline), dtype=np.float64)
    expected = sounds[sounds >= begins]
    matched = match(expected, put)
    late_ms = (device_times(matched.heard, frames) - starts.timestamp() - (matched.expected - begins)) * 1000
    told = (
        f"from {late_ms.min():.1f} to {late_ms.max():.1f} ms after the device's clock, "
        f"{len(late_ms)} of {len(expected)} sounds; load {load:.1f} on {os.cpu_count()}"
    )
    held = bool(np.abs(late_ms).max() <= WITHIN_MS) and not len(matched.missed)
    return Row(subject, told, f"within {WITHIN_MS:g} ms", held)
