"""Control while rowing: one more minute, large buttons; whatever was pressed stands after a reload."""

from __future__ import annotations

import pytest

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.targets import QUERY, Target, button, css, field, heading, link, words
from tests.browser.test_row_screen_fits import SIZES, faults_at_every_size

PLAN = """\
title: Minutes and metres
main
1' r24 half
  focus: Sit tall and let the shoulders hang at the catch
500m r28 @1:55
gap 5'
main
2' r20 light
"""
LEAST_TARGET = 60
SMALL_BUTTONS = f"""() => [...{QUERY}.find({{ role: "button" }})]
  .map((each) => [{QUERY}.nameOf(each), each.getBoundingClientRect()])
  .filter(([, box]) => Math.min(box.width, box.height) < {LEAST_TARGET - 0.5})
  .map(([name, box]) => `${{name}} ${{box.width}} x ${{box.height}}`)"""
OUT_OF_SIGHT = f"""() => [...{QUERY}.find({{ role: "button" }})]
  .filter((each) => {{
    const box = each.getBoundingClientRect();
    return box.left < -1 || box.top < -1 || box.right > innerWidth + 1 || box.bottom > innerHeight + 1;
  }}).map((each) => {QUERY}.nameOf(each))"""


def at_every_size(browser: Browser, script: str) -> dict[tuple[int, int], list[str]]:
    found = {}
    for width, height in SIZES:
        browser.resize(width, height)
        browser.wait_for(f"() => innerWidth === {width}")
        found[width, height] = browser.evaluate(script)
    return {size: faults for size, faults in found.items() if faults}


def seconds_left(browser: Browser) -> int:
    minutes, seconds = browser.text(css(".big")).split(":")
    return int(minutes) * 60 + int(seconds)


@pytest.fixture
def rowing(chromium: Browser, server: Server) -> Browser:
    chromium.open(server.url)
    chromium.type(field("Write or paste your own"), PLAN)
    chromium.click(button("Make this plan"))
    chromium.see(heading("Minutes and metres"))
    plan = str(chromium.evaluate("() => location.href"))
    chromium.open(server.url + "/settings")
    chromium.type(field("Before a start, seconds"), "0")
    chromium.click(Target(role="radio", name="Large"))
    chromium.see(css("input:checked"))
    chromium.click(link("What are you rowing today?"))
    chromium.open(plan)
    chromium.click(button("Row it"))
    chromium.click(button("I have read this, go on"))
    chromium.click(button("Start rowing"))
    chromium.see(css(".large .big"))
    return chromium


def test_a_minute_more_and_large_buttons(rowing: Browser) -> None:
    before = seconds_left(rowing)
    rowing.click(button("+1 min"))
    rowing.see(words("One more minute: this block is 2:00 now."))
    assert before + 50 <= seconds_left(rowing) <= before + 60
    rowing.reload()
    rowing.see(css(".large .big"))
    assert seconds_left(rowing) > 60
    assert faults_at_every_size(rowing) == {}
    assert at_every_size(rowing, SMALL_BUTTONS) == {}

    rowing.click(button("Skip"))
    rowing.see(button("Done"))
    assert faults_at_every_size(rowing) == {}
    assert at_every_size(rowing, SMALL_BUTTONS) == {}

    rowing.click(button("Done"))
    rowing.click(button("+1 min"))
    rowing.see(words("5:59"))
    assert at_every_size(rowing, SMALL_BUTTONS) == {}
    assert at_every_size(rowing, OUT_OF_SIGHT) == {}
    assert accessibility_faults(rowing) == []
    assert rowing.problems() == []
