"""Steep steps in rate or effort, wherever a repeat puts one block before another."""

from __future__ import annotations

from hypothesis import example, given
from hypothesis import strategies as st

from planner.appraisal import appraise
from planner.athlete import Athlete, Level
from planner.findings import Finding
from planner.plan import Block, ForSeconds, ForStrokes, Part, PartKind, Plan, Pressure, Repeat
from planner.timeline import compile_timeline
from tests.mending import apply

LEVELS = st.sampled_from(list(Level))
BLOCKS = st.builds(
    lambda strokes, rate, pressure: Block(ForStrokes(strokes), rate, pressure),
    st.integers(5, 40),
    st.integers(16, 40),
    st.sampled_from(list(Pressure)),
)
LISTS = st.lists(BLOCKS, min_size=1, max_size=3).map(tuple)
REPEATS = st.builds(Repeat, st.integers(2, 4), LISTS, st.just(()) | LISTS)


def warm_up(before: Block, repeat: Repeat, kind: PartKind = PartKind.WARM_UP) -> Plan:
    return Plan("Up", (Part(kind, (before, repeat)),))


def jumps(plan: Plan, level: Level) -> list[Finding]:
    rower = Athlete(level=level)
    found = appraise(compile_timeline(plan, rower), rower, level).findings
    return [finding for finding in found if finding.code == "jump-too-steep"]


EASY = Block(ForSeconds(60), 18, Pressure.LIGHT)


@given(BLOCKS, REPEATS, LEVELS, st.sampled_from([PartKind.WARM_UP, PartKind.MAIN]))
@example(
    Block(ForSeconds(60), 22, Pressure.HALF),
    Repeat(3, (Block(ForStrokes(10), 32, Pressure.HALF), EASY)),
    Level.CLUB,
    PartKind.WARM_UP,
)
@example(
    Block(ForSeconds(60), 24, Pressure.HALF),
    Repeat(3, (Block(ForStrokes(10), 34, Pressure.THREE_QUARTER),), (EASY,)),
    Level.TRAINED,
    PartKind.WARM_UP,
)
@example(
    Block(ForStrokes(5), 16, Pressure.LIGHT),
    Repeat(
        4,
        (
            Block(ForStrokes(5), 16, Pressure.RACE),
            Block(ForStrokes(5), 37, Pressure.THREE_QUARTER),
            Block(ForStrokes(5), 27, Pressure.LIGHT),
        ),
    ),
    Level.NOVICE,
    PartKind.WARM_UP,
)
def test_the_mend_of_a_steep_step_is_enough_in_every_repetition(
    before: Block, repeat: Repeat, level: Level, kind: PartKind
) -> None:
    """One round a step; where a mend also softens what is hard too early, one step more may come to light."""
    plan = warm_up(before, repeat, kind)
    found = jumps(plan, level)
    for _ in range(len(found) + 1):
        if not found:
            return
        assert found[0].mend is not None
        plan = apply(plan, found[0].mend.edits)
        left = jumps(plan, level)
        assert len(left) <= len(found)
        found = left
    assert found == []


def test_the_steepest_way_to_a_block_is_the_one_that_is_told() -> None:
    burst = Block(ForStrokes(10), 36, Pressure.HALF)
    (finding,) = jumps(
        warm_up(Block(ForSeconds(60), 26, Pressure.HALF), Repeat(3, (burst, EASY))), Level.CLUB
    )
    assert "leaps from r18 to r36" in finding.sentence
