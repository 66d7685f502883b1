"""Split, speed, power and distance under the display convention."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.pace import metres_in, power_of_split, seconds_for, split_of, split_of_power

SPLITS = st.fractions(60, 360, max_denominator=10)


# Fact sheet 1.1: the air-machine display convention P = 2.80 v^3, values to 0.01 W.
@pytest.mark.parametrize(
    ("split", "watts"),
    [
        ("90", 480.11),
        ("100", 350.00),
        ("105", 302.34),
        ("110", 262.96),
        ("120", 202.55),
        ("125", 179.20),
        ("150", 103.70),
        ("180", 60.01),
    ],
)
def test_power_of_published_splits(split: str, watts: float) -> None:
    assert float(power_of_split(Fraction(split))) == pytest.approx(watts, abs=0.005)


@pytest.mark.parametrize(
    ("watts", "split"),
    [
        (50, 191.293),
        (100, 151.829),
        (150, 132.635),
        (200, 120.507),
        (250, 111.869),
        (300, 105.273),
        (350, 100.0),
        (500, 88.790),
    ],
)
def test_split_of_published_powers(watts: float, split: float) -> None:
    assert split_of_power(watts) == pytest.approx(split, abs=0.0005)


@given(SPLITS)
def test_split_and_power_are_inverse(split: Fraction) -> None:
    assert split_of_power(float(power_of_split(split))) == pytest.approx(float(split), rel=1e-12)


@given(SPLITS)
def test_twice_the_speed_takes_eight_times_the_power(split: Fraction) -> None:
    assert power_of_split(split / 2) == 8 * power_of_split(split)


@given(st.integers(1, 100_000), SPLITS)
def test_distance_time_and_split_agree_exactly(metres: int, split: Fraction) -> None:
    seconds = seconds_for(metres, split)
    assert metres_in(seconds, split) == metres
    assert split_of(metres, seconds) == split
