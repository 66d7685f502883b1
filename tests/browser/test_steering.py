"""Control, voice and wall in Firefox and WebKit, in one journey; for Chromium each has tests of its own."""

from __future__ import annotations

import re

import pytest

from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.storage import FACTS_STORED, HOLDS_NOTHING
from tests.browser.targets import Target, button, css, field, heading, words
from tests.browser.test_control import seconds_left
from tests.browser.test_settings import KEPT
from tests.browser.test_voice_and_touch import VOICE
from tests.browser.writing import write_plan

PLAN = """\
title: Control
main
1' r24 half
  call at 2: Long arms
250m r28 2k
20" r20 light
"""
CALLED = "(times) => window.said.filter(([words]) => words === 'Long arms').length === times"
STANDS = words("Held. The clock stands still.")


@pytest.mark.parametrize("engine", ["firefox", "webkit"])
def test_a_session_and_a_wall_are_steered(launch: Launch, server: Server, engine: str) -> None:
    browser = launch(engine, preload=VOICE)
    browser.open(server.url + "/settings")
    browser.type(field("Before a start, seconds"), "0")
    browser.click(Target(role="radio", name="Catch alone"))
    browser.wait_for(KEPT, "beat", "catch")
    write_plan(browser, server, PLAN)
    steer_a_session(browser)
    assert browser.problems() == []
    browser.wait_for(HOLDS_NOTHING, "sessions")
    browser.resize(1280, 800)
    browser.open(server.url + "/wall?plan=rate-ladder")
    lead_a_wall(browser)
    assert browser.problems() == []


def steer_a_session(browser: Browser) -> None:
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.click(button("Start rowing"))
    browser.wait_for(CALLED, 1)
    browser.click(button("Back"))
    browser.wait_for(CALLED, 2)
    browser.click(button("Hold"))
    browser.see(STANDS)
    held = seconds_left(browser)
    browser.click(button("+1 min"))
    browser.see(words("1:" + f"{held:02d}"))
    browser.press("Space")
    browser.see(button("Hold"))
    browser.click(button("Skip"))
    browser.click(button("Done 5 s ago"))
    browser.see(words("the end"))
    browser.press("Escape")
    browser.click(button(re.compile("^End it ")))
    browser.see(heading("Ended here"))


def lead_a_wall(browser: Browser) -> None:
    browser.type(css("input.name").nth(0), "Wren")
    browser.type(css("input.time").nth(0), "7:42")
    browser.click(button("Start now"))
    browser.see(css("tbody tr"))
    browser.press("Space")
    browser.see(STANDS)
    browser.wait_for(FACTS_STORED, "held", 2)
    browser.reload()
    browser.see(STANDS)
    browser.press("Space")
    browser.press("ArrowRight")
    browser.see(words(re.compile("block 2 of")))
    browser.press("Escape")
    browser.click(button("End it for everybody"))
    browser.see(heading("Ended here"))
