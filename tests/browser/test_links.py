"""A coach sends a plan; an athlete opens it on another device and rows it with no server. And bad links."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any, cast

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.later_files import LATER_KEPT
from tests.browser.targets import QUERY, button, css, field, heading, link, words
from tests.shared import links
from tests.web.codes import read_picture
from web.link_codec import decode, encode

PLAN = "/plan/rate-ladder"
TITLE = "A ladder of rates, the same stroke"
SAVED = words("Saved on this device. It will run with no signal.")
CARRIES = words("This code carries the whole plan.")
MAKE_SHORT = button("Make the short link")
GOOD = links.read(links.KEPT)["payload"]
GOOD_TITLE = links.read(links.KEPT)["plan"]["title"]
DRAWN = f"""() => {QUERY}.find({{ css: 'qr-code' }})[0].shadowRoot.querySelector('path').getAttribute('d')"""
ONLY_THE_LAST_IS_COPIED = f"""() => {{
  const said = {QUERY}.find({{ words: "Copied." }});
  const [last] = {QUERY}.find({{ role: "heading", name: "Link that carries the plan" }});
  return said.length === 1 && said[0].getBoundingClientRect().top > last.getBoundingClientRect().top;
}}"""
ADDRESS = """(label) => window.shareLinks?.[label] ?? (() => {
  const seek = (root) => {
    for (const element of root.querySelectorAll("*")) {
      if (element.localName === "share-link" && element.label === label) return element.address;
      const found = element.shadowRoot && seek(element.shadowRoot);
      if (found) return found;
    }
    return "";
  };
  return seek(document);
})()"""


def test_a_plan_goes_from_a_coach_to_an_athlete_who_rows_it_with_no_server(
    launch: Launch, server: Server
) -> None:
    coach = cast(Chromium, launch("chromium"))
    coach.open(server.url + PLAN)
    coach.click(button("Share"))
    carrying = coach.wait_for(ADDRESS, "Link that carries the plan")
    coach.see(MAKE_SHORT)
    coach.click(MAKE_SHORT)
    short = coach.wait_for(ADDRESS, "Short link")
    coach.see(words(re.compile("open on this one alone. For others in the room, run make phone")))
    coach.click(button("Copy").nth(0))
    coach.see(words("Copied."))
    coach.click(button("Copy").nth(1))
    coach.wait_for(ONLY_THE_LAST_IS_COPIED)
    assert accessibility_faults(coach) == []
    coach.see(CARRIES)
    coach.evaluate(SCROLL_TO_CODE)
    assert read_picture(coach.screenshot()) == carrying
    assert read_picture(saved(coach, "PNG")) == carrying
    assert f'd="{coach.evaluate(DRAWN)}"' in saved(coach, "SVG").decode(), "as on the screen"

    athlete = launch("firefox")
    athlete.open(short)
    athlete.see(heading(TITLE))
    athlete.see(SAVED)
    athlete.wait_for(LATER_KEPT)
    server.kill()
    athlete.open(carrying)
    athlete.see(words("It came by a link, and is kept on this device as it was sent."))
    athlete.type(field("Time"), "7:42.0")
    athlete.press("Enter")
    athlete.see(words(re.compile("^Splits from your 2 km in 7:42.0")))
    athlete.open(short)
    athlete.see(heading(TITLE))
    athlete.click(button("Row it"))
    athlete.click(button("I have read this, go on"))
    athlete.click(button("Start rowing"))
    athlete.see(css(".big.digits"))
    assert athlete.problems() == []

    coach.reload()
    coach.click(button("Share"))
    coach.click(MAKE_SHORT)
    coach.see(words(re.compile("so there is no short link just now")))
    assert coach.wait_for(ADDRESS, "Link that carries the plan") == carrying
    coach.see(CARRIES)


def saved(browser: Chromium, kind: str) -> bytes:
    """The picture of the code that the browser is given to keep."""
    with browser.page.expect_download() as coming:
        browser.click(button(f"Save it as {kind}"))
    return Path(coming.value.path()).read_bytes()


SCROLL_TO_CODE = """() => {
  const seek = (root) => {
    for (const element of root.querySelectorAll("*")) {
      if (element.localName === "qr-code") element.scrollIntoView({ block: "end" });
      if (element.shadowRoot) seek(element.shadowRoot);
    }
  };
  seek(document);
}"""


def test_a_link_that_carries_its_plan_opens_where_the_app_is_kept_and_the_server_gone(
    browser: Browser, server: Server
) -> None:
    browser.open(server.url)
    browser.see(heading("What are you rowing today?"))
    browser.wait_for("() => navigator.serviceWorker.ready.then(() => true)")
    browser.open(server.url + PLAN)
    browser.see(SAVED)
    browser.wait_for(LATER_KEPT)
    server.kill()
    browser.open(f"{server.url}/p#{GOOD}")
    browser.see(heading(GOOD_TITLE))
    browser.see(button("Row it"))
    assert browser.problems() == []


# --- Bad links


def mutated() -> Iterator[str]:
    """Two hundred: cut, doubled, changed in a letter, and spoilt under a true checksum."""
    chance = random.Random(8)
    for number in range(200):
        at = chance.randrange(1, len(GOOD))
        match number % 4:
            case 0:
                yield GOOD[:at]
            case 1:
                yield GOOD + GOOD[at:]
            case 2:
                yield GOOD[:at] + chance.choice("AZaz09-_%.") + GOOD[at + 1 :]
            case _:
                yield links.sealed(1, chance.randbytes(60))


VISIT = """async (payloads) => {
  const seek = (root, name) => {
    for (const element of root.querySelectorAll("*")) {
      if (element.localName === name) return element;
      const found = element.shadowRoot && seek(element.shadowRoot, name);
      if (found) return found;
    }
  };
  const shown = [];
  for (const payload of payloads) {
    const started = performance.now();
    location.hash = payload;
    const opened = seek(document, "link-opened");
    let heading = "";
    const settled = () =>
      opened.carried === location.hash.slice(1) && heading && !heading.startsWith("Opening");
    while (!settled() && performance.now() - started < 5000) {
      await new Promise((done) => setTimeout(done));
      heading = seek(opened.shadowRoot, "h1")?.textContent ?? "";
    }
    const told = opened.shadowRoot.querySelector("[role=alert]")?.textContent ?? "";
    shown.push({ heading, told, took: performance.now() - started });
  }
  return shown;
}"""


def test_two_hundred_spoilt_links_each_show_a_sentence_and_never_a_blank_page(
    chromium: Browser, server: Server
) -> None:
    chromium.open(f"{server.url}/p#x")
    chromium.see(heading("This link cannot be opened"))
    shown: list[dict[str, Any]] = chromium.evaluate(VISIT, [*dict.fromkeys(mutated())])
    assert len(shown) > 150
    for each in shown:
        assert each["heading"] == GOOD_TITLE or len(each["told"]) > 40, each
    assert sorted(each["took"] for each in shown)[len(shown) // 2] < 200
    assert chromium.problems() == []


def test_what_is_wrong_with_a_link_is_told_by_its_kind(chromium: Browser, server: Server) -> None:
    chromium.open(f"{server.url}/p")
    for payload, told in (
        ("", "holds no plan"),
        (GOOD[:-9], "damaged or was cut short"),
        (links.sealed(2, b"later"), "made by a newer Slipway"),
        (links.sealed(1, links.packed(b"\0" * 5_000_000)), "too long"),
        (links.sealed(1, links.packed(b"{}")), "is no plan"),
        (GOOD + GOOD, "stands there twice"),
    ):
        chromium.evaluate("(payload) => { location.hash = payload; }", payload)
        chromium.see(words(re.compile(told)))
    chromium.click(link("Open it once"))
    chromium.see(heading(GOOD_TITLE))
    chromium.open(f"{server.url}/p/{'a' * 16}")
    chromium.see(words(re.compile("^there is no plan of that name on this server")))


def test_the_accessibility_checker_finds_nothing(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + PLAN)
    chromium.click(button("Share"))
    chromium.see(CARRIES)
    assert accessibility_faults(chromium) == []
    chromium.press("Escape")
    chromium.see_gone(CARRIES)
    chromium.open(f"{server.url}/p#{GOOD}{GOOD}")
    chromium.see(link("Open it once"))
    assert accessibility_faults(chromium) == []


def test_a_server_that_asks_for_a_key_is_given_it_once(launch: Launch, tmp_path: Path) -> None:
    server = Server(tmp_path / "keyed", environment={"PUBLISH_KEY": "the operator's own key"})
    server.start()
    try:
        browser = launch("chromium")
        browser.open(server.url + PLAN)
        browser.click(button("Share"))
        browser.click(MAKE_SHORT)
        browser.type(field("Key of this server"), "the operator's own key")
        browser.click(MAKE_SHORT)
        assert "/p/" in browser.wait_for(ADDRESS, "Short link")
        browser.open(f"{server.url}/p#{encode(decode(GOOD))}")
        browser.click(button("Share"))
        browser.click(MAKE_SHORT)
        assert "/p/" in browser.wait_for(ADDRESS, "Short link")
    finally:
        server.kill()
