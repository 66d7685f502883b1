"""A plan is written: seen while it is typed, marked where it cannot be read, taken back, and kept."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.targets import QUERY, Target, button, css, field, heading, link, words
from tests.browser.writing import BOX, KEEP, write_plan

HEIGHT = f"""() => {QUERY}.find({{ css: ".box" }})[0].getBoundingClientRect().height"""
HIDDEN = f"""() => {{
  const box = {QUERY}.find({{ css: ".box" }})[0];
  return box.scrollHeight - box.clientHeight;
}}"""
TEXT = f"""() => {QUERY}.find({{ css: "textarea" }})[0].value"""
KEPT_DRAFT = """() => new Promise((tell, fail) => {
  const opening = indexedDB.open("slipway");
  opening.onerror = fail;
  opening.onsuccess = () => {
    const reading = opening.result.transaction("settings").objectStore("settings").get("all");
    reading.onsuccess = () => { opening.result.close(); tell(reading.result?.values.draft ?? ""); };
  };
})"""
# Where the one mark lies, what it marks, whether it lies under the very letters of the box, and how many
# pixels of the text are in no reach.
MARK = f"""() => {{
  const mark = {QUERY}.find({{ css: "mark" }})[0];
  const box = {QUERY}.find({{ css: ".box" }})[0].getBoundingClientRect();
  const area = {QUERY}.find({{ css: "textarea" }})[0];
  const {{ top, bottom }} = mark.getBoundingClientRect();
  const line = parseFloat(getComputedStyle(area).lineHeight);
  const row = (top - area.getBoundingClientRect().top - parseFloat(getComputedStyle(area).paddingTop)) / line;
  return {{
    marks: mark.textContent,
    row: Math.floor(row + 0.5) + 1,
    inBox: top >= box.top && bottom <= box.bottom,
    inWindow: top >= 0 && bottom <= innerHeight,
    hidden: Math.max(0, area.scrollHeight - area.clientHeight),
    selected: area.value.slice(area.selectionStart, area.selectionEnd),
  }};
}}"""
PUT = f"""(text) => {{
  const area = {QUERY}.find({{ css: "textarea" }})[0];
  area.value = text;
  area.dispatchEvent(new InputEvent("input", {{ bubbles: true, composed: true }}));
}}"""
TUESDAY = """\
title: Tuesday
warm-up
5' r18 light
3 x (10 strokes r28 full, 50" r20 light)
main
6 x 700m r28 2k+1 / 3' rest
"""


# The next picture comes late, as on a phone that has much to do.
LATE_PICTURE = """() => {
  const next = window.requestAnimationFrame;
  const late = (paint) => next.call(window, () => { paint(0); window.isPainted = true; });
  window.requestAnimationFrame = (paint) => setTimeout(() => late(paint), 2000);
}"""


def test_who_writes_at_once_keeps_the_keyboard(chromium: Chromium, server: Server) -> None:
    chromium.open(server.url)
    chromium.evaluate(LATE_PICTURE)
    chromium.click(link(re.compile("^Write")))
    chromium.type(BOX, "title: Tues")
    chromium.wait_for("() => window.isPainted")
    for key in "day":
        chromium.press(key)
    assert chromium.evaluate(TEXT) == "title: Tuesday"


def test_the_box_grows_with_its_text_up_to_a_part_of_the_window(launch: Launch, server: Server) -> None:
    browser = launch("chromium", width=1280, height=800)
    browser.open(server.url + "/write")
    browser.see(BOX)
    empty = browser.evaluate(HEIGHT)
    assert empty >= 800 / 4
    browser.evaluate(PUT, "3' r18 light\n" * 14)
    browser.wait_for(f"() => ({HEIGHT})() > {empty}")
    assert browser.evaluate(HIDDEN) <= 1
    browser.evaluate(PUT, "3' r18 light\n" * 60)
    browser.wait_for(f"() => ({HIDDEN})() > 800")
    assert browser.evaluate(HEIGHT) <= 0.6 * 800 + 1


def test_a_mistake_far_down_is_marked_where_it_is_in_a_draft_that_stays(
    browser: Browser, server: Server
) -> None:
    browser.open(server.url + "/write")
    browser.see(BOX)
    draft = "3' r18 light\n" * 60 + "700 r28\n" + "3' r18 light\n" * 30
    browser.evaluate(PUT, draft)
    browser.wait_for(f"() => ({KEPT_DRAFT})().then((kept) => kept.length === {len(draft)})")
    browser.reload()
    browser.click(button("Line 61, column 1"))
    browser.wait_for(f"() => ({MARK})().inBox")
    assert browser.evaluate(MARK) == {
        "marks": "700",
        "row": 61,
        "inBox": True,
        "inWindow": True,
        "hidden": 0,
        "selected": "700",
    }
    browser.see(words('"700" has no unit: write 700m for metres, 700" for seconds, or 700 strokes'))
    browser.evaluate("() => scrollTo(0, 0)")
    browser.click(KEEP)
    browser.wait_for(f"() => ({MARK})().inWindow")


def test_what_is_written_is_seen_at_once_and_a_mistake_leaves_the_last_good_picture(
    chromium: Chromium, server: Server
) -> None:
    chromium.open(server.url + "/athlete")
    chromium.type(field("Time"), "7:42")
    chromium.click(button("Add this result"))
    chromium.see(heading("Likely, if you trained for it"))
    chromium.open(server.url)
    chromium.click(link("Write your own"))
    chromium.type(BOX, TUESDAY)
    chromium.see(heading("At the start line"))
    chromium.see(words("/500 m on average, about"))
    shown = chromium.text(css("dd").nth(0))
    chromium.type(BOX, TUESDAY.replace("700m", "700"))
    chromium.see(words("Line 6, column 5"))
    chromium.click(button("What would do here"))
    chromium.see(words("A distance such as 500m or 2 km"))
    chromium.see(Target(role="img", name=re.compile("^Picture of the plan")))
    chromium.type(BOX, TUESDAY)
    chromium.see_gone(words("Line 6, column 5"))
    assert chromium.text(css("dd").nth(0)) == shown
    assert accessibility_faults(chromium) == []
    assert chromium.problems() == []


def test_a_mend_is_taken_back_and_made_again_and_the_plan_kept_in_its_place(
    chromium: Chromium, server: Server
) -> None:
    write_plan(chromium, server, TUESDAY)
    chromium.see(heading("Tuesday"))
    address = chromium.evaluate("() => location.href")
    chromium.click(button("Change it"))
    chromium.see(heading("Change a plan"))
    chromium.wait_for(f"() => ({TEXT})().startsWith('title: Tuesday')")
    before = chromium.evaluate(TEXT)
    chromium.click(Target(role="button", name=re.compile("gap", re.I)).nth(0))
    chromium.wait_for(f"() => ({TEXT})().includes('gap ')")
    mended = chromium.evaluate(TEXT)
    chromium.click(button("Undo"))
    chromium.wait_for(f"(text) => ({TEXT})() === text", before)
    chromium.click(BOX)
    chromium.press("Control+y")
    chromium.wait_for(f"(text) => ({TEXT})() === text", mended)
    chromium.click(KEEP)
    chromium.see(words("Done: your changes."))
    assert chromium.evaluate("() => location.href") == address
    chromium.click(button("Undo"))
    chromium.see_gone(words("Done: your changes."))


def test_with_no_signal_the_draft_stays_and_a_text_beyond_the_bound_is_told_and_not_cut(
    chromium: Chromium, server: Server
) -> None:
    chromium.open(server.url + "/write")
    chromium.see(BOX)
    chromium.evaluate(PUT, TUESDAY)
    chromium.see(heading("At the start line"))
    chromium.evaluate(PUT, "x" * 262_145)
    chromium.see(words(re.compile("^That would be 262145 characters, and a plan takes 262144 at most")))
    assert chromium.evaluate(TEXT) == TUESDAY
    chromium.evaluate(PUT, "99999999999' r20")
    chromium.see(words(re.compile("^99999999999' is too long: a block lasts 4 hours")))
    server.kill()
    chromium.evaluate(PUT, "5' r20 light\n")
    chromium.see(words(re.compile("^There is no signal, so the text cannot be read now")))
    chromium.click(KEEP)
    chromium.see(words(re.compile("^To be kept, the text has to be read")))
    server.start()
    chromium.click(button("Try again"))
    chromium.see_gone(words(re.compile("^There is no signal")))
    chromium.click(KEEP)
    chromium.see(button("Row it"))


def test_the_second_plan_without_a_title_is_told_from_the_first(chromium: Browser, server: Server) -> None:
    for text in ("20' r18 light", "6 x 700m r28 2k+1 / 3' rest"):
        write_plan(chromium, server, text)
        chromium.see(button("Row it"))
    chromium.see(heading("My session: 6 x 700m r28 2k+1 / 3' rest"))
    chromium.open(server.url)
    chromium.see(words("My session"))
    chromium.see(words("My session: 6 x 700m r28 2k+1 / 3' rest"))
