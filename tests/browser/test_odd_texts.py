"""Odd texts on every screen that shows what people write: as they are, never run, never in the way.

A sample of the list; ODD_TEXTS=whole takes all of it (`make odd`).
"""

from __future__ import annotations

import json
import os
import re
from pathlib import Path
from typing import Any

import pytest

from tests.browser.app_server import Server
from tests.browser.conftest import Launch
from tests.browser.engines import Browser
from tests.browser.storage import HOLDS_SOMETHING
from tests.browser.targets import QUERY, Target, button, css, field, heading, link, words
from tests.browser.test_writing_a_plan import TEXT
from tests.web.exports.odd_texts import OURS, odd_texts

AT_ONCE = 48
LANES = 4
LONGEST_NOTE = 2000
NOTE = field("Your note")
TAGS = 8
ALL = odd_texts()
OWN = [text for text in ALL if text in OURS]
# What could be run comes first, where it is the title.
SAMPLE = sorted({*OWN, *ALL[:: len(ALL) // (AT_ONCE - len(OWN))]}, key=lambda text: ("<" not in text, text))
TAKEN = ALL if os.environ.get("ODD_TEXTS") == "whole" else SAMPLE[:AT_ONCE]
# What a payload would call, told like every other fault of the page.
PRELOAD = """
for (const name of ["alert", "confirm", "prompt", "print"]) {
  window[name] = () => window.problemsSeenByTests.push(`a script ran ${name}`);
}
"""
NOTED = """(said) => new Promise((done) => {
  const opening = indexedDB.open("slipway");
  opening.onsuccess = () => {
    opening.result.transaction("entries").objectStore("entries").getAll().onsuccess = ({ target }) => {
      opening.result.close();
      done(target.result.some(({ note }) => note === said));
    };
  };
})"""
SEEK = """(text) => {
  const find = (root) => {
    for (const each of root.querySelectorAll("*")) {
      const found = each.matches("plan-finder") ? each : each.shadowRoot && find(each.shadowRoot);
      if (found) return found;
    }
  };
  const box = find(document).shadowRoot.querySelector("input");
  box.value = text;
  box.dispatchEvent(new Event("input"));
}"""


def in_runs(texts: list[str], length: int) -> list[list[str]]:
    return [texts[at : at + length] for at in range(0, len(texts), length)]


def plan_of(texts: list[str]) -> dict[str, Any]:
    blocks = [
        {
            "for": {"seconds": 300},
            "rate": 20,
            "effort": {"pressure": "light"},
            "focus": text,
            "drill": {"name": text},
            "calls": [{"text": text}],
        }
        for text in texts
    ]
    parts = [{"kind": "main", "blocks": blocks}]
    return {"format": 1, "title": texts[0], "summary": texts[1], "setup": texts[2], "parts": parts}


def short(texts: list[str], longest: int, without: str = "") -> list[str]:
    """Those that are no longer, and hold none of some characters."""
    return [text for text in texts if len(text) <= longest and not set(without) & set(text)]


def missing(browser: Browser, texts: list[str]) -> list[str]:
    """Those that the page does not show as they are."""
    shown = " ".join(browser.text().split())
    return [text for text in texts if " ".join(text.split()) not in shown]


def nothing_ran(browser: Browser) -> None:
    assert browser.problems() == []
    assert "gone" not in str(browser.evaluate("() => document.title"))


@pytest.mark.parametrize("texts", in_runs(TAKEN, AT_ONCE), ids=lambda texts: f"{len(texts)} texts")
def test_they_are_shown_as_they_are_and_never_run(
    launch: Launch, server: Server, tmp_path: Path, texts: list[str]
) -> None:
    browser = launch("chromium", width=1280, height=800, preload=PRELOAD)
    title = re.compile("^" + re.escape(texts[0]) + "$")
    file = tmp_path / "odd.json"
    file.write_text(json.dumps(plan_of(texts)), encoding="utf-8")
    browser.open(server.url)
    browser.see(button("Open a plan file"))
    browser.page.locator("plan-file-entry input").set_input_files(file)  # type: ignore[attr-defined]
    browser.see(button("Row it"))
    browser.see(heading(title))
    assert missing(browser, texts) == []
    tags = short(texts, 24, without=",;")[:TAGS]
    browser.type(field("Tags, with commas between"), ", ".join(tags))
    browser.press("Enter")
    browser.click(button("Share"))
    browser.see(heading("Code to scan"))
    browser.click(button("Close"))
    nothing_ran(browser)
    here = str(browser.evaluate("() => location.href"))

    browser.click(button("Change it"))
    browser.see(Target(role="img", name=re.compile("^Picture of the plan")))
    text = str(browser.evaluate(TEXT))
    assert [each for each in texts if f"focus: {each}" not in text] == []
    browser.click(Target(role="radio", name="Blocks"))
    browser.see(css("block-tree"))
    assert missing(browser, texts[2:]) == []
    nothing_ran(browser)

    browser.open(server.url)
    browser.see(words(title))
    browser.see(Target(role="searchbox", name="Find a plan"))
    assert missing(browser, [*texts[:2], " · ".join(tags)]) == []
    for text in texts:
        browser.evaluate(SEEK, text)
    nothing_ran(browser)

    browser.open(here)
    browser.click(link("Show on a wall"))
    names = ["<b>Wren</b>", *short(texts, 20)][:LANES]
    for number, name in enumerate(names):
        browser.type(css("input.name").nth(number), name)
    browser.click(button("Start now"))
    browser.see(css("wall-lanes"))
    assert missing(browser, [texts[0], *names]) == []
    nothing_ran(browser)
    end(browser)

    browser.open(here)
    browser.click(link("Coach’s prompter"))
    browser.click(button("Start now"))
    browser.see(css("ol"))
    assert missing(browser, texts[:1]) == []
    nothing_ran(browser)
    end(browser)

    browser.open(here)
    browser.click(button("Row it"))
    browser.click(button("I have read this, go on"))
    browser.see(button("Start rowing"))
    assert missing(browser, [texts[0], texts[2]]) == []
    browser.click(button("Start rowing"))
    browser.see(css(".big.digits"))
    assert missing(browser, texts[:1]) == []
    nothing_ran(browser)

    browser.press("Escape")
    browser.click(button("End it here"))
    browser.see(heading("Ended here"))
    said = " ".join(short(texts, LONGEST_NOTE // AT_ONCE - 1))
    browser.type(NOTE, said)
    nothing_ran(browser)
    browser.wait_for(NOTED, said)
    browser.wait_for(HOLDS_SOMETHING, "log")
    browser.open(server.url + "/log")
    browser.see(words(title))
    assert missing(browser, texts[:1]) == []
    browser.click(link(re.compile("Ended here")))
    browser.see(heading(title))
    browser.wait_for(f"(note) => {QUERY}.find(note)[0]?.value", NOTE.as_json())
    assert browser.evaluate(f"(note) => {QUERY}.find(note)[0].value", NOTE.as_json()) == said
    nothing_ran(browser)


def end(browser: Browser) -> None:
    """Leaves the room, so that nothing is open."""
    browser.press("Escape")
    browser.click(button("End it for everybody"))
    browser.see(heading("Ended here"))
    browser.wait_for(f"async (store) => !(await ({HOLDS_SOMETHING})(store))", "sessions")
