"""A wall with sixteen lanes on a quick clock, and what its page holds as the hours of the clock go by.

There is no sound: no sound card keeps up with such a clock. Timers of the page run at their own pace, so that
signs of life are written less often than in true hours; texts, strokes and pages of lanes change as often.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from tests.bench.servers import running
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.engines import Options
from tests.browser.quick_clock import quick_clock
from tests.browser.targets import QUERY, button, css, heading, link
from tests.browser.writing import write_plan
from tests.soak.growth import Sample

TIMES = 48
"""So many times as fast: a frame is then under a second of the session, as its countdown needs."""
HOURS_OF_PLAN = 8
LANES = 16
LOOKS = 4
LOOK_SECONDS = 0.15
PLAN = """\
title: Eight hours
main
96 x (4' r20 light, 30" r26 half, 30" rest)
"""
LEFT = f"() => {QUERY}.visibleText({QUERY}.find({{ css: 'footer .next span' }})[1])"
SLACK_SECONDS = 60 * TIMES
"""Of the page's clock, for a machine that is busy."""


def wall_samples(hours: float, count: int, tell: Callable[[Sample], None] = lambda _: None) -> list[Sample]:
    """Samples at even distances over so many hours of the page's clock, the first when all has settled."""
    with TemporaryDirectory() as folder, running(Server(Path(folder) / "data")) as server:
        options = Options(width=1280, height=800, preload=quick_clock(TIMES))
        browser = Chromium(Path(folder) / "profile", options)
        try:
            return list(_samples(browser, server, hours, count, tell))
        finally:
            browser.close()


def _samples(
    browser: Chromium, server: Server, hours: float, count: int, tell: Callable[[Sample], None]
) -> Iterator[Sample]:
    _start(browser, server)
    session = browser.context.new_cdp_session(browser.page)
    started = _page_hours(browser)
    settled = hours / (2 * count)
    for number in range(count):
        _wait_until(browser, started + settled + (hours - settled) * number / (count - 1))
        sample = _sample(session, _page_hours(browser) - started)
        tell(sample)
        yield sample
    _assert_it_has_kept_time(browser, _page_hours(browser) - started)
    assert browser.problems() == []


def _start(browser: Chromium, server: Server) -> None:
    write_plan(browser, server, PLAN)
    browser.see(heading("Eight hours"))
    browser.click(link("Show on a wall"))
    for lane in range(LANES):
        browser.type(css("input.name").nth(lane), f"Rower {lane + 1}")
        browser.type(css("input.time").nth(lane), f"7:{20 + lane}")
    browser.click(button("Start now"))
    browser.see(css("tbody tr"))


def _page_hours(browser: Chromium) -> float:
    return float(browser.evaluate("() => Date.now()")) / 3_600_000


def _wait_until(browser: Chromium, hours: float) -> None:
    while (left := hours - _page_hours(browser)) > 0:
        time.sleep(min(5, left * 3600 / TIMES))


def _sample(session: Any, hours: float) -> Sample:
    """The least of several looks: what storage and pictures have under way at one of them is no growth."""
    return min((_look(session, hours) for _ in range(LOOKS)), key=lambda sample: sample.heap_kb)


def _look(session: Any, hours: float) -> Sample:
    time.sleep(LOOK_SECONDS)
    for _ in range(2):
        session.send("HeapProfiler.collectGarbage")
    heap = session.send("Runtime.getHeapUsage")["usedSize"]
    counts = session.send("Memory.getDOMCounters")
    return Sample(hours, heap / 1024, counts["nodes"], counts["jsEventListeners"])


def _assert_it_has_kept_time(browser: Chromium, hours: float) -> None:
    """A wall that stands still would not grow either."""
    text = str(browser.evaluate(LEFT)).removesuffix(" left in all")
    parts = [int(part) for part in text.split(":")]
    left = sum(part * 60**place for place, part in enumerate(reversed(parts)))
    gone = HOURS_OF_PLAN * 3600 - left
    assert abs(gone - hours * 3600) < SLACK_SECONDS, f"{gone} s gone after {hours:.2f} h"
