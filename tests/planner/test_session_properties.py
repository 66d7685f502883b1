"""Sessions for any piece at all: what every one of them keeps to."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction
from math import cbrt

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from planner.athlete import Athlete, Level, Result, Room
from planner.errors import InputError
from planner.pacing import QUARTERS, Pacing, Shape, own_pacing
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
from planner.stretches import Stretch
from planner.timeline import compile_timeline
from planner.units import split_clock
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
ROWER = Athlete((Result(2000, Fraction(462)),))
OWN_ALLOWED = 0.4
"""A leg across the border of two quarters takes its part of both, so that short odd pieces are paced less."""
ROUNDED_SHARES = 2.0
"""Seconds per 500 m that a hundredth of 2 km power is worth at most in long, slow pieces."""
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
@example(SessionRequest(TestPiece(metres=137), athlete=ROWER))
@example(SessionRequest(TestPiece(metres=2040), athlete=ROWER))
@example(SessionRequest(TestPiece(metres=42_195), level=Level.NOVICE))
def test_the_border_takes_every_session_as_it_was_made(request: SessionRequest) -> None:
    plan = made(request).plan
    assert load_plan(json.loads(json.dumps(dump_plan(plan)))) == plan


@pytest.mark.parametrize("level", list(Level))
@pytest.mark.parametrize("athlete", [None, ROWER], ids=["nobody", "7:42"])
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


SHAPES = st.sampled_from([Pacing(Shape.QUICK_START), Pacing(Shape.NEGATIVE)])
OWN = st.lists(st.integers(-30, 30), min_size=3, max_size=3).map(
    lambda tenths: [Fraction(t, 10) for t in (*tenths, -sum(tenths))]
)
PACINGS = SHAPES | OWN.map(own_pacing)


@st.composite
def paced(draw: st.DrawFn) -> SessionRequest:
    """A test piece with a pacing, and perhaps with a result or a goal of its own."""
    request = draw(requests(TEST_PIECES))
    piece, pacing = request.piece, draw(PACINGS)
    assert isinstance(piece, TestPiece)
    if not draw(st.booleans()):
        return replace(request, pacing=pacing)
    split = draw(st.integers(900, 1500))
    if piece.metres is not None:
        return replace(request, pacing=pacing, goal_seconds=Fraction(piece.metres * split // 500, 10))
    return replace(request, pacing=pacing, goal_metres=(piece.seconds or 0) * 5000 // split)


QUARTER_ON_A_TIE = SessionRequest(
    TestPiece(metres=240), pacing=Pacing(Shape.NEGATIVE), goal_seconds=Fraction(432, 10)
)
"""Its third quarter comes to 1:29.55 exactly, which a float misses."""


def quarters(request: SessionRequest, session: Session) -> list[float]:
    """The split of each quarter of the piece, or where none is known one over the cube root of its power."""
    main = piece_of(request, session)
    rows = [(float(s.duration), float(s.metres_asked or s.duration), pace_of(s)) for s in main]
    whole, found = sum(length for _, length, _ in rows), []
    for quarter in range(QUARTERS):
        metres = seconds = at = 0.0
        for duration, length, pace in rows:
            inside = min(at + length, whole * (quarter + 1) / QUARTERS) - max(at, whole * quarter / QUARTERS)
            share, at = max(inside, 0.0) / length, at + length
            metres, seconds = metres + share * duration * 500 / pace, seconds + share * duration
        found.append(seconds * 500 / metres)
    return found


def piece_of(request: SessionRequest, session: Session) -> list[Stretch]:
    segments = compile_timeline(session.plan, request.rower).segments
    return [segment.stretch for segment in segments if segment.part == PartKind.MAIN]


def pace_of(stretch: Stretch) -> float:
    target = stretch.target
    assert target is not None
    if target.split is not None:
        return float(target.split)
    return 120 / cbrt(target.two_k_power_fraction or 1)


@given(paced())
@example(SessionRequest(TestPiece(metres=100), athlete=ROWER, pacing=Pacing(Shape.NEGATIVE)))
@example(SessionRequest(TestPiece(metres=1000), athlete=ROWER, pacing=Pacing(Shape.NEGATIVE)))
@example(SessionRequest(TestPiece(seconds=60), athlete=ROWER, pacing=Pacing(Shape.QUICK_START)))
@example(SessionRequest(TestPiece(metres=2000), pacing=Pacing(Shape.QUICK_START)))
def test_a_pacing_is_followed_by_the_legs_or_refused_at_its_place(request: SessionRequest) -> None:
    try:
        session = session_of(request)
    except InputError as error:
        places = {problem.pointer for problem in error.problems}
        assert places <= {"/pacing", "/goal_seconds", "/goal_metres", "/piece"}
        return
    first, second, third, last = quarters(request, session)
    match request.pacing:
        case Pacing(Shape.NEGATIVE):
            assert first > last
            assert first >= second >= third >= last
        case Pacing(Shape.QUICK_START):
            start, *middle, end = (pace_of(stretch) for stretch in piece_of(request, session))
            assert start < max(middle)
            assert start < end <= max(middle)
        case Pacing(Shape.OWN, own):
            rounding = 0.3 if "per 500 m on average" in " ".join(session.reasons) else ROUNDED_SHARES
            gained, asked = last - first, float(own[-1] - own[0])
            assert abs(gained - asked) <= OWN_ALLOWED * float(max(own) - min(own)) + rounding


@given(paced())
@example(QUARTER_ON_A_TIE)
def test_what_is_said_of_the_pace_names_the_splits_that_are_rowed(request: SessionRequest) -> None:
    session = made(request)
    (told,) = (
        reason for reason in session.reasons if "quarters come to" in reason or "It starts at" in reason
    )
    if "quarters" in told and "per 500 m" in told:
        splits = (Fraction(split).limit_denominator(10**6) for split in quarters(request, session))
        named = [split_clock(split) for split in splits]
        assert f"The quarters come to {named[0]}, {named[1]}, {named[2]} and {named[3]}" in told
