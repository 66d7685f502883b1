"""The coach's prompter: a session of its own, or the one that runs in another tab, line by line."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.targets import QUERY, button, css, heading, link, words
from tests.browser.test_rowing_offline import save_the_plan

CUT = f"""() => {{
  const within = (inner, outer) => inner.left > outer.left - 1 && inner.right < outer.right + 1
    && inner.top > outer.top - 1 && inner.bottom < outer.bottom + 1;
  const box = (css) => {QUERY}.find({{ css }}).map((found) => found.getBoundingClientRect());
  const page = {{ left: 0, top: 0, right: innerWidth, bottom: innerHeight }};
  const [[calls], [first]] = [box("ol"), box("li")];
  const around = [".now b", ".now span", "header span", "footer span"].flatMap(box);
  const outside = around.filter((each) => !within(each, page));
  return [...outside, ...(within(first, calls) ? [] : [first])];
}}"""
"""What is not whole on the page: anything of the head and the foot, or the first of the lines."""
BEHIND_KEYS = f"""() => {{
  const box = (css) => {QUERY}.find({{ css }}).map((found) => found.getBoundingClientRect());
  const [[keys], [lines]] = [box("wall-keys"), box("ol")];
  return lines.bottom - keys.top;
}}"""
"""How many pixels of the lines the keys hide."""


def test_a_prompter_leads_a_room_and_another_tab_follows_it(launch: Launch, server: Server) -> None:
    browser = launch("chromium", width=1280, height=800, reduced_motion=True)
    save_the_plan(browser, server)
    browser.click(link("Coach’s prompter"))
    browser.see(button("Start now"))
    assert accessibility_faults(browser) == []
    server.kill()
    browser.click(button("Start now"))
    browser.see(words("r24 half · 2:00"))
    browser.press("Tab")
    browser.wait_for(f"() => ({BEHIND_KEYS})() <= 0")
    assert accessibility_faults(browser) == []
    size = f"() => getComputedStyle({QUERY}.find({{ css: 'ol' }})[0]).fontSize"
    before = browser.evaluate(size)
    for _ in range(4):
        browser.click(button("Larger"))
    browser.wait_for(f"(before) => ({size})() !== before", before)
    browser.click(button("Mirror"))
    browser.see(css("main.mirrored"))
    for width, height in [(390, 844), (844, 390), (320, 568), (1280, 800)]:
        browser.resize(width, height)
        browser.wait_for(f"() => innerWidth === {width} && ({CUT})().length === 0")

    browser.new_tab()
    browser.open(server.url + "/prompter")
    browser.see(words("Follows another tab"))
    browser.see(css("main.mirrored"))
    assert browser.count(button("Hold")) == 0, "the other tab steers it"
    browser.turn_to_tab(0)
    browser.press("Space")
    browser.see(words("held"))
    browser.turn_to_tab(1)
    browser.see(words("held"))
    browser.turn_to_tab(0)
    browser.press("Escape")
    browser.click(button("End it for everybody"))
    browser.see(heading("Ended here"))
    browser.turn_to_tab(1)
    browser.see(heading(re.compile("^(Ended here|Rowed to the end)$")))
    assert browser.problems() == []
