"""The log: what was rowed and how it went is noted with no signal, and found again."""

from __future__ import annotations

import re

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.later_files import LATER_KEPT
from tests.browser.pressing import let_a_slip_pass
from tests.browser.processes import wait_until
from tests.browser.quick_clock import quick_clock
from tests.browser.storage import stored
from tests.browser.targets import QUERY, Target, button, field, heading, link, words
from tests.browser.test_pages_fit import too_wide
from tests.browser.writing import write_plan

# The entries of the log, which storage does not hand out, or has no room for.
ENTRIES = """(() => {
  const { get, put } = IDBObjectStore.prototype;
  const is = (mood, store) => window.__entries === mood && store.name === "entries";
  IDBObjectStore.prototype.get = function (...given) {
    if (is("lost", this)) throw new DOMException("Connection to Indexed Database server lost");
    return get.apply(this, given);
  };
  IDBObjectStore.prototype.put = function (...given) {
    if (is("full", this)) throw new DOMException("no room", "QuotaExceededError");
    return put.apply(this, given);
  };
})();"""
UNREAD = words(re.compile("^What was said of this session cannot be read now"))
NOT_STORED = words(re.compile("^This is not stored yet"))
SAVED = words("Saved on this device. It will run with no signal.")
NOTE = field("Your note")
SAID = "Too quick at first, then it held."
HARD = Target(role="radio", name="5: hard")
NOTED = f"""(note, effort, said) =>
  {QUERY}.find(note)[0]?.value === said && {QUERY}.find(effort)[0].checked"""

PUT_DAMAGED = """() => new Promise((done) => {
  const opening = indexedDB.open("slipway");
  opening.onsuccess = () => {
    const transaction = opening.result.transaction("log", "readwrite");
    transaction.objectStore("log").put({ id: "damaged", state: "ended", plan: { title: "Damaged" } });
    transaction.oncomplete = () => { opening.result.close(); done(true); };
  };
})"""


def test_a_session_is_noted_with_the_server_gone_and_stands_in_the_log(
    launch: Launch, server: Server
) -> None:
    chromium = launch("chromium", preload=quick_clock(60) + ENTRIES)
    chromium.open(server.url + "/log")
    chromium.see(words("Nothing here yet: a session that you row stands here once it has ended."))
    write_plan(chromium, server, "title: Ten minutes\nmain\n10' r20 light\n")
    chromium.see(SAVED)
    chromium.wait_for(LATER_KEPT)
    server.kill()
    chromium.click(button("Row it"))
    chromium.click(button("I have read this, go on"))
    chromium.click(button("Start rowing"))
    chromium.see(heading("Rowed to the end"))
    chromium.click(HARD)
    chromium.see(words(re.compile(r"^Load 50: effort 5 times 10 min\.")))
    chromium.type(NOTE, SAID)
    assert accessibility_faults(chromium) == []
    wait_until(
        lambda: any(entry.get("note") == SAID for entry in stored(chromium, "entries")), "the note", 60
    )

    chromium.open(server.url + "/log")
    chromium.click(link(re.compile("^Ten minutes")))
    chromium.see(heading("Ten minutes"))
    chromium.see(words("10:00"))
    chromium.wait_for(NOTED, NOTE.as_json(), HARD.as_json(), SAID)
    chromium.reload()
    chromium.see(heading("Ten minutes"))
    chromium.wait_for(NOTED, NOTE.as_json(), HARD.as_json(), SAID)
    assert accessibility_faults(chromium) == []
    assert too_wide(chromium) == {}

    chromium.evaluate("() => { window.__entries = 'lost'; }")
    chromium.click(link("Log"))
    chromium.click(link(re.compile("^Ten minutes")))
    chromium.see(UNREAD)
    assert chromium.count(NOTE) == 0, "nothing can be typed over what is there"
    assert accessibility_faults(chromium) == []
    chromium.evaluate("() => { window.__entries = 'full'; }")
    chromium.wait_for(NOTED, NOTE.as_json(), HARD.as_json(), SAID)
    chromium.type(NOTE, SAID + " Tired.")
    chromium.see(NOT_STORED)
    chromium.click(link("Log"))
    chromium.see(words(SAID + " Tired."))
    chromium.click(link(re.compile("^Ten minutes")))
    chromium.wait_for(NOTED, NOTE.as_json(), HARD.as_json(), SAID + " Tired.")
    chromium.see(NOT_STORED)
    chromium.type(NOTE, SAID)
    chromium.evaluate("() => { window.__entries = ''; }")
    chromium.see_gone(NOT_STORED)
    assert [entry["note"] for entry in stored(chromium, "entries")] == [SAID]

    chromium.click(link("Open its plan"))
    chromium.see(words(re.compile("^Last rowed ")))
    chromium.see(words("Rowed to the end, 10:00, effort 5: hard"))
    assert accessibility_faults(chromium) == []

    chromium.evaluate(PUT_DAMAGED)
    chromium.open(server.url + "/log")
    chromium.see(words(re.compile("^One session is left out here")))
    chromium.see(words(SAID))
    assert accessibility_faults(chromium) == []
    assert too_wide(chromium) == {}
    chromium.click(link(re.compile("^Ten minutes")))
    chromium.click(button("Take it off this device"))
    let_a_slip_pass(chromium)
    chromium.click(button("Keep it"))
    chromium.click(button("Take it off this device"))
    let_a_slip_pass(chromium)
    chromium.click(button("Yes, take it off this device"))
    chromium.see(words("Nothing here yet: a session that you row stands here once it has ended."))
    assert [session["id"] for session in stored(chromium, "log")] == ["damaged"]
    assert stored(chromium, "entries") == []
    assert chromium.problems() == []
