"""The print sheet as Chromium prints it: one page of A4, one of Letter, and nothing in it that runs."""

from __future__ import annotations

import re
from pathlib import Path

from planner.notation.reader import read
from planner.timeline import Timeline, compile_timeline
from tests.browser.chromium import Chromium
from tests.builders import rower_of_7_42
from tests.web.exports.odd_texts import OURS
from tests.web.exports.plans import saying
from web.builtin_plans import load_plan_file
from web.exports.print_sheet import print_sheet
from web.settings import ROOT

PAGE = re.compile(rb"/Type\s*/Page\b")
GROUPS = """\
title: Groups of all depths
warm-up
5' r18 light
3 x (6 strokes r23 three-quarter, 10 strokes r28 full, 50" r20 light)
gap 5'
main
4 x 250m r28 2k+1 / 1' rest
cool-down
5' r18 light
"""
PLACES = """() => ["rate", "asked", "split"].map((name) => {
  const cells = [...document.querySelectorAll(`.${name}`)];
  return [...new Set(cells.map((cell) => Math.round(cell.getBoundingClientRect().left)))];
})"""
NAMES = ("drills-from-the-finish", "firm-by-power", "short-intervals", "two-kilometre-test", "way-down")


def test_plans_fill_one_page_of_either_paper(chromium: Chromium, tmp_path: Path) -> None:
    plans = {name: load_plan_file(ROOT / "plans" / f"{name}.yaml").plan for name in NAMES}
    plans |= {
        f"text-{number}": saying(text)
        for number, text in enumerate(("WM " * 19 + "W", "漢字かな交じり文" * 7))
    }
    for name, plan in plans.items():
        show(chromium, compile_timeline(plan, rower_of_7_42()), tmp_path / f"{name}.html")
        pages = [len(PAGE.findall(chromium.page.pdf(format=paper))) for paper in ("A4", "Letter")]
        assert pages == [1, 1], name


def test_on_a_phone_every_column_has_its_room(chromium: Chromium, tmp_path: Path) -> None:
    plan = load_plan_file(ROOT / "plans" / "short-intervals.yaml").plan
    show(chromium, compile_timeline(plan, rower_of_7_42()), tmp_path / "sheet.html")
    assert chromium.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
    assert chromium.evaluate("() => document.querySelector('.asked').offsetWidth") > 390 / 4


def test_columns_stand_in_the_same_place_in_every_group(chromium: Chromium, tmp_path: Path) -> None:
    show(chromium, compile_timeline(read(GROUPS), rower_of_7_42()), tmp_path / "sheet.html")
    for width in (390, 800):
        chromium.resize(width, 844)
        assert [len(places) for places in chromium.evaluate(PLACES)] == [1, 1, 1]


def test_nothing_that_people_wrote_runs(chromium: Chromium, tmp_path: Path) -> None:
    for text in (text for text in OURS if "<" in text):
        show(chromium, compile_timeline(saying(text)), tmp_path / "sheet.html")
        assert chromium.evaluate("() => document.title") == text
        assert chromium.evaluate("() => document.querySelector('h1').textContent") == text
        assert chromium.problems() == []


def show(chromium: Chromium, timeline: Timeline, path: Path) -> None:
    """Open the sheet as a file from storage."""
    path.write_bytes(print_sheet(timeline))
    chromium.open(path.as_uri())
