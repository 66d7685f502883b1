"""Critical power and W' against tabled values, against scipy, and against results that do not fit."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from random import Random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq, curve_fit

from planner.athlete import Result
from planner.critical_power import (
    Fit,
    Refusal,
    examine,
)
from planner.hyperbola import least_squares, work_time_line
from planner.pace import power_of_split
from planner.trials import TIME_SPREAD, Doubt, LeftOut

EXACT = Fit(250, 1, 15_000, 1, 0, TIME_SPREAD, (0, 1))
# Fact sheet 3.2, exact fit: CP 250 W and W' 15 000 J give these powers (W) for these times (s).
TABLED = {120: 375, 240: 312.5, 480: 281.25, 900: 800 / 3}


def metres_at(watts: float, seconds: float) -> float:
    return float(seconds * (watts / 2.8) ** (1 / 3))


def results(*pairs: tuple[int, float]) -> list[Result]:
    return [Result(metres, Fraction(str(seconds))) for metres, seconds in pairs]


def rowed(fit: Fit, *distances: int) -> list[Result]:
    """The model's own times, to the tenth."""
    return [Result(d, Fraction(round(fit.seconds_for(d) * 10), 10)) for d in distances]


# --- Tabled values, fact sheet 3.2


def test_exact_trials_give_back_the_tabled_fit() -> None:
    trials = [(metres_at(watts, seconds), float(seconds)) for seconds, watts in TABLED.items()]
    assert least_squares(trials) == pytest.approx((250, 15_000), rel=1e-9)
    assert work_time_line(trials) == pytest.approx((250, 15_000), rel=1e-9)


def test_the_other_published_forms_agree_on_exact_trials() -> None:
    """W = CP t + W' and P = CP + W'/t by plain least squares, as the fact sheet asks of both."""
    seconds, watts = (np.array(list(column), dtype=float) for column in (TABLED.keys(), TABLED.values()))
    assert np.polyfit(seconds, watts * seconds, 1) == pytest.approx([250, 15_000])
    assert np.polyfit(1 / seconds, watts, 1) == pytest.approx([15_000, 250])


def test_the_work_of_the_tabled_times() -> None:
    assert [EXACT.watts_over(t) * t for t in TABLED] == pytest.approx([45e3, 75e3, 135e3, 240e3])


def test_300_w_holds_for_300_s() -> None:
    assert EXACT.watts_over(300) == pytest.approx(300)


def test_the_best_six_minutes() -> None:
    assert EXACT.watts_over(360) == pytest.approx(291.667, abs=0.001)


@pytest.mark.parametrize(
    ("metres", "seconds", "split", "watts"),
    [(2000, 428.343, 107.086, 285.019), (5000, 1099.042, 109.904, 263.648)],
)
def test_a_distance_on_the_cubic(metres: int, seconds: float, split: float, watts: float) -> None:
    found = EXACT.seconds_for(metres)
    assert found == pytest.approx(seconds, abs=0.001)
    assert found * 500 / metres == pytest.approx(split, abs=0.001)
    assert EXACT.watts_over(found) == pytest.approx(watts, abs=0.001)


# Fact sheet 3.2, the rower of Hill, Alain & Kennedy 2003, Med Sci Sports Exerc 35:2098-2105.
@pytest.mark.parametrize(("speed", "split", "watts"), [(5.08, 98.425, 367.07), (4.99, 100.200, 347.90)])
def test_critical_velocity_is_critical_power_on_the_cubic(speed: float, split: float, watts: float) -> None:
    fit = replace(EXACT, watts=float(power_of_split(Fraction(split))))
    assert fit.watts == pytest.approx(watts, rel=1e-4)
    assert fit.metres_per_second == pytest.approx(speed, abs=0.0005)
    assert fit.split == pytest.approx(split, abs=0.001)


def test_trials_of_the_velocity_model_come_close_to_its_own_critical_velocity_and_2_km() -> None:
    """CV 5.08 m/s, D' 55 m (Hill 2003): 2000 m in 382.874 s. The two hyperbolas differ by under 1.5 %."""
    fit = examine(results(*((d, round((d - 55) / 5.08, 1)) for d in (800, 1000, 1200, 2000)))).fit
    assert fit is not None
    assert fit.metres_per_second == pytest.approx(5.08, rel=0.015)
    assert fit.seconds_for(2000) == pytest.approx(382.874, rel=0.005)
    assert fit.reserve_metres == pytest.approx(55, rel=0.35)


# --- Against scipy


def _random_trials(random: Random) -> list[Result]:
    fit = replace(EXACT, watts=random.uniform(80, 400), reserve_joules=random.uniform(6e3, 35e3))
    times = [random.uniform(125, 880) for _ in range(random.randint(3, 8))]
    return [
        Result(round(fit.metres_in(t)), Fraction(round(10 * t * (1 + random.gauss(0, 0.012))), 10))
        for t in times
    ]


def _log_times(metres: np.ndarray, watts: float, reserve: float) -> np.ndarray:
    """The model solved by scipy's own root finder, not by ours."""
    found = [
        brentq(lambda t, d=d: (watts * t + reserve) * t**2 - 2.8 * d**3, 1e-6, 1e7, xtol=1e-11, rtol=1e-15)
        for d in metres
    ]
    logs: np.ndarray = np.log(np.array(found))
    return logs


def test_200_random_fits_are_those_of_scipy() -> None:
    """scipy.optimize.curve_fit on the same model: CP and W' to 1 in 10^5, standard errors to 1 in 10^3."""
    random, compared = Random(20_260), 0
    while compared < 200:
        some = _random_trials(random)
        fit = examine(some).fit
        if fit is None or len(fit.used) < 3:
            continue
        metres = np.array([some[i].metres for i in fit.used], dtype=float)
        times = np.array([float(some[i].seconds) for i in fit.used])
        best, covariance = curve_fit(
            _log_times,
            metres,
            np.log(times),
            p0=(fit.watts * 1.1, fit.reserve_joules * 0.8),
            sigma=np.full(len(times), fit.time_spread),
            absolute_sigma=True,
            xtol=1e-13,
            ftol=1e-13,
            gtol=1e-13,
            x_scale=(100, 1e4),
            method="trf",
        )
        assert (fit.watts, fit.reserve_joules) == pytest.approx(tuple(best), rel=1e-5)
        errors = (fit.watts_error, fit.reserve_joules_error)
        assert errors == pytest.approx(tuple(np.sqrt(np.diag(covariance))), rel=1e-3)
        assert fit.covariance == pytest.approx(covariance[0, 1], rel=1e-3)
        residual = np.sqrt(np.sum((np.log(times) - _log_times(metres, *best)) ** 2) / (len(times) - 2))
        assert fit.time_spread == pytest.approx(max(TIME_SPREAD, float(residual)), rel=1e-6)
        compared += 1


def test_the_standard_errors_are_the_spread_of_many_fits() -> None:
    """1000 fits to times with 1 % of error: what is said of their spread is what is seen, within a tenth."""
    random = Random(7)
    distances = (700, 1000, 1500, 2000, 3000)
    true = replace(EXACT, watts=200, reserve_joules=20_000)
    found = []
    for _ in range(1000):
        trials = [(float(d), true.seconds_for(d) * (1 + random.gauss(0, 0.01))) for d in distances]
        fitted = least_squares(trials)
        assert fitted is not None
        found.append(fitted)
    seen = np.std(np.array(found), axis=0)
    said = examine(rowed(true, *distances)).fit
    assert said is not None
    assert seen[0] == pytest.approx(said.watts_error, rel=0.1)
    assert seen[1] == pytest.approx(said.reserve_joules_error, rel=0.1)


# --- Properties

FITS = st.builds(
    lambda watts, reserve: replace(EXACT, watts=watts, reserve_joules=reserve),
    st.floats(60, 450),
    st.floats(4_000, 40_000),
)


@given(FITS, st.integers(100, 42_195))
def test_time_and_distance_are_each_others_inverse(fit: Fit, metres: int) -> None:
    assert fit.metres_in(fit.seconds_for(metres)) == pytest.approx(metres, rel=1e-9)


@given(FITS, st.integers(500, 4000))
def test_more_reserve_or_more_power_is_never_slower(fit: Fit, metres: int) -> None:
    before = fit.seconds_for(metres)
    assert replace(fit, watts=fit.watts * 1.01).seconds_for(metres) < before
    assert replace(fit, reserve_joules=fit.reserve_joules * 1.01).seconds_for(metres) < before


@given(FITS, st.floats(0.5, 2))
def test_a_rower_twice_as_strong_has_twice_of_both(fit: Fit, scale: float) -> None:
    """Power and work in another unit: distances grow by its cube root, times stay, the fit scales."""
    times = (150.0, 300.0, 600.0, 850.0)
    spoilt = [t * factor for t, factor in zip(times, (1.004, 0.99, 1.01, 0.998), strict=True)]
    trials = [(fit.metres_in(t), s) for t, s in zip(times, spoilt, strict=True)]
    one = least_squares(trials)
    other = least_squares([(metres * scale ** (1 / 3), seconds) for metres, seconds in trials])
    if one is None:
        assert other is None
        return
    assert other == pytest.approx(tuple(scale * value for value in one), rel=1e-5)


RESULTS = st.lists(
    st.builds(Result, st.integers(100, 12_000), st.integers(100, 36_000).map(lambda n: Fraction(n, 10))),
    max_size=8,
)


@given(RESULTS)
def test_whatever_comes_the_numbers_are_positive_and_every_result_is_accounted_for(
    some: list[Result],
) -> None:
    found = examine(some)
    assert (found.fit is None) == (found.refusal is not None)
    if found.fit:
        fit = found.fit
        assert 0 < fit.watts_error < fit.watts
        assert 0 < fit.reserve_joules_error < fit.reserve_joules
        assert 0 <= fit.time_error(2000) < 10
        told = sorted([*fit.used, *(each.index for each in found.left_out)])
        assert told == list(range(len(some)))


# --- Results that do not fit

FOUR = (700, 1200, 2000, 3000)


def test_two_results_have_the_errors_of_the_assumed_spread() -> None:
    fit = examine(rowed(EXACT, 1000, 2000)).fit
    assert fit is not None
    assert fit.time_spread == TIME_SPREAD
    assert fit.watts == pytest.approx(250, rel=0.01)
    assert fit.watts_error > 5


def test_one_result_is_too_few() -> None:
    assert examine(rowed(EXACT, 2000)).refusal is Refusal.TOO_FEW
    assert examine([]).refusal is Refusal.TOO_FEW


def test_results_too_short_or_too_long_are_left_out() -> None:
    found = examine(rowed(EXACT, 300, 1000, 2000, 10_000))
    assert found.left_out == (LeftOut(0, Doubt.OUTSIDE), LeftOut(3, Doubt.OUTSIDE))
    assert found.fit
    assert found.fit.used == (1, 2)
    assert found.fit.stretched == ()


def test_with_fewer_than_two_inside_those_near_it_are_taken_and_named() -> None:
    found = examine(results((2000, 462), (5000, 1210)))
    assert found.fit
    assert found.fit.stretched == (1,)


def test_a_result_far_outside_is_never_taken() -> None:
    found = examine(results((2000, 462), (21_097, 5700)))
    assert found.refusal is Refusal.TOO_FEW
    assert found.left_out == (LeftOut(1, Doubt.OUTSIDE),)


@pytest.mark.parametrize("odd", range(len(FOUR)))
@pytest.mark.parametrize("slip", [0.9, 1.1])
def test_the_one_that_contradicts_good_ones_is_named(odd: int, slip: float) -> None:
    some = rowed(EXACT, *FOUR, 1600)
    some[odd] = Result(some[odd].metres, Fraction(round(some[odd].seconds * 10 * Fraction(slip)), 10))
    found = examine(some)
    assert [each.index for each in found.left_out] == [odd]
    assert found.left_out[0].doubt in (Doubt.OUTLYING, Doubt.CONTRADICTED, Doubt.EASY)
    assert found.fit
    assert found.fit.watts == pytest.approx(250, rel=0.01)


def test_good_results_with_everyday_scatter_all_count() -> None:
    some = rowed(EXACT, *FOUR)
    some = [
        Result(r.metres, Fraction(round(r.seconds * factor), 10))
        for r, factor in zip(some, map(Fraction, ("10.1", "9.9", "10.08", "10")), strict=True)
    ]
    assert examine(some).left_out == ()


def test_two_results_almost_as_long_are_too_uncertain() -> None:
    found = examine(rowed(EXACT, 2000, 2050))
    assert found.fit is None
    assert found.refusal is Refusal.UNCERTAIN


def test_trials_that_ask_for_no_reserve_or_no_power_give_nothing() -> None:
    assert least_squares([(1000.0, 215.0), (2000.0, 420.0)]) is None
    assert least_squares([(1000.0, 195.0), (2000.0, 600.0)]) is None
    assert least_squares([(1000.0, 300.0), (1100.0, 300.0)]) is None
