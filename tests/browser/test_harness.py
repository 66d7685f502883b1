"""The harness itself, on a small page of its own: each engine does what the journeys rely on."""

from __future__ import annotations

import io
import re
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from PIL import Image

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import ENGINES, Launch
from tests.browser.engines import Browser, Options
from tests.browser.targets import Target, button, css, field, heading, words

COUNT = css("#count")
SERVE = Path(__file__).parent / "practice_site" / "serve.py"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """The practice page, served; it counts strokes for each path by itself."""
    server = Server(tmp_path_factory.mktemp("site"), command=(sys.executable, str(SERVE)))
    server.start()
    yield server
    server.kill()


@pytest.fixture
def network_gone(site: Server) -> Iterator[None]:
    """The server killed, for this test."""
    site.kill()
    yield
    site.start()


@pytest.fixture(scope="module", params=ENGINES)
def engine(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """One browser of each engine for the whole file: starting one costs up to 3 s."""
    browser = ENGINES[request.param](tmp_path_factory.mktemp(request.param), Options())
    yield browser
    browser.close()


@pytest.fixture
def page_url(site: Server, request: pytest.FixtureRequest) -> str:
    """An address of the test's own, with its own count."""
    return f"{site.url}/{request.function.__name__}"


@pytest.fixture
def kept(engine: Browser, page_url: str) -> Browser:
    """A browser with the practice page open and kept by its service worker."""
    engine.open(page_url)
    engine.wait_for("() => document.documentElement.dataset.kept === 'yes'")
    engine.see(words("0 strokes so far"))
    return engine


def test_a_page_that_cannot_be_reached_is_told(engine: Browser, site: Server) -> None:
    nobody = f"http://127.0.0.1:{site.port + 1}/"
    with pytest.raises(AssertionError, match="cannot open"):
        engine.open(nobody)


def test_a_phone_sized_page_opens_and_nothing_went_wrong_in_it(kept: Browser) -> None:
    assert kept.evaluate("() => [innerWidth, innerHeight]") == [390, 844]
    assert kept.problems() == []


def test_text_is_read_as_composed_through_shadow_roots_and_slots(kept: Browser) -> None:
    assert kept.text().split("\n")[:2] == ["Practice page", "0 strokes so far"]
    assert "Nobody sees this" not in kept.text()


def test_elements_are_found_by_role_name_words_and_pattern(kept: Browser) -> None:
    kept.see(heading("Practice page"))
    kept.see(button(re.compile("^Take a")))
    assert kept.count(Target(role="heading", name="Practice")) == 0
    assert kept.count(words(re.compile("strokes so"))) == 1
    assert kept.count(words("Nobody sees this")) == 0


def test_one_of_several_is_picked_by_its_place(kept: Browser) -> None:
    both = Target(role="button")
    with pytest.raises(AssertionError, match="2 elements are it"):
        kept.click(both, seconds=0)
    assert [kept.text(both.nth(place)) for place in (0, 1)] == ["Take a stroke", "Go wrong"]


def test_a_click_reaches_a_button_inside_a_shadow_root(kept: Browser) -> None:
    kept.click(button("Take a stroke"))
    kept.see(words("1 strokes so far"))
    kept.see_gone(words("0 strokes so far"))


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
    for size in ([844, 390], [1280, 800], [390, 844]):
        kept.resize(*size)
        assert kept.evaluate("() => [innerWidth, innerHeight]") == size


def test_an_awaited_result_comes_back_and_what_is_thrown_is_told(kept: Browser) -> None:
    assert kept.evaluate("async (a, b) => ({ sum: (await a) + b })", 2, 3) == {"sum": 5}
    with pytest.raises(AssertionError, match="boat is full"):
        kept.evaluate("() => { throw new Error('boat is full') }")


def test_problems_in_the_page_are_written_down(kept: Browser) -> None:
    kept.click(button("Go wrong"))
    kept.wait_for("() => window.problemsSeenByTests.length >= 3")
    seen = "\n".join(kept.problems())
    assert re.search("caught a crab", seen)
    assert re.search("missed the start", seen)
    assert re.search("content policy: style-src", seen)


def test_a_fault_planted_in_a_shadow_root_is_found_by_the_accessibility_checker(kept: Browser) -> None:
    assert accessibility_faults(kept) == []
    kept.evaluate(
        """() => {
          const picture = document.createElement("img");
          picture.src = "/page.png";
          document.querySelector("tally-box").shadowRoot.append(picture);
        }"""
    )
    faults = [tuple(fault.split(": ")[:2]) for fault in accessibility_faults(kept)]
    assert faults == [("light", "image-alt"), ("dark", "image-alt")]


def test_the_audio_clock_runs_after_a_real_click(kept: Browser) -> None:
    kept.evaluate(
        "() => { addEventListener('click', () => { window.sound = new AudioContext(); }, { once: true }) }"
    )
    kept.click(button("Take a stroke"))
    kept.wait_for("() => window.sound?.state === 'running' && window.sound.currentTime > 0.3")


@pytest.mark.usefixtures("kept", "network_gone")
def test_with_the_server_killed_a_kept_page_reloads_and_deep_links_open(
    engine: Browser, page_url: str
) -> None:
    engine.reload()
    engine.see(heading("Practice page"))
    engine.open(page_url + "/some/plan?from=link#here")
    engine.click(button("Take a stroke"))
    engine.see(words("1 strokes so far"))


def test_a_second_tab_shares_what_is_stored(kept: Browser, page_url: str) -> None:
    kept.click(button("Take a stroke"))
    kept.see(words("1 strokes so far"))
    number = kept.new_tab()
    kept.open(page_url)
    kept.click(button("Take a stroke"))
    kept.see(words("2 strokes so far"))
    kept.turn_to_tab(number - 1)
    assert kept.text(COUNT) == "1"


@pytest.mark.usefixtures("kept", "network_gone")
def test_a_killed_browser_comes_back_with_all_it_had_stored(engine: Browser, page_url: str) -> None:
    engine.open(page_url)
    engine.click(button("Take a stroke"))
    engine.see(words("1 strokes so far"))
    engine.kill()
    engine.reopen()
    engine.open(page_url)
    engine.see(words("1 strokes so far"))


def test_waiting_goes_on_while_the_page_changes_under_it(kept: Browser, page_url: str) -> None:
    for turn in range(10):
        kept.evaluate(
            "(to, wait) => { setTimeout(() => location.assign(to), wait); }", f"{page_url}/{turn}", 20 * turn
        )
        kept.wait_for("(end) => location.pathname.endsWith(end)", f"/{turn}")
        kept.see(words("0 strokes so far"))
        kept.click(button("Take a stroke"))
        kept.see(words("1 strokes so far"))


def test_a_server_killed_and_started_again_answers_at_the_same_address(engine: Browser, site: Server) -> None:
    site.kill()
    site.start()
    engine.open(site.url)
    assert engine.evaluate("async () => (await fetch('/healthz')).status") == 200


def test_wishes_and_a_script_before_the_pages_own_are_there_from_the_start(
    engine: Browser, page_url: str
) -> None:
    for wished in (True, False):
        engine.close()
        engine.reopen(dark=wished, reduced_motion=wished, preload="window.wasFirst = !document.body;")
        engine.open(page_url)
        assert engine.evaluate("() => window.wasFirst") is True
        assert engine.evaluate("() => matchMedia('(prefers-color-scheme: dark)').matches") is wished
        assert engine.evaluate("() => matchMedia('(prefers-reduced-motion: reduce)').matches") is wished


def test_a_wait_in_vain_says_what_was_wanted_and_what_the_page_shows(kept: Browser) -> None:
    with pytest.raises(AssertionError, match=r"(?s)words 'Bon voyage'.*Practice page"):
        kept.see(words("Bon voyage"), seconds=0.1)


@pytest.mark.parametrize("throttled", [True, False])
def test_only_a_throttled_chromium_keeps_pages_for_going_back(
    throttled: bool, launch: Launch, site: Server
) -> None:
    chromium = launch("chromium", throttled=throttled)
    chromium.open(site.url + "/first.html")
    chromium.wait_for("() => document.documentElement.dataset.kept === 'yes'")
    chromium.evaluate("() => { window.stillHere = true; }")
    chromium.open(site.url + "/second.html")
    chromium.evaluate("() => { history.back(); }")
    chromium.wait_for("() => location.pathname === '/first.html' && document.readyState === 'complete'")
    assert chromium.evaluate("() => window.stillHere === true") is throttled
