"""What the row screen costs a phone that shows it for an hour and a half: processor, memory, pauses."""

from __future__ import annotations

import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import CDPSession

from tests.bench.measuring import Row, at_most
from tests.bench.page_tasks import task_times_ms
from tests.bench.servers import running
from tests.browser.app_server import Server
from tests.browser.chromium import ARGUMENTS, PROGRAM, Chromium
from tests.browser.engines import Options
from tests.browser.processes import DIES_WITH_US, kill_started_with, processor_seconds
from tests.browser.targets import button, heading
from tests.browser.writing import write_plan

PROCESSOR_AIM = 3.0
MEGABYTES_AIM = 1.0
MEASURED_SECONDS = 60
WATCHED_SECONDS = 20
WIDTH, HEIGHT = 390, 844
SETTLED_SECONDS = 15
EMPTY = "data:text/html,<script>const draw = () => requestAnimationFrame(draw); draw();</script>"
LONG_MS = 50

TIMES = 30
NINETY_MINUTES = "title: An hour and a half\nmain\n" + '5\' r20 light\n50" r26 half\nrest 10"\n' * 15
SETTLED_MINUTES, LAST_MINUTES = 8, 85
# All clocks of the page so many times as fast: its own, the device's, and the one that sound is put on.
QUICK = f"""(() => {{
  const times = {TIMES}, start = performance.now(), wallStart = Date.now(), Wall = Date;
  const real = performance.now.bind(performance);
  const gone = () => (real() - start) * times;
  performance.now = () => start + gone();
  window.Date = class extends Wall {{
    constructor(...given) {{ if (given.length) super(...given); else super(Date.now()); }}
    static now() {{ return Math.round(wallStart + gone()); }}
  }};
  const slower = (prototype, name, place) => {{
    const plain = prototype[name];
    prototype[name] = function (...given) {{
      if (given[place] !== undefined) given[place] /= times;
      return plain.apply(this, given);
    }};
  }};
  for (const name of ["start", "stop"]) slower(AudioScheduledSourceNode.prototype, name, 0);
  for (const name of ["setValueAtTime", "linearRampToValueAtTime", "exponentialRampToValueAtTime"])
    slower(AudioParam.prototype, name, 1);
  const {{ get }} = Object.getOwnPropertyDescriptor(BaseAudioContext.prototype, "currentTime");
  const quick = {{ get() {{ return get.call(this) * times; }} }};
  Object.defineProperty(AudioContext.prototype, "currentTime", quick);
  AudioContext.prototype.getOutputTimestamp = undefined;
}})();"""
PLAIN_PLAN = "title: A steady quarter of an hour\nmain\n15' r24 half\n"


def rows() -> Iterator[Row]:
    """Processor time beside an empty page, long tasks, and what is left in memory."""
    with TemporaryDirectory() as folder, running(Server(Path(folder) / "data")) as server:
        yield from _beside_an_empty_page(Path(folder), server)
        yield _memory(Path(folder), server)


def _beside_an_empty_page(folder: Path, server: Server) -> Iterator[Row]:
    profiles = [folder / "row", folder / "empty"]
    with _browser(profiles[0]) as browser, _empty_page(profiles[1]):
        _start(browser, server, PLAIN_PLAN)
        time.sleep(SETTLED_SECONDS)
        before = [processor_seconds(profile) for profile in profiles]
        time.sleep(MEASURED_SECONDS)
        row, nothing = (processor_seconds(p) - b for p, b in zip(profiles, before, strict=True))
        tasks = task_times_ms(browser, lambda: browser.page.wait_for_timeout(WATCHED_SECONDS * 1000))
    told = f"{row:.2f} against {nothing:.2f} s in {MEASURED_SECONDS} s, all processes of the browser"
    yield at_most("row screen, against an empty page", row / nothing, PROCESSOR_AIM, "x", told)
    long = sum(task > LONG_MS for task in tasks)
    told = f"{len(tasks)} in {WATCHED_SECONDS} s, the longest {max(tasks):.1f} ms of processor time"
    yield Row(f"tasks over {LONG_MS} ms", f"{long}  ({told})", "none", not long)


@contextmanager
def _empty_page(profile: Path) -> Iterator[None]:
    """Another browser at the same time, so that a slow spell of the machine strikes both."""
    size = f"--window-size={WIDTH},{HEIGHT}"
    options = ["--headless", "--remote-debugging-port=0", f"--user-data-dir={profile}", size]
    process = subprocess.Popen(
        [*DIES_WITH_US, PROGRAM, *ARGUMENTS, *options, EMPTY],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    try:
        yield
    finally:
        kill_started_with(profile)
        process.wait()


def _memory(folder: Path, server: Server) -> Row:
    with _browser(folder / "quick", QUICK) as browser:
        _start(browser, server, NINETY_MINUTES)
        tools = browser.context.new_cdp_session(browser.page)
        time.sleep(SETTLED_MINUTES * 60 / TIMES)
        before = _heap_bytes(tools)
        time.sleep((LAST_MINUTES - SETTLED_MINUTES) * 60 / TIMES)
        grown = _heap_bytes(tools) - before
        browser.see(heading("Rowed to the end"), seconds=60)
    told = (
        f"of {before / 1e6:.1f} MB, from minute {SETTLED_MINUTES} to minute {LAST_MINUTES}, {TIMES}x as fast"
    )
    return at_most("memory that 90 min of rowing leave", grown / 1e6, MEGABYTES_AIM, " MB", told)


def _heap_bytes(tools: CDPSession) -> int:
    for _ in range(3):
        tools.send("HeapProfiler.collectGarbage")
    return int(tools.send("Runtime.getHeapUsage")["usedSize"])


@contextmanager
def _browser(profile: Path, preload: str = "") -> Iterator[Chromium]:
    browser = Chromium(profile, Options(width=WIDTH, height=HEIGHT, preload=preload))
    try:
        yield browser
    finally:
        browser.close()


def _start(browser: Chromium, server: Server, plan: str) -> None:
    """Write the plan and row it."""
    write_plan(browser, server, plan)
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.click(button("Start rowing"))
    browser.see(button("Hold"))
