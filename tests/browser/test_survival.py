"""What happens to phones in a session: never a wrong place, never a lost session, one honest question."""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from dataclasses import dataclass

import pytest

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import ENGINES, Launch
from tests.browser.device import DEVICE, Device
from tests.browser.engines import Browser
from tests.browser.storage import stored
from tests.browser.targets import QUERY, button, css, heading, words
from tests.browser.test_rowing_offline import save_the_plan, start_rowing

WHOLE_BLOCK = 180
"""Seconds of the first block, three minutes at r20: 60 strokes of 3 s."""
ASKED = words("How do you want to go on?")
NEWER = (sys.executable, "-m", "tests.browser.newer_build")


@dataclass(frozen=True)
class Shown:
    """What the row screen shows of the first block."""

    seconds_left: int
    strokes_left: int


@pytest.fixture
def device(launch: Launch, server: Server) -> Iterator[Device]:
    """Chromium, rowing the first block since 30 s with the server gone."""
    yield from rowing(launch("chromium", preload=DEVICE), server)


def rowing(browser: Browser, server: Server) -> Iterator[Device]:
    device = Device(browser, server)
    save_the_plan(browser, server)
    start_rowing(browser)
    device.pass_time(10 + 30)
    server.kill()
    assert shown(device) == Shown(150, 50)
    yield device
    assert browser.problems() == []


def shown(device: Device) -> Shown:
    text = device.browser.wait_for(
        f"""() => {{
          const text = (css) => {QUERY}.find({{ css }}).map({QUERY}.visibleText).join();
          const [left, strokes] = [text(".big.digits"), text(".strokes .mid")];
          return /^\\d+:\\d\\d$/.test(left) && [left, strokes];
        }}"""
    )
    minutes, seconds = text[0].split(":")
    return Shown(int(minutes) * 60 + int(seconds), int(text[1]))


def at(seconds: float) -> Shown:
    """What is to be seen so many seconds into the first block; each stroke of it lasts 3 s."""
    left = WHOLE_BLOCK - seconds
    return Shown(-int(-left // 1), 60 - int(seconds // 3))


@pytest.mark.parametrize("engine", ENGINES)
def test_a_short_sleep_is_run_on_through_and_a_long_one_asks_even_after_a_reload(
    engine: str, launch: Launch, server: Server
) -> None:
    for device in rowing(launch(engine, preload=DEVICE), server):
        device.sleep(41)
        assert shown(device) == at(30 + 41 + 0.6)
        device.browser.see(words("You were away for 0:42: the clock ran on."))
        device.pass_time(2.2)
        device.sleep(70)
        device.browser.see(heading("You were away for 1:11"))
        assert shown(device) == at(73.8), "it stands where nobody looked any more"
        device.pass_time(2)
        device.reload(away=3)
        device.browser.see(ASKED)
        device.browser.click(button(re.compile("^From where I stopped")))
        device.pass_time(5 + 1)
        assert shown(device) == at(72 + 1), "the catch of the stroke that was under way, after a count-in"


def test_by_the_clock_a_long_absence_counts_and_a_freeze_is_no_different_from_a_sleep(device: Device) -> None:
    device.freeze(90)
    device.browser.click(button(re.compile("^By the clock")))
    assert shown(device) == at(120)
    device.freeze(50)
    assert shown(device) == at(170)


def test_a_clock_moved_by_an_hour_moves_nothing(device: Device) -> None:
    for hours in (1, -1):
        device.move_clock(hours * 3600)
        device.pass_time(0.8)
        device.browser.see(words(re.compile("clock was moved. The session kept its own time.$")))
    assert shown(device) == at(32)
    device.reload(away=8)
    assert shown(device) == at(40)
    device.hide()
    device.move_clock(-3600)
    device.pass_time(9.8)
    device.show()
    assert shown(device) == at(50)


def test_a_clock_set_back_while_the_browser_was_killed_is_asked_about(device: Device) -> None:
    device.kill("/row", away=-3600)
    device.browser.see(heading("You were away"))
    assert "clock was set back meanwhile, so nobody knows for how long." in device.browser.text()
    device.browser.click(button(re.compile("^From where I stopped")))
    device.pass_time(5 + 3)
    assert shown(device).seconds_left in (at(30).seconds_left, at(33).seconds_left)


def test_on_a_full_device_the_session_goes_on_says_so_and_is_stored_when_there_is_room(
    device: Device,
) -> None:
    full = words("No room left on this device: keep this page open")
    device.storage("full")
    device.browser.click(button("Hold"))
    device.pass_time(20)
    device.browser.see(full)
    assert accessibility_faults(device.browser) == []
    device.browser.click(button("Go on"))
    device.pass_time(5 + 10)
    assert shown(device) == at(40)
    device.storage("well")
    device.pass_time(2)
    device.browser.see_gone(full)
    device.kill("/row", away=8)
    assert shown(device) == at(50)
    facts = stored(device.browser, "facts")
    assert [record["fact"]["kind"] for record in facts] == ["started", "held", "went-on"]


def test_an_end_that_cannot_be_stored_is_said_and_stored_as_soon_as_it_can_be(device: Device) -> None:
    device.storage("gone")
    device.browser.click(button("End"))
    device.browser.click(button("End it here"))
    device.browser.see(words(re.compile("^This session is not stored yet: storage does not answer")))
    assert accessibility_faults(device.browser) == []
    device.storage("well")
    device.browser.see_gone(words(re.compile("^This session is not stored yet")))
    assert [record["state"] for record in stored(device.browser, "log")] == ["ended"]


def test_storage_that_does_not_answer_is_told_asked_again_and_loses_nothing(device: Device) -> None:
    silent = words(re.compile("^Storage on this device does not answer"))
    mark = words("Nothing is stored just now: keep this page open")
    device.storage("silent")
    device.browser.click(button("Hold"))
    device.browser.see(mark)
    device.pass_time(20)
    device.browser.click(button("Go on"))
    device.pass_time(5)
    device.storage("well")
    device.browser.see_gone(mark)
    facts = stored(device.browser, "facts")
    assert [record["fact"]["kind"] for record in facts] == ["started", "held", "went-on"]

    device.storage("silent")
    device.reload(away=8)
    device.browser.see(silent)
    assert device.browser.count(heading("Nothing is being rowed here")) == 0
    assert accessibility_faults(device.browser) == []
    device.storage("well")
    assert shown(device) == at(30 + 8)
    device.browser.see_gone(silent)


def test_dropped_connections_are_opened_anew_and_nothing_is_lost(device: Device) -> None:
    device.drop_connections()
    device.browser.click(button("Hold"))
    device.settle()
    device.drop_connections()
    device.pass_time(1)
    device.browser.click(button("Go on"))
    device.pass_time(5 + 2)
    assert device.browser.count(words(re.compile("keep this page open"))) == 0
    device.reload(away=8)
    assert shown(device) == at(40)


def test_a_second_tab_takes_over_at_the_same_stroke_and_the_first_can_take_it_back(device: Device) -> None:
    browser, elsewhere = device.browser, heading("This session is running in another tab")
    device.new_tab("/row")
    browser.see(elsewhere)
    browser.click(button("Take it over here"))
    device.pass_time(10)
    assert shown(device) == at(40)
    browser.click(button("Hold"))
    device.settle()
    device.turn_to_tab(0)
    browser.see(elsewhere)
    browser.click(button("Take it over here"))
    browser.click(button("Go on"))
    device.pass_time(5 + 1)
    assert shown(device) == at(40)
    device.turn_to_tab(1)
    browser.see(elsewhere)


def test_a_new_version_waits_until_the_session_is_over(device: Device) -> None:
    browser, server = device.browser, device.server
    server.deploy(NEWER)
    browser.evaluate("async () => { await (await navigator.serviceWorker.getRegistration()).update(); }")
    browser.wait_for("async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)")
    device.pass_time(10)
    assert shown(device) == at(40)
    device.reload(away=10)
    assert shown(device) == at(50), (
        "the old version goes on with it, though its files are gone from the server"
    )
    device.open("/", away=5)
    browser.see(button("Go back to it"))
    assert browser.count(button("Change to it now")) == 0
    browser.click(button("Go back to it"))
    assert shown(device) == at(55)
    browser.click(button("End"))
    browser.click(button("End it here"))
    browser.click(button("Back to the plans"))
    browser.click(button("Change to it now"))
    browser.wait_for("() => window.isNewerBuild === true")
    browser.see(css("slipway-app"))


def test_the_version_that_comes_after_a_kill_goes_on_with_the_session(device: Device) -> None:
    device.server.deploy(NEWER)
    device.browser.evaluate(
        "async () => { await (await navigator.serviceWorker.getRegistration()).update(); }"
    )
    device.browser.wait_for("async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)")
    device.kill("/row", away=20)
    assert shown(device) == at(50)
    assert device.browser.evaluate("() => window.isNewerBuild === true")
