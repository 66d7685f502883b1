"""Targets sum to the goal by construction, whatever the shape, and follow the shape."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.errors import InputError
from planner.pacing import QUARTERS, Leg, Pacing, Shape, legs_in, legs_over, own_pacing

NAMED = st.sampled_from([Pacing(shape) for shape in Shape if shape is not Shape.OWN])
OFFSETS = st.lists(st.integers(-60, 60), min_size=3, max_size=3).map(
    lambda tenths: [Fraction(t, 10) for t in (*tenths, -sum(tenths))]
)
PACINGS = NAMED | OFFSETS.map(own_pacing)


def splits(legs: tuple[Leg, ...]) -> list[float]:
    return [round(float(leg.split), 1) for leg in legs]


@given(st.integers(100, 42_195), st.integers(900, 1800), PACINGS)
def test_times_over_metres_are_tenths_that_sum_to_the_goal(
    metres: int, split_tenths: int, pacing: Pacing
) -> None:
    goal = Fraction(round(metres * split_tenths / 500), 10)
    legs = legs_over(metres, goal, pacing)
    assert sum(leg.seconds for leg in legs) == goal
    assert sum(leg.metres for leg in legs) == metres
    assert all((leg.seconds * 10).denominator == 1 for leg in legs)


@given(st.integers(1, 480), st.integers(900, 1800), PACINGS)
def test_metres_on_the_clock_are_tenths_that_sum_to_the_goal(
    half_minutes: int, split_tenths: int, pacing: Pacing
) -> None:
    seconds = 30 * half_minutes
    goal = round(seconds * 5000 / split_tenths)
    legs = legs_in(seconds, goal, pacing)
    assert sum(leg.metres for leg in legs) == goal
    assert sum(leg.seconds for leg in legs) == seconds


def test_an_even_2_km_is_four_equal_legs() -> None:
    assert splits(legs_over(2000, Fraction(462), Pacing())) == [115.5] * 4


def test_a_goal_that_does_not_divide_makes_the_later_legs_the_quicker_ones() -> None:
    assert splits(legs_over(2000, Fraction(4622, 10), Pacing())) == [115.6, 115.6, 115.5, 115.5]


def test_a_quick_start_settles_and_keeps_something_for_the_end() -> None:
    first, *middle, last = splits(legs_over(2000, Fraction(462), Pacing(Shape.QUICK_START)))
    assert first < last < min(middle)


def test_a_negative_piece_is_quicker_in_each_quarter() -> None:
    legs = splits(legs_over(2000, Fraction(462), Pacing(Shape.NEGATIVE)))
    assert legs == sorted(legs, reverse=True)
    assert len(set(legs)) == QUARTERS


def test_own_offsets_stand_at_the_even_split_of_their_quarter() -> None:
    pacing = own_pacing([Fraction(-2), Fraction(1), Fraction(2), Fraction(-1)])
    assert splits(legs_over(2000, Fraction(462), pacing)) == [113.5, 116.5, 117.5, 114.5]


def test_own_offsets_that_do_not_sum_to_nothing_are_refused_with_the_remedy() -> None:
    with pytest.raises(InputError) as caught:
        own_pacing([Fraction(1), Fraction(1), Fraction(-1, 2), Fraction(0)])
    (problem,) = caught.value.problems
    assert problem.pointer == "/pacing/own"
    assert "sum to +1.5 s" in problem.sentence
    assert "lower them by 1.5 s" in problem.sentence


@pytest.mark.parametrize("goal", [1, 180, 1500])
def test_a_goal_that_is_no_rowing_says_what_would_be(goal: int) -> None:
    with pytest.raises(InputError) as caught:
        legs_over(2000, Fraction(goal), Pacing(Shape.NEGATIVE))
    (problem,) = caught.value.problems
    assert problem.pointer == "/goal_seconds"
    assert "2000 m take from 4:00 to 24:00" in problem.sentence
