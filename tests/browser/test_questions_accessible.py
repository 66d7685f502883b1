"""The gap, and every screen that asks something: the accessibility checker finds nothing, in either theme."""

from __future__ import annotations

import pytest

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.storage import change_stored
from tests.browser.targets import button, heading, words
from tests.browser.test_rowing_offline import save_the_plan, start_rowing


def away_for(browser: Browser, server: Server, seconds: int) -> None:
    """As if the last sign of life had come so many seconds earlier."""
    earlier = f"(sign) => {{ sign.wall_ms -= {seconds} * 1000; sign.wall_zero_ms -= {seconds} * 1000; }}"
    change_stored(browser, server, "heartbeats", earlier)
    browser.open(server.url + "/row")


@pytest.mark.parametrize("dark", [False, True])
def test_the_gap_has_no_fault(launch: Launch, server: Server, dark: bool) -> None:
    browser = launch("chromium", dark=dark)
    browser.open(server.url + "/plan/stroke-pyramid")
    start_rowing(browser)
    while not browser.count(button("Start now")):
        browser.click(button("Skip"))
    browser.see(words("to the start; the piece waits for you"))
    assert accessibility_faults(browser) == []


@pytest.mark.parametrize("dark", [False, True])
def test_no_question_about_an_open_session_has_a_fault(launch: Launch, server: Server, dark: bool) -> None:
    browser = launch("chromium", dark=dark)
    save_the_plan(browser, server)
    start_rowing(browser)

    browser.new_tab()
    browser.open(server.url + "/row")
    browser.see(heading("This session is running in another tab"))
    assert accessibility_faults(browser) == []
    browser.turn_to_tab(0)

    away_for(browser, server, 300)
    browser.see(words("How do you want to go on?"))
    assert accessibility_faults(browser) == []

    browser.open(server.url + "/plan/stroke-pyramid")
    browser.click(button("Row it"))
    browser.see(button("End it, and row this one"))
    assert accessibility_faults(browser) == []

    away_for(browser, server, 3 * 24 * 3600)
    browser.see(heading("A session was left open"))
    assert accessibility_faults(browser) == []
    browser.click(button("Throw it away"))

    browser.open(server.url + "/plan/no-such-plan")
    browser.see(heading("This plan cannot be opened"))
    assert accessibility_faults(browser) == []
