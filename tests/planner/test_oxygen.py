"""Oxygen uptake: how quickly it rises and falls, by level."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from planner.athlete import Level
from planner.demand import Run
from planner.oxygen import READINGS, Kinetics, uptake

SLOW = Kinetics(26, 106.8)


@pytest.mark.parametrize(("seconds", "percent"), [(60, 90.05), (77.9, 95.0)])
def test_with_26_s_it_is_where_the_fact_sheet_says(seconds: float, percent: float) -> None:
    """Fact sheet 5.2 [=]: 90.05 % at 60 s, 95 % at 77.9 s."""
    assert 100 * uptake([Run(1.0, seconds)], SLOW)[-1] == pytest.approx(percent, abs=0.02)


def test_the_deficit_is_amplitude_times_time_constant() -> None:
    """Fact sheet 5.2: 1.30 L for a step of 3.0 L/min at 26 s; by scipy.integrate.quad over our own curve."""
    missing, _ = quad(lambda t: 3.0 / 60 * (1 - uptake([Run(1.0, t)], SLOW)[-1]), 0, 600)
    assert missing == pytest.approx(1.30, abs=0.001)


@pytest.mark.parametrize(
    ("level", "moderate", "heavy"),
    [(Level.NOVICE, 25.9, 26.5), (Level.CLUB, 19.4, 22.4), (Level.TRAINED, 13.9, 18.7)],
)
def test_each_level_rises_as_published(level: Level, moderate: float, heavy: float) -> None:
    """Roberts 2005, Respir Physiol Neurobiol 146:247-258 (healthy men); Ingham 2007, Med Sci Sports Exerc
    39(5) (club rowers, Olympic champions)."""
    readings = READINGS[level]
    assert (readings.moderate.rise, readings.heavy.rise) == (moderate, heavy)


def test_after_exhaustion_half_is_gone_in_74_s() -> None:
    """Ferguson 2010, J Appl Physiol 108:866-874."""
    heavy = READINGS[Level.CLUB].heavy
    top, half = uptake([Run(1.0, 3000), Run(0.0, 74)], heavy)
    assert half == pytest.approx(top / 2)


@given(st.lists(st.builds(Run, st.floats(0, 3), st.floats(0.1, 600)), min_size=1, max_size=8))
def test_uptake_stays_between_nothing_and_that_at_2_km_power(runs: list[Run]) -> None:
    assert all(0 <= now <= 1 for now in uptake(runs, SLOW))
