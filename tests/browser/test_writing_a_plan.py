"""The box for one's own plan has room for what is written, and shows where reading stopped."""

from __future__ import annotations

from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.targets import QUERY, button, field, heading, words

BOX = field("Write or paste your own")
HEIGHT = f"""() => {QUERY}.find({{ css: "textarea" }})[0].getBoundingClientRect().height"""
LINES = f"""() => {{
  const area = {QUERY}.find({{ css: "textarea" }})[0];
  return area.scrollHeight - area.clientHeight;
}}"""
KEPT_DRAFT = """() => new Promise((tell, fail) => {
  const opening = indexedDB.open("slipway");
  opening.onerror = fail;
  opening.onsuccess = () => {
    const reading = opening.result.transaction("settings").objectStore("settings").get("all");
    reading.onsuccess = () => { opening.result.close(); tell(reading.result?.values.draft ?? ""); };
  };
})"""
# Where the caret's line lies in the window; lines do not wrap in these texts.
CARET = f"""() => {{
  const area = {QUERY}.find({{ css: "textarea" }})[0];
  const style = getComputedStyle(area);
  const line = area.value.slice(0, area.selectionStart).split("\\n").length;
  const box = area.getBoundingClientRect();
  const down = parseFloat(style.paddingTop) + line * parseFloat(style.lineHeight);
  const bottom = down - area.scrollTop;
  const inWindow = box.top + bottom;
  return {{ inBox: bottom > 0 && bottom <= box.height, inWindow: inWindow > 0 && inWindow <= innerHeight }};
}}"""


def test_the_box_grows_with_its_text_up_to_a_part_of_the_window(launch: Launch, server: Server) -> None:
    browser = launch("chromium", width=1280, height=800)
    browser.open(server.url)
    browser.see(BOX)
    empty = browser.evaluate(HEIGHT)
    assert empty >= 800 / 4
    browser.type(BOX, "3' r18 light\n" * 14)
    assert browser.evaluate(HEIGHT) > empty
    assert browser.evaluate(LINES) <= 1
    browser.type(BOX, "3' r18 light\n" * 60)
    assert browser.evaluate(HEIGHT) <= 0.6 * 800 + 1


def test_a_long_draft_has_its_room_when_the_page_is_opened_again(browser: Browser, server: Server) -> None:
    browser.open(server.url)
    browser.see(BOX)
    empty = browser.evaluate(HEIGHT)
    draft = "3' r18 light\n" * 16
    browser.type(BOX, draft)
    assert browser.evaluate(HEIGHT) > empty
    browser.wait_for(f"() => ({KEPT_DRAFT})().then((kept) => kept.length === {len(draft)})")
    browser.reload()
    browser.wait_for(f"() => ({HEIGHT})() > {empty}")


def test_a_mistake_far_down_is_scrolled_into_view(browser: Browser, server: Server) -> None:
    browser.open(server.url)
    browser.type(BOX, "3' r18 light\n" * 60 + "700 r28\n" + "3' r18 light\n" * 30)
    browser.evaluate(f"""() => {{ {QUERY}.find({{ css: "textarea" }})[0].scrollTop = 0; }}""")
    browser.click(button("Make this plan"))
    browser.see(words("Line 61, column 1"))
    assert browser.evaluate(CARET) == {"inBox": True, "inWindow": True}
    browser.see(words('"700" has no unit: write 700m for metres, 700" for seconds, or 700 strokes'))
    browser.evaluate("() => scrollTo(0, 0)")
    browser.evaluate(f"""() => {{ {QUERY}.find({{ css: "textarea" }})[0].scrollTop = 0; }}""")
    browser.click(button("Line 61, column 1"))
    assert browser.evaluate(CARET) == {"inBox": True, "inWindow": True}


def test_the_second_plan_without_a_title_is_told_from_the_first(chromium: Browser, server: Server) -> None:
    for text in ("20' r18 light", "6 x 700m r28 2k+1 / 3' rest"):
        chromium.open(server.url)
        chromium.type(BOX, text)
        chromium.click(button("Make this plan"))
        chromium.see(button("Row it"))
    chromium.see(heading("My session: 6 x 700m r28 2k+1 / 3' rest"))
    chromium.open(server.url)
    chromium.see(words("My session"))
    chromium.see(words("My session: 6 x 700m r28 2k+1 / 3' rest"))
