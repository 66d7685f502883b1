"""What one needs while rowing is on the screen at every size of phone, and lies on nothing else."""

from __future__ import annotations

import pytest

from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.pressing import let_a_slip_pass
from tests.browser.targets import QUERY, button, css, heading
from tests.browser.writing import write_plan

SIZES = [(320, 568), (360, 640), (390, 844), (568, 320), (667, 375), (844, 390), (768, 1024), (1280, 800)]
PLAN = """\
title: In legs
main
500m r28 2k
  focus: Sit tall and let the shoulders hang at the catch
500m r30 2k
3 x 1' r24 half / 1' rest
"""
FAULTS = f"""() => {{
  const placed = (css) => (element) => ({{ css, box: element.getBoundingClientRect() }});
  const seen = (css) => {QUERY}.find({{ css }}).map(placed(css));
  const buttons = [".keys button", ".tools button", ".done button"].flatMap(seen);
  const words = [".big", ".call", ".want"].flatMap(seen);
  const all = [...buttons, ...words, ...[".mid", ".unit"].flatMap(seen)];
  const isOutside = ({{ box }}) =>
    box.left < -1 || box.top < -1 || box.right > innerWidth + 1 || box.bottom > innerHeight + 1;
  const shared = (a, b, from, to) => Math.min(a[to], b[to]) - Math.max(a[from], b[from]);
  const lieOver = (a, b) => shared(a, b, "left", "right") > 1 && shared(a, b, "top", "bottom") > 1;
  const apart = [...buttons, ...words];
  const covered = apart.flatMap((one, at) => apart.slice(at + 1)
    .filter((other) => lieOver(one.box, other.box)).map((other) => `${{one.css}} lies on ${{other.css}}`));
  return [...all.filter(isOutside).map(({{ css }}) => `${{css}} is cut off`), ...covered];
}}"""


def faults_at_every_size(browser: Browser) -> dict[tuple[int, int], list[str]]:
    faults = {}
    for width, height in SIZES:
        browser.resize(width, height)
        browser.wait_for(f"() => innerWidth === {width}")
        faults[width, height] = browser.evaluate(FAULTS)
    return {size: found for size, found in faults.items() if found}


@pytest.fixture
def rowing(chromium: Browser, server: Server) -> Browser:
    write_plan(chromium, server, PLAN)
    chromium.see(heading("In legs"))
    chromium.click(button("Row it"))
    chromium.click(button("I have read this, go on"))
    chromium.click(button("Start rowing"))
    chromium.see(css(".rate .mid"))
    return chromium


def test_a_metre_block_with_done_fits_every_screen(rowing: Browser) -> None:
    assert rowing.count(button("Done with 500 m")) == 1
    assert faults_at_every_size(rowing) == {}


def test_a_block_of_a_set_fits_every_screen_and_counts_its_repetitions(rowing: Browser) -> None:
    rowing.click(button("Skip"))
    let_a_slip_pass(rowing)
    rowing.click(button("Skip"))
    rowing.wait_for(
        f"""() => {QUERY}.find({{ css: ".where" }})[0].textContent.includes("repetition 1 of 3")"""
    )
    assert faults_at_every_size(rowing) == {}
