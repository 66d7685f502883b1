"""Control while rowing: one more minute, large buttons; whatever was pressed stands after a reload."""

from __future__ import annotations

import re

import pytest

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.pressing import let_a_slip_pass
from tests.browser.targets import QUERY, Target, button, css, field, heading, words
from tests.browser.test_row_screen_fits import SIZES, faults_at_every_size
from tests.browser.test_settings import KEPT
from tests.browser.writing import write_plan

PLAN = """\
title: Minutes and metres
main
1' r24 half
  focus: Sit tall
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


# What the page tells the system to do at the keys of headphones: no such key can be pressed here.
HEADPHONES = """(() => {
  if (!navigator.mediaSession) return;
  const set = navigator.mediaSession.setActionHandler.bind(navigator.mediaSession);
  window.headphoneKeys = {};
  navigator.mediaSession.setActionHandler = (key, does) => {
    window.headphoneKeys[key] = does;
    set(key, does);
  };
})();"""


def at_every_size(browser: Browser, script: str) -> dict[tuple[int, int], list[str]]:
    found = {}
    for width, height in SIZES:
        browser.resize(width, height)
        browser.wait_for(f"() => innerWidth === {width}")
        found[width, height] = browser.evaluate(script)
    return {size: faults for size, faults in found.items() if faults}


def tops(browser: Browser, *targets: str) -> list[float]:
    """How far below the top of the page each of these begins, in CSS pixels."""
    script = f"(css) => {QUERY}.find({{ css }})[0].getBoundingClientRect().top"
    return [float(browser.evaluate(script, target)) for target in targets]


def seconds_left(browser: Browser) -> int:
    minutes, seconds = browser.text(css(".big")).split(":")
    return int(minutes) * 60 + int(seconds)


@pytest.fixture
def rowing(launch: Launch, server: Server) -> Browser:
    chromium = launch("chromium", preload=HEADPHONES)
    write_plan(chromium, server, PLAN)
    chromium.see(heading("Minutes and metres"))
    plan = str(chromium.evaluate("() => location.href"))
    chromium.open(server.url + "/settings")
    chromium.type(field("Before a start, seconds"), "0")
    chromium.click(Target(role="radio", name="Large"))
    chromium.click(css("input[name='media']").nth(0))
    chromium.wait_for(KEPT, "media_keys", True)
    chromium.open(plan)
    chromium.click(button("Row it"))
    chromium.click(button("I have read this, go on"))
    chromium.click(button("Start rowing"))
    chromium.see(css(".large .big"))
    return chromium


def test_a_minute_more_and_large_buttons(rowing: Browser) -> None:
    before, places = seconds_left(rowing), tops(rowing, ".big", ".hold")
    rowing.click(button("+1 min"))
    rowing.see(words("One more minute: this block is 2:00 now."))
    assert tops(rowing, ".big", ".hold") == places, "a message of two lines moves nothing"
    assert before + 50 <= seconds_left(rowing) <= before + 60
    rowing.reload()
    rowing.see(css(".large .big"))
    assert seconds_left(rowing) > 60
    rowing.click(button("More"))
    rowing.see(button("Stroke check"))
    rowing.press("Escape")
    assert faults_at_every_size(rowing) == {}
    assert at_every_size(rowing, SMALL_BUTTONS) == {}

    rowing.click(button("Skip"))
    rowing.see(button("Done"))
    assert faults_at_every_size(rowing) == {}
    assert at_every_size(rowing, SMALL_BUTTONS) == {}

    rowing.click(button("Done"))
    let_a_slip_pass(rowing)
    rowing.click(button("+1 min"))
    rowing.see(words("5:59"))
    places = tops(rowing, ".go", ".minute")
    rowing.click(button("Set"))
    rowing.see(words("Write the time of day to start at first, such as 18:00."))
    assert tops(rowing, ".go", ".minute") == places, "an error moves nothing"
    assert at_every_size(rowing, SMALL_BUTTONS) == {}
    assert at_every_size(rowing, OUT_OF_SIGHT) == {}
    assert accessibility_faults(rowing) == []
    assert rowing.problems() == []


def test_keys_of_a_keyboard_a_clicker_and_headphones_steer_the_session(rowing: Browser) -> None:
    rowing.press("Space")
    rowing.see(button("Go on"))
    let_a_slip_pass(rowing)
    rowing.press("Space")
    rowing.see(button("Hold"))
    rowing.press("+")
    rowing.see(words("One more minute: this block is 2:00 now."))

    rowing.press("c")
    for told in ["3 more$", "2 more$", "^Once more$", "^As asked$|a minute too (quick|slow)$"]:
        while not rowing.count(words(re.compile(told))):
            rowing.press("Space")
    assert accessibility_faults(rowing) == []
    rowing.press("Escape")
    rowing.see(button("Hold"))

    rowing.click(button("More"))
    rowing.see(button("Stroke check"))
    assert accessibility_faults(rowing) == []
    rowing.press("Escape")

    rowing.press("Escape")
    rowing.see(heading("End this session?"))
    rowing.press("ArrowRight")
    rowing.press("Escape")
    rowing.see_gone(heading("End this session?"))
    assert rowing.count(button("Done")) == 0, "no key reaches the session while a question stands"

    headphones = "(key) => { window.headphoneKeys[key](); return navigator.mediaSession.playbackState; }"
    rowing.evaluate(headphones, "pause")
    rowing.see(button("Go on"))
    rowing.wait_for("() => navigator.mediaSession.playbackState === 'paused'")
    assert rowing.evaluate("() => navigator.mediaSession.metadata.title") == "r24 half"
    let_a_slip_pass(rowing)
    rowing.evaluate(headphones, "play")
    rowing.see(button("Hold"))

    rowing.click(button("Skip"))
    rowing.see(button("Done"))
    rowing.press("PageDown")
    rowing.see(button("Start now"))
    rowing.click(css("input[type=time]"))
    rowing.press("PageDown")
    rowing.press("ArrowRight")
    assert rowing.count(button("Start now")) == 1, "no key reaches the session from a field"
    rowing.click(heading("Gap"))
    rowing.wait_for(f"() => {QUERY}.pageText().match(/4:5[0-8]/)")  # two taps within a second are one
    rowing.press("PageDown")
    rowing.see_gone(button("Start now"))
    let_a_slip_pass(rowing)
    rowing.press("PageUp")
    rowing.see(button("Start now"))
    assert rowing.problems() == []
