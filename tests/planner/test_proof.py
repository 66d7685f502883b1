"""Mends are tried out: each that is offered removes its finding and asks nothing hard of a cold body."""

from __future__ import annotations

import pytest

from planner.appraisal import appraise
from planner.athlete import Athlete, Level, Room
from planner.findings import Finding
from planner.notation.reader import read
from planner.plan import Plan
from planner.timeline import compile_timeline
from tests.mending import apply
from tests.sweep.mends import broken_mends
from tests.sweep.plans import sketches

SAMPLE, SEED = 120, 20_261


def found(plan: Plan, level: Level = Level.CLUB, room: Room = Room.NORMAL) -> dict[str, Finding]:
    rower = Athlete(level=level)
    return {f.code: f for f in appraise(compile_timeline(plan, rower), rower, level, room).findings}


def mended(plan: Plan, code: str) -> Plan:
    mend = found(plan)[code].mend
    assert mend is not None
    return apply(plan, mend.edits)


@pytest.mark.parametrize(
    "text",
    [
        "main\n3 x (5' r18 light, 30\" r32 full)",
        "main\n3' r20 half\n30\" r26 111% power",
        "main\n4' r18 light\n2 x (500m r30 race, 2' r18 light)",
        "gap 5'\nmain\n2 x (4' r18 light, 1' r34 full)",
    ],
)
def test_without_a_warm_up_one_tap_leads_through_easy_rowing_and_steps_to_a_burst(text: str) -> None:
    after = found(mended(read(text), "no-rise"))
    assert not {"no-rise", "hard-too-early", "jump-too-steep", "no-warm-up"} & set(after)


def test_a_mend_that_leaves_its_finding_is_carried_on_with_or_not_offered() -> None:
    broken = [told for sketch in sketches(SEED, SAMPLE) for told in broken_mends(sketch)]
    assert broken == []
