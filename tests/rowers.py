"""Invented rowers drawn at random: by one result, by many, and with a long one that was rowed easily."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import strategies as st

from planner.athlete import Athlete, Level, Result

LEVELS = st.sampled_from(list(Level))
SPLITS = st.integers(950, 1600).map(lambda tenths: tenths / 10)
STEEPEST = 9 / 8
"""The slow end of the exponents that rowers have (Kennelly 1906): slower is taken for easy."""


def result(metres: int, split: float, slower: float = 0.0) -> Result:
    """A result at a split, or slower by a share of its time."""
    return Result(metres, Fraction(round(10 * split * metres / 500 * (1 + slower)), 10))


def two_and_easy(metres: int, two_k_split: float, slower: float) -> Athlete:
    """A 2 km flat out, and a longer one slower than the steepest law by a share of its time."""
    steepest = two_k_split * (metres / 2000) ** (STEEPEST - 1)
    return Athlete((result(2000, two_k_split), result(metres, steepest, slower)))


OF_ONE_RESULT = st.builds(
    lambda metres, split: Athlete((result(metres, split),)), st.sampled_from([1000, 2000, 5000]), SPLITS
)
OF_MANY = st.builds(
    lambda split, slower: Athlete(
        (result(1000, split - 5), result(2000, split), result(6000, split + 8, slower))
    ),
    SPLITS,
    st.floats(-0.02, 0.05),
)
ONE_EASY = st.builds(two_and_easy, st.integers(3000, 12_000), SPLITS, st.floats(0.005, 0.4))
KNOWN = st.one_of(OF_ONE_RESULT, OF_MANY, ONE_EASY)
ANYBODY = st.one_of(st.none(), KNOWN)
