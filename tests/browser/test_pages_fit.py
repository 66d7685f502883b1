"""No page scrolls sideways from the smallest phone to a desk, and what comes first is in sight."""

from __future__ import annotations

import re

import pytest

from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.targets import QUERY, Target, button, field, heading, link, words
from tests.browser.writing import BOX, write_plan

SIZES = [(320, 568), (360, 640), (390, 844), (568, 320), (768, 1024), (1280, 800)]
KINDS = ["Test piece", "Intervals", "Steady", "Capped rate", "Technique", "Warm-up alone"]
FIRST_ROW = link("Never rowed? A first row")
LIKELY = heading("Likely, if you trained for it")
TOO_WIDE = """() => {
  const below = (root) => [...root.querySelectorAll("*")]
    .flatMap((each) => [each, ...(each.shadowRoot ? below(each.shadowRoot) : [])]);
  if (document.documentElement.scrollWidth <= innerWidth) return [];
  return below(document).filter((each) => each.getBoundingClientRect().right > innerWidth + 0.5)
    .map((each) => `${each.localName} ${each.id || each.getAttribute("class") || ""}`);
}"""
LEVEL_KEPT = """() => new Promise((tell) => {
  const opened = indexedDB.open("slipway");
  opened.onsuccess = () => {
    const asked = opened.result.transaction("athletes").objectStore("athletes").get("me");
    asked.onsuccess = () => {
      opened.result.close();
      tell(asked.result?.athlete.level === "novice");
    };
  };
})"""
SCRIPT = """\
title: Six-hundreds and seven-hundreds, worked through slowly
warm-up
5' r18 light
  focus: Long arms and patient legs while the hands are away
10' r18 hr 70% reserve
gap 30"
main
6 x 700m r28 2k+1 / 3' rest
2000m r30 race
"""


def give_a_result(browser: Browser, server: Server) -> None:
    browser.open(server.url + "/athlete")
    browser.type(field("Time"), "7:42")
    browser.click(button("Add this result"))
    browser.see(LIKELY)


def making_form(browser: Browser, server: Server) -> None:
    browser.open(server.url)
    browser.click(Target(role="radio", name="Intervals"))
    browser.click(Target(role="radio", name="Other"))
    browser.see(field("How many"))


def text_with_a_mistake(browser: Browser, server: Server) -> None:
    browser.open(server.url + "/write")
    browser.type(BOX, "700 r28 and a-word-that-goes-on-and-on-and-on-without-end")
    browser.see(words("Line 1, column 1"))


def plan_of_ones_own(browser: Browser, server: Server) -> None:
    write_plan(browser, server, SCRIPT)
    browser.see(heading("At the start line"))
    browser.click(button("With another gap"))


def built_in_plan(browser: Browser, server: Server) -> None:
    browser.open(server.url + "/plan/twenty-minutes-before-500m")
    browser.see(heading("At the start line"))


def first_row(browser: Browser, server: Server) -> None:
    browser.open(server.url + "/plan/first-row")
    browser.see(button("Row it"))


def results(browser: Browser, server: Server) -> None:
    browser.open(server.url + "/athlete")
    browser.see(heading("About you"))


def technique(browser: Browser, server: Server) -> None:
    browser.open(server.url + "/technique")
    browser.see(heading("The four positions"))


def settings(browser: Browser, server: Server) -> None:
    browser.open(server.url + "/settings")
    browser.see(heading("This device"))


def cautions(browser: Browser, server: Server) -> None:
    first_row(browser, server)
    browser.click(button("Row it"))
    browser.see(button("I have read this, go on"))


def set_up_card(browser: Browser, server: Server) -> None:
    cautions(browser, server)
    browser.click(button("I have read this, go on"))
    browser.see(button("Start rowing"))


PAGES = [
    making_form,
    text_with_a_mistake,
    plan_of_ones_own,
    built_in_plan,
    first_row,
    results,
    technique,
    settings,
    cautions,
    set_up_card,
]


def too_wide(browser: Browser) -> dict[tuple[int, int], list[str]]:
    found = {}
    for width, height in SIZES:
        browser.resize(width, height)
        browser.wait_for(f"() => innerWidth === {width}")
        found[width, height] = browser.evaluate(TOO_WIDE)
    return {size: elements for size, elements in found.items() if elements}


@pytest.mark.parametrize("known", [False, True])
def test_no_page_scrolls_sideways(chromium: Browser, server: Server, known: bool) -> None:
    if known:
        give_a_result(chromium, server)
    found = {}
    for page in PAGES:
        page(chromium, server)
        found[page.__name__] = too_wide(chromium)
        chromium.resize(390, 844)
    assert found == {page.__name__: {} for page in PAGES}


def test_no_kind_of_piece_makes_its_form_too_wide(chromium: Browser, server: Server) -> None:
    chromium.open(server.url)
    for kind in KINDS:
        chromium.click(Target(role="radio", name=kind))
        chromium.see(button("Make the session"))
        assert too_wide(chromium) == {}, kind


def is_in_sight(browser: Browser, target: Target) -> bool:
    """Whether all of it is in the window before anything is scrolled."""
    return bool(
        browser.evaluate(
            f"""(target) => {{
              const box = {QUERY}.find(target)[0].getBoundingClientRect();
              return scrollY === 0 && box.top >= 0 && box.bottom <= innerHeight;
            }}""",
            target.as_json(),
        )
    )


def top_of(browser: Browser, target: Target) -> float:
    return float(
        browser.evaluate(f"(target) => {QUERY}.find(target)[0].getBoundingClientRect().top", target.as_json())
    )


def test_a_newcomer_sees_a_first_row_without_scrolling(launch: Launch, server: Server) -> None:
    browser = launch("chromium", width=320, height=568)
    browser.open(server.url)
    browser.see(FIRST_ROW)
    assert is_in_sight(browser, FIRST_ROW)
    browser.click(FIRST_ROW)
    browser.see(heading("A first row"))


def test_a_first_row_stays_near_the_top_for_those_new_to_rowing_alone(
    chromium: Browser, server: Server
) -> None:
    chromium.open(server.url)
    chromium.see(FIRST_ROW)
    with_it = top_of(chromium, link("Your results"))
    chromium.open(server.url + "/plan/rate-ladder")
    chromium.see(button("Row it"))
    chromium.open(server.url)
    chromium.see(link(re.compile("^A ladder of rates, the same stroke")).nth(0))
    chromium.see_gone(FIRST_ROW)
    assert top_of(chromium, link("Your results")) == with_it, "it would push a link from under a finger"
    chromium.open(server.url + "/athlete")
    chromium.click(Target(role="radio", name="New to it"))
    chromium.wait_for(LEVEL_KEPT)
    chromium.open(server.url)
    chromium.see(FIRST_ROW)


def test_without_a_result_the_field_for_one_is_in_sight_on_a_plan(chromium: Browser, server: Server) -> None:
    for size in [(390, 844), (1280, 800)]:
        chromium.resize(*size)
        chromium.open(server.url + "/plan/two-kilometre-test")
        chromium.see(field("Time"))
        assert is_in_sight(chromium, field("Time"))


def test_a_plan_with_nothing_before_its_main_piece_says_why_there_is_no_readiness(
    chromium: Browser, server: Server
) -> None:
    chromium.open(server.url + "/plan/first-row")
    chromium.see(words(re.compile("^Nothing is rowed before a main piece here")))
    chromium.open(server.url + "/plan/two-kilometre-test")
    chromium.see(heading("At the start line"))
    assert chromium.count(words(re.compile("^Nothing is rowed before a main piece here"))) == 0
