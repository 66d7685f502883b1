"""All-out work for somebody new to rowing: it is said of every length, and of nothing that is only hard."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from planner.appraisal import appraise
from planner.athlete import Athlete, Level, Result
from planner.errors import InputError
from planner.findings import Finding
from planner.notation.reader import read
from planner.pieces import IntervalSet, Piece, SteadyRow, Technique, TestPiece
from planner.plan import Plan
from planner.session import SessionRequest, session_of
from planner.timeline import compile_timeline
from tests.mending import apply
from tests.rowers import KNOWN, OF_MANY, OF_ONE_RESULT

NOBODY_OR_HARD = st.one_of(st.none(), OF_ONE_RESULT, OF_MANY)


def found(plan: Plan, athlete: Athlete | None = None) -> Finding | None:
    rower = Athlete(athlete.results if athlete else (), level=Level.NOVICE)
    findings = appraise(compile_timeline(plan, rower), rower, Level.NOVICE).findings
    return next((finding for finding in findings if finding.code == "novice-maximal"), None)


def session(piece: Piece, athlete: Athlete | None) -> Plan:
    try:
        return session_of(SessionRequest(piece, athlete=athlete, level=Level.NOVICE)).plan
    except InputError:  # a piece of more than four hours, a split out of reach
        assume(False)
        raise


@given(
    st.one_of(
        st.sampled_from([100, 500, 1000, 2000, 5000, 6000, 10_000, 21_097, 42_195]).map(
            lambda metres: TestPiece(metres=metres)
        ),
        st.integers(1, 120).map(lambda halves: TestPiece(seconds=30 * halves)),
    ),
    NOBODY_OR_HARD,
)
def test_every_test_piece_is_maximal_and_its_mend_takes_it_down(
    piece: TestPiece, athlete: Athlete | None
) -> None:
    plan = session(piece, athlete)
    finding = found(plan, athlete)
    assert finding is not None
    assert finding.mend is not None
    assert found(apply(plan, finding.mend.edits), athlete) is None


@given(st.integers(5, 240), st.sampled_from([SteadyRow, Technique]), st.one_of(st.none(), KNOWN))
def test_no_easy_session_is_maximal(minutes: int, kind: type[SteadyRow], athlete: Athlete | None) -> None:
    length = 60 * minutes if kind is SteadyRow else min(3600, 60 * minutes)
    assert found(session(kind(length), athlete), athlete) is None


@pytest.mark.parametrize(
    "piece",
    [
        IntervalSet(20, seconds=30, rest_seconds=30),
        IntervalSet(10, metres=100, rest_seconds=120),
        IntervalSet(3, seconds=1200, rest_seconds=15),
    ],
)
def test_sets_at_what_can_just_be_held_are_maximal_in_their_sum(piece: IntervalSet) -> None:
    athlete = Athlete((Result(2000, Fraction(540)),))
    plan = session(piece, athlete)
    finding = found(plan, athlete)
    assert finding is not None
    assert finding.mend is not None
    assert found(apply(plan, finding.mend.edits), athlete) is None


@pytest.mark.parametrize(
    ("text", "maximal"),
    [
        ("main\n10 strokes r28 full\n5' r18 light", True),
        ("warm-up\n5' r18 light\n10 strokes r28 full\n5' r18 light", False),
        ("warm-up\n5' r18 light\n40\" r28 full\n5' r18 light", True),
        ("main\n6 x 5' r24 80% power / 1' rest", True),
        ("main\n6 x 5' r24 80% power / 15' rest", False),
        ("main\n5' r24 80% power", False),
        ("main\n90' r18 half", False),
        ("main\n30' r20 full", False),
    ],
)
def test_bursts_are_free_in_a_warm_up_alone_and_repetitions_add_up(text: str, maximal: bool) -> None:
    assert (found(read(text)) is not None) == maximal
