"""How long a page stands still: a task counts by the processor time of the page's own thread.

What else the machine does is not held against the page.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable
from typing import Any

from tests.browser.chromium import Chromium

_CATEGORIES = ["toplevel", "devtools.timeline"]


def task_times_ms(browser: Chromium, act: Callable[[], None]) -> list[float]:
    """Processor time of each task of the page's own thread meanwhile."""
    session = browser.context.new_cdp_session(browser.page)
    events: list[dict[str, Any]] = []
    ended: list[object] = []
    session.on("Tracing.dataCollected", lambda told: events.extend(told["value"]))
    session.on("Tracing.tracingComplete", lambda told: ended.append(told))
    session.send("Tracing.start", {"traceConfig": {"includedCategories": _CATEGORIES}})
    act()
    session.send("Tracing.end")
    while not ended:
        browser.page.wait_for_timeout(50)
    session.detach()
    return _of_the_busiest_page(events)


def _of_the_busiest_page(events: list[dict[str, Any]]) -> list[float]:
    """Of the threads that run pages, the one that did most: others hold a page in reserve."""
    named = [event for event in events if event["name"] == "thread_name"]
    pages = {(e["pid"], e["tid"]) for e in named if e["args"]["name"] == "CrRendererMain"}
    times: dict[tuple[int, int], list[float]] = defaultdict(list)
    for event in events:
        thread = (event["pid"], event["tid"])
        if event["name"].endswith("RunTask") and thread in pages:
            times[thread].append(float(event.get("tdur", 0)) / 1000)
    return max(times.values(), key=sum)
