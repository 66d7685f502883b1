"""Calls over a block: said whole, clear of its ends, well apart, never long silent, and in turn in a set."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner import limits
from planner.athlete import Athlete, Level, Result
from planner.call_spread import APART_SECONDS, CLOSING_SECONDS, OPENING_SECONDS, QUIET_SECONDS, spread
from planner.calls import calls_of, place_calls
from planner.expansion import Repetition
from planner.focus_points import FOCUSES, Focus, suited
from planner.pieces import IntervalSet, SteadyRow, TestPiece
from planner.plan import PartKind
from planner.session import SessionRequest, session_of
from planner.strokes import Fit, strokes_at, strokes_in
from planner.timeline import Segment, compile_timeline

rates = st.integers(14, 36)
voices = st.integers(int(limits.WORDS_A_MINUTE.low), int(limits.WORDS_A_MINUTE.high))
FIRST = suited(FOCUSES[0], Level.CLUB, 20)


def test_a_short_burst_has_no_call_and_a_minute_has_one() -> None:
    assert spread(FIRST, strokes_at(8, 32)) == ()
    assert len(spread(FIRST, strokes_in(60, 20))) == 1
    assert len(spread(FIRST, strokes_in(180, 20))) == 3


@given(
    st.sampled_from(FOCUSES),
    st.lists(st.sampled_from(FOCUSES), max_size=5, unique=True),
    st.integers(1, 14_400),
    rates,
    st.sampled_from(list(Level)),
    st.integers(1, 40),
    voices,
)
def test_every_call_can_be_spoken_where_it_is_put_in_every_repetition(
    focus: Focus, others: list[Focus], seconds: int, rate: int, level: Level, times: int, voice: int
) -> None:
    strokes = strokes_in(seconds, rate, Fit.RATE)
    others = [other for other in others if other is not focus]
    own, *more = (suited(each, level, rate) for each in (focus, *others))
    calls = spread(own, strokes, more=[c for calls in more for c in calls], times=times, words_a_minute=voice)
    assert len({call.text for call in calls}) == len(calls) <= limits.CALLS_IN_BLOCK
    assert all(call.stroke is not None and call.stroke <= limits.BLOCK_STROKES.high for call in calls)
    for number in range(1, times + 1):
        said = calls_of(calls, Repetition(number, times))
        placed, misfits = place_calls(
            said, strokes, strokes.duration, length_known=True, words_a_minute=voice
        )
        assert misfits == ()
        for call in placed:
            assert call.at >= OPENING_SECONDS
            assert call.at + call.seconds <= strokes.duration - CLOSING_SECONDS
        for first, second in pairwise(placed):
            assert second.at - first.at >= APART_SECONDS - strokes.stroke


def test_the_calls_of_the_focus_itself_come_first() -> None:
    more = suited(FOCUSES[1], Level.CLUB, 20)
    calls = spread(FIRST, strokes_in(1800, 20), more=more)
    assert [call.text for call in calls[: len(FIRST)]] == [call.text for call in FIRST]
    assert {call.text for call in calls[len(FIRST) :]} <= {call.text for call in more}


# --- In sessions

ATHLETE = Athlete((Result(2000, Fraction(462)),))


def main_segments(request: SessionRequest) -> list[Segment]:
    segments = compile_timeline(session_of(request).plan, request.rower).segments
    return [s for s in segments if s.part == PartKind.MAIN and s.stretch.strokes]


@pytest.mark.parametrize(
    "piece",
    [IntervalSet(8, metres=500), IntervalSet(4, metres=2000, rest_seconds=300), IntervalSet(6, seconds=120)],
)
@pytest.mark.parametrize("level", list(Level))
def test_no_repetition_of_a_set_says_what_the_one_before_it_said(piece: IntervalSet, level: Level) -> None:
    rows = main_segments(SessionRequest(piece, level=level, athlete=ATHLETE))
    said = [{call.text for call in row.stretch.calls} for row in rows]
    assert len(said) == piece.times
    assert all(said)
    assert all(not first & second for first, second in pairwise(said))
    assert all(not first & second for first, second in zip(said, said[2:], strict=False))


@pytest.mark.parametrize("level", list(Level))
@pytest.mark.parametrize("athlete", [None, ATHLETE])
@pytest.mark.parametrize(
    "piece",
    [
        TestPiece(metres=2000),
        TestPiece(metres=5000),
        TestPiece(metres=10_000),
        TestPiece(seconds=1800),
        TestPiece(seconds=3600),
        SteadyRow(3600),
    ],
)
def test_nobody_rows_long_without_hearing_a_word(
    piece: TestPiece | SteadyRow, athlete: Athlete | None, level: Level
) -> None:
    rows = main_segments(SessionRequest(piece, level=level, athlete=athlete))
    for row in rows:
        moments = [0.0, *(float(call.at) for call in row.stretch.calls), float(row.stretch.duration)]
        assert max(later - sooner for sooner, later in pairwise(moments)) <= QUIET_SECONDS + 30


def test_a_piece_of_hours_in_one_block_says_all_that_a_block_can_hold() -> None:
    (row,) = main_segments(SessionRequest(TestPiece(metres=42_195)))
    assert len(row.stretch.calls) == limits.CALLS_IN_BLOCK
    assert len({call.text for call in row.stretch.calls}) == limits.CALLS_IN_BLOCK
