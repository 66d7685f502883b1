"""A person's results: kept on this device alone, with what follows from them, and taken away again."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.later_files import LATER_KEPT
from tests.browser.pressing import let_a_slip_pass, press_twice
from tests.browser.targets import button, field, heading, link, words

LIKELY = heading("Likely, if you trained for it")
NOTHING = words(re.compile("^Without a result, sessions go by rate and pressure"))
RESULT = words("2000 m in 7:42.0")
# The screens that nobody needs to row are kept last of all.


def give_a_result(browser: Browser, server: Server) -> None:
    browser.open(server.url)
    browser.click(link("Your results"))
    browser.see(NOTHING)
    browser.type(field("Time"), "7:42")
    browser.click(button("Add this result"))
    browser.see(RESULT)


def test_a_result_gives_predictions_and_zones_stays_over_a_reload_and_can_be_removed(
    browser: Browser, server: Server
) -> None:
    give_a_result(browser, server)
    browser.see(LIKELY)
    browser.reload()
    browser.see(RESULT)
    browser.see(LIKELY)
    browser.open(server.url + "/plan/two-kilometre-test")
    browser.see(words("Splits from your 2 km in 7:42.0. Your results"))
    browser.open(server.url + "/athlete")
    browser.click(button("Remove 2000 m in 7:42.0"))
    browser.see(NOTHING)
    browser.reload()
    browser.see(NOTHING)
    assert browser.count(RESULT) == 0
    assert browser.problems() == []


def test_everything_is_removed_at_once_after_it_was_asked_again(chromium: Browser, server: Server) -> None:
    give_a_result(chromium, server)
    chromium.type(field("Age, years"), "44")
    chromium.press("Tab")
    chromium.see(words(re.compile("^Heart rates are shares of your highest, taken from your age")))
    assert press_twice(chromium, button("Remove all on this page")) == "Keep it"
    chromium.see(button("Yes, remove it all"))
    let_a_slip_pass(chromium)
    chromium.click(button("Keep it"))
    chromium.see(RESULT)
    chromium.click(button("Remove all on this page"))
    let_a_slip_pass(chromium)
    chromium.click(button("Yes, remove it all"))
    chromium.see(NOTHING)
    chromium.reload()
    chromium.see(NOTHING)
    assert chromium.evaluate("() => indexedDB.databases().then((all) => all.length)") == 1
    assert chromium.problems() == []


def test_the_page_and_what_is_kept_open_without_a_signal(browser: Browser, server: Server) -> None:
    give_a_result(browser, server)
    browser.see(LIKELY)
    browser.wait_for(LATER_KEPT)
    server.kill()
    browser.open(server.url + "/athlete")
    browser.see(RESULT)
    browser.see(LIKELY)
    browser.type(field("Time"), "7:40")
    browser.click(button("Add this result"))
    browser.see(words("2000 m in 7:40.0"))
    browser.see(words(re.compile("^What follows from your results is worked out where there is signal")))
    assert browser.problems() == []


def test_a_finding_about_a_result_stands_beside_it(chromium: Browser, server: Server) -> None:
    give_a_result(chromium, server)
    chromium.type(field("Time"), "7:50")
    chromium.click(button("Add this result"))
    chromium.see(words(re.compile("is bettered by")))


def test_a_fact_out_of_bounds_is_told_at_its_field_and_not_kept(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + "/athlete")
    chromium.type(field("Highest heart rate"), "300")
    chromium.press("Tab")
    chromium.see(words("Write a whole number from 90 to 230, or nothing."))
    chromium.reload()
    chromium.see(NOTHING)
    assert chromium.count(words("300")) == 0


def test_the_accessibility_checker_finds_nothing(chromium: Browser, server: Server) -> None:
    give_a_result(chromium, server)
    chromium.see(LIKELY)
    chromium.type(field("Highest heart rate"), "300")
    chromium.press("Tab")
    chromium.see(words("Write a whole number from 90 to 230, or nothing."))
    assert accessibility_faults(chromium) == []
