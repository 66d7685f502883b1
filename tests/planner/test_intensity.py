"""Targets of every effort kind."""

from __future__ import annotations

from fractions import Fraction

import pytest

from planner.athlete import Athlete, Level, Result
from planner.intensity import rower_of, target_of
from planner.plan import (
    Change,
    Cr10,
    HeartRate,
    HeartRateUnit,
    Pressure,
    Split,
    SplitOffset,
    TwoKPower,
)
from tests.builders import rower_of_7_42

NOBODY = rower_of(None)
ROWER = rower_of(rower_of_7_42())


# Fact sheet 6.6, club level (common practice, no source): fraction of 2 km power by pressure and rate.
@pytest.mark.parametrize(
    ("pressure", "rate", "fraction"),
    [
        (Pressure.LIGHT, 18, "0.300"),
        (Pressure.LIGHT, 32, "0.533"),
        (Pressure.HALF, 20, "0.433"),
        (Pressure.THREE_QUARTER, 24, "0.640"),
        (Pressure.THREE_QUARTER, 32, "0.853"),
        (Pressure.FULL, 20, "0.667"),
        (Pressure.FULL, 28, "0.933"),
        (Pressure.FULL, 32, "1.067"),
        (Pressure.RACE, 24, "1.000"),
    ],
)
def test_pressure_at_a_rate_is_the_tabled_share_of_2_km_power(
    pressure: Pressure, rate: int, fraction: str
) -> None:
    assert target_of(pressure, rate, NOBODY, None).two_k_power_fraction == Fraction(fraction)


# Fact sheet 6.6, worked for 2 km in 7:42.0.
@pytest.mark.parametrize(
    ("pressure", "rate", "split", "watts"),
    [
        (Pressure.FULL, 20, "132.2", 151.4),
        (Pressure.THREE_QUARTER, 24, "134.0", 145.4),
        (Pressure.LIGHT, 18, "172.5", 68.1),
    ],
)
def test_pressure_becomes_the_worked_split_and_power(
    pressure: Pressure, rate: int, split: str, watts: float
) -> None:
    target = target_of(pressure, rate, ROWER, None)
    assert target.split == Fraction(split)
    assert float(target.watts or 0) == pytest.approx(watts, abs=0.15)


def test_pressure_without_a_result_still_says_how_to_talk() -> None:
    target = target_of(Pressure.LIGHT, 20, NOBODY, None)
    assert (target.split, target.watts, target.talk) == (None, None, "easy talk")


def test_a_split_asked_for_needs_no_result() -> None:
    target = target_of(Split(Fraction(115)), 30, NOBODY, None)
    assert (target.split, target.two_k_power_fraction) == (115, None)


def test_an_offset_is_added_to_the_2_km_split() -> None:
    assert target_of(SplitOffset(Fraction(3, 2)), 28, ROWER, None).split == 117


def test_a_change_starts_from_the_split_before() -> None:
    target = target_of(Change(Fraction(-2)), 20, ROWER, Fraction(130))
    assert (target.split, target.change) == (128, -2)


def test_a_change_from_an_unknown_split_stays_a_change() -> None:
    target = target_of(Change(Fraction(-2)), 20, NOBODY, None)
    assert (target.split, target.change) == (None, -2)


def test_half_of_2_km_power_is_the_split_times_the_cube_root_of_two() -> None:
    target = target_of(TwoKPower(Fraction(1, 2)), 20, ROWER, None)
    assert float(target.split or 0) == pytest.approx(115.5 * 2 ** (1 / 3), abs=0.05)


def test_effort_from_0_to_10_speaks_in_talk_only() -> None:
    target = target_of(Cr10(Fraction(5)), 20, ROWER, None)
    assert (target.split, target.talk, target.cr10) == (None, "whole sentences", 5)


# Fact sheet 6.4: Tanaka 2001 at age 40 is 180; Karvonen 1957 with rest 60, highest 190.
@pytest.mark.parametrize(
    ("athlete", "effort", "bpm"),
    [
        (Athlete(age=40), HeartRate(HeartRateUnit.PERCENT_MAX, 50), 90),
        (
            Athlete(heart_rate_rest=60, heart_rate_max=190),
            HeartRate(HeartRateUnit.PERCENT_RESERVE, 60),
            138,
        ),
        (Athlete(), HeartRate(HeartRateUnit.BPM, 150), 150),
    ],
)
def test_heart_rates_follow_the_published_formulas(athlete: Athlete, effort: HeartRate, bpm: int) -> None:
    heart_rate = target_of(effort, 20, rower_of(athlete), None).heart_rate
    assert heart_rate is not None
    assert heart_rate.bpm == bpm


def test_a_share_of_reserve_without_limits_stays_a_share() -> None:
    heart_rate = target_of(HeartRate(HeartRateUnit.PERCENT_RESERVE, 60), 20, NOBODY, None).heart_rate
    assert heart_rate is not None
    assert (heart_rate.bpm, heart_rate.percent_reserve) == (None, 60)


def test_a_split_nobody_could_row_is_left_out() -> None:
    assert target_of(Change(Fraction(-40)), 20, ROWER, Fraction(90)).split is None


def test_level_moves_the_race_rate() -> None:
    novice = rower_of(Athlete((Result(2000, Fraction(540)),), level=Level.NOVICE))
    assert target_of(Pressure.FULL, 28, novice, None).two_k_power_fraction == 1
