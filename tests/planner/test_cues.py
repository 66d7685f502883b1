"""What sounds when; tests/client/cues.test.ts holds the phone to the same over a shared list."""

from __future__ import annotations

from fractions import Fraction

from planner.cues import CueKind, cues_of
from planner.notation.reader import read
from planner.plan import Plan
from planner.timeline import compile_timeline
from tests.builders import main_piece, metres, seconds, warm_up_then
from tests.shared.cue_lists import FILE, text


def moments(plan: Plan, kind: CueKind) -> list[Fraction]:
    return [cue.at for cue in cues_of(compile_timeline(plan)) if cue.kind is kind]


def test_three_ticks_count_in_to_the_first_catch_which_is_no_change() -> None:
    plan = main_piece(seconds(10, 24))
    assert moments(plan, CueKind.COUNT_IN) == [-3, -2, -1]
    assert moments(plan, CueKind.CATCH) == [0, Fraction(5, 2)]
    assert moments(plan, CueKind.CHANGE) == []


def test_the_last_two_strokes_are_told_apart_and_then_comes_the_change() -> None:
    plan = main_piece(seconds(10, 24), seconds(10, 30))
    assert moments(plan, CueKind.SECOND_LAST) == [5, 16]
    assert moments(plan, CueKind.LAST) == [Fraction(15, 2), 18]
    assert moments(plan, CueKind.CHANGE) == [10]
    assert moments(plan, CueKind.END) == [20]


def test_nobody_knows_the_last_strokes_of_what_a_tap_ends() -> None:
    assert moments(main_piece(metres(500, 24)), CueKind.LAST) == []


def test_a_gap_goes_on_by_the_plan_with_ticks_to_the_handle() -> None:
    plan = warm_up_then(60, seconds(10, 24), seconds(10, 24))
    assert moments(plan, CueKind.COUNT_IN) == [-3, -2, -1, 67, 68, 69]
    assert moments(plan, CueKind.CHANGE) == [10, 70]


def test_cues_come_in_order() -> None:
    plan = read("title: x\nmain\n3 x (10 strokes r28 full, 50\" r18 light)\n2\" rest\n1' light\n2' r20")
    cues = list(cues_of(compile_timeline(plan)))
    assert cues == sorted(cues, key=lambda cue: cue.at)


def test_the_list_that_the_client_is_held_to_is_what_sounds_today() -> None:
    """When this fails and the change is wanted: python -m tests.shared.cue_lists."""
    assert FILE.read_text(encoding="utf-8") == text()
