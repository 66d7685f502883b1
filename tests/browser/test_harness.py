"""The harness itself, on a small page of its own: each engine does what the journeys rely on, or says that it cannot."""

from __future__ import annotations

import io
import re
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image

from tests.browser.app_server import Server
from tests.browser.conftest import ENGINES, Launch
from tests.browser.engines import Browser
from tests.browser.targets import Target, button, css, field, heading, words

COUNT = css("#count")
SERVE = Path(__file__).parent / "practice_site" / "serve.py"


@pytest.fixture
def site(tmp_path: Path) -> Iterator[Server]:
    """The practice page, served."""
    server = Server(tmp_path / "site", command=(sys.executable, str(SERVE)))
    server.start()
    yield server
    server.kill()


@pytest.fixture
def kept(browser: Browser, site: Server) -> Browser:
    """A browser with the practice page open and kept by its service worker."""
    browser.open(site.url + "/")
    browser.wait_for("() => document.documentElement.dataset.kept === 'yes'")
    return browser


def test_a_phone_sized_page_is_open_and_nothing_went_wrong_in_it(kept: Browser) -> None:
    assert kept.evaluate("() => [innerWidth, innerHeight]") == [390, 844]
    assert kept.problems() == []


def test_text_is_read_as_composed_through_shadow_roots_and_slots(kept: Browser) -> None:
    kept.see(words("0 strokes so far"))
    assert kept.text().split("\n")[:2] == ["Practice page", "0 strokes so far"]
    assert "Nobody sees this" not in kept.text()


def test_elements_are_found_by_role_name_words_and_pattern(kept: Browser) -> None:
    kept.see(heading("Practice page"))
    kept.see(button(re.compile("^Take a")))
    assert kept.count(Target(role="heading", name="Practice")) == 0
    assert kept.count(words(re.compile("strokes so"))) == 1
    assert kept.count(words("Nobody sees this")) == 0


def test_a_click_reaches_a_button_inside_a_shadow_root(kept: Browser) -> None:
    kept.click(button("Take a stroke"))
    kept.see(words("1 strokes so far"))


def test_typing_reaches_a_labelled_field_and_replaces_what_was_there(kept: Browser) -> None:
    kept.type(field("Note"), "hard")
    kept.type(field("Note"), "easy")
    kept.see(words("You wrote easy"))


def test_keys_reach_the_element_that_has_the_keyboard(kept: Browser) -> None:
    kept.type(field("Note"), "x")
    assert kept.focused_name() == "Note"
    kept.press("Escape")
    kept.see(words("Escaped"))


def test_a_screenshot_is_a_picture_of_the_page_in_its_size(kept: Browser) -> None:
    picture = Image.open(io.BytesIO(kept.screenshot()))
    assert picture.size == (390, 844)
    assert picture.convert("L").getextrema() == (0, 255)


def test_the_page_takes_the_size_of_a_phone_on_its_side_and_of_a_desk(kept: Browser) -> None:
    for size in ([844, 390], [1280, 800]):
        kept.resize(*size)
        assert kept.evaluate("() => [innerWidth, innerHeight]") == size


def test_an_awaited_result_comes_back_and_what_is_thrown_is_told(kept: Browser) -> None:
    assert kept.evaluate("async (a, b) => ({ sum: (await a) + b })", 2, 3) == {"sum": 5}
    with pytest.raises(AssertionError, match="boat is full"):
        kept.evaluate("() => { throw new Error('boat is full') }")


def test_with_the_server_killed_the_kept_page_reloads_and_deep_links_open(kept: Browser, site: Server) -> None:
    site.kill()
    kept.reload()
    kept.see(heading("Practice page"))
    kept.open(site.url + "/some/plan?from=link#here")
    kept.click(button("Take a stroke"))
    kept.see(words("1 strokes so far"))


def test_with_the_server_killed_a_page_that_was_never_kept_cannot_be_opened(browser: Browser, site: Server) -> None:
    site.kill()
    with pytest.raises(AssertionError, match="cannot open"):
        browser.open(site.url + "/")


def test_a_server_killed_and_started_again_answers_at_the_same_address(browser: Browser, site: Server) -> None:
    site.kill()
    site.start()
    browser.open(site.url + "/")
    browser.see(heading("Practice page"))


def test_a_killed_browser_comes_back_with_all_it_had_stored(kept: Browser, site: Server) -> None:
    kept.click(button("Take a stroke"))
    kept.see(words("1 strokes so far"))
    site.kill()
    kept.kill()
    kept.reopen()
    kept.open(site.url + "/")
    kept.see(words("1 strokes so far"))


def test_a_second_tab_shares_what_is_stored(kept: Browser, site: Server) -> None:
    kept.click(button("Take a stroke"))
    kept.see(words("1 strokes so far"))
    number = kept.new_tab()
    kept.open(site.url + "/")
    kept.see(words("1 strokes so far"))
    kept.click(button("Take a stroke"))
    kept.see(words("2 strokes so far"))
    kept.turn_to_tab(number - 1)
    assert kept.text(COUNT) == "1"


def test_problems_in_the_page_are_written_down(kept: Browser) -> None:
    kept.evaluate("() => { setTimeout(() => { throw new Error('caught a crab') }) }")
    kept.evaluate("() => { Promise.reject(new Error('missed the start')) }")
    kept.evaluate("() => { document.body.setAttribute('style', 'color: red') }")
    kept.wait_for("() => window.problemsSeenByTests.length >= 3")
    seen = "\n".join(kept.problems())
    assert re.search("caught a crab", seen)
    assert re.search("missed the start", seen)
    assert re.search("content policy: style-src", seen)


def test_the_audio_clock_runs_after_a_real_click(kept: Browser) -> None:
    kept.evaluate(
        "() => { addEventListener('click', () => { window.sound = new AudioContext(); }, { once: true }) }"
    )
    kept.click(button("Take a stroke"))
    kept.wait_for("() => window.sound?.state === 'running' && window.sound.currentTime > 0.3")


@pytest.mark.parametrize("engine", ENGINES)
def test_wishes_and_a_script_before_the_pages_own_are_there_from_the_start(
    engine: str, launch: Launch, site: Server
) -> None:
    browser = launch(engine, dark=True, reduced_motion=True, preload="window.wasFirst = !document.body;")
    browser.open(site.url + "/")
    assert browser.evaluate("() => window.wasFirst") is True
    assert browser.evaluate("() => matchMedia('(prefers-color-scheme: dark)').matches") is True
    assert browser.evaluate("() => matchMedia('(prefers-reduced-motion: reduce)').matches") is True
    browser.close()
    browser.reopen(dark=False, reduced_motion=False)
    browser.open(site.url + "/")
    assert browser.evaluate("() => matchMedia('(prefers-color-scheme: dark)').matches") is False
    assert browser.evaluate("() => matchMedia('(prefers-reduced-motion: reduce)').matches") is False


def test_a_wait_in_vain_says_what_was_wanted_and_what_the_page_shows(kept: Browser) -> None:
    with pytest.raises(AssertionError, match=r"(?s)words 'Bon voyage'.*Practice page"):
        kept.see(words("Bon voyage"), seconds=0.1)
