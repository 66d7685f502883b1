"""Staff put a plan on a tablet from their phone, start it and clear it; the network goes and comes back."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.pressing import let_a_slip_pass, press_twice
from tests.browser.storage import HOLDS_NOTHING
from tests.browser.targets import button, css, heading, link, words
from tests.browser.test_links import ADDRESS

TITLE = "A ladder of rates, the same stroke"
RUNNING = words(re.compile("^Warm-up · block 1 of"))


def clear(phone: Browser) -> None:
    """While a session runs on it, which is asked about."""
    phone.click(button("Clear"))
    let_a_slip_pass(phone)
    phone.click(button("Yes, clear"))


def test_a_wall_is_led_from_a_phone_and_goes_on_without_the_network(launch: Launch, server: Server) -> None:
    phone, tablet = launch("firefox"), launch("chromium", width=1280, height=800, dark=True)
    phone.open(f"{server.url}/walls")
    phone.see(words(re.compile("^A wall is a screen for the whole room")))
    phone.click(button("Make a wall"))
    phone.see(words("No tablet has opened its address yet."))
    tablet.open(phone.wait_for(ADDRESS, "Address for the tablet"))
    key_link = phone.wait_for(ADDRESS, "Key link")
    assert accessibility_faults(phone) == []
    phone.click(button("Hide its address and its key"))
    let_a_slip_pass(phone)
    shown = press_twice(phone, button("Its address and its key"))
    assert shown == "Hide its address and its key", "a slip does not hide it again"
    tablet.see(heading("This wall is ready"))
    assert accessibility_faults(tablet) == []

    phone.see(words("A tablet follows it."))
    phone.click(button("Choose a plan"))
    phone.type(css("#words"), "ladder")
    assert accessibility_faults(phone) == []
    phone.click(link(re.compile(TITLE)))
    let_a_slip_pass(phone)
    phone.click(button("Show it now"))
    phone.see(words("It is on the wall."))
    tablet.see(heading(TITLE))
    phone.click(button("Line it up"))
    tablet.see(words(f"Then: {TITLE}"))
    assert accessibility_faults(phone) == []
    tablet.wait_for("() => navigator.serviceWorker.ready.then(() => true)")
    phone.click(button("Start in 10 s"))
    tablet.see(RUNNING)
    phone.click(button("Next one"))
    let_a_slip_pass(phone)
    phone.click(button("Yes, next one"))
    tablet.see_gone(RUNNING)
    phone.see(words(re.compile("not started")))
    tablet.see(heading(TITLE))
    phone.click(button("Start in 10 s"))
    tablet.see(RUNNING)

    server.kill()
    tablet.see(RUNNING)
    tablet.see(words(re.compile("no signal since")))
    tablet.open(server.url + "/wall")
    tablet.see(RUNNING)
    clear(phone)
    phone.see(words(re.compile("^The server did not answer: it is not known whether that reached the wall")))

    server.start()
    other = phone.new_tab()
    phone.open(key_link)
    phone.see(heading(re.compile("^Wall 1 ")))
    assert "#" not in phone.evaluate("() => location.href")
    assert other == 1
    address = tablet.evaluate("() => location.href")
    tablet.open("about:blank")
    clear(phone)
    phone.see(words(re.compile("^(The wall is clear|The server has it)")))
    tablet.open(address)
    tablet.see(heading("This wall is ready"))
    tablet.wait_for(HOLDS_NOTHING, "sessions")

    phone.open(f"{server.url}/walls?plan=rate-ladder")
    phone.click(button("Show it now"))
    tablet.see(heading(TITLE))
    phone.click(button("Clear"))
    tablet.see(heading("This wall is ready"))
    assert tablet.problems() == []
    assert phone.problems() == []
