"""Which of several results can stand beside each other as all-out trials."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.athlete import Result
from planner.customs import by_power_law
from planner.trials import Doubt, LeftOut, looking_easy, sift


def results(*pairs: tuple[int, float]) -> list[Result]:
    return [Result(metres, Fraction(str(seconds))) for metres, seconds in pairs]


def left_out(*pairs: tuple[int, float]) -> tuple[LeftOut, ...]:
    return sift(results(*pairs)).left_out


def test_results_that_slow_down_with_distance_all_stand() -> None:
    assert sift(results((2000, 420), (1000, 195), (5000, 1110))).kept == (0, 1, 2)


def test_the_same_result_twice_counts_once() -> None:
    assert left_out((2000, 420), (1000, 195), (2000, 420)) == (LeftOut(2, Doubt.REPEATED, (0,)),)


def test_a_quicker_one_over_the_same_distance_counts() -> None:
    assert left_out((2000, 430), (2000, 420)) == (LeftOut(0, Doubt.BETTERED, (1,)),)


def test_more_metres_in_the_same_time_count() -> None:
    assert left_out((7500, 1800), (7400, 1800)) == (LeftOut(1, Doubt.BETTERED, (0,)),)


def test_a_little_more_in_a_little_less_time_counts() -> None:
    assert left_out((1990, 422), (2000, 420)) == (LeftOut(0, Doubt.BETTERED, (1,)),)


def test_a_slower_time_over_a_shorter_piece_is_left_out() -> None:
    assert left_out((2000, 420), (1900, 425)) == (LeftOut(1, Doubt.CONTRADICTED, (0,)),)


def test_a_slower_split_over_a_shorter_piece_is_left_out() -> None:
    assert left_out((1000, 215), (2000, 420)) == (LeftOut(0, Doubt.CONTRADICTED, (1,)),)


def test_a_slower_split_within_chance_stands() -> None:
    """121.0 over 5 km, 120.8 over 6 km: a good day, no contradiction."""
    assert left_out((5000, 1210), (6000, 1450)) == ()


def test_less_work_in_a_longer_time_is_left_out() -> None:
    """2.8 D^3/t^2: 73.6 kJ in the kilometre, 62.2 kJ in the two."""
    assert left_out((1000, 195), (2000, 600)) == (LeftOut(1, Doubt.CONTRADICTED, (0,)),)


def test_one_slip_that_flatters_is_named_and_not_those_it_contradicts() -> None:
    found = left_out((1000, 215), (2000, 462), (5000, 1000), (500, 101))
    assert found == (LeftOut(2, Doubt.CONTRADICTED, (0, 1, 3)),)


@pytest.mark.parametrize(
    ("pairs", "easy"),
    [
        (((2000, 420), (2001, 421)), False),
        (((5000, 1110), (6000, 1365)), False),
        (((2000, 420), (5000, 1222)), False),
        (((2000, 420), (5000, 1228)), True),
    ],
)
def test_a_result_looks_easy_only_beyond_chance(pairs: tuple[tuple[int, float], ...], easy: bool) -> None:
    """The 9/8 law gives 1177.42 s over 5000 m from 2000 m in 7:00 (facts 3.1); 4 % more are 1225.5 s."""
    some = results(*pairs)
    assert [each.index for each in looking_easy(some, range(len(some)))] == [1] * easy


RESULTS = st.lists(
    st.builds(Result, st.integers(100, 42_195), st.integers(100, 288_000).map(lambda n: Fraction(n, 10))),
    max_size=12,
)


@given(RESULTS)
def test_every_result_is_either_kept_or_left_out_with_a_reason(some: list[Result]) -> None:
    sifted = sift(some)
    assert sorted([*sifted.kept, *(each.index for each in sifted.left_out)]) == list(range(len(some)))
    assert all(each.against for each in sifted.left_out)
    assert len(sifted.kept) >= min(1, len(some))


@given(RESULTS)
def test_what_is_kept_takes_longer_for_more_and_slows_down_but_for_chance(some: list[Result]) -> None:
    """Two times that the power law puts 4 % apart may come in either order: each varies by 1 %."""
    kept = sorted((some[index] for index in sift(some).kept), key=lambda result: result.metres)
    for short, long in pairwise(kept):
        assert short.seconds < long.seconds
        if abs(log(float(long.seconds) / by_power_law(short, long.metres))) > 0.04:
            assert short.split < long.split
            assert short.metres**3 / short.seconds**2 < long.metres**3 / long.seconds**2
