"""An appraisal as a whole: its order, what it never says twice, the built-in plans, and any plan at all."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from planner.appraisal import Appraisal, appraise
from planner.athlete import Athlete, Level, Result, Room
from planner.errors import InputError
from planner.findings import Finding, Severity
from planner.notation.reader import read
from planner.plan import Plan
from planner.schemas.plan_schema import load_plan
from planner.timeline import compile_timeline
from tests.mending import apply, stays
from tests.strategies import DOCUMENTS
from web.builtin_plans import load_library

PLANS = load_library(Path(__file__).resolve().parents[2] / "plans").plans
RESULTS = (None, 375, 462, 580)
LEVELS = st.sampled_from(list(Level))
ROOMS = st.sampled_from(list(Room))
MANY_FAULTS = """
setting: lever 9
warm-up
1' r18 light
9 strokes r32 full
10' r20 half
gap 1'
main
35' r20 three-quarter
6 x 5' r34 120% power / 2' r20 full
7" r20 light
  call: One call that is far too long to be said here
cool-down
5' r22 full
"""


def appraised(
    plan: Plan, level: Level = Level.CLUB, seconds: int | None = None, room: Room = Room.NORMAL
) -> Appraisal:
    athlete = Athlete((Result(2000, Fraction(seconds)),) if seconds else (), level=level)
    return appraise(compile_timeline(plan, athlete), athlete, level, room)


def weight(finding: Finding) -> int:
    return [Severity.WARNING, Severity.ADVICE, Severity.NOTE].index(finding.severity)


def test_the_heaviest_come_first_and_then_the_order_of_the_plan() -> None:
    found = appraised(read(MANY_FAULTS)).findings
    assert len({finding.severity for finding in found}) == len(Severity)
    for first, second in pairwise(found):
        assert weight(first) <= weight(second)
        if weight(first) == weight(second):
            assert steps(first.place) <= steps(second.place)


def steps(place: str) -> list[tuple[int, str]]:
    return [(int(step), "") if step.isdigit() else (-1, step) for step in place.split("/")]


def test_block_10_comes_after_block_9() -> None:
    text = "main\n" + "1' r20 light\n" * 9 + '7" r20 light\n' * 2
    assert [f.place for f in appraised(read(text)).findings] == ["/parts/0/blocks/9", "/parts/0/blocks/10"]


def test_no_two_say_the_same() -> None:
    found = appraised(read(MANY_FAULTS)).findings
    assert len({(f.code, f.place) for f in found}) == len(found)
    assert len({f.sentence for f in found}) == len(found)


def test_what_the_compiler_notes_is_said_too() -> None:
    codes = {finding.code for finding in appraised(read("main\n1' +2\"\n")).findings}
    assert {"no-rate", "change-without-target"} <= codes


def test_readiness_comes_with_it_where_something_is_rowed_before_the_piece() -> None:
    ready = appraised(read("warm-up\n9' r20 half\ngap 5'\nmain\n2000m r30 2k")).readiness
    assert ready is not None
    assert ready.gap_seconds == 300
    assert appraised(read("main\n2000m r30 2k")).readiness is None


@pytest.mark.parametrize("slug", sorted(PLANS))
@pytest.mark.parametrize("level", Level)
@pytest.mark.parametrize("seconds", RESULTS)
def test_a_built_in_plan_has_nothing_above_advice_whoever_rows_it(
    slug: str, level: Level, seconds: int | None
) -> None:
    for room in Room:
        found = appraised(PLANS[slug].plan, level, seconds, room).findings
        assert [f for f in found if f.severity is Severity.WARNING] == []
        assert len([f for f in found if f.code != "heat"]) <= 2


def test_most_built_in_plans_have_nothing_at_all_to_be_said_of_them() -> None:
    """For anybody of club level in a room that is neither hot nor cold."""
    assert [slug for slug, plan in PLANS.items() if appraised(plan.plan).findings] == []


@settings(suppress_health_check=[HealthCheck.too_slow], deadline=None)
@given(DOCUMENTS, LEVELS, ROOMS, st.sampled_from(RESULTS))
def test_any_plan_can_be_appraised_and_every_mend_makes_a_plan_and_mends(
    document: Any, level: Level, room: Room, seconds: int | None
) -> None:
    try:
        plan = load_plan(document)
    except InputError:
        assume(False)
        return
    found = appraised(plan, level, seconds, room).findings
    for finding in found:
        if finding.mend is None:
            continue
        mended = apply(plan, finding.mend.edits)
        after = appraised(mended, level, seconds, room).findings
        assert not stays(finding, found, after), finding
