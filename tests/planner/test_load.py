"""Session load, monotony and strain, against the fact sheet's check values (section 8)."""

from __future__ import annotations

import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.errors import InputError
from planner.load import Deviation, Evenness, Week, session_load, week_of

WEEK = (270, 0, 180, 300, 0, 420, 150)


def by(deviation: Deviation, week: Week) -> Evenness:
    return next(each for each in week.evenness if each.deviation is deviation)


def test_an_effort_of_6_for_45_minutes_is_270() -> None:
    """Foster 2001, J Strength Cond Res 15:109-115; the example is the fact sheet's [=]."""
    assert session_load(6, 45) == 270


def test_half_a_minute_is_a_session_and_so_is_none() -> None:
    assert (session_load(5, 0.5), session_load(5, 0)) == (2.5, 0)


def test_the_week_of_the_fact_sheet_has_its_sum_and_mean() -> None:
    week = week_of(WEEK)
    assert week.total == 1320
    assert week.mean == pytest.approx(188.571, abs=0.0006)


@pytest.mark.parametrize(
    ("deviation", "monotony", "strain"),
    [(Deviation.SAMPLE, 1.2118, 1599.6), (Deviation.POPULATION, 1.3089, 1320 * 1.3089)],
)
def test_monotony_and_strain_are_those_of_the_named_deviation(
    deviation: Deviation, monotony: float, strain: float
) -> None:
    """Formulas of Foster 1998, Med Sci Sports Exerc 30:1164-1168; values of fact sheet 8 [=]."""
    evenness = by(deviation, week_of(WEEK))
    assert evenness.monotony == pytest.approx(monotony, abs=0.00006)
    assert evenness.strain == pytest.approx(strain, abs=0.08)


def test_a_week_of_days_all_alike_has_no_monotony() -> None:
    assert all(each.monotony is None and each.strain is None for each in week_of([100] * 7).evenness)


@given(st.lists(st.integers(0, 1000), min_size=7, max_size=7), st.integers(2, 9))
def test_loads_on_another_scale_keep_their_monotony(daily: list[int], times: int) -> None:
    once, scaled = week_of(daily), week_of([times * load for load in daily])
    for one, other in zip(once.evenness, scaled.evenness, strict=True):
        if statistics.pstdev(daily):
            assert other.monotony == pytest.approx(one.monotony)
            assert one.strain is not None
            assert other.strain == pytest.approx(times * one.strain)


@pytest.mark.parametrize("daily", [(100,) * 6, (100,) * 8, (), (0, 0, 0, -1, 0, 0, 0), (float("nan"),) * 7])
def test_what_is_not_a_week_is_refused(daily: tuple[float, ...]) -> None:
    with pytest.raises(InputError):
        week_of(daily)


@pytest.mark.parametrize(("cr10", "minutes"), [(11, 30), (-1, 30), (5, -1), (5, float("nan"))])
def test_an_impossible_session_is_refused(cr10: float, minutes: float) -> None:
    with pytest.raises(InputError):
        session_load(cr10, minutes)
