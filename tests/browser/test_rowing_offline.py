"""The main job: pick a plan, see that it is saved, take the network away, and row it to the last stroke."""

from __future__ import annotations

import math
import time
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby
from pathlib import Path

import pytest

from planner.notation.reader import read
from planner.timeline import Segment, compile_timeline
from tests.browser.accessibility import accessibility_faults, reading_order
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.conftest import ENGINES, Launch
from tests.browser.engines import Browser
from tests.browser.pressing import let_a_slip_pass
from tests.browser.processes import wait_until
from tests.browser.quick_clock import quick_clock
from tests.browser.storage import stored
from tests.browser.targets import QUERY, button, css, heading, words
from tests.browser.writing import write_plan

SAVED = words("Saved on this device. It will run with no signal.")
PLAN = """\
title: Two blocks and a sprint
main
3' r20 light
  focus: Long arms
2' r24 half
10 strokes r30 full
"""
SEGMENTS = compile_timeline(read(PLAN)).segments
EAR = (Path(__file__).parent / "ear.js").read_text()
SAME_COLOUR = f"""(...css) => new Set(css.map((each) =>
  getComputedStyle({QUERY}.find({{ css: each }})[0]).color)).size === 1"""
SLACK_SECONDS = 1.5
"""The countdown shows whole seconds, and asking takes a moment."""

# A device whose clock is 42 s ahead.
AHEAD = """(() => {
  const Wall = Date;
  window.Date = class extends Wall {
    constructor(...given) { if (given.length) super(...given); else super(Date.now()); }
    static now() { return Wall.now() + 42_000; }
  };
})();"""


@dataclass(frozen=True)
class Face:
    """What the row screen shows at a moment of the tester's own clock."""

    at: float
    seconds_left: int
    strokes_left: int


def face(browser: Browser) -> Face:
    shown = browser.wait_for(
        f"""() => {{
          const text = (css) => {{
            const found = {QUERY}.find({{ css }});
            return found.length === 1 ? {QUERY}.visibleText(found[0]) : "";
          }};
          const [left, strokes] = [text(".big.digits"), text(".strokes .mid")];
          return /^\\d+:\\d\\d$/.test(left) && /^\\d+$/.test(strokes) && [left, strokes];
        }}"""
    )
    minutes, seconds = shown[0].split(":")
    return Face(time.monotonic(), int(minutes) * 60 + int(seconds), int(shown[1]))


def assert_strokes_agree_with_the_clock(shown: Face, segment: Segment) -> None:
    """The strokes left are those that the planner has left at the time left, to the second shown."""
    strokes = segment.stretch.strokes
    assert strokes is not None
    gone = segment.stretch.duration - shown.seconds_left
    first = strokes.count - math.floor((gone + 1) / strokes.stroke)
    last = strokes.count - math.floor(max(Fraction(0), gone) / strokes.stroke)
    assert first <= shown.strokes_left <= last


def assert_the_clock_ran_on(before: Face, after: Face) -> None:
    passed = after.at - before.at
    assert before.seconds_left - after.seconds_left == pytest.approx(passed, abs=SLACK_SECONDS)


def save_the_plan(browser: Browser, server: Server) -> str:
    """Writes the plan, waits until it is saved, and gives its address."""
    write_plan(browser, server, PLAN)
    browser.see(heading("Two blocks and a sprint"))
    browser.see(SAVED)
    return str(browser.evaluate("() => location.href"))


def start_rowing(browser: Browser) -> None:
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.click(button("Start rowing"))
    browser.see(button("Skip"))


def cautions_are_behind(browser: Browser) -> bool:
    return any(kept["values"].get("cautions_read") for kept in stored(browser, "settings"))


def test_a_plan_is_rowed_to_the_end_with_the_server_gone_and_the_browser_killed_midway(
    browser: Browser, server: Server
) -> None:
    address = save_the_plan(browser, server)
    server.kill()
    browser.reload()
    browser.see(heading("Two blocks and a sprint"))
    browser.open(server.url)
    browser.see(heading("What are you rowing today?"))
    browser.open(address)
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.see(button("Start rowing"))
    wait_until(lambda: cautions_are_behind(browser), "the cautions to be remembered as read", 60)
    browser.reload()  # its address asks for the plan behind a question mark
    browser.click(button("Start rowing"))
    first = face(browser)
    assert_strokes_agree_with_the_clock(first, SEGMENTS[0])

    browser.wait_for(later_than(first.seconds_left - 30))
    row_30_s = face(browser)
    assert_the_clock_ran_on(first, row_30_s)
    assert_strokes_agree_with_the_clock(row_30_s, SEGMENTS[0])

    browser.kill()
    browser.reopen()
    browser.open(server.url + "/row")
    browser.see(button("Skip"))
    back = face(browser)
    assert_the_clock_ran_on(row_30_s, back)
    assert_strokes_agree_with_the_clock(back, SEGMENTS[0])

    browser.click(button("Skip"))
    assert_strokes_agree_with_the_clock(face(browser), SEGMENTS[1])
    let_a_slip_pass(browser)
    browser.click(button("Skip"))
    browser.see(heading("Ended here"))
    assert "of 5:20" in browser.text(), "two blocks were cut short"
    assert browser.problems() == []


def later_than(seconds_left: int) -> str:
    """A function of the page: whether its countdown has come to so many seconds."""
    return f"""() => {{
      const found = {QUERY}.find({{ css: ".big.digits" }});
      if (found.length !== 1) return false;
      const [minutes, seconds] = {QUERY}.visibleText(found[0]).split(":").map(Number);
      return minutes * 60 + seconds <= {seconds_left};
    }}"""


@pytest.mark.parametrize("engine", ENGINES)
def test_two_minutes_on_a_quick_clock_are_two_minutes_of_the_plan(
    engine: str, launch: Launch, server: Server
) -> None:
    browser = launch(engine, preload=EAR + quick_clock(8))
    save_the_plan(browser, server)
    server.kill()
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    before = len(browser.evaluate("() => heardByTests"))
    browser.click(button("Start rowing"))
    browser.wait_for(later_than(60))
    shown = face(browser)
    assert shown.seconds_left <= 60
    assert_strokes_agree_with_the_clock(shown, SEGMENTS[0])
    browser.click(button("Skip"))
    browser.click(button("Hold"))
    browser.see(button("Go on"))
    spoken = browser.evaluate("() => heardByTests")[before:]
    # To a machine that stutters, a quick clock has run on meanwhile; what is so is then told once more.
    assert [told for told, _ in groupby(told for told in spoken if "You were away" not in told)] == [
        f"Sound is lost. {words}"
        for words in (
            "Main piece: r20 light, 3:00. Long arms. Next r24 half · 2:00.",
            "Main piece: r24 half, 2:00. Next r30 full · 10 strokes.",
            "Held. The clock stands still.",
        )
    ], "changes are spoken, and no seconds"
    assert browser.problems() == []


def test_the_accessibility_checker_finds_nothing_from_the_caution_to_the_end(
    chromium: Chromium, server: Server
) -> None:
    save_the_plan(chromium, server)
    assert accessibility_faults(chromium) == []
    chromium.click(button("Row it"))
    chromium.see(button("I have read this, go on"))
    assert accessibility_faults(chromium) == []
    chromium.click(button("I have read this, go on"))
    chromium.see(button("Start rowing"))
    assert accessibility_faults(chromium) == []
    chromium.click(button("Start rowing"))
    chromium.see(css(".rate .mid"))
    assert accessibility_faults(chromium) == []
    assert reading_order(chromium) == [
        "main",
        "heading Rowing: Two blocks and a sprint",
        *["button Stop signs", "button Mute", "button End", "button More"],
        "timer Time left",
        "image Strokes of this block: above, a tick for each stroke; below, a mark for every 10",
        "image Picture of the plan: main 5:20; rates from 20 to 30.",
        *["button Back", "button Hold", "button Skip", "button +1 min"],
        "status",
    ]
    chromium.click(button("Hold"))
    chromium.see(button("Go on"))
    assert accessibility_faults(chromium) == []
    chromium.page.emulate_media(forced_colors="active")
    assert chromium.evaluate(SAME_COLOUR, ".big", "h1"), "digits are set apart from these colours by hand"
    chromium.page.emulate_media(forced_colors="none")
    chromium.click(button("Stop signs"))
    chromium.see(button("I am fine, go back"))
    assert accessibility_faults(chromium) == []
    chromium.click(button("I am fine, go back"))
    chromium.click(button("End"))
    assert accessibility_faults(chromium) == []
    chromium.click(button("End it here"))
    chromium.see(heading("Ended here"))
    assert accessibility_faults(chromium) == []


def test_the_gap_waits_for_the_rower(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + "/plan/stroke-pyramid")
    chromium.see(SAVED)
    server.kill()
    start_rowing(chromium)
    while not chromium.count(button("Start now")):
        chromium.click(button("Skip"))
    chromium.see(words("to the start; the piece waits for you"))
    chromium.see(words("No signal to check this clock by."))
    assert accessibility_faults(chromium) == []


def test_the_gap_says_how_far_the_devices_clock_is_off_the_servers(launch: Launch, server: Server) -> None:
    browser = launch("chromium", preload=AHEAD)
    browser.open(server.url + "/plan/stroke-pyramid")
    start_rowing(browser)
    while not browser.count(button("Start now")):
        browser.click(button("Skip"))
    browser.see(words("This clock is 42 s ahead of the server's."))
    assert browser.problems() == []
