"""The technique library on the phone: read with no signal, opened from a drill, drawn while it is rowed."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.later_files import LATER_KEPT
from tests.browser.targets import QUERY, button, css, heading, link, words

PLAN = "/plan/drills-from-the-finish"
SAVED = words("Saved on this device. It will run with no signal.")
TECHNIQUE_KEPT = """() => new Promise((done) => {
  const asked = indexedDB.open("slipway");
  asked.onsuccess = () => {
    const kept = asked.result.transaction("technique").objectStore("technique").count();
    kept.onsuccess = () => { asked.result.close(); done(kept.result === 1); };
  };
})"""
"""Both come by themselves, once the app is kept."""
OVERFLOW = f"""() => {{
  const [screen] = {QUERY}.find({{ css: "main.screen" }});
  return screen.scrollHeight - screen.clientHeight;
}}"""


def test_it_is_there_with_no_signal_although_it_was_never_opened(browser: Browser, server: Server) -> None:
    browser.open(server.url + PLAN)
    browser.see(SAVED)
    browser.wait_for(TECHNIQUE_KEPT)
    browser.wait_for(LATER_KEPT)
    server.kill()
    browser.open(server.url + "/technique")
    browser.see(heading("The four positions"))
    browser.see(heading(re.compile("^Single foot")))
    browser.see(words(re.compile("^Legs, then swing, then arms")))
    assert browser.count(css("stroke-figure")) == 4 + 19
    assert browser.problems() == []


def test_it_is_linked_from_the_first_screen(chromium: Browser, server: Server) -> None:
    chromium.open(server.url)
    chromium.click(link("Positions, drills and calls"))
    chromium.see(heading("Technique"))
    chromium.click(link("All plans"))
    chromium.see(heading("What are you rowing today?"))


def test_the_accessibility_checker_finds_nothing(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + "/technique")
    chromium.see(heading("What a coach calls"))
    chromium.click(words(re.compile("^Patience on the slide")))
    chromium.see(words("Slower forward than back"))
    assert accessibility_faults(chromium) == []


def test_a_drill_in_a_plan_opens_to_its_drawing_its_sentence_and_its_caution(
    chromium: Browser, server: Server
) -> None:
    chromium.open(server.url + PLAN)
    chromium.click(words("Drill: one foot strapped, the other on the floor, 2 sides of 20 s, 20 s to swap"))
    chromium.see(css("stroke-figure[name='single foot']"))
    chromium.see(words(re.compile("the other on the floor beside the rail")))
    chromium.see(words("Light and short. Leave it out with a sore knee, hip or back."))
    assert accessibility_faults(chromium) == []
    assert chromium.problems() == []


def test_a_drill_is_drawn_while_it_is_rowed_where_there_is_room(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + "/row?plan=first-row")
    chromium.click(button("I have read this, go on"))
    chromium.click(css(".bar .go"))
    chromium.see(css(".big.digits"))
    chromium.see(css("stroke-figure[name='arms only']"))
    assert chromium.evaluate(OVERFLOW) == 0
    chromium.resize(390, 664)
    chromium.see_gone(css("stroke-figure[name='arms only']"))
    assert chromium.evaluate(OVERFLOW) == 0
