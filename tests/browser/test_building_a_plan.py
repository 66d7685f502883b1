"""A plan is built by touch and by keys on the same document as its text, also with no signal."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.targets import QUERY, Target, button, css, field, heading, words
from tests.browser.test_pages_fit import too_wide
from tests.browser.test_writing_a_plan import PUT, TEXT
from tests.browser.writing import BOX, KEEP

PLAN = "title: Built\nmain\n5' r18 light\n10' r22 half\n4 x 500m r26 full / 2' rest\n"
BLOCKS = Target(role="radio", name="Blocks")
AS_TEXT = Target(role="radio", name="Text")
# Everything to press in the list that is lower than a finger needs.
SMALL = f"""() => {QUERY}.find({{ css: "block-tree" }})[0].shadowRoot
  .querySelectorAll("button, .handle").values().filter((each) => each.getBoundingClientRect().height < 59.5)
  .map((each) => each.textContent.trim()).toArray()"""

# Above the bar at the foot, below the picture at the head.
IN_SIGHT = f"""(target) => {{
  const box = {QUERY}.find(target)[0].getBoundingClientRect();
  const [bar] = {QUERY}.find({{ css: ".bar" }});
  const [picture] = {QUERY}.find({{ css: ".picture" }});
  return box.top >= picture.getBoundingClientRect().bottom && box.bottom <= bar.getBoundingClientRect().top;
}}"""


def lines(browser: Chromium) -> list[str]:
    """The text, from its first part on."""
    browser.click(AS_TEXT)
    text = str(browser.evaluate(TEXT)).split("\n")
    browser.click(BLOCKS)
    return [line for line in text[2:] if line]


def open_blocks(browser: Chromium, server: Server) -> None:
    browser.open(server.url + "/write")
    browser.see(BOX)
    browser.evaluate(PUT, PLAN)
    browser.see(Target(role="img", name=re.compile("^Picture of the plan")))
    browser.click(BLOCKS)
    browser.see(button(re.compile("^5' r18 light")))


def test_blocks_are_changed_moved_copied_and_repeated_and_the_text_says_so(
    chromium: Chromium, server: Server
) -> None:
    open_blocks(chromium, server)
    server.kill()
    chromium.click(button(re.compile("^5' r18 light")))
    chromium.wait_for(IN_SIGHT, field("Focus").as_json())
    chromium.type(field("Rate"), "9")
    chromium.press("Enter")
    chromium.see(words("Write a whole number from 10 to 50, or nothing."))
    chromium.type(field("Rate"), "20")
    chromium.press("Enter")
    chromium.see(button(re.compile("^5' r20 light")))
    chromium.see_gone(words("Write a whole number from 10 to 50, or nothing."))
    chromium.click(Target(css="summary", name="Splits for whom?"))
    chromium.type(field("Time"), "7:42")
    chromium.click(button("Show their splits"))
    chromium.see(words("/500 m on average, about"))
    chromium.click(button("Move down this block"))
    chromium.click(button("Copy"))
    chromium.see(button(re.compile("^5' r20 light")).nth(1))
    chromium.click(button("Repeat"))
    chromium.see(button("2 times"))
    assert lines(chromium) == [
        "main",
        "10' r22 half",
        "5' r20 light",
        "2 x 5' r20 light",
        *PLAN.split("\n")[4:5],
    ]
    chromium.evaluate(f"() => {QUERY}.find({{ css: '#\\\\/parts\\\\/0\\\\/blocks\\\\/0' }})[0].focus()")
    chromium.press("Alt+ArrowDown")
    chromium.see(words("Moved down."))
    assert lines(chromium)[1:3] == ["5' r20 light", "10' r22 half"]
    for _ in range(5):
        chromium.click(button("Undo"))
    chromium.see_gone(button("2 times"))
    assert "\n".join(lines(chromium)) in PLAN
    chromium.click(KEEP)
    chromium.see(heading("Built"))
    assert chromium.problems() == []


def test_parts_drills_and_calls_are_added_from_the_library_and_blocks_dragged(
    chromium: Chromium, server: Server
) -> None:
    open_blocks(chromium, server)
    chromium.click(button("A part of another plan"))
    chromium.type(Target(role="searchbox", name="Search"), "cool-down the way down")
    chromium.click(button(re.compile("^Cool-down of The way down")))
    chromium.see(heading("Cool-down"))
    chromium.click(button("Undo"))
    chromium.see_gone(heading("Cool-down"))
    chromium.click(button("Cool-down"))
    chromium.see(button(re.compile("^5' r18 light")).nth(1))
    chromium.click(button(re.compile("^10' r22 half")))
    chromium.click(button("Drill from the library"))
    chromium.type(Target(role="searchbox", name="Search"), "pause arms")
    chromium.click(css("dialog[open] li button").nth(0))
    chromium.click(button("Add a call"))
    chromium.see(field("Call"))
    chromium.click(button(re.compile("^10' r22 half")))
    written = lines(chromium)
    assert written[-2:] == ["cool-down", "5' r18 light"]
    assert any(line.startswith("  drill: ") for line in written)
    assert "  call: Long and easy" in written
    handle = chromium.page.locator("block-tree .handle")
    handle.nth(0).scroll_into_view_if_needed()
    first, second = handle.nth(0).bounding_box(), handle.nth(1).bounding_box()
    assert first
    assert second
    chromium.page.mouse.move(first["x"] + 20, first["y"] + 20)
    chromium.page.mouse.down()
    chromium.page.mouse.move(second["x"] + 20, second["y"] + second["height"] - 6, steps=4)
    chromium.page.mouse.up()
    chromium.see(words("Moved."))
    assert lines(chromium)[1] == "10' r22 half"
    chromium.click(Target(css="summary", name="For whom, and how to set up"))
    chromium.type(field("Set-up"), "Fan on")
    chromium.press("Enter")
    chromium.click(AS_TEXT)
    assert "set-up: Fan on\n" in chromium.evaluate(TEXT)
    chromium.click(BLOCKS)
    chromium.click(button(re.compile("^10' r22 half")))
    assert accessibility_faults(chromium) == []
    assert chromium.evaluate(SMALL) == []
    assert too_wide(chromium) == {}
