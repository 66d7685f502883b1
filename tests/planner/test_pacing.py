"""Splits come to the goal, whatever the shape, and follow the shape or are refused."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.errors import InputError
from planner.pacing import OWN_OFFSET, QUARTERS, Leg, Pacing, Shape, legs_in, legs_over, own_pacing

NAMED = st.sampled_from([Pacing(shape) for shape in Shape if shape is not Shape.OWN])
OFFSETS = (
    st.lists(st.integers(-60, 60), min_size=3, max_size=3)
    .map(lambda tenths: [Fraction(t, 10) for t in (*tenths, -sum(tenths))])
    .filter(lambda offsets: abs(offsets[-1]) <= OWN_OFFSET.high)
)
PACINGS = NAMED | OFFSETS.map(own_pacing)
TENTH_OF_A_SPLIT = Fraction(1, 10)


def splits(legs: tuple[Leg, ...]) -> list[float]:
    return [round(float(leg.split), 1) for leg in legs]


@given(st.integers(200, 42_195), st.integers(900, 1800), PACINGS)
def test_splits_over_metres_are_tenths_that_come_to_the_goal(
    metres: int, split_tenths: int, pacing: Pacing
) -> None:
    goal = Fraction(round(metres * split_tenths / 500), 10)
    legs = legs_over(metres, goal, pacing)
    assert sum(leg.metres for leg in legs) == metres
    assert all((leg.split * 10).denominator == 1 for leg in legs)
    lengths = {leg.metres for leg in legs}
    allowed = max(lengths) / 500 * TENTH_OF_A_SPLIT / 2 if len(lengths) > 1 or metres % 50 else 0
    assert abs(sum(leg.seconds for leg in legs) - goal) <= allowed


@given(st.integers(2, 480), st.integers(900, 1800), PACINGS)
def test_splits_on_the_clock_are_tenths_that_come_to_the_goal(
    half_minutes: int, split_tenths: int, pacing: Pacing
) -> None:
    seconds = 30 * half_minutes
    goal = round(seconds * 5000 / split_tenths)
    legs = legs_in(seconds, goal, pacing)
    assert sum(leg.seconds for leg in legs) == seconds
    assert all((leg.split * 10).denominator == 1 for leg in legs)
    allowed = max(float(leg.metres * TENTH_OF_A_SPLIT / leg.split) for leg in legs) / 2
    assert abs(float(sum(leg.metres for leg in legs)) - goal) <= allowed * 1.01


@given(st.integers(200, 42_195), st.integers(900, 1800), PACINGS)
def test_a_piece_that_is_paced_has_a_leg_for_each_quarter(
    metres: int, split_tenths: int, pacing: Pacing
) -> None:
    legs = legs_over(metres, Fraction(round(metres * split_tenths / 500), 10), pacing)
    assert len(legs) >= QUARTERS or pacing.shape is Shape.EVEN
    assert all(leg.metres >= 50 for leg in legs)


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


@pytest.mark.parametrize("metres", [200, 400, 500, 1000, 1500, 2000])
def test_own_offsets_are_followed_over_short_pieces_too(metres: int) -> None:
    pacing = own_pacing([Fraction(-4), Fraction(1), Fraction(2), Fraction(1)])
    first, *others = splits(legs_over(metres, Fraction(metres * 110, 500), pacing))
    assert first == 106
    assert min(others) >= first + 2


@pytest.mark.parametrize("shape", [Shape.QUICK_START, Shape.NEGATIVE])
@pytest.mark.parametrize("metres", [100, 137, 199])
def test_a_piece_too_short_for_its_shape_is_refused_and_not_rowed_even(metres: int, shape: Shape) -> None:
    with pytest.raises(InputError) as caught:
        legs_over(metres, Fraction(20), Pacing(shape))
    (problem,) = caught.value.problems
    assert problem.pointer == "/pacing"
    assert f"{metres} m are too short" in problem.sentence
    assert "four legs of at least 50 m" in problem.sentence


def test_half_a_minute_is_too_short_for_a_shape() -> None:
    with pytest.raises(InputError, match="30 s are too short"):
        legs_in(30, 150, Pacing(Shape.NEGATIVE))


def test_huge_own_offsets_are_refused_each_at_its_place() -> None:
    with pytest.raises(InputError) as caught:
        own_pacing([Fraction(-30), Fraction(0), Fraction(0), Fraction(30)])
    assert [problem.pointer for problem in caught.value.problems] == ["/pacing/own/0", "/pacing/own/3"]
    assert "is above 10 seconds per 500 m" in caught.value.problems[1].sentence


def test_offsets_that_make_a_split_nobody_rows_are_refused_at_the_pacing_and_not_at_the_goal() -> None:
    pacing = own_pacing([Fraction(-10), Fraction(0), Fraction(0), Fraction(10)])
    with pytest.raises(InputError) as caught:
        legs_over(2000, Fraction(260), pacing)
    assert [problem.pointer for problem in caught.value.problems] == ["/pacing"]


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
