"""The coach's prompter: a session of its own, or the one that runs in another tab, line by line."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.targets import QUERY, button, css, heading, link, words
from tests.browser.test_rowing_offline import save_the_plan


def test_a_prompter_leads_a_room_and_another_tab_follows_it(launch: Launch, server: Server) -> None:
    browser = launch("chromium", width=1280, height=800, reduced_motion=True)
    save_the_plan(browser, server)
    browser.click(link("Coach’s prompter"))
    browser.see(button("Start now"))
    assert accessibility_faults(browser) == []
    server.kill()
    browser.click(button("Start now"))
    browser.see(words("r24 half · 2:00"))
    assert accessibility_faults(browser) == []
    size = f"() => getComputedStyle({QUERY}.find({{ css: 'ol' }})[0]).fontSize"
    before = browser.evaluate(size)
    browser.click(button("Larger"))
    browser.wait_for(f"(before) => ({size})() !== before", before)
    browser.click(button("Mirror"))
    browser.see(css("main.mirrored"))

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
