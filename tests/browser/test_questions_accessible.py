"""The gap, and every screen that asks something: the accessibility checker finds nothing, in either theme."""

from __future__ import annotations

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.storage import change_stored
from tests.browser.targets import button, heading, words
from tests.browser.test_rowing_offline import save_the_plan, start_rowing


def away_for(browser: Browser, server: Server, seconds: int) -> None:
    """As if the last sign of life had come so many seconds earlier."""
    earlier = f"(sign) => {{ sign.wall_ms -= {seconds} * 1000; sign.wall_zero_ms -= {seconds} * 1000; }}"
    change_stored(browser, server, "heartbeats", earlier)
    browser.open(server.url + "/row")


def test_the_gap_has_no_fault(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + "/plan/stroke-pyramid")
    start_rowing(chromium)
    while not chromium.count(button("Start now")):
        chromium.click(button("Skip"))
    chromium.see(words("to the start; the piece waits for you"))
    assert accessibility_faults(chromium) == []


def test_no_question_about_an_open_session_has_a_fault(chromium: Browser, server: Server) -> None:
    save_the_plan(chromium, server)
    start_rowing(chromium)

    chromium.new_tab()
    chromium.open(server.url + "/row")
    chromium.see(heading("This session is running in another tab"))
    assert accessibility_faults(chromium) == []
    chromium.turn_to_tab(0)

    away_for(chromium, server, 300)
    chromium.see(words("How do you want to go on?"))
    assert accessibility_faults(chromium) == []

    chromium.open(server.url + "/plan/stroke-pyramid")
    chromium.click(button("Row it"))
    chromium.see(button("End it, and row this one"))
    assert accessibility_faults(chromium) == []

    away_for(chromium, server, 3 * 24 * 3600)
    chromium.see(heading("A session was left open"))
    assert accessibility_faults(chromium) == []
    chromium.click(button("Throw it away"))

    chromium.open(server.url + "/plan/no-such-plan")
    chromium.see(heading("This plan cannot be opened"))
    assert accessibility_faults(chromium) == []
