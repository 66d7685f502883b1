"""Sessions for any piece at all: what every one of them keeps to."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from planner.athlete import Athlete, Level, Result, Room
from planner.errors import InputError
from planner.pieces import (
    BREAK_SECONDS,
    RATE_CAP,
    REPETITION_METRES,
    REPETITION_SECONDS,
    REPETITIONS,
    STEADY_SECONDS,
    TECHNIQUE_SECONDS,
    TEST_METRES,
    TEST_SECONDS,
    IntervalSet,
    Piece,
    SteadyRow,
    Technique,
    TestPiece,
)
from planner.plan import Block, ForSeconds, Part, PartKind, Pressure, Step
from planner.schemas.plan_schema import dump_plan, load_plan
from planner.session import Session, SessionRequest, session_of
from planner.warm_up.rules import MINUTES
from tests.strategies import whole

CAPS = st.none() | whole(RATE_CAP)
TEST_PIECES = st.builds(TestPiece, metres=whole(TEST_METRES), rate_cap=CAPS) | st.builds(
    TestPiece, seconds=whole(TEST_SECONDS), rate_cap=CAPS
)
BREAKS = whole(BREAK_SECONDS)
SETS = st.builds(
    IntervalSet, whole(REPETITIONS), metres=whole(REPETITION_METRES), rest_seconds=BREAKS
) | st.builds(IntervalSet, whole(REPETITIONS), seconds=whole(REPETITION_SECONDS), rest_seconds=BREAKS)
EASY = st.builds(SteadyRow, whole(STEADY_SECONDS)) | st.builds(Technique, whole(TECHNIQUE_SECONDS))
PIECES: st.SearchStrategy[Piece] = TEST_PIECES | SETS | EASY
ATHLETES = st.none() | st.builds(
    lambda seconds: Athlete((Result(2000, Fraction(seconds)),)), st.integers(340, 660)
)


def requests(pieces: st.SearchStrategy[Piece]) -> st.SearchStrategy[SessionRequest]:
    return st.builds(
        SessionRequest,
        pieces,
        whole(MINUTES),
        ATHLETES,
        st.sampled_from(list(Level)),
        st.sampled_from(list(Room)),
    )


def part(session: Session, kind: PartKind) -> tuple[Step, ...]:
    (found,) = (p for p in session.plan.parts if isinstance(p, Part) and p.kind is kind)
    return found.blocks


def made(request: SessionRequest) -> Session:
    """The session, where one can be made at all."""
    try:
        return session_of(request)
    except InputError:
        assume(False)
        raise


@given(requests(PIECES))
@example(SessionRequest(TestPiece(metres=137), athlete=Athlete((Result(2000, Fraction(462)),))))
@example(SessionRequest(TestPiece(metres=2040), athlete=Athlete((Result(2000, Fraction(462)),))))
@example(SessionRequest(TestPiece(metres=42_195), level=Level.NOVICE))
def test_the_border_takes_every_session_as_it_was_made(request: SessionRequest) -> None:
    plan = made(request).plan
    assert load_plan(json.loads(json.dumps(dump_plan(plan)))) == plan


@pytest.mark.parametrize("level", list(Level))
@pytest.mark.parametrize("athlete", [None, Athlete((Result(2000, Fraction(462)),))], ids=["nobody", "7:42"])
def test_no_distance_is_cut_into_blocks_that_the_border_refuses(
    athlete: Athlete | None, level: Level
) -> None:
    for metres in (*range(100, 2200, 17), 21_097, 25_000, 30_000, 42_195):
        plan = session_of(SessionRequest(TestPiece(metres=metres), athlete=athlete, level=level)).plan
        assert load_plan(dump_plan(plan)) == plan


@given(requests(PIECES))
@example(SessionRequest(TestPiece(seconds=1800)))
@example(SessionRequest(TestPiece(metres=10_000), room=Room.HOT))
@example(SessionRequest(IntervalSet(8, metres=500, rest_seconds=120)))
def test_the_way_down_begins_with_easy_rowing_and_never_with_sitting_still(request: SessionRequest) -> None:
    """Standing or sitting still straight after hard work can make faint: common practice [C]."""
    first, *_ = part(made(request), PartKind.COOL_DOWN)
    assert isinstance(first, Block)
    assert first.effort is Pressure.LIGHT
    assert isinstance(first.length, ForSeconds)
    assert first.length.seconds >= 180
