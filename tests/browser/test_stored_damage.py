"""What is stored and cannot be used: told in a sentence, never run from, and the way to have it again."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.storage import change_stored
from tests.browser.targets import button, heading, link, words
from tests.browser.test_rowing_offline import SAVED, save_the_plan, start_rowing

CUT_SHORT = "(record) => { record.timeline.segments.pop(); }"
FROM_TOMORROW = "(record) => { record.format = 99; }"


def test_a_damaged_plan_is_told_and_made_anew_with_signal(chromium: Browser, server: Server) -> None:
    address = save_the_plan(chromium, server)
    change_stored(chromium, server, "plans", CUT_SHORT)
    server.kill()
    chromium.open(server.url)
    chromium.see(
        words(re.compile("^What is stored of a plan on this device cannot be used: Two blocks and a sprint"))
    )
    chromium.click(link("Two blocks and a sprint").nth(0))
    chromium.see(heading("This plan cannot be opened"))
    assert "damaged (timeline, totals), and nothing is run from a guess." in chromium.text()
    assert accessibility_faults(chromium) == []
    chromium.open(server.url + "/row?mine=" + address.rpartition("/")[2])
    chromium.see(heading("This plan cannot be opened"))
    chromium.open(address)
    chromium.click(button("Make it anew"))
    chromium.see(words("It cannot be had now: there is no signal. Try again when there is."))
    server.start()
    chromium.click(button("Make it anew"))
    chromium.see(heading("Two blocks and a sprint"))
    chromium.see(SAVED)
    assert chromium.problems() == []


def test_a_damaged_built_in_plan_is_fetched_again_by_itself(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + "/plan/stroke-pyramid")
    chromium.see(SAVED)
    change_stored(chromium, server, "plans", CUT_SHORT)
    chromium.open(server.url + "/plan/stroke-pyramid")
    chromium.see(SAVED)


def test_a_session_that_cannot_be_gone_on_with_is_told_and_can_be_put_aside(
    launch: Launch, server: Server
) -> None:
    browser = launch("chromium", dark=True)
    save_the_plan(browser, server)
    start_rowing(browser)
    change_stored(browser, server, "sessions", FROM_TOMORROW)
    browser.open(server.url)
    browser.see(
        words(re.compile("^A session was left open that cannot be gone on with: Two blocks and a sprint"))
    )
    browser.click(button("See what is wrong"))
    browser.see(heading("This session cannot be gone on with"))
    assert "It was saved by a newer Slipway than the one that is open." in browser.text()
    assert accessibility_faults(browser) == []
    browser.click(link("Open its plan"))
    browser.click(button("Row it"))
    browser.click(button("Put it aside"))
    browser.see(heading("Nothing is being rowed here"))
    browser.open(server.url)
    browser.see(heading("What are you rowing today?"))
    assert "left open" not in browser.text()
    assert browser.problems() == []
