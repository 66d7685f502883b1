"""What a person chooses on a device: it takes hold at once, stays, and needs no signal."""

from __future__ import annotations

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.later_files import LATER_KEPT
from tests.browser.targets import QUERY, Target, button, css, field, heading, link, words
from tests.browser.test_row_screen_fits import PLAN, faults_at_every_size
from tests.browser.writing import write_plan

# The theme that stood on the page when its body came, before which nothing is painted.
THEME_AT_FIRST = """new MutationObserver((_, watching) => {
  if (!document.body) return;
  window.themeAtFirst = document.documentElement.dataset.theme ?? "none";
  watching.disconnect();
}).observe(document, { childList: true, subtree: true });"""
KEPT = """(name, value) => new Promise((done) => {
  const opening = indexedDB.open("slipway");
  opening.onsuccess = () => {
    const asked = opening.result.transaction("settings").objectStore("settings").get("all");
    asked.onsuccess = () => {
      opening.result.close();
      done(asked.result?.values.preferences?.values[name] === value);
    };
  };
})"""
# What stands largest when rowing begins.
FIRST_FIGURE = f"""() => {QUERY}.find({{ css: ".left-hand .big" }}).length ? "big"
  : {QUERY}.find({{ css: ".count" }}).length ? "count" : "" """


def choice(name: str, index: int = 0) -> Target:
    return Target(role="radio", name=name, index=index)


def theme(browser: Browser) -> str:
    return str(browser.evaluate("() => document.documentElement.dataset.theme"))


def open_settings(browser: Browser, server: Server) -> None:
    browser.open(server.url + "/settings")
    browser.see(heading("While rowing"))


def test_a_theme_holds_before_anything_is_painted_in_every_tab_and_without_a_signal(
    launch: Launch, server: Server
) -> None:
    browser = launch("chromium", preload=THEME_AT_FIRST)
    browser.open(server.url)
    browser.click(link("Settings"))
    browser.see(heading("While rowing"))
    browser.wait_for(LATER_KEPT)
    server.kill()
    browser.new_tab()
    open_settings(browser, server)
    browser.turn_to_tab(0)
    browser.click(choice("Dark"))
    assert theme(browser) == "dark"
    browser.wait_for(KEPT, "theme", "dark")

    browser.turn_to_tab(1)
    browser.wait_for("() => document.documentElement.dataset.theme === 'dark'")
    browser.reload()
    browser.see(heading("While rowing"))
    assert browser.evaluate("() => window.themeAtFirst") == "dark"
    assert browser.problems() == []


def test_what_is_chosen_is_there_while_rowing_and_fits_every_screen(
    chromium: Browser, server: Server
) -> None:
    write_plan(chromium, server, PLAN.replace("2k", "@1:55"))
    chromium.see(heading("In legs"))
    address = chromium.evaluate("() => location.href")
    open_settings(chromium, server)
    chromium.type(field("Before a start, seconds"), "31")
    chromium.press("Tab")
    chromium.see(words("Before a start: write a whole number from 0 to 30."))
    chromium.type(field("Before a start, seconds"), "0")
    chromium.press("Tab")
    chromium.wait_for(KEPT, "start_count_s", 0)
    chromium.click(choice("Left"))
    chromium.wait_for(KEPT, "hand", "left")

    chromium.open(str(address))
    chromium.click(button("Row it"))
    chromium.click(button("I have read this, go on"))
    chromium.click(button("Start rowing"))
    assert chromium.wait_for(FIRST_FIGURE) == "big", "nothing is counted in"
    for name, figure in [("Strokes left", "54"), ("Rate", "r28"), ("Split", "1:55.0")]:
        chromium.click(button("More"))
        chromium.click(link("Settings"))
        chromium.click(choice(name))
        chromium.click(link("Back to rowing"))
        chromium.see(css(".big"))
        shown = chromium.text(css(".big"))
        assert shown == figure or (name == "Strokes left" and int(shown) > 40)
        assert faults_at_every_size(chromium) == {}, name
    assert chromium.problems() == []


def test_the_accessibility_checker_finds_nothing(chromium: Browser, server: Server) -> None:
    open_settings(chromium, server)
    chromium.type(field("After a hold, seconds"), "soon")
    chromium.press("Tab")
    chromium.see(words("After a hold: write a whole number from 0 to 30."))
    assert accessibility_faults(chromium) == []
