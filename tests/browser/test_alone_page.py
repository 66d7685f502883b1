"""The one-file page, opened from disk with no server anywhere: it runs the whole session."""

from __future__ import annotations

from pathlib import Path
from typing import cast

import pytest

from planner.notation.reader import read
from planner.timeline import compile_timeline
from tests.browser.accessibility import accessibility_faults
from tests.browser.chromium import Chromium
from tests.browser.conftest import ENGINES, Launch
from tests.browser.engines import Browser
from tests.browser.quick_clock import quick_clock
from tests.browser.storage import HOLDS_SOMETHING
from tests.browser.targets import button, field, heading, words
from tests.builders import rower_of_7_42
from web.exports.alone_page import alone_page
from web.settings import Settings

TITLE = "</title></script><script>document.title = 'gone'</script>"
PLAN = f"""\
title: {TITLE}
main
20" r18 light
  focus: Long arms
10" r24 full
"""


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """The file as it is downloaded, for the rower of the examples."""
    page = (Settings().dist / "alone.html").read_text(encoding="utf-8")
    path = tmp_path / "session.html"
    path.write_bytes(alone_page(page, compile_timeline(read(PLAN)), rower_of_7_42()))
    return path


def start(browser: Browser, file: Path) -> None:
    browser.open(file.as_uri())
    browser.see(heading(TITLE))
    browser.see(words("Saved on this device. It will run with no signal."))
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.click(button("Start rowing"))
    browser.see(button("Hold"))


@pytest.mark.parametrize("engine", ENGINES)
def test_it_rows_to_the_end_from_disk(engine: str, launch: Launch, file: Path) -> None:
    browser = launch(engine, preload=quick_clock(8))
    start(browser, file)
    browser.see(heading("Rowed to the end"))
    browser.click(button("Back to the plan"))
    browser.see(words("Splits from a 2 km in 7:42.0, as this page was saved."))
    assert browser.problems() == []


def test_it_asks_nobody_for_anything_and_comes_back_to_its_session_after_a_kill(
    launch: Launch, file: Path
) -> None:
    chromium = cast(Chromium, launch("chromium"))
    asked: list[str] = []
    chromium.page.on("request", lambda request: asked.append(request.url))
    chromium.open(file.as_uri())
    chromium.see(heading(TITLE))
    assert accessibility_faults(chromium) == []
    chromium.type(field("Time"), "8:20")
    chromium.press("Tab")
    chromium.see(words("Splits from your 2 km in 8:20.0."))
    start(chromium, file)
    assert {url for url in asked if not url.startswith("data:")} == {file.as_uri()}
    (database,) = chromium.evaluate("async () => (await indexedDB.databases()).map(({ name }) => name)")
    chromium.wait_for(HOLDS_SOMETHING, "sessions", database)
    chromium.kill()
    chromium.reopen()
    chromium.open(file.as_uri())
    chromium.see(button("Hold"))
    assert chromium.problems() == []
