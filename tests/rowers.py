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
ONE_EASY = st.builds(two_and_easy, st.integers(3000, 12_000), SPLITS, st.floats(0.05, 0.4))
ANY_RESULTS = st.lists(
    st.builds(result, st.integers(100, 42_195), st.floats(80, 300)), min_size=1, max_size=6
).map(lambda results: Athlete(tuple(results)))
"""Results that need not go together."""


@st.composite
def by_own_law(draw: st.DrawFn, fewest: int = 1, most: int = 3) -> Athlete:
    """A rower whose results follow one power law, each up to a percent slower than it."""
    two_k_split = draw(st.floats(88, 150))
    exponent = draw(st.floats(0.03, 0.11))
    distances = draw(st.lists(st.sampled_from(TESTED), min_size=fewest, max_size=most, unique=True))
    slower = draw(st.lists(st.floats(0, 0.01), min_size=len(distances), max_size=len(distances)))
    return Athlete(
        tuple(
            result(metres, two_k_split * (metres / 2000) ** exponent, off)
            for metres, off in zip(distances, slower, strict=True)
        )
    )


TESTED = (100, 200, 300, 500, 1000, 1500, 2000, 3000, 5000, 6000, 10_000, 21_097)
BY_OWN_LAW = by_own_law()
KNOWN = st.one_of(OF_ONE_RESULT, OF_MANY, ONE_EASY, by_own_law(2))
ANYBODY = st.one_of(st.none(), KNOWN)
