"""A plan is taken away as a file, with a rower's splits or without; where it cannot be, that is said."""

from __future__ import annotations

import csv
import re
from pathlib import Path

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.targets import QUERY, Target, button, field, heading, words
from tests.browser.writing import BOX
from web.builtin_plans import load_plan_file
from web.exports.plan_json import plan_json
from web.settings import ROOT

SPLITS = Target(role="checkbox", name=re.compile("^With the splits from your results"))
# As a browser tells of a file that is let go over the page, and of a text that is pasted into the box.
DROP = """(text) => {
  const dataTransfer = new DataTransfer();
  dataTransfer.items.add(new File([text], "dropped.json", { type: "application/json" }));
  document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
}"""
PASTE = f"""(text) => {{
  const clipboardData = new DataTransfer();
  clipboardData.setData("text/plain", text);
  const box = {QUERY}.find({{ css: "textarea" }})[0];
  const manners = {{ bubbles: true, cancelable: true, composed: true }};
  box.dispatchEvent(new ClipboardEvent("paste", {{ clipboardData, ...manners }}));
}}"""
NO_SIGNAL = words(re.compile("^Files are made by the server, so this needs signal"))


def download(chromium: Chromium, kind: str, to: Path) -> str:
    """Press the button of a kind; what then lies in the file, which is put there."""
    with chromium.page.expect_download() as coming:
        chromium.click(button(kind))
    chromium.see(words(f"Made: {coming.value.suggested_filename}"))
    coming.value.save_as(to / coming.value.suggested_filename)
    return (to / coming.value.suggested_filename).read_text(encoding="utf-8")


def test_a_file_is_made_with_the_rowers_splits_or_without_and_not_with_no_signal(
    chromium: Chromium, server: Server, tmp_path: Path
) -> None:
    chromium.open(server.url + "/plan/short-intervals")
    chromium.type(field("Time"), "7:42")
    chromium.press("Tab")
    chromium.see(words("Splits from your 2 km in 7:42.0. Your results"))
    chromium.click(button("Download"))
    assert "1:55.5" not in download(chromium, "Table", tmp_path), "for anybody, until it is asked for"
    chromium.click(SPLITS)
    with_splits = download(chromium, "Table", tmp_path)
    splits = {row["split"] for row in csv.DictReader(with_splits.splitlines())}
    assert "1:55.5" in splits
    assert (tmp_path / "Forty seconds at race pressure.csv").exists()
    assert accessibility_faults(chromium) == []
    server.kill()
    chromium.click(button("Captions"))
    chromium.see(NO_SIGNAL)
    chromium.see(heading("Forty seconds at race pressure"))
    assert chromium.problems() == []


def test_a_plan_file_opens_by_choice_drop_or_paste_and_a_damaged_one_changes_nothing(
    chromium: Chromium, server: Server, tmp_path: Path
) -> None:
    plan = load_plan_file(ROOT / "plans" / "way-down.yaml").plan
    text, title = plan_json(plan).decode(), plan.title
    (tmp_path / "way-down.json").write_text(text)
    chromium.open(server.url)
    damaged = tmp_path / "torn.json"
    damaged.write_text(text[: len(text) // 2])
    choose(chromium, damaged)
    chromium.see(words(re.compile(r"^It is not whole JSON: line \d+, column \d+: ")))
    chromium.evaluate(DROP, text.replace('"rate": 18', '"rate": 62', 1))
    chromium.see(words("Part 1, block 2, rate: rate 62 is above 50 strokes a minute."))
    assert chromium.count(heading(re.compile("^Ready with no signal|^Opened on this device"))) == 0
    assert accessibility_faults(chromium) == []
    choose(chromium, tmp_path / "way-down.json")
    chromium.see(heading(title))
    chromium.open(server.url + "/write")
    chromium.see(BOX)
    chromium.evaluate(PASTE, text.replace(title, "Pasted", 1))
    chromium.see(heading("Pasted"))
    assert chromium.problems() == []


def choose(browser: Chromium, file: Path) -> None:
    """Choose a file as a person does."""
    with browser.page.expect_file_chooser() as choosing:
        browser.click(button("Open a plan file"))
    choosing.value.set_files(file)
