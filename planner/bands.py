"""Bands of effort for one rower: trade zones and pressures as rate, power, split, heart rate, effort, talk.

Zones and pressures are common practice [C] with edges that differ from nation to nation and club to club:
the tables below are data to be edited. Only the rates and heart rates of UT2 and UT1 were read in print
(facts 6.5), and no source was found for any share of 2 km power.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from planner.athlete import Athlete, Level
from planner.intensity import (
    RACE_RATE,
    Rower,
    heart_rate_of,
    pressure_fraction,
    rower_of,
    split_at_fraction,
    talk_at_power,
    within_range,
)
from planner.plan import HeartRateUnit, Pressure
from planner.prediction import TwoK
from planner.units import round_half_up

Ends = tuple[int, int]
"""The lower and the upper end of a range."""


@dataclass(frozen=True, slots=True)
class Zone:
    """A trade zone: rates, percent of 2 km power (no upper end for the last), percent of the highest heart
    rate, effort on the 0 to 10 scale of Borg, and what can still be said aloud."""

    name: str
    sense: str
    rates: Ends
    power: tuple[int, int | None]
    heart_rate: Ends
    cr10: Ends
    talk: str


# Facts 6.5, rates and heart rates as they stand there. Effort and talk go with the talk test: speech is last
# comfortable at 79 % of the highest heart rate and 4.4 on the 0 to 10 scale, unsure at 82 % and 6.3 (Foster
# 2009, J Strength Cond Res 23:2425-2429 [S]); their ends here are judgement [C].
ZONES = (
    Zone("UT2", "easy and steady, for long rowing", (18, 20), (55, 65), (55, 70), (2, 3), "whole sentences"),
    Zone("UT1", "firm and steady", (20, 24), (65, 75), (70, 80), (3, 4), "short phrases"),
    Zone("AT", "threshold: hard, and even to the end", (24, 28), (75, 85), (80, 85), (5, 6), "short phrases"),
    Zone("TR", "about 2 km effort, in pieces", (28, 32), (85, 105), (85, 95), (7, 8), "single words"),
    Zone("AN", "short and flat out", (32, 36), (105, None), (95, 100), (9, 10), "no talk"),
)

# The rates at which a pressure is usually rowed [C]; its power follows from work per stroke (facts 6.6).
PRESSURE_RATES = {
    Pressure.LIGHT: (18, 20),
    Pressure.HALF: (18, 22),
    Pressure.THREE_QUARTER: (20, 26),
    Pressure.FULL: (24, 32),
}
PRESSURE_SENSES = {
    Pressure.LIGHT: "half the work of a race stroke in each stroke",
    Pressure.HALF: "about two thirds of the work of a race stroke",
    Pressure.THREE_QUARTER: "four fifths of the work of a race stroke",
    Pressure.FULL: "the work of a race stroke",
    Pressure.RACE: "2 km power, at the rate that suits you",
}
RACE_RATES_ABOUT = 2
"""Race pressure is rowed within so many strokes a minute of the level's race rate [C]."""

# Percent of the highest heart rate and of heart-rate reserve that mean the same effort: lower edges of the
# ACSM bands (Garber 2011 and 10th edition [S], facts 6.1); straight lines between them, and beyond the first.
MAX_AND_RESERVE = ((57, 30), (64, 40), (77, 60), (96, 90), (100, 100))

AGE_FORMULA_ERROR = 11
"""Formulas from age miss by 7 to 11 beats a minute (Robergs & Landwehr 2002 [S]); the larger is told."""


@dataclass(frozen=True, slots=True)
class HeartRates:
    """The limits in beats a minute; `error` is how far the highest may be off if it is from age, else 0."""

    highest: int
    rest: int | None
    from_age: bool
    error: int


@dataclass(frozen=True, slots=True)
class Band:
    """One band for one rower, each range from easy to hard; None where it is not known or not meant.

    Power in percent of 2 km power, splits in seconds per 500 m to the tenth, heart rates in beats a minute
    and in percent of the highest and of reserve.
    """

    name: str
    sense: str
    pressure: Pressure | None
    rates: Ends
    power: tuple[int, int | None]
    split_slow: Fraction | None
    split_quick: Fraction | None
    heart_rate: Ends | None
    percent_max: Ends | None
    percent_reserve: Ends | None
    cr10: Ends | None
    talk: str


def heart_rates_of(athlete: Athlete) -> HeartRates | None:
    """The highest heart rate, given or from age, with the resting one; None when neither is known."""
    rower = rower_of(athlete)
    if rower.heart_rate_max is None:
        return None
    from_age = athlete.heart_rate_max is None
    return HeartRates(
        rower.heart_rate_max, athlete.heart_rate_rest, from_age, AGE_FORMULA_ERROR if from_age else 0
    )


def bands_of(athlete: Athlete) -> tuple[Band, ...]:
    """The zones, then the pressures; in shares and words only where no result and no heart rate is known."""
    rower = rower_of(athlete)
    zones = (_zone_band(zone, rower) for zone in ZONES)
    return (*zones, *(_pressure_band(pressure, rower) for pressure in Pressure))


def _zone_band(zone: Zone, rower: Rower) -> Band:
    reserve = (reserve_percent_of(zone.heart_rate[0]), reserve_percent_of(zone.heart_rate[1]))
    return Band(
        name=zone.name,
        sense=zone.sense,
        pressure=None,
        rates=zone.rates,
        power=zone.power,
        split_slow=_split(rower.two_k, _share(zone.power[0])),
        split_quick=_split(rower.two_k, _share(zone.power[1])),
        heart_rate=_beats(zone.heart_rate, reserve, rower),
        percent_max=zone.heart_rate,
        percent_reserve=reserve,
        cr10=zone.cr10,
        talk=zone.talk,
    )


def _pressure_band(pressure: Pressure, rower: Rower) -> Band:
    rates = _pressure_rates(pressure, rower.level)
    low, high = (pressure_fraction(pressure, rate, rower.level) for rate in rates)
    return Band(
        name=f"{pressure.value} pressure",
        sense=PRESSURE_SENSES[pressure],
        pressure=pressure,
        rates=rates,
        power=(round_half_up(100 * low), round_half_up(100 * high)),
        split_slow=_split(rower.two_k, low),
        split_quick=_split(rower.two_k, high),
        heart_rate=None,
        percent_max=None,
        percent_reserve=None,
        cr10=None,
        talk=talk_at_power((low + high) / 2),
    )


def _pressure_rates(pressure: Pressure, level: Level) -> Ends:
    race = RACE_RATE[level]
    return PRESSURE_RATES.get(pressure, (race - RACE_RATES_ABOUT, race + RACE_RATES_ABOUT))


def _split(two_k: TwoK | None, fraction: Fraction | None) -> Fraction | None:
    if two_k is None or fraction is None:
        return None
    return within_range(split_at_fraction(two_k.split, fraction))


def _share(percent: int | None) -> Fraction | None:
    return None if percent is None else Fraction(percent, 100)


def reserve_percent_of(percent_max: int) -> int:
    """The share of heart-rate reserve that goes with a share of the highest heart rate, in whole percent."""
    return round_half_up(_along(MAX_AND_RESERVE, percent_max))


def _along(points: Sequence[tuple[int, int]], x: int) -> Fraction:
    """The value at x on straight lines through points, the outer lines going on."""
    (x0, y0), (x1, y1) = next(
        (pair for pair in pairwise(points) if x <= pair[1][0]), (points[-2], points[-1])
    )
    return y0 + Fraction((x - x0) * (y1 - y0), x1 - x0)


def _beats(percent_max: Ends, percent_reserve: Ends, rower: Rower) -> Ends | None:
    """By reserve where the resting heart rate is known, else by the highest one; None without that."""
    if rower.heart_rate_rest is None:
        return _bpm(HeartRateUnit.PERCENT_MAX, percent_max, rower)
    return _bpm(HeartRateUnit.PERCENT_RESERVE, percent_reserve, rower)


def _bpm(unit: HeartRateUnit, percents: Ends, rower: Rower) -> Ends | None:
    low, high = (heart_rate_of(unit, percent, rower).bpm for percent in percents)
    return (low, high) if low is not None and high is not None else None
