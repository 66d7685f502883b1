"""Whole strokes and whole seconds in every warm-up, and what a rise and a burst are made of."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.appraisal import appraise
from planner.athlete import Level, Room
from planner.coaching import Purpose
from planner.drills import drill_named
from planner.pieces import Character, TestPiece, character_of, free_rate
from planner.plan import Block, ForSeconds, ForStrokes, Pressure, Rest
from planner.session import SessionRequest, session_of
from planner.timeline import compile_timeline
from planner.warm_up.builder import WarmUp, warm_up_for
from planner.warm_up.choice import rungs_to
from planner.warm_up.circumstances import Circumstances
from planner.warm_up.rules import EXERCISES, SHARP_RATES
from planner.warm_up.whole_strokes import UNIT_SECONDS, burst_in, is_whole, shared_out

CIRCUMSTANCES = st.builds(
    lambda seconds, cap, level, room, minutes: Circumstances(
        character=character_of(seconds),
        rate=min(free_rate(seconds, level), cap),
        piece_seconds=float(seconds),
        capped=cap <= free_rate(seconds, level),
        level=level,
        room=room,
        minutes=minutes,
    ),
    seconds=st.integers(10, 14_400),
    cap=st.sampled_from([*range(18, 34, 2), 99]),
    level=st.sampled_from(list(Level)),
    room=st.sampled_from(list(Room)),
    minutes=st.integers(5, 30),
)


def seconds_of(step: Block | Rest) -> float:
    match step:
        case Rest(seconds) | Block(ForSeconds(seconds)):
            return float(seconds)
        case Block(ForStrokes(count)):
            return 60 * count / (step.rate or 1)
    raise AssertionError(step)


def blocks_of(warm_up: WarmUp) -> list[Block]:
    return [stage.step for stage in warm_up.stages if isinstance(stage.step, Block)]


@given(CIRCUMSTANCES)
def test_any_warm_up_lasts_its_minutes_in_whole_strokes(at: Circumstances) -> None:
    warm_up = warm_up_for(at)
    total = sum(seconds_of(stage.step) for stage in warm_up.stages)
    assert total == pytest.approx(60 * at.minutes, abs=1e-9)
    for block in blocks_of(warm_up):
        if isinstance(block.length, ForSeconds):
            assert is_whole(block.length.seconds, block.rate or 0)


@given(CIRCUMSTANCES)
def test_no_warm_up_goes_above_a_cap_or_leaves_the_rate_of_the_piece_untried(at: Circumstances) -> None:
    warm_up = warm_up_for(at)
    highest = max(block.rate or 0 for block in blocks_of(warm_up))
    assert highest == warm_up.choice.peak
    assert at.rate <= highest <= at.rate + (0 if at.capped else 2)


@given(CIRCUMSTANCES)
def test_the_rise_never_steps_back_in_rate_and_nothing_hard_comes_before_its_end(at: Circumstances) -> None:
    stages = warm_up_for(at).stages
    rise = [
        s.step for s in stages if s.purpose in {Purpose.FIRST, Purpose.RISE} and isinstance(s.step, Block)
    ]
    assert all((later.rate or 0) >= (sooner.rate or 0) for sooner, later in pairwise(rise))
    assert all(block.effort not in (Pressure.FULL, Pressure.RACE) for block in rise)


@pytest.mark.parametrize("rate", SHARP_RATES)
@pytest.mark.parametrize("step", [4, 6])
def test_no_rung_on_the_way_to_a_burst_is_further_than_the_level_allows(rate: int, step: int) -> None:
    rungs = rungs_to(rate, step)
    assert rungs[-1] == rate
    assert rungs[0] <= 24
    assert all(0 < later - sooner <= step for sooner, later in pairwise(rungs))


def test_half_a_minute_holds_whole_strokes_at_every_even_rate() -> None:
    assert all(is_whole(UNIT_SECONDS, rate) for rate in range(10, 51, 2))


@given(st.integers(1, 60), st.lists(st.integers(1, 9), min_size=1, max_size=7))
def test_shared_out_half_minutes_sum_to_the_whole(units: int, weights: list[int]) -> None:
    shares = shared_out(30 * units, weights)
    assert sum(shares) == 30 * units
    assert all(share > 0 and share % 30 == 0 for share in shares)


def test_a_burst_fills_its_slot_with_whole_strokes() -> None:
    burst = burst_in(90, (24, 28, 32), 10, 40, (20, 18))
    lasts = sum(60 * count / rate for count, rate in burst.counts)
    assert lasts + burst.easy_seconds == pytest.approx(90)
    assert is_whole(burst.easy_seconds, burst.easy_rate)


def test_a_burst_that_cannot_come_out_even_is_refused() -> None:
    with pytest.raises(ValueError, match="no whole strokes"):
        burst_in(60, (24, 34), 9, 30, (20,))


@given(CIRCUMSTANCES)
def test_every_rule_that_chose_gives_its_reason_in_a_sentence(at: Circumstances) -> None:
    reasons = warm_up_for(at).reasons
    assert len(reasons) >= 3
    assert all(reason.endswith(".") for reason in reasons)


def test_a_drill_of_a_warm_up_is_done_at_its_own_rate_and_for_the_reason_that_belongs_to_it() -> None:
    """The pause that sets the body over is the one in which the body is over."""
    for rule in EXERCISES:
        for exercise in rule.gives:
            drill = drill_named(exercise.name)
            assert drill
            assert exercise == (drill.name, drill.first_rate)
            if "the body over" in rule.reason:
                assert "pause at body over" in {each.name for each in rule.gives}


OF_WARM_UPS = {"hard-too-early", "no-rise", "no-warm-up", "peak-rate-not-reached", "jump-too-steep"}


@pytest.mark.parametrize("level", list(Level))
@pytest.mark.parametrize("minutes", [5, 6, 7, 8])
@pytest.mark.parametrize("seconds", [30, 90, 240, 420, 1200])
def test_a_short_warm_up_in_a_cold_room_is_none_that_we_would_criticise(
    seconds: int, minutes: int, level: Level
) -> None:
    """Five minutes of rowing come before hard strokes in the cold, and fewer minutes have no hard strokes."""
    request = SessionRequest(TestPiece(seconds=seconds), minutes, None, level, Room.COLD)
    timeline = compile_timeline(session_of(request).plan, request.rower)
    found = appraise(timeline, None, level, Room.COLD).findings
    assert [f.sentence for f in found if f.code in OF_WARM_UPS] == []


@pytest.mark.parametrize("minutes", [5, 6])
def test_bursts_in_a_cold_room_only_touch_the_rate_when_there_is_no_time_to_get_warm(minutes: int) -> None:
    def bursts(room: Room) -> list[Block]:
        at = Circumstances(Character.MIDDLE, 30, 462.0, False, Level.CLUB, room, minutes)
        return [block for block in blocks_of(warm_up_for(at)) if isinstance(block.length, ForStrokes)]

    assert Pressure.FULL in {block.effort for block in bursts(Room.NORMAL)}
    assert Pressure.FULL not in {block.effort for block in bursts(Room.COLD)}
    assert max(block.rate or 0 for block in bursts(Room.COLD)) >= 30


def test_a_burst_at_a_low_rate_is_never_asked_for_more_than_full_pressure() -> None:
    at = Circumstances(Character.LONG, 18, 1200.0, True, Level.CLUB, Room.COLD, 6)
    assert {block.effort for block in blocks_of(warm_up_for(at))} <= set(Pressure)
