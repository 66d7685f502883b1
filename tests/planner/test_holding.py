"""Whether a target for intervals holds, where it breaks, and what would last."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from planner.athlete import Level
from planner.capacity import Capacity, capacity_of
from planner.demand import Run, in_seconds
from planner.errors import InputError
from planner.holding import Break, Target, breaking_second, holding_of
from planner.intervals import MOST_SHARE, Intervals, Solution, runs_of_set, solve
from planner.plan import ForMetres, ForSeconds, Split, TwoKPower
from planner.reserve import by_every_model, medians, tau_for
from tests.planner.test_intervals import CAPACITIES, CLUB, EIGHT_500, KNOWN, SETS


def hundredths_below(share: float) -> TwoKPower:
    return TwoKPower(Fraction(int(share * 100), 100))


def second_by_second(runs: list[Run], capacity: Capacity) -> float | None:
    """When the middle of three models is below 0, without any of the code that is tested."""
    seconds = list(in_seconds(runs))
    balances = medians(by_every_model(seconds, capacity.middle, tau_for(seconds, capacity.middle, capacity)))
    begun = 0.0
    for run, left in zip(seconds, balances, strict=True):
        begun += run.seconds
        if left < 0:
            return begun
    return None


@given(SETS, CAPACITIES)
def test_what_was_solved_holds_and_what_is_clearly_harder_leaves_less(
    asked: Intervals, capacity: Capacity
) -> None:
    found = solve(asked, capacity, 5)
    assume(isinstance(found, Solution) and found.share * 1.2 <= MOST_SHARE)
    assert isinstance(found, Solution)
    holding = holding_of(asked, hundredths_below(found.share), capacity)
    assert holding.breaks is None
    harder = holding_of(asked, hundredths_below(found.share * 1.2), capacity)
    assert harder.left.middle < holding.left.middle


@given(SETS, CAPACITIES)
def test_the_target_that_is_said_to_last_does(asked: Intervals, capacity: Capacity) -> None:
    """Also once it is rounded to a tenth of a split."""
    assume(isinstance(solve(asked, capacity, 1), Solution))
    lasting = holding_of(asked, TwoKPower(Fraction(2)), capacity).lasting
    assert lasting is not None
    assert (lasting.split is None) == (capacity.two_k_watts is None)
    wanted = Split(lasting.split) if lasting.split is not None else hundredths_below(lasting.share)
    assert holding_of(asked, wanted, capacity).breaks is None


@given(SETS, CAPACITIES, st.integers(80, 200))
def test_a_target_holds_just_when_nothing_is_ever_overdrawn(
    asked: Intervals, capacity: Capacity, percent: int
) -> None:
    try:
        holding = holding_of(asked, TwoKPower(Fraction(percent, 100)), capacity)
    except InputError:
        assume(False)
    assert (holding.breaks is None) == (min(holding.after_each) >= 0)
    assert len(holding.after_each) == asked.times
    assert holding.left.middle == holding.after_each[-1]
    assert holding.left.low <= holding.left.middle <= holding.left.high


def test_a_target_breaks_where_a_second_by_second_simulation_does() -> None:
    breaks = holding_of(EIGHT_500, TwoKPower(Fraction(5, 4)), KNOWN).breaks
    assert breaks is not None
    runs = list(runs_of_set(EIGHT_500, 1.25, KNOWN))
    before = sum(run.seconds for run in runs[: 2 * (breaks.repetition - 1)])
    second = second_by_second(runs, KNOWN)
    assert second is not None
    assert before + breaks.second - 1 < second <= before + breaks.second


def test_a_steady_power_breaks_in_the_second_the_hyperbola_says() -> None:
    """t = W'/(P - CP): Monod & Scherrer 1965, as in fact sheet 3.2."""
    seconds = KNOWN.reserve_seconds / (1.1 - KNOWN.critical)
    holding = holding_of(Intervals(1, ForSeconds(600), 0), TwoKPower(Fraction(11, 10)), KNOWN)
    assert holding.breaks == Break(1, int(seconds) + 1)


def test_below_the_critical_share_nothing_breaks() -> None:
    assert breaking_second([Run(CLUB.critical, 7200)], CLUB) is None


def test_a_split_and_its_share_of_2_km_power_are_the_same_target() -> None:
    """1:55.5 is the 2 km split of 7:42."""
    by_split = holding_of(EIGHT_500, Split(Fraction(231, 2)), KNOWN)
    by_share = holding_of(EIGHT_500, TwoKPower(Fraction(1)), KNOWN)
    assert by_split == by_share
    assert by_split.target == Target(1.0, Fraction(231, 2))


def test_without_a_result_a_split_is_set_against_the_level() -> None:
    split = Split(Fraction(120))
    shares = [
        holding_of(EIGHT_500, split, capacity_of(None, level)).target.share
        for level in (Level.NOVICE, Level.CLUB, Level.TRAINED)
    ]
    assert shares == sorted(shares, reverse=True)
    assert holding_of(EIGHT_500, TwoKPower(Fraction(1)), CLUB).target.split is None


def test_what_is_said_names_the_place_and_the_remedy() -> None:
    sentence = holding_of(EIGHT_500, Split(Fraction(105)), KNOWN).sentence
    assert sentence.startswith(
        "1:45.0 per 500 m is too hard by the middle of three models: the reserve is gone in"
    )
    assert " per 500 m would last. " in sentence
    assert "coaches ask for less" in sentence
    assert "level alone" not in sentence
    easy = holding_of(EIGHT_500, TwoKPower(Fraction(9, 10)), CLUB).sentence
    assert easy.startswith("90 % of 2 km power holds to the end")
    assert "level alone" in easy


def test_of_a_long_set_it_is_said_that_the_models_say_too_much() -> None:
    """From 20 minutes of work: common practice, no source."""
    short, long = (
        holding_of(Intervals(times, ForSeconds(300), 180), TwoKPower(Fraction(9, 10)), KNOWN).sentence
        for times in (4, 5)
    )
    assert ("so long a set" in short, "so long a set" in long) == (False, True)


@pytest.mark.parametrize(
    ("asked", "target", "place"),
    [
        (Intervals(0, ForMetres(500), 60), TwoKPower(Fraction(1)), "/times"),
        (EIGHT_500, TwoKPower(Fraction(201, 100)), "/target/two_k_power_fraction"),
        (EIGHT_500, Split(Fraction(80)), "/target/split"),
        (Intervals(3, ForSeconds(1801), 60), TwoKPower(Fraction(1)), "/intervals"),
        (Intervals(2, ForMetres(10_000), 60), TwoKPower(Fraction(1, 10)), "/intervals"),
    ],
)
def test_what_the_models_say_nothing_of_is_refused_with_its_place(
    asked: Intervals, target: Split | TwoKPower, place: str
) -> None:
    with pytest.raises(InputError) as caught:
        holding_of(asked, target, KNOWN)
    assert caught.value.problems[0].pointer == place


def test_a_split_that_is_too_quick_is_told_the_quickest_that_would_do() -> None:
    with pytest.raises(InputError) as caught:
        holding_of(EIGHT_500, Split(Fraction(80)), KNOWN)
    (problem,) = caught.value.problems
    quickest = problem.sentence.split("ask for ")[1].split(" per")[0]
    minutes, seconds = quickest.split(":")
    holding_of(EIGHT_500, Split(60 * int(minutes) + Fraction(seconds)), KNOWN)
