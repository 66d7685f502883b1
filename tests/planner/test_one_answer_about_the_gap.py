"""The wait before the piece: the session, its readiness and its findings give one answer."""

from __future__ import annotations

import re
from fractions import Fraction

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from planner.appraisal import Appraisal, appraise
from planner.athlete import Athlete, Level, Room
from planner.errors import InputError
from planner.pieces import Piece, SteadyRow, Technique
from planner.plan import Block, Gap, Part, PartKind, Plan, Rest, TwoKPower
from planner.readiness import Readiness
from planner.session import SessionRequest, session_of
from planner.timeline import compile_timeline
from tests.builders import seconds
from tests.pieces import TESTS, sets
from tests.rowers import ANYBODY, LEVELS

GAP_CODES = {"gap-too-short", "gap-too-long", "warm-up-spends-too-much"}
ROOMS = st.sampled_from(list(Room))
PIECES = st.one_of(
    TESTS,
    sets(),
    st.integers(5, 120).map(lambda minutes: SteadyRow(60 * minutes)),
    st.integers(5, 60).map(lambda minutes: Technique(60 * minutes)),
)


def codes(found: Appraisal) -> set[str]:
    return GAP_CODES & {finding.code for finding in found.findings}


@settings(max_examples=60)
@given(PIECES, ANYBODY, LEVELS, ROOMS, st.integers(5, 30), st.booleans())
def test_the_gap_that_a_session_has_is_the_one_that_is_advised_and_nothing_is_found_in_it(
    piece: Piece, athlete: Athlete | None, level: Level, room: Room, minutes: int, only_warm_up: bool
) -> None:
    request = SessionRequest(piece, minutes, athlete, level, room, only_warm_up=only_warm_up)
    try:
        plan = session_of(request).plan
    except InputError:
        assume(False)
        raise
    found = appraise(compile_timeline(plan, request.rower), request.rower, level, room)
    gaps = [part.seconds for part in plan.parts if isinstance(part, Gap)]
    assert found.readiness is not None
    assert gaps == [found.readiness.advised_gap.best]
    assert codes(found) == set()
    assert " is right: " in found.readiness.sentence


def spoken(ready: Readiness) -> set[str]:
    """The finding that the sentence of readiness amounts to."""
    if "row it easier" in ready.sentence:
        return {"warm-up-spends-too-much"}
    if re.search(r"is short: |Leave about ", ready.sentence):
        return {"gap-too-short"}
    return {"gap-too-long"} if "is long: " in ready.sentence else set()


HARD_OR_EASY = st.builds(
    lambda length, percent: seconds(length, 24, TwoKPower(Fraction(percent, 100))),
    st.integers(1, 60).map(lambda tens: 10 * tens),
    st.integers(30, 130),
)


@settings(max_examples=150)
@given(
    st.lists(HARD_OR_EASY, min_size=1, max_size=5),
    st.one_of(st.just(0), st.integers(10, 900)),
    st.one_of(st.just(0), st.integers(10, 1500)),
    HARD_OR_EASY,
    LEVELS,
    ROOMS,
)
def test_whatever_the_plan_readiness_and_findings_say_the_same_of_the_gap(
    warm_up: list[Block], rest: int, gap: int, piece: Block, level: Level, room: Room
) -> None:
    rests = (Rest(rest),) if rest else ()
    plan = Plan(
        "Any",
        (
            Part(PartKind.WARM_UP, (*warm_up, *rests)),
            *((Gap(gap),) if gap else ()),
            Part(PartKind.MAIN, (piece,)),
        ),
    )
    found = appraise(compile_timeline(plan), None, level, room)
    assert found.readiness is not None
    assert codes(found) == spoken(found.readiness)
