"""An athlete finds a plan while there is signal, and reads it again when there is none."""

from __future__ import annotations

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.targets import heading, words

PLAN = "/plan/stroke-pyramid"
TITLE = "A pyramid counted in strokes"
KEPT = "() => navigator.serviceWorker.ready.then((worker) => worker.active.state === 'activated')"


def test_a_plan_opens_from_the_library_and_stays_when_the_server_is_gone(
    browser: Browser, server: Server
) -> None:
    browser.open(server.url)
    browser.see(heading("What are you rowing today?"))
    browser.see(words(TITLE))
    browser.wait_for(KEPT)
    server.kill()
    browser.open(server.url + PLAN)
    browser.see(heading(TITLE))
    browser.open(server.url)
    browser.see(heading("What are you rowing today?"))
    assert browser.problems() == []


def test_the_accessibility_checker_finds_nothing(chromium: Browser, server: Server) -> None:
    for path in ("/", PLAN):
        chromium.open(server.url + path)
        chromium.see(words(TITLE))
        assert accessibility_faults(chromium) == []


def test_an_address_without_a_plan_says_so(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + "/plan/nothing-here")
    chromium.see(words("there is no built-in plan of that name"))
