"""The 2 km split behind one result."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.athlete import Athlete, Result
from planner.customs import by_doubling, by_power_law
from planner.prediction import two_k_from, two_k_of

SEVEN_MINUTES = Result(2000, Fraction(420))


# Fact sheet 3.1, from 2000 m in 7:00.0: Riegel's power law (exponent 1.06) and the 5-seconds custom.
@pytest.mark.parametrize(("metres", "seconds"), [(5000, 1109.34), (10_000, 2312.90), (1000, 201.45)])
def test_the_power_law_gives_the_tabled_times(metres: int, seconds: float) -> None:
    assert by_power_law(SEVEN_MINUTES, metres) == pytest.approx(seconds, abs=0.006)


@pytest.mark.parametrize(
    ("metres", "seconds"), [(5000, 1116.10), (10_000, 2332.19), (1000, 200.0), (500, 95.0)]
)
def test_the_doubling_custom_gives_the_tabled_times(metres: int, seconds: float) -> None:
    assert by_doubling(SEVEN_MINUTES, metres) == pytest.approx(seconds, abs=0.006)


def test_a_2_km_result_is_its_own_2_km_split() -> None:
    two_k = two_k_from(Result(2000, Fraction(462)))
    assert (two_k.low, two_k.split, two_k.high) == (Fraction(1155, 10),) * 3


def test_another_distance_gives_a_split_between_both_customs() -> None:
    two_k = two_k_from(Result(5000, Fraction(1200)))
    assert two_k.low < two_k.split < two_k.high


def test_a_short_result_leaves_the_power_law_aside() -> None:
    sprint = Result(500, Fraction(95))
    assert two_k_from(sprint).split == 105


@given(st.integers(100, 42_195), st.fractions(75, 300, max_denominator=10))
def test_a_faster_result_never_predicts_a_slower_2_km(metres: int, split: Fraction) -> None:
    slower = Result(metres, split * metres / 500)
    faster = Result(metres, slower.seconds * Fraction(99, 100))
    low, high = 210, 13_800
    same_side = (low <= slower.seconds <= high) == (low <= faster.seconds <= high)
    if same_side:
        assert two_k_from(faster).split <= two_k_from(slower).split


def test_without_a_result_there_is_no_2_km_split() -> None:
    assert two_k_of(None) is None
    assert two_k_of(Athlete()) is None
