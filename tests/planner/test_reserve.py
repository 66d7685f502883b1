"""W' balance by three models: the fact sheet's worked case, an outside integrator, and properties.

The worked case (section 4 [=]): CP 250 W, W' 15 kJ, 60 s at 400 W, then 120 s at 100 W; here in shares of a
2 km power of 400 W.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import replace
from itertools import accumulate, pairwise
from math import exp

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from planner.athlete import Level
from planner.capacity import Purse, capacity_of
from planner.demand import Run, in_seconds
from planner.reserve import (
    FAST_SHARE,
    FAST_TAU,
    SLOW_SHARE,
    SLOW_TAU,
    differential_2015,
    integral_2012,
    mean_below,
    tau_2012,
    tau_for,
    two_speed_2022,
)

WATTS = 400.0
PURSE = Purse(250 / WATTS, 15_000 / WATTS)
WORKED = (Run(400 / WATTS, 60), Run(100 / WATTS, 120))
EXHAUSTED = (Run(1.0, 100),)
"""100 s at 150 W above critical power: all of W'."""


def joules(shares: list[float]) -> list[float]:
    return [15_000 * share for share in shares]


# Fact sheet 4, the column of tau 2012 [=]; formula of Skiba 2012, Med Sci Sports Exerc 44:1526-1532.
@pytest.mark.parametrize(
    ("below", "tau"),
    [(0, 862.00), (50, 647.17), (100, 516.86), (150, 437.83), (200, 389.89), (250, 360.82)],
)
def test_the_time_constant_of_2012_is_as_tabled(below: float, tau: float) -> None:
    assert tau_2012(below) == pytest.approx(tau, abs=0.006)


def test_the_mean_below_is_over_the_time_below_and_not_over_all() -> None:
    assert mean_below(WORKED, PURSE.critical) * WATTS == pytest.approx(150)


def test_a_session_has_the_time_constant_of_its_own_watts() -> None:
    """The worked case in watts: 150 W below, tau 437.83 s."""
    capacity = replace(capacity_of(None, Level.CLUB), two_k_watts=WATTS)
    assert tau_for(WORKED, PURSE, capacity) == pytest.approx(437.83, abs=0.006)


def test_without_a_result_the_level_lends_its_watts() -> None:
    """2:00 is the club's assumed split: 202.546 W (fact sheet 1.1 [=])."""
    capacity = capacity_of(None, Level.CLUB)
    assert tau_for([Run(0.0, 60)], PURSE, capacity) == pytest.approx(
        tau_2012(PURSE.critical * 202.546), abs=0.01
    )


def test_nothing_below_leaves_no_mean_to_be_below() -> None:
    assert mean_below(EXHAUSTED, PURSE.critical) == 0


def test_the_differential_form_gives_the_worked_case() -> None:
    assert joules(differential_2015(WORKED, PURSE)) == pytest.approx([6000.0, 12_289.3], abs=0.05)


def test_the_true_integral_of_2012_gives_the_worked_case() -> None:
    left = integral_2012(WORKED, PURSE, tau_2012(150))
    assert joules(left) == pytest.approx([6589.4, 8605.7], abs=0.06)


def test_the_integral_lets_the_reserve_come_back_during_work() -> None:
    assert integral_2012(WORKED, PURSE, tau_2012(150))[0] > differential_2015(WORKED, PURSE)[0]


# Fact sheet 4 [=]: fractions recovered by the curve of Chorley 2022, Eur J Appl Physiol 122.
@pytest.mark.parametrize(
    ("seconds", "recovered"),
    [(30, 0.4179), (60, 0.5463), (120, 0.6360), (180, 0.6897), (240, 0.7342), (360, 0.8049), (900, 0.9515)],
)
def test_at_rest_the_two_speeds_give_back_the_published_fractions(seconds: float, recovered: float) -> None:
    assert two_speed_2022((*EXHAUSTED, Run(0, seconds)), PURSE)[-1] == pytest.approx(recovered, abs=6e-5)


def test_at_the_critical_share_nothing_comes_back_quickly_or_slowly() -> None:
    runs = (*EXHAUSTED, Run(PURSE.critical, 600))
    assert differential_2015(runs, PURSE)[-1] == pytest.approx(0)
    assert two_speed_2022(runs, PURSE)[-1] == pytest.approx(0)


@pytest.mark.parametrize(("seconds", "seen"), [(120, 0.37), (360, 0.65)])
def test_what_was_observed_after_exhaustion_lies_among_the_models(seconds: float, seen: float) -> None:
    """37 % at 2 min and 65 % at 6 min (Ferguson 2010, J Appl Physiol 108:866-874 [S]), recovery at rest from
    nothing left. At 15 min all three models are above the 86 % observed."""
    slowest = 1 - exp(-seconds / tau_2012(250))
    others = (
        differential_2015((*EXHAUSTED, Run(0, seconds)), PURSE)[-1],
        two_speed_2022((*EXHAUSTED, Run(0, seconds)), PURSE)[-1],
    )
    assert slowest < seen < min(others)


# --- Against an outside integrator: 200 random cases of each model

Rate = Callable[[float, np.ndarray, float, Purse, float], list[float]]


def _integral(_: float, y: np.ndarray, share: float, purse: Purse, tau: float) -> list[float]:
    return [max(0.0, share - purse.critical) / purse.reserve_seconds - y[0] / tau]


def _differential(_: float, y: np.ndarray, share: float, purse: Purse, tau: float) -> list[float]:
    over = (share - purse.critical) / purse.reserve_seconds
    return [over if over > 0 else y[0] * over]


def _two_speed(_: float, y: np.ndarray, share: float, purse: Purse, tau: float) -> list[float]:
    over = (share - purse.critical) / purse.reserve_seconds
    if over > 0:
        return [FAST_SHARE * over, SLOW_SHARE * over]
    ease = (purse.critical - share) / purse.critical
    return [-y[0] * ease / FAST_TAU, -y[1] * ease / SLOW_TAU]


def random_case(seed: int) -> tuple[list[Run], Purse, float]:
    draw = random.Random(seed)
    critical = draw.uniform(0.75, 0.95)
    runs = [
        Run(draw.choice([0.0, draw.uniform(0.2, 1.6)]), draw.uniform(1, 200))
        for _ in range(draw.randint(1, 6))
    ]
    return runs, Purse(critical, draw.uniform(20, 120)), draw.uniform(316, 862)


@pytest.mark.parametrize(
    ("model", "rate", "pools"),
    [("integral", _integral, 1), ("differential", _differential, 1), ("two speeds", _two_speed, 2)],
)
def test_two_hundred_random_sessions_agree_with_an_outside_integrator(
    model: str, rate: Rate, pools: int
) -> None:
    """scipy.integrate.solve_ivp (LSODA, relative 1e-9, absolute 1e-11): to 1e-6 of W' after every run."""
    for seed in range(200):
        runs, purse, tau = random_case(seed)
        ours = {
            "integral": integral_2012(runs, purse, tau),
            "differential": differential_2015(runs, purse),
            "two speeds": two_speed_2022(runs, purse),
        }[model]
        state = np.zeros(pools)
        for run, left in zip(runs, ours, strict=True):
            solved = solve_ivp(
                rate, (0, run.seconds), state, "LSODA", rtol=1e-9, atol=1e-11, args=(run.share, purse, tau)
            )
            state = solved.y[:, -1]
            assert left == pytest.approx(1 - state.sum(), abs=1e-6), f"case {seed}"


# --- Properties

RUNS = st.lists(
    st.builds(Run, st.one_of(st.just(0.0), st.floats(0.1, 2.0)), st.integers(1, 300).map(float)),
    min_size=1,
    max_size=8,
)
PURSES = st.builds(Purse, st.floats(0.7, 0.97), st.floats(20, 150))


def every_model(runs: list[Run], purse: Purse) -> tuple[list[float], ...]:
    return (integral_2012(runs, purse, 500.0), differential_2015(runs, purse), two_speed_2022(runs, purse))


@given(RUNS, PURSES)
def test_second_by_second_ends_where_whole_runs_end(runs: list[Run], purse: Purse) -> None:
    """The steps are exact, so 1 Hz and longer steps agree to rounding."""
    seconds = list(in_seconds(runs))
    ends = list(accumulate(int(run.seconds) for run in runs))
    for whole, fine in zip(every_model(runs, purse), every_model(seconds, purse), strict=True):
        assert [fine[end - 1] for end in ends] == pytest.approx(whole, abs=1e-9)


@given(RUNS, PURSES)
def test_rest_never_lowers_the_reserve(runs: list[Run], purse: Purse) -> None:
    rests = [Run(0.0, 30.0)] * 20
    for left in every_model([*runs, *rests], purse):
        assert all(later >= sooner - 1e-12 for sooner, later in pairwise(left[len(runs) - 1 :]))


@given(RUNS, PURSES, st.floats(1.05, 1.5))
def test_harder_rowing_never_leaves_more(runs: list[Run], purse: Purse, times: float) -> None:
    harder = [run._replace(share=run.share * times) for run in runs]
    for less, more in zip(every_model(harder, purse), every_model(runs, purse), strict=True):
        assert less[-1] <= more[-1] + 1e-12


@given(RUNS, PURSES, st.floats(0.5, 2))
def test_a_reserve_and_work_over_it_in_other_units_leave_the_same_share(
    runs: list[Run], purse: Purse, unit: float
) -> None:
    """Scale: powers and W' in another unit of power change nothing."""
    other = Purse(purse.critical * unit, purse.reserve_seconds * unit)
    scaled = [run._replace(share=run.share * unit) for run in runs]
    for here, there in zip(every_model(runs, purse), every_model(scaled, other), strict=True):
        assert there == pytest.approx(here, abs=1e-9)


@given(PURSES, st.floats(1.0, 2.0), st.integers(1, 600))
def test_what_is_spent_above_the_critical_share_is_what_is_missing(
    purse: Purse, share: float, seconds: int
) -> None:
    """Conservation: in the forms in which nothing comes back during work."""
    runs = [Run(share, float(seconds))]
    spent = (share - purse.critical) * seconds / purse.reserve_seconds
    assert 1 - differential_2015(runs, purse)[-1] == pytest.approx(spent)
    assert 1 - two_speed_2022(runs, purse)[-1] == pytest.approx(spent)
