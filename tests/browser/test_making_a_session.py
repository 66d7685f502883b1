"""An athlete gets a session for today's piece, in few taps, and mends what the plan screen finds."""

from __future__ import annotations

import re
from dataclasses import dataclass

from tests.browser.accessibility import accessibility_faults
from tests.browser.app_server import Server
from tests.browser.engines import Browser
from tests.browser.later_files import LATER_KEPT
from tests.browser.targets import Target, button, field, heading, link, words
from tests.browser.writing import write_plan

QUESTION = heading("What are you rowing today?")
MAKE = button("Make the session")
# The screens that nobody needs to row are kept last of all.


# Picks the text given in the list of this id, or says which is picked.
PICK = """({ id, text }) => {
  const below = (root) => [...root.querySelectorAll("*")]
    .flatMap((each) => [each, ...(each.shadowRoot ? below(each.shadowRoot) : [])]);
  const list = below(document).find((each) => each.localName === "select" && each.id === id);
  if (text === undefined) return list.selectedOptions[0].text;
  list.selectedIndex = [...list.options].findIndex((option) => option.text === text);
  return list.dispatchEvent(new Event("change", { bubbles: true }));
}"""


def choice(name: str) -> Target:
    """One of several tiles."""
    return Target(role="radio", name=name)


SHORT_GAP = """\
title: A hurried test
warm-up
5' r18 light
3' r22 half
1' r26 three-quarter
10 strokes r30 full
1' r18 light
gap 30"
main
2000m r30 race
"""
TOO_SHORT = words(re.compile("^The gap of 30 s is shorter"))


@dataclass
class Finger:
    """What taps the screen, and counts; going into a field is a tap, the digits typed there are none."""

    browser: Browser
    taps: int = 0

    def tap(self, target: Target) -> None:
        self.taps += 1
        self.browser.click(target)

    def write(self, target: Target, text: str) -> None:
        self.taps += 1
        self.browser.type(target, text)


def test_a_first_time_athlete_with_no_result_has_a_session_in_four_taps(
    browser: Browser, server: Server
) -> None:
    browser.open(server.url)
    finger = Finger(browser)
    finger.tap(choice("Test piece"))
    finger.tap(choice("5 km"))
    finger.tap(MAKE)
    finger.tap(button("Row it"))
    assert finger.taps == 4
    browser.see(button("I have read this, go on"))
    assert browser.problems() == []


def test_with_one_result_it_takes_at_most_six(browser: Browser, server: Server) -> None:
    browser.open(server.url)
    finger = Finger(browser)
    finger.tap(choice("Test piece"))
    finger.tap(choice("5 km"))
    finger.write(field("Time"), "7:42")
    finger.tap(MAKE)
    browser.see(words("Splits from your 2 km in 7:42.0. Your results"))
    finger.tap(button("Row it"))
    assert finger.taps <= 6
    browser.see(button("I have read this, go on"))
    assert browser.problems() == []


def test_every_kind_of_piece_gives_a_session_that_says_why_it_looks_so(
    chromium: Browser, server: Server
) -> None:
    for kind in ("Test piece", "Intervals", "Steady", "Capped rate", "Technique", "Warm-up alone"):
        chromium.open(server.url)
        chromium.click(choice(kind))
        chromium.click(MAKE)
        chromium.see(button("Row it"))
        chromium.click(button("Why it looks like this"))
        chromium.see(Target(css=".reasons li"))
    assert chromium.problems() == []


def test_a_set_of_ones_own_is_read_or_told_where_it_cannot_be(chromium: Browser, server: Server) -> None:
    chromium.open(server.url)
    chromium.click(choice("Intervals"))
    chromium.click(choice("Other"))
    chromium.type(field("How many"), "1")
    chromium.click(MAKE)
    chromium.see(words("Write how many repetitions as a whole number from 2 to 40."))
    chromium.type(field("How many"), "4")
    chromium.type(field("Each"), "750")
    chromium.click(MAKE)
    chromium.see(words(re.compile(r"^4 times$")))


def test_a_result_that_cannot_be_read_is_told_at_its_field_and_makes_nothing(
    chromium: Browser, server: Server
) -> None:
    chromium.open(server.url)
    chromium.click(choice("Test piece"))
    chromium.type(field("Time"), "fast")
    chromium.click(MAKE)
    complaint = words("“fast” is no time: write minutes and seconds, such as 7:42.0.")
    chromium.see(complaint)
    chromium.see(QUESTION)
    chromium.type(field("Time"), "7:42")
    chromium.see_gone(complaint)
    chromium.click(MAKE)
    chromium.see(button("Row it"))


def test_a_result_that_comes_later_is_put_into_the_session_when_it_is_made_again(
    chromium: Browser, server: Server
) -> None:
    chromium.open(server.url)
    chromium.click(choice("Test piece"))
    chromium.see(MAKE)
    chromium.evaluate(PICK, {"id": "level", "text": "New to it"})
    chromium.click(MAKE)
    chromium.see(words(re.compile("9:00 is usual for the level")))
    chromium.see(words(re.compile("^about 9:00 · 252 strokes$")))
    chromium.type(field("Time"), "8:40\n")
    chromium.click(button("Make it again"))
    chromium.see_gone(words(re.compile("is usual for the level")))
    assert "8:40" in chromium.text()
    chromium.click(button("Undo"))
    chromium.see(words(re.compile("9:00 is usual for the level")))
    assert accessibility_faults(chromium) == []


def test_without_signal_it_says_so_in_a_line_and_leads_to_what_is_kept(
    browser: Browser, server: Server
) -> None:
    browser.open(server.url)
    browser.see(QUESTION)
    browser.wait_for(LATER_KEPT)
    server.kill()
    browser.reload()
    browser.click(choice("Steady"))
    browser.click(MAKE)
    browser.see(words(re.compile(r"^Making a session needs signal, and there is none\. ")))
    browser.click(link("The plans below run without."))
    assert browser.focused_name() == "Plans"
    assert browser.problems() == []


# Each answer takes longer than the one before, so that a question is asked while an earlier one still waits.
ANSWER_LATER_AND_LATER = """() => {
  const ask = window.fetch;
  let late = 0;
  window.fetch = async (...asked) => {
    const wait = new Promise((done) => setTimeout(done, (late += 700)));
    const answer = await ask(...asked);
    await wait;
    return answer;
  };
}"""


def test_whom_the_advice_is_for_is_said_and_can_be_changed_on_the_plan(
    chromium: Browser, server: Server
) -> None:
    chromium.open(server.url + "/plan/two-kilometre-test")
    chromium.see(words("Advice for a regular rower in a normal room"))
    chromium.evaluate(ANSWER_LATER_AND_LATER)
    chromium.click(words("Advice for a regular rower in a normal room"))
    chromium.evaluate(PICK, {"id": "level", "text": "New to it"})
    chromium.evaluate(PICK, {"id": "room", "text": "Hot"})
    chromium.see(words("Advice for somebody new to it in a hot room"))
    chromium.see(words(re.compile("this is for a novice")))
    chromium.see(words(re.compile("^The room is hot")))
    assert accessibility_faults(chromium) == []


def test_a_plan_opened_without_signal_says_that_advice_is_missing(chromium: Browser, server: Server) -> None:
    chromium.open(server.url + "/plan/stroke-pyramid")
    chromium.see(words("Saved on this device. It will run with no signal."))
    assert chromium.count(words(re.compile("^Advice on this plan"))) == 0
    chromium.type(field("Time"), "7:42\n")
    chromium.see(words(re.compile("^Splits from")))
    server.kill()
    chromium.open(server.url + "/plan/rate-ladder")
    chromium.see(words(re.compile("^Advice on this plan, and how ready you come to the start, need signal")))


def test_what_was_chosen_is_remembered_for_the_next_session(chromium: Browser, server: Server) -> None:
    chromium.open(server.url)
    chromium.click(choice("Test piece"))
    chromium.see(MAKE)
    for chosen in (
        {"id": "minutes", "text": "20 minutes"},
        {"id": "level", "text": "Trained"},
        {"id": "room", "text": "Hot"},
    ):
        chromium.evaluate(PICK, chosen)
    chromium.click(MAKE)
    chromium.see(button("Row it"))
    chromium.open(server.url)
    chromium.click(choice("Test piece"))
    chromium.see(MAKE)
    assert [chromium.evaluate(PICK, {"id": name}) for name in ("minutes", "level", "room")] == [
        "20 minutes",
        "Trained",
        "Hot",
    ]


def test_nobody_is_given_drills_that_are_not_for_beginners_unasked(chromium: Browser, server: Server) -> None:
    chromium.open(server.url)
    chromium.click(choice("Technique"))
    chromium.see(MAKE)
    assert chromium.evaluate(PICK, {"id": "level"}) == "New to it"
    chromium.click(MAKE)
    chromium.see(button("Row it"))
    chromium.see(words(re.compile("New to rowing. Let a coach watch")))
    chromium.open(server.url)
    chromium.click(choice("Technique"))
    chromium.see(MAKE)
    chromium.evaluate(PICK, {"id": "level", "text": "Regular"})
    chromium.click(choice("Steady"))
    chromium.click(choice("Technique"))
    assert chromium.evaluate(PICK, {"id": "level"}) == "Regular"
    chromium.click(choice("Steady"))
    assert chromium.evaluate(PICK, {"id": "level"}) == "Regular"


def open_a_plan_with_a_short_gap(browser: Browser, server: Server) -> None:
    write_plan(browser, server, SHORT_GAP)
    browser.see(heading("A hurried test"))


def test_a_finding_is_mended_in_one_tap_and_the_mend_taken_back_in_another(
    browser: Browser, server: Server
) -> None:
    open_a_plan_with_a_short_gap(browser, server)
    browser.see(TOO_SHORT)
    browser.see(words(re.compile("A gap of 30 seconds is short")))
    browser.click(button("Wait 5:00"))
    browser.see(words("Done: Wait 5:00."))
    browser.see_gone(TOO_SHORT)
    browser.see(words(re.compile("The gap of 5 minutes is right")))
    browser.reload()
    browser.see(words("Done: Wait 5:00."))
    assert browser.count(TOO_SHORT) == 0
    browser.click(button("Undo"))
    browser.see(TOO_SHORT)
    browser.see(button("Wait 5:00"))
    assert browser.problems() == []


def test_a_mend_without_signal_says_so_and_changes_nothing(chromium: Browser, server: Server) -> None:
    open_a_plan_with_a_short_gap(chromium, server)
    chromium.see(TOO_SHORT)
    server.kill()
    chromium.click(button("Wait 5:00"))
    chromium.see(words("Changing a plan needs signal, and there is none. It is as it was."))
    chromium.reload()
    chromium.see(TOO_SHORT)


def test_the_accessibility_checker_finds_nothing_beside_findings_and_mends(
    chromium: Browser, server: Server
) -> None:
    open_a_plan_with_a_short_gap(chromium, server)
    chromium.see(heading("At the start line"))
    for fold in ("Why", "With another gap", "How sure this is"):
        chromium.click(button(fold))
    assert accessibility_faults(chromium) == []
    chromium.click(button("Wait 5:00"))
    chromium.see(button("Undo"))
    assert accessibility_faults(chromium) == []


def test_the_accessibility_checker_finds_nothing_while_a_session_is_made(
    chromium: Browser, server: Server
) -> None:
    chromium.open(server.url)
    for kind in ("Test piece", "Intervals", "Capped rate"):
        chromium.click(choice(kind))
        chromium.see(MAKE)
        assert accessibility_faults(chromium) == []
    chromium.click(choice("Intervals"))
    chromium.click(choice("Other"))
    assert accessibility_faults(chromium) == []
    chromium.click(MAKE)
    chromium.see(button("Row it"))
    chromium.click(button("Why it looks like this"))
    assert accessibility_faults(chromium) == []
