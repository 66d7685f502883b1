"""A wall for a room to follow: with the server gone, through a power cut, by touch and by keyboard."""

from __future__ import annotations

import re
import time
from fractions import Fraction

import pytest

from planner.athlete import Athlete, Result
from planner.notation.reader import read
from planner.timeline import compile_timeline
from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.later_files import LATER_KEPT
from tests.browser.pressing import let_a_slip_pass
from tests.browser.storage import change_stored, stored
from tests.browser.targets import QUERY, button, css, heading, link, words
from tests.browser.test_pages_fit import too_wide
from tests.browser.test_rowing_offline import (
    PLAN,
    SEGMENTS,
    Face,
    assert_strokes_agree_with_the_clock,
    assert_the_clock_ran_on,
    save_the_plan,
)

WREN = Result(metres=2000, seconds=Fraction(462))
SIZES = [(1280, 800), (1920, 1080)]
OTHER_SIZES = [(844, 390), (390, 844), (1024, 768)]
COUNTS = """(record) => {
  const values = { start_count_s: 2, hold_count_s: 30 };
  record.values = { ...record.values, preferences: { version: 1, values } };
}"""
"""No long wait for the start, and after a hold one that a slow machine sees."""
FAULTS = f"""() => {{
  const parts = [".figure", ".note", ".pair", ".call", "stroke-rail", "wall-lanes", "footer", "header"];
  const placed = (css) => (found) => ({{ css, box: found.getBoundingClientRect() }});
  const seen = parts.flatMap((css) => {QUERY}.find({{ css }}).map(placed(css)));
  const shared = (a, b, from, to) => Math.min(a[to], b[to]) - Math.max(a[from], b[from]);
  const lies = (a, b) => shared(a, b, "left", "right") > 1 && shared(a, b, "top", "bottom") > 1;
  const cut = seen.filter(({{ box }}) =>
    box.left < -1 || box.top < -1 || box.right > innerWidth + 1 || box.bottom > innerHeight + 1);
  const covered = seen.flatMap((one, at) => seen.slice(at + 1).filter((other) => lies(one.box, other.box))
    .map((other) => `${{one.css}} lies on ${{other.css}}`));
  return [...cut.map(({{ css }}) => `${{css}} is cut off`), ...covered];
}}"""


def to_the_wall(browser: Browser, server: Server) -> None:
    """The plan is saved, and its wall is about to be set up."""
    save_the_plan(browser, server)
    browser.click(link("Show on a wall"))
    browser.see(button("Start now"))


def enter_lane(browser: Browser, number: int, name: str, result: str) -> None:
    browser.type(css("input.name").nth(number), name)
    browser.type(css("input.time").nth(number), result)


def wall_face(browser: Browser) -> Face:
    shown = browser.wait_for(
        f"""() => {{
          const text = (css) => {QUERY}.find({{ css }}).map({QUERY}.visibleText);
          const [[left], digits, note] = [text(".figure"), text(".pair .digits"), text(".note")];
          return /^\\d+:\\d\\d$/.test(left) && digits.length === 2 && !note.length && [left, digits[1]];
        }}"""
    )
    minutes, seconds = shown[0].split(":")
    return Face(time.monotonic(), int(minutes) * 60 + int(seconds), int(shown[1]))


@pytest.mark.parametrize(("size", "address"), [(SIZES[0], "/wall"), (SIZES[1], "/")])
def test_a_room_follows_a_wall_with_the_server_gone_and_through_a_power_cut(
    launch: Launch, server: Server, size: tuple[int, int], address: str
) -> None:
    browser = launch("chromium", width=size[0], height=size[1])
    to_the_wall(browser, server)
    setting_up = browser.evaluate("() => location.href")
    change_stored(browser, server, "settings", COUNTS)
    browser.open(setting_up)
    enter_lane(browser, 0, "Wren", "7:42")
    enter_lane(browser, 1, "Alder of the mill at the weir", "1:10")
    browser.see(words("Lane 2: a name has room for 20 letters. The wall shows “Alder of the mill at”."))
    typed = browser.evaluate(f"() => {QUERY}.find({{ css: 'input.name' }})[1].value")
    assert typed == "Alder of the mill at the weir", "nothing typed is taken out of its field"
    browser.click(button("Start now"))
    browser.see(
        words("Lane 2: 2000 m in 1:10.0 is quicker than anybody rows that far: look at the digits again.")
    )
    browser.type(css("input.time").nth(1), "")
    browser.wait_for(LATER_KEPT)
    server.kill()
    browser.click(button("Start now"))
    first = wall_face(browser)
    started = stored(browser, "facts")[0]["fact"]
    assert started == {"kind": "started", "at_s": 0, "count_in_s": 2}, "as long as the settings ask"
    assert_strokes_agree_with_the_clock(first, SEGMENTS[0])
    asked = [
        segment.stretch.target for segment in compile_timeline(read(PLAN), Athlete(results=(WREN,))).segments
    ]
    assert split_words(asked[0]) in browser.text(css("tbody tr").nth(0))
    assert split_words(asked[1]) in browser.text(css("tbody tr").nth(0)), "the next block's"
    assert "light" in browser.text(css("tbody tr").nth(1)), "no result, no split"
    assert browser.evaluate(FAULTS) == []

    browser.kill()
    browser.reopen()
    browser.open(server.url + address)
    back = wall_face(browser)
    assert_the_clock_ran_on(first, back)
    assert_strokes_agree_with_the_clock(back, SEGMENTS[0])
    assert split_words(asked[0]) in browser.text(css("tbody tr").nth(0))

    browser.press("Space")
    browser.see(words("Held. The clock stands still."))
    for width, height in [*OTHER_SIZES, size]:
        browser.resize(width, height)
        browser.wait_for(f"() => innerWidth === {width}")
        browser.wait_for(f"() => ({FAULTS})().length === 0")
    let_a_slip_pass(browser)
    browser.press("Space")
    browser.see(words(re.compile("^(First|Next) catch in$")))
    assert browser.evaluate(FAULTS) == []
    browser.press("ArrowRight")
    browser.press("Escape")
    browser.click(button("End it for everybody"))
    browser.see(heading("Ended here"))
    assert browser.problems() == []


def split_words(target: object) -> str:
    """As a wall shows a split: whole seconds, a tie up."""
    seconds = int(target.split + 0.5)  # type: ignore[attr-defined]
    return f"{seconds // 60}:{seconds % 60:02d}"


def test_the_accessibility_checker_finds_nothing_on_a_wall(launch: Launch, server: Server) -> None:
    browser = launch("chromium", width=1280, height=800, reduced_motion=True)
    browser.open(server.url + "/wall?plan=rate-ladder")
    browser.see(button("Start now"))
    for number, (name, result) in enumerate([("Wren", "7:42"), ("Alder", "70")]):
        enter_lane(browser, number, name, result)
    browser.click(button("Start now"))
    assert accessibility_faults(browser) == []
    assert too_wide(browser) == {}
    browser.resize(1280, 800)
    browser.type(css("input.time").nth(1), "8:10")
    browser.click(button("Start now"))
    browser.see(css("tbody tr"))
    browser.see(button("Hold"))
    assert accessibility_faults(browser) == []
    browser.click(button("Hold"))
    browser.see(button("Go on"))
    assert accessibility_faults(browser) == []
    browser.click(button("Lanes"))
    browser.type(css("input.name").nth(2), "Finch")
    assert accessibility_faults(browser) == []
    browser.click(button("Done"))
    browser.see(words("Finch"))
    browser.click(button("End"))
    assert accessibility_faults(browser) == []
    browser.click(button("End it for everybody"))
    browser.see(heading("Ended here"))
    assert accessibility_faults(browser) == []
