"""Pieces drawn at random: test pieces, how they are paced, and interval sets."""

from __future__ import annotations

from hypothesis import strategies as st

from planner.pacing import Pacing, Shape
from planner.pieces import IntervalSet, TestPiece

PACINGS = st.sampled_from([None, Pacing(Shape.EVEN), Pacing(Shape.NEGATIVE), Pacing(Shape.QUICK_START)])
TESTS = st.one_of(
    st.integers(1, 211).map(lambda hundreds: TestPiece(metres=100 * hundreds)),
    st.integers(1, 240).map(lambda halves: TestPiece(seconds=30 * halves)),
    st.builds(
        lambda minutes, cap: TestPiece(seconds=60 * minutes, rate_cap=cap),
        st.integers(1, 90),
        st.sampled_from(range(18, 33, 2)),
    ),
)
LEAVES = st.sampled_from([0, 20, 40, 60])
SLOWEST_SECONDS_A_METRE = 0.4
"""At 3:20 per 500 m, so that nearly no set is too long for the models."""


@st.composite
def sets(draw: st.DrawFn, longest_rest: float = 5.0, shortest_seconds: int = 15) -> IntervalSet:
    """Sets of up to an hour's work; rests up to so many times as long as a repetition at its shortest."""
    each = draw(st.integers(shortest_seconds // 5, 300)) * 5
    times = draw(st.integers(2, max(2, min(40, 3000 // each))))
    rest = 5 * round(draw(st.floats(0, longest_rest)) * each / 5)
    rest = min(max(rest, 15), 1200)
    leave = draw(LEAVES)
    if draw(st.booleans()):
        return IntervalSet(times, seconds=each, rest_seconds=rest, leave_percent=leave)
    metres = round(each / SLOWEST_SECONDS_A_METRE / 50) * 50
    return IntervalSet(times, metres=max(100, metres), rest_seconds=rest, leave_percent=leave)
