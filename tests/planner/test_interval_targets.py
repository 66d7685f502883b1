"""Targets of interval sets held against what the same results say of single pieces.

That nobody repeats a piece flat out at its own pace, and that rests count by how long they are beside the
repetitions, is common practice of coaches, without a source. The pieces come from `expectation_of`.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from planner.athlete import Athlete, Level, Result
from planner.capacity import capacity_of
from planner.errors import InputError
from planner.main_piece import interval_steps
from planner.pieces import IntervalSet, TestPiece, expectation_of
from planner.plan import Block, Pressure, Rest, Split, TwoKPower
from planner.prediction import two_k_of
from tests.pieces import sets
from tests.rowers import ANYBODY, LEVELS, OF_ONE_RESULT

SLOWER = 1.02
"""Each repetition is rowed at a split of at least so many times that of one flat out."""
ROUNDING = 1e-6

LEVEL_OR_RESULT = st.one_of(st.none(), OF_ONE_RESULT)
"""Of several results the one nearest to a piece counts, so that not all shorter pieces are quicker."""


def target(asked: IntervalSet, athlete: Athlete | None, level: Level) -> float:
    """The share of 2 km power of each repetition; passes over a set that is refused."""
    expected = expectation_of(asked, athlete, level)
    try:
        repeat, _ = interval_steps(asked, expected, capacity_of(athlete, level), level)
    except InputError:
        assume(False)
        raise
    (block,) = repeat.blocks
    assert isinstance(block, Block)
    assert repeat.between == (Rest(asked.rest_seconds),)
    match block.effort:
        case Split(seconds):
            two_k = two_k_of(athlete)
            assert two_k is not None
            return float(two_k.split / seconds) ** 3
        case TwoKPower(fraction):
            return float(fraction)
        case effort:
            assert effort is Pressure.RACE
            return 1.0


def piece(asked: IntervalSet, repetitions: float, athlete: Athlete | None, level: Level) -> float:
    """The share at which so many repetitions are rowed in one go, flat out."""
    metres, seconds = (
        None if length is None else round(length * repetitions) for length in (asked.metres, asked.seconds)
    )
    return expectation_of(TestPiece(metres=metres, seconds=seconds), athlete, level).share


def repetition_seconds(asked: IntervalSet, athlete: Athlete | None, level: Level) -> float:
    return float(expectation_of(TestPiece(asked.metres, asked.seconds), athlete, level).seconds)


@given(sets(), ANYBODY, LEVELS)
def test_no_repetition_is_as_quick_as_one_flat_out(
    asked: IntervalSet, athlete: Athlete | None, level: Level
) -> None:
    flat_out = piece(asked, 1, athlete, level)
    assert target(asked, athlete, level) <= flat_out / SLOWER**3 + ROUNDING


@given(sets(longest_rest=0.04, shortest_seconds=400), LEVEL_OR_RESULT, LEVELS)
def test_with_the_shortest_rests_a_set_is_no_quicker_than_its_work_in_one_go(
    asked: IntervalSet, athlete: Athlete | None, level: Level
) -> None:
    assume(asked.rest_seconds <= repetition_seconds(asked, athlete, level) / 10)
    nearly_all = piece(asked, 0.9 * asked.times, athlete, level)
    assert target(asked, athlete, level) <= nearly_all + ROUNDING


@given(sets(longest_rest=0.4, shortest_seconds=40), LEVEL_OR_RESULT, LEVELS)
def test_with_rests_up_to_its_repetitions_a_set_is_no_quicker_than_half_of_its_work_in_one_go(
    asked: IntervalSet, athlete: Athlete | None, level: Level
) -> None:
    assume(asked.rest_seconds <= repetition_seconds(asked, athlete, level))
    half = piece(asked, 0.499 * asked.times, athlete, level)
    assert target(asked, athlete, level) <= half + ROUNDING


@given(sets(), LEVEL_OR_RESULT, LEVELS, st.integers(1, 60))
def test_a_longer_rest_never_slows_a_set(
    asked: IntervalSet, athlete: Athlete | None, level: Level, fives: int
) -> None:
    longer = IntervalSet(
        asked.times, asked.metres, asked.seconds, asked.rest_seconds + 5 * fives, asked.leave_percent
    )
    assert target(longer, athlete, level) >= target(asked, athlete, level) - 0.01


@pytest.mark.parametrize(
    ("asked", "slowest_piece"),
    [
        (IntervalSet(3, seconds=1200, rest_seconds=15), TestPiece(seconds=3500)),
        (IntervalSet(2, metres=5000, rest_seconds=60), TestPiece(metres=9000)),
        (IntervalSet(10, metres=100, rest_seconds=180), TestPiece(metres=105)),
    ],
)
def test_sets_that_once_came_too_quick(asked: IntervalSet, slowest_piece: TestPiece) -> None:
    athlete = Athlete((Result(2000, Fraction(462)),))
    most = expectation_of(slowest_piece, athlete, Level.CLUB).share
    assert target(asked, athlete, Level.CLUB) <= most
