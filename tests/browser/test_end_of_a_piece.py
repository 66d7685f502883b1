"""The end of a piece in metres: its time by the taps, and the way into the results, without a signal."""

from __future__ import annotations

import re
import time

import pytest

from tests.browser.app_server import Server
from tests.browser.conftest import ENGINES, Launch
from tests.browser.engines import Browser
from tests.browser.later_files import LATER_KEPT
from tests.browser.targets import QUERY, button, css, heading, words
from tests.browser.writing import write_plan

SAVED = words("Saved on this device. It will run with no signal.")
COUNT_IN_SECONDS = 10
TWO_LEGS = """\
title: Two legs
main
50m r30 @1:50
50m r32 @1:50
"""


@pytest.mark.parametrize("engine", ENGINES)
def test_two_legs_without_a_rest_are_one_piece_and_can_be_added_to_the_results(
    engine: str, launch: Launch, server: Server
) -> None:
    browser = launch(engine)
    least, most = row_two_legs(browser, server)
    browser.see(heading("Rowed to the end"))
    browser.see(heading("By your taps"))
    told = re.search(r"100 m in 0:(\d\d), \d:\d\d\.\d /500 m", browser.text())
    assert told
    assert least - 1 <= int(told[1]) <= most + 1
    browser.click(button("Add it to my results"))
    browser.see(words("Added to your results."))
    browser.open(server.url + "/athlete")
    browser.see(words(re.compile(r"^100 m in 0:\d\d\.\d$|^100 m in \d\d\.\d s$")))


def row_two_legs(browser: Browser, server: Server) -> tuple[float, float]:
    """Rows the plan to Done with the server gone: the least and the most seconds it can have taken."""
    write_plan(browser, server, TWO_LEGS)
    browser.see(heading("Two legs"))
    browser.see(SAVED)
    browser.wait_for(LATER_KEPT)
    server.kill()
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    pressed = time.monotonic()
    browser.click(button("Start rowing"))
    browser.see(css(".rate .mid"))
    seen = time.monotonic()
    browser.wait_for(f"() => {QUERY}.find({{ css: '.where' }})[0]?.textContent.includes('2 of 2')")
    browser.wait_for(f"() => {QUERY}.visibleText({QUERY}.find({{ css: '.big' }})[0]) <= '0:03'")
    done = time.monotonic()
    browser.click(button("Done"))
    return done - seen, time.monotonic() - pressed - COUNT_IN_SECONDS
