"""Bands of effort against the tables they were written down from, and for what is known of a rower."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.athlete import Athlete, Level, Result
from planner.bands import MAX_AND_RESERVE, ZONES, Band, bands_of, heart_rates_of, reserve_percent_of
from planner.intensity import RACE_RATE, heart_rate_of, rower_of, talk_at_power, target_of
from planner.plan import HeartRateUnit, Pressure

RESULT = Athlete((Result(2000, Fraction(462)),))


def bands(athlete: Athlete) -> dict[str, Band]:
    return {band.name: band for band in bands_of(athlete)}


# --- Fact sheet 6.5: zones, common practice without a source but for rates and heart rates of UT2 and UT1


def test_the_zones_are_those_of_the_table() -> None:
    assert [(z.name, z.heart_rate, z.rates, z.power) for z in ZONES] == [
        ("UT2", (55, 70), (18, 20), (55, 65)),
        ("UT1", (70, 80), (20, 24), (65, 75)),
        ("AT", (80, 85), (24, 28), (75, 85)),
        ("TR", (85, 95), (28, 32), (85, 105)),
        ("AN", (95, 100), (32, 36), (105, None)),
    ]


def test_the_edges_of_the_zones_meet() -> None:
    for easier, harder in pairwise(ZONES):
        assert easier.heart_rate[1] == harder.heart_rate[0]
        assert easier.power[1] == harder.power[0]
        assert easier.rates[1] == harder.rates[0]


def test_talk_in_a_zone_is_what_timelines_say_at_its_power() -> None:
    for zone in ZONES:
        low, high = zone.power
        percents = range(low + 1, (high or low + 20) + 1)
        assert zone.talk in {talk_at_power(Fraction(percent, 100)) for percent in percents}


# --- Fact sheet 6.6: pressure as work per stroke, common practice without a source


def test_pressure_at_a_rate_is_the_tabled_share() -> None:
    """Club, race rate 30: light r18 0.300, r20 0.333; half r18 0.390; full r24 0.800, r32 1.067."""
    found = bands(Athlete())
    assert (found["light pressure"].rates, found["light pressure"].power) == ((18, 20), (30, 33))
    assert found["half pressure"].power[0] == 39
    assert (found["full pressure"].rates, found["full pressure"].power) == ((24, 32), (80, 107))


def test_light_at_r18_has_the_tabled_split() -> None:
    """2 km in 7:42.0: light at r18 is a split of 172.5 s (facts 6.6)."""
    assert bands(RESULT)["light pressure"].split_slow == Fraction(1725, 10)


@pytest.mark.parametrize("level", list(Level))
def test_race_pressure_is_2_km_power_about_the_race_rate(level: Level) -> None:
    race = bands(Athlete(level=level))["race pressure"]
    assert race.power == (100, 100)
    assert sum(race.rates) == 2 * RACE_RATE[level]


@given(st.integers(360, 720), st.sampled_from(Level))
def test_a_pressure_has_the_split_that_plans_have_at_its_rates(seconds: int, level: Level) -> None:
    athlete = Athlete((Result(2000, Fraction(seconds)),), level=level)
    for band in bands_of(athlete):
        if band.pressure:
            slow, quick = (target_of(band.pressure, rate, rower_of(athlete), None) for rate in band.rates)
            assert (band.split_slow, band.split_quick) == (slow.split, quick.split)


def test_no_sense_gives_a_rate_beside_the_rates_of_its_band() -> None:
    assert not [
        band.sense for band in bands_of(Athlete()) if any(c.isdigit() for c in band.sense.replace("2 km", ""))
    ]


def test_race_pressure_has_the_2_km_split() -> None:
    race = bands(RESULT)["race pressure"]
    assert race.split_slow == race.split_quick == Fraction(1155, 10)


# --- Fact sheet 6.4: heart rates


@pytest.mark.parametrize(
    ("age", "highest"), [(20, 194), (30, 187), (40, 180), (50, 173), (60, 166), (70, 159)]
)
def test_the_highest_heart_rate_from_age_is_the_tabled_one(age: int, highest: int) -> None:
    """208 - 0.7 x age, Tanaka 2001, J Am Coll Cardiol 37:153-156."""
    found = heart_rates_of(Athlete(age=age))
    assert found
    assert (found.highest, found.from_age) == (highest, True)


def test_the_error_of_age_formulas_is_told() -> None:
    """7 to 11 beats a minute (Robergs & Landwehr 2002)."""
    found = heart_rates_of(Athlete(age=40))
    assert found
    assert found.error == 11


def test_a_given_highest_heart_rate_stands() -> None:
    found = heart_rates_of(Athlete(age=40, heart_rate_max=191, heart_rate_rest=52))
    assert found
    assert (found.highest, found.rest, found.from_age, found.error) == (191, 52, False, 0)


def test_without_age_or_highest_there_are_no_heart_rates() -> None:
    assert heart_rates_of(Athlete(heart_rate_rest=52)) is None
    assert all(band.heart_rate is None for band in bands_of(Athlete(heart_rate_rest=52)))


@pytest.mark.parametrize(("percent", "bpm"), [(40, 112), (60, 138), (89, 176)])
def test_reserve_is_the_tabled_heart_rate(percent: int, bpm: int) -> None:
    """Rest 60, highest 190: 112.0, 138.0 and 175.7 (Karvonen 1957)."""
    rower = rower_of(Athlete(heart_rate_rest=60, heart_rate_max=190))
    assert heart_rate_of(HeartRateUnit.PERCENT_RESERVE, percent, rower).bpm == bpm


def test_a_zone_goes_by_reserve_where_the_resting_rate_is_known() -> None:
    """UT1, 70 to 80 % of the highest, is 49 to 65 % of reserve: 60 + 0.49 x 130 and 60 + 0.65 x 130."""
    assert bands(Athlete(heart_rate_rest=60, heart_rate_max=190))["UT1"].heart_rate == (124, 145)


def test_a_zone_goes_by_the_highest_rate_else() -> None:
    assert bands(Athlete(heart_rate_max=190))["UT1"].heart_rate == (133, 152)


@pytest.mark.parametrize(("percent_max", "percent_reserve"), [(57, 30), (64, 40), (77, 60), (96, 90)])
def test_percentages_go_together_as_published(percent_max: int, percent_reserve: int) -> None:
    """Lower edges of the ACSM bands light, moderate, vigorous and near-maximal (facts 6.1)."""
    assert reserve_percent_of(percent_max) == percent_reserve
    assert (percent_max, percent_reserve) in MAX_AND_RESERVE


# --- What is known


def test_with_nothing_known_bands_hold_words_rates_and_shares_only() -> None:
    for band in bands_of(Athlete()):
        assert band.split_slow is None
        assert band.split_quick is None
        assert band.talk


def test_every_pressure_has_a_band() -> None:
    assert [band.pressure for band in bands_of(Athlete()) if band.pressure] == list(Pressure)


@given(st.integers(340, 1200), st.sampled_from(Level))
def test_every_range_goes_from_easy_to_hard(seconds: int, level: Level) -> None:
    athlete = Athlete((Result(2000, Fraction(seconds)),), heart_rate_rest=55, heart_rate_max=185, level=level)
    for band in bands_of(athlete):
        assert band.rates[0] < band.rates[1]
        assert band.power[1] is None or band.power[0] <= band.power[1]
        if band.split_slow is not None and band.split_quick is not None:
            assert band.split_slow >= band.split_quick
        if band.heart_rate:
            assert 55 < band.heart_rate[0] < band.heart_rate[1] <= 185


@given(st.integers(340, 1200), st.integers(1, 60))
def test_a_quicker_2_km_quickens_every_split(seconds: int, gain: int) -> None:
    slow, quick = (bands_of(Athlete((Result(2000, Fraction(s)),))) for s in (seconds, seconds - gain))
    for before, after in zip(slow, quick, strict=True):
        if before.split_slow is not None and after.split_slow is not None:
            assert after.split_slow <= before.split_slow
