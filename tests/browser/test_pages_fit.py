"""No page scrolls sideways, at any width from the smallest phone to a desk, with a result and without."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.targets import Target, button, field, heading, words

SIZES = [(320, 568), (360, 640), (390, 844), (568, 320), (768, 1024), (1280, 800)]
KINDS = ["Test piece", "Intervals", "Steady", "Capped rate", "Technique", "Warm-up alone"]
LIKELY = heading("Likely, if you trained for it")
TOO_WIDE = """() => {
  const below = (root) => [...root.querySelectorAll("*")]
    .flatMap((each) => [each, ...(each.shadowRoot ? below(each.shadowRoot) : [])]);
  if (document.documentElement.scrollWidth <= innerWidth) return [];
  return below(document).filter((each) => each.getBoundingClientRect().right > innerWidth + 0.5)
    .map((each) => `${each.localName} ${each.id || each.getAttribute("class") || ""}`);
}"""
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
    browser.open(server.url)
    browser.type(
        field("Write or paste your own"), "700 r28 and a-word-that-goes-on-and-on-and-on-without-end"
    )
    browser.click(button("Make this plan"))
    browser.see(words("Line 1, column 1"))


def plan_of_ones_own(browser: Browser, server: Server) -> None:
    browser.open(server.url)
    browser.type(field("Write or paste your own"), SCRIPT)
    browser.click(button("Make this plan"))
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


def cautions_and_card(browser: Browser, server: Server) -> None:
    first_row(browser, server)
    browser.click(button("Row it"))
    browser.see(button("I have read this, go on"))


def set_up_card(browser: Browser, server: Server) -> None:
    cautions_and_card(browser, server)
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
    cautions_and_card,
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
@pytest.mark.parametrize("page", PAGES)
def test_no_page_scrolls_sideways(
    chromium: Browser, server: Server, page: Callable[[Browser, Server], None], known: bool
) -> None:
    if known:
        give_a_result(chromium, server)
    page(chromium, server)
    assert too_wide(chromium) == {}


def test_no_kind_of_piece_makes_its_form_too_wide(chromium: Browser, server: Server) -> None:
    chromium.open(server.url)
    for kind in KINDS:
        chromium.click(Target(role="radio", name=kind))
        chromium.see(button("Make the session"))
        assert too_wide(chromium) == {}, kind
