"""The built-in plans: each can be read and rowed as written, and none is unwise.

The bounds here are common practice of coaches, without a published source, except where one is named.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise
from pathlib import Path
from typing import get_args

import pytest

from planner.athlete import Athlete, Level, Result
from planner.calls import spoken_seconds
from planner.plan import Block, Effort, Gap, Length, Part, PartKind, Plan, Pressure, Repeat, Step
from planner.stretches import ROWED, Basis, Kind
from planner.timeline import Segment, Timeline, compile_timeline
from web.builtin_plans import load_library

FOLDER = Path(__file__).resolve().parents[2] / "plans"
LIBRARY = load_library(FOLDER)
PLANS = LIBRARY.plans
TIMELINES = {slug: builtin.timeline for slug, builtin in PLANS.items()}

MINUTES = {
    "warm-up": (8, 28),
    "test": (30, 60),
    "ladder": (15, 40),
    "intervals": (30, 60),
    "steady": (30, 60),
    "technique": (15, 35),
    "cool-down": (5, 15),
    "first row": (10, 15),
}
QUIET_SECONDS = 8
"""The end of a block belongs to the voice that names the next one."""
WORDS_IN_A_CALL = 8
RATE_STEP = 6
LONGEST_SITTING_SECONDS = 30 * 60
"""Longer single sessions have been linked to back pain: Teitz 2002, Am J Sports Med 30:674-679 [M]."""
STANDING_SECONDS = 45
WAY_DOWN_SECONDS = 180
"""Easy rowing straight after hard work, before one stands up: nobody stops dead."""
CALM_SECONDS = 6 * 60
"""From the last hard burst to the piece: the gap and the easy rowing before it."""
HIGHEST_LEVER = 5
HARD = {Pressure.FULL, Pressure.RACE}
MAXIMAL = {
    "two-kilometre-test",
    "five-kilometres-even",
    "ten-minutes-before-2k",
    "twenty-minutes-before-500m",
}

every_plan = pytest.mark.parametrize("slug", sorted(PLANS))


def blocks_in(steps: tuple[Step, ...]) -> Iterator[Block]:
    for step in steps:
        if isinstance(step, Repeat):
            yield from blocks_in(step.blocks + step.between)
        elif isinstance(step, Block):
            yield step


def blocks_of(plan: Plan) -> list[Block]:
    return [block for part in plan.parts if isinstance(part, Part) for block in blocks_in(part.blocks)]


def rowed(timeline: Timeline) -> list[Segment]:
    return [segment for segment in timeline.segments if segment.stretch.kind in ROWED]


def all_blocks() -> list[Block]:
    return [block for builtin in PLANS.values() for block in blocks_of(builtin.plan)]


# --- The library as a whole


def test_every_file_in_the_folder_can_be_read() -> None:
    assert LIBRARY.damaged == ()
    assert set(PLANS) == {path.stem for path in FOLDER.glob("*.yaml")}


def test_there_are_at_least_ten_plans() -> None:
    assert len(PLANS) >= 10


def test_every_kind_of_session_is_there_and_no_other() -> None:
    assert {plan.kind for plan in PLANS.values()} == set(MINUTES)


def test_no_two_plans_share_a_title() -> None:
    assert len({builtin.plan.title for builtin in PLANS.values()}) == len(PLANS)


def test_together_they_use_every_kind_of_length() -> None:
    assert {type(block.length) for block in all_blocks()} == set(get_args(Length))


def test_together_they_use_every_kind_of_effort_and_every_pressure() -> None:
    efforts = [block.effort for block in all_blocks()]
    assert {type(effort) for effort in efforts if effort} == set(get_args(Effort))
    assert {effort for effort in efforts if isinstance(effort, Pressure)} == set(Pressure)


def test_one_of_them_repeats_within_a_repeat() -> None:
    lists = [part.blocks for b in PLANS.values() for part in b.plan.parts if isinstance(part, Part)]
    repeats = [step for steps in lists for step in steps if isinstance(step, Repeat)]
    assert any(isinstance(inner, Repeat) for outer in repeats for inner in outer.blocks)


def test_one_of_them_has_a_drill_with_sides() -> None:
    assert any(block.drill and block.drill.sides for block in all_blocks())


# --- Each plan as it is written


@every_plan
def test_its_slug_is_plain_words_joined_by_hyphens(slug: str) -> None:
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", slug)


@every_plan
def test_it_says_for_whom_it_is_and_how_to_set_up(slug: str) -> None:
    plan = PLANS[slug].plan
    assert plan.summary
    assert plan.setup
    assert plan.setting


@every_plan
def test_every_block_has_one_thing_to_think_about(slug: str) -> None:
    assert [block for block in blocks_of(PLANS[slug].plan) if not block.focus] == []


@every_plan
def test_its_lever_stays_in_the_lower_half(slug: str) -> None:
    plan = PLANS[slug].plan
    levers = [s.lever for s in (plan.setting, *(b.setting for b in blocks_of(plan))) if s]
    assert all(lever is not None and lever <= HIGHEST_LEVER for lever in levers)


@pytest.mark.parametrize("slug", sorted(MAXIMAL))
def test_maximal_work_is_not_for_a_first_week(slug: str) -> None:
    assert "not for a first week" in (PLANS[slug].plan.summary or "")


# --- Each plan as it is rowed


@every_plan
def test_it_takes_as_long_as_its_kind_should(slug: str) -> None:
    least, most = MINUTES[PLANS[slug].kind]
    assert least * 60 <= TIMELINES[slug].totals.seconds <= most * 60


@every_plan
def test_every_block_holds_whole_strokes_at_exactly_its_rate(slug: str) -> None:
    """A piece in metres is left out: its length follows the rower, so its strokes are paced to fit."""
    for segment in rowed(TIMELINES[slug]):
        if segment.stretch.metres_asked is None:
            assert segment.stretch.strokes
            assert segment.stretch.strokes.rate == segment.stretch.rate, segment.place


@every_plan
@pytest.mark.parametrize("two_k_seconds", [None, 375, 462, 580])
def test_nothing_about_it_calls_for_advice(slug: str, two_k_seconds: int | None) -> None:
    athlete = Athlete((Result(2000, Fraction(two_k_seconds)),)) if two_k_seconds else None
    assert compile_timeline(PLANS[slug].plan, athlete).findings == ()


@every_plan
def test_its_calls_are_short_and_leave_the_end_of_a_block_quiet(slug: str) -> None:
    for segment in rowed(TIMELINES[slug]):
        stretch = segment.stretch
        for call in stretch.calls:
            assert len(call.text.split()) <= WORDS_IN_A_CALL, call.text
            if stretch.basis is not Basis.ASSUMED:
                assert call.at + spoken_seconds(call.text) <= stretch.duration - QUIET_SECONDS, call.text


@every_plan
def test_two_calls_in_a_block_stand_well_apart(slug: str) -> None:
    for segment in rowed(TIMELINES[slug]):
        calls = segment.stretch.calls
        for first, second in pairwise(calls):
            assert second.at - first.at - first.seconds >= 20, second.text


@every_plan
def test_the_rate_rises_by_small_steps_while_one_keeps_rowing(slug: str) -> None:
    segments = TIMELINES[slug].segments
    for before, after in pairwise(segments):
        if before.stretch.rate and after.stretch.rate:
            assert after.stretch.rate - before.stretch.rate <= RATE_STEP, after.place


@every_plan
def test_nobody_sits_for_more_than_half_an_hour_without_a_pause(slug: str) -> None:
    sitting = Fraction(0)
    for segment in TIMELINES[slug].segments:
        pause = segment.stretch.kind in {Kind.GAP, Kind.REST}
        if pause and segment.stretch.duration >= STANDING_SECONDS:
            sitting = Fraction(0)
        else:
            sitting += segment.stretch.duration
        easing = WAY_DOWN_SECONDS if segment.part == PartKind.COOL_DOWN else 0
        assert sitting <= LONGEST_SITTING_SECONDS + easing, segment.place


@every_plan
def test_a_way_down_begins_with_easy_rowing_and_not_with_sitting_still(slug: str) -> None:
    parts = [p for p in PLANS[slug].plan.parts if isinstance(p, Part) and p.kind is PartKind.COOL_DOWN]
    for part in parts:
        assert isinstance(part.blocks[0], Block)
        assert part.blocks[0].effort is Pressure.LIGHT


@pytest.mark.parametrize("slug", sorted(MAXIMAL))
def test_a_maximal_piece_comes_four_to_six_minutes_after_the_warm_up(slug: str) -> None:
    (gap,) = (part for part in PLANS[slug].plan.parts if isinstance(part, Gap))
    assert 4 * 60 <= gap.seconds <= 6 * 60


@pytest.mark.parametrize("slug", sorted(MAXIMAL))
def test_a_warm_up_ends_its_hard_bursts_in_time(slug: str) -> None:
    timeline = TIMELINES[slug]
    (gap,) = (s for s in timeline.segments if s.stretch.kind is Kind.GAP)
    hard = [s for s in rowed(timeline) if s.index < gap.index and is_hard(s)]
    assert all(s.stretch.duration <= 30 for s in hard)
    assert all(gap.end - s.end >= CALM_SECONDS for s in hard)


def is_hard(segment: Segment) -> bool:
    return segment.stretch.target is not None and segment.stretch.target.pressure in HARD


@pytest.mark.parametrize("slug", sorted(s for s, plan in PLANS.items() if plan.kind == "test"))
def test_the_warm_up_of_a_test_reaches_the_rate_of_the_piece(slug: str) -> None:
    segments = rowed(TIMELINES[slug])
    warm_up = [s.stretch.rate or 0 for s in segments if s.part == "warm-up"]
    piece = [s.stretch.rate or 0 for s in segments if s.part == "main"]
    assert max(warm_up) >= max(piece)


def test_a_first_row_asks_for_no_more_than_half_pressure() -> None:
    first = [plan for plan in PLANS.values() if plan.kind == "first row"]
    efforts = {block.effort for builtin in first for block in blocks_of(builtin.plan)}
    assert efforts <= {Pressure.LIGHT, Pressure.HALF}


def test_what_is_meant_for_somebody_new_asks_for_nothing_hard() -> None:
    gentle = [plan for plan in PLANS.values() if plan.level is Level.NOVICE]
    efforts = {block.effort for builtin in gentle for block in blocks_of(builtin.plan)}
    assert gentle
    assert efforts.isdisjoint({Pressure.THREE_QUARTER, Pressure.FULL, Pressure.RACE})


@every_plan
def test_what_is_not_for_a_first_week_is_not_for_somebody_new(slug: str) -> None:
    builtin = PLANS[slug]
    if "not for a first week" in (builtin.plan.summary or ""):
        assert builtin.level is not Level.NOVICE
