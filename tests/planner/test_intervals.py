"""Interval sets: the power that leaves a chosen part of W'."""

from __future__ import annotations

from fractions import Fraction
from unittest.mock import patch

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq

from planner.athlete import Athlete, Level, Result
from planner.capacity import Capacity, capacity_of
from planner.demand import in_seconds
from planner.errors import InputError
from planner.intervals import (
    CLOSE_ENOUGH,
    MOST_SHARE,
    Intervals,
    NoSolution,
    Solution,
    repetition_seconds,
    runs_of_set,
    solve,
)
from planner.plan import ForMetres, ForSeconds
from planner.reserve import by_every_model, medians, tau_for
from tests.builders import rower_of_7_42

CLUB = capacity_of(None, Level.CLUB)
KNOWN = capacity_of(rower_of_7_42(), Level.CLUB)
EIGHT_500 = Intervals(8, ForMetres(500), 180)
FOUR_MINUTES = Intervals(5, ForSeconds(240), 180)

SETS = st.builds(
    Intervals,
    st.integers(1, 20),
    st.one_of(st.integers(200, 3000).map(ForMetres), st.integers(30, 900).map(ForSeconds)),
    st.integers(0, 600),
)
CAPACITIES = st.sampled_from([CLUB, KNOWN, capacity_of(None, Level.NOVICE), capacity_of(None, Level.TRAINED)])
LEAVES = st.integers(0, 90)


def solved(asked: Intervals, capacity: Capacity = CLUB, leave: float = 10) -> Solution:
    found = solve(asked, capacity, leave)
    assert isinstance(found, Solution), found
    return found


def left_at(asked: Intervals, share: float, capacity: Capacity) -> float:
    """The median at the end, second by second."""
    runs = list(in_seconds(runs_of_set(asked, share, capacity)))
    return medians(by_every_model(runs, capacity.middle, tau_for(runs, capacity.middle, capacity)))[-1]


@given(SETS, CAPACITIES, LEAVES)
def test_the_solved_power_leaves_what_was_asked_in_fewer_than_40_simulations(
    asked: Intervals, capacity: Capacity, leave: int
) -> None:
    with patch("planner.intervals.by_every_model", wraps=by_every_model) as simulate:
        found = solve(asked, capacity, leave)
    assert simulate.call_count < 40
    if isinstance(found, Solution):
        assert left_at(asked, found.share, capacity) == pytest.approx(leave / 100, abs=2 * CLOSE_ENOUGH)


def test_an_outside_root_finder_finds_the_same_power() -> None:
    """scipy.optimize.brentq on the second-by-second simulation: to 0.0002 of 2 km power."""
    for asked in (
        EIGHT_500,
        FOUR_MINUTES,
        Intervals(20, ForSeconds(60), 60),
        Intervals(1, ForMetres(2000), 0),
    ):
        outside = brentq(lambda share: left_at(asked, share, KNOWN) - 0.2, KNOWN.critical, MOST_SHARE)  # noqa: B023
        assert solved(asked, KNOWN, 20).share == pytest.approx(outside, abs=0.0002)


def test_300_watts_last_300_seconds() -> None:
    """Fact sheet 3.2 [=]: CP 250 W, W' 15 kJ hold 300 W for 300.0 s, and 291.667 W for 6 min. One repetition
    without a rest is spent alike by the two models in which nothing comes back during work: their median."""
    exact = Athlete(tuple(Result(m, _time_of(m)) for m in (2000, 1500, 1000)))
    capacity = capacity_of(exact, Level.TRAINED)
    assert capacity.two_k_watts is not None
    for seconds, watts in ((300, 300.0), (360, 291.667)):
        found = solved(Intervals(1, ForSeconds(seconds), 0), capacity, 0)
        assert found.share * capacity.two_k_watts == pytest.approx(watts, abs=0.1)


def _time_of(metres: int) -> Fraction:
    """When P t = 250 W x t + 15 kJ on the cubic, by scipy."""
    return Fraction(round(brentq(lambda t: (2.8 * (metres / t) ** 3 - 250) * t - 15_000, 60, 2000), 4))


def test_2_km_at_2_km_power_breaks_at_its_end() -> None:
    """By the level's defaults a 2 km spends the reserve exactly."""
    assert solved(Intervals(1, ForMetres(2000), 0), CLUB, 0).share == pytest.approx(1.0, abs=1e-3)


@given(SETS, CAPACITIES, st.integers(1, 90))
def test_leaving_less_asks_for_more(asked: Intervals, capacity: Capacity, leave: int) -> None:
    more, less = solve(asked, capacity, leave), solve(asked, capacity, leave - 1)
    assume(isinstance(more, Solution) and isinstance(less, Solution))
    assert isinstance(more, Solution)
    assert isinstance(less, Solution)
    assert less.share >= more.share


@given(SETS, CAPACITIES)
def test_one_more_repetition_never_lets_one_row_harder(asked: Intervals, capacity: Capacity) -> None:
    longer = Intervals(asked.times + 1, asked.length, asked.rest_seconds)
    fewer, more = solve(asked, capacity), solve(longer, capacity)
    assume(isinstance(fewer, Solution) and isinstance(more, Solution))
    assert isinstance(fewer, Solution)
    assert isinstance(more, Solution)
    assert more.share <= fewer.share + 1e-3


def test_a_split_comes_only_with_a_result() -> None:
    assert solved(EIGHT_500).split is None
    found = solved(EIGHT_500, KNOWN)
    assert found.split is not None
    assert found.repetition_seconds == pytest.approx(found.split)


def test_500_m_at_2_km_power_take_a_quarter_of_the_2_km() -> None:
    assert repetition_seconds(EIGHT_500, 1.0, KNOWN) == 462 / 4


def test_short_work_with_long_rests_has_no_solution_and_says_why() -> None:
    found = solve(Intervals(3, ForSeconds(10), 300), CLUB)
    assert isinstance(found, NoSolution)
    assert "2 times 2 km power" in found.reason


def test_what_the_hardest_power_leaves_parts_what_has_a_solution_from_what_has_none() -> None:
    short = Intervals(6, ForSeconds(20), 100)
    left = round(100 * left_at(short, MOST_SHARE, CLUB))
    found = solve(short, CLUB, left - 2)
    assert isinstance(found, NoSolution)
    assert f"{left} % of the reserve would be left, not {left - 2} %" in found.reason
    assert isinstance(solve(short, CLUB, left + 2), Solution)


@pytest.mark.parametrize(
    "asked",
    [
        Intervals(1, ForMetres(21_097), 0),
        Intervals(3, ForSeconds(1801), 60),
        Intervals(10, ForSeconds(900), 60),
    ],
)
def test_longer_than_the_model_holds_has_no_solution_and_says_why(asked: Intervals) -> None:
    found = solve(asked, CLUB)
    assert isinstance(found, NoSolution)
    assert "beyond what critical power describes" in found.reason


@pytest.mark.parametrize(
    ("asked", "leave", "place"),
    [
        (Intervals(0, ForMetres(500), 60), 10, "/times"),
        (Intervals(101, ForMetres(500), 60), 10, "/times"),
        (Intervals(4, ForMetres(49), 60), 10, "/metres"),
        (Intervals(4, ForSeconds(0), 60), 10, "/seconds"),
        (Intervals(4, ForMetres(500), -1), 10, "/rest_seconds"),
        (EIGHT_500, 91, "/leave_percent"),
        (EIGHT_500, -1, "/leave_percent"),
    ],
)
def test_a_set_outside_the_bounds_is_refused_with_its_place(asked: Intervals, leave: int, place: str) -> None:
    with pytest.raises(InputError) as caught:
        solve(asked, CLUB, leave)
    assert caught.value.problems[0].pointer == place
