"""Own plans are tagged and found, and everything on the device goes into a file and comes back from it."""

from __future__ import annotations

import re
from pathlib import Path

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.chromium import Chromium
from tests.browser.pressing import let_a_slip_pass, press_twice
from tests.browser.processes import wait_until
from tests.browser.storage import stored
from tests.browser.targets import Target, button, css, field, heading, link, words
from tests.browser.test_pages_fit import too_wide
from tests.browser.writing import write_plan

FIND = Target(role="searchbox", name="Find a plan")
TAGS = field("Tags, with commas between")
MINE = link(re.compile("^Mine 5 min Tuesday · juniors"))
FOUND = re.compile(r"^\d+ of \d+ plans$")


def bring(browser: Chromium, file: Path) -> None:
    browser.see(button("Bring a file back"))
    browser.page.locator("device-file input[type=file]").set_input_files(file)


def test_a_plan_is_tagged_found_taken_off_and_brought_back_from_a_file(
    chromium: Chromium, server: Server, tmp_path: Path
) -> None:
    write_plan(chromium, server, "title: Mine\nmain\n5' r20 light\n")
    chromium.see(heading("Mine"))
    chromium.type(TAGS, f"Tuesday, {'x' * 25}")
    chromium.press("Enter")
    too_long = words(f"“{'x' * 25}” is 25 characters long, and a tag has room for 24: shorten it.")
    chromium.see(too_long)
    chromium.type(TAGS, "Tuesday, juniors")
    chromium.press("Enter")
    chromium.see_gone(too_long)
    wait_until(
        lambda: any("Tuesday" in plan.get("tags", []) for plan in stored(chromium, "plans")), "the tags"
    )

    chromium.open(server.url + "/settings")
    with chromium.page.expect_download() as download:
        chromium.click(button("Save it to a file"))
    whole, cut = tmp_path / download.value.suggested_filename, tmp_path / "cut.json"
    download.value.save_as(whole)
    assert whole.name.startswith("slipway-")
    cut.write_bytes(whole.read_bytes()[:-200])
    bring(chromium, whole)
    chromium.see(words("All of it was here already. Nothing here has changed."))

    chromium.open(server.url + "/")
    chromium.type(FIND, "tues")
    chromium.see(words(FOUND))
    assert chromium.count(css("plan-library")) == 1
    chromium.click(MINE)
    chromium.see(button("Take it off this device"))
    assert press_twice(chromium, button("Take it off this device")) == "Keep it"
    let_a_slip_pass(chromium)
    chromium.click(button("Yes, take it off this device"))
    chromium.see(words("No plan here fits that."))
    assert accessibility_faults(chromium) == []
    assert too_wide(chromium) == {}
    chromium.click(button("Show all plans"))
    chromium.see(heading("Plans"))

    chromium.open(server.url + "/settings")
    bring(chromium, cut)
    chromium.see(words(re.compile("^It cannot be read: it ends too early")))
    chromium.see(words("Nothing here has changed."))
    bring(chromium, whole)
    chromium.see(words("Added: 1 plan. All the rest was here already."))
    chromium.open(server.url + "/")
    chromium.type(FIND, "juniors")
    chromium.click(MINE)
    chromium.see(heading("Mine"))
    assert chromium.problems() == []
