"""A named effort turned into split, power, talk and heart rate for one rower."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from planner.athlete import Athlete, Level
from planner.limits import SPLIT
from planner.pace import power_of_split
from planner.plan import (
    Change,
    Cr10,
    Effort,
    HeartRate,
    HeartRateUnit,
    Pressure,
    Split,
    SplitOffset,
    TwoKPower,
)
from planner.prediction import TwoK, tenths_of, two_k_of
from planner.units import round_half_up

# Pressure as work per stroke against the stroke of a 2 km race, so that power rises with rate:
# common practice without a source [C], editable data (facts 6.6).
WORK_PER_STROKE = {
    Pressure.LIGHT: Fraction(50, 100),
    Pressure.HALF: Fraction(65, 100),
    Pressure.THREE_QUARTER: Fraction(80, 100),
    Pressure.FULL: Fraction(1),
}
RACE_RATE = {Level.NOVICE: 28, Level.CLUB: 30, Level.TRAINED: 32}

# What can still be said aloud, by share of 2 km power and by effort from 0 to 10: common practice [C];
# comfortable speech goes with work below the first threshold (Foster 2008 [S], abstract).
TALK_BY_POWER_PERCENT = (
    (55, "easy talk"),
    (70, "whole sentences"),
    (85, "short phrases"),
    (97, "single words"),
)
TALK_BY_CR10 = (
    (3, "easy talk"),
    (5, "whole sentences"),
    (7, "short phrases"),
    (9, "single words"),
)
NO_TALK = "no talk"


@dataclass(frozen=True, slots=True)
class HeartRateTarget:
    """A heart rate as asked, and in beats a minute where the rower's limits are known."""

    bpm: int | None = None
    percent_max: int | None = None
    percent_reserve: int | None = None


@dataclass(frozen=True, slots=True)
class Target:
    """What a block asks for, in every form that is known for this rower.

    Splits are in seconds per 500 m to the tenth, as machines show them; fractions are of 2 km power to
    the thousandth; `split` is None where no result and no split is known.
    """

    pressure: Pressure | None = None
    split: Fraction | None = None
    two_k_power_fraction: Fraction | None = None
    split_offset: Fraction | None = None
    change: Fraction | None = None
    cr10: Fraction | None = None
    talk: str | None = None
    heart_rate: HeartRateTarget | None = None

    @property
    def watts(self) -> Fraction | None:
        """Watts shown at the split, exactly, or None without a split."""
        return power_of_split(self.split) if self.split else None


@dataclass(frozen=True, slots=True)
class Rower:
    """What targets need to know of an athlete."""

    two_k: TwoK | None
    level: Level
    heart_rate_rest: int | None
    heart_rate_max: int | None


def rower_of(athlete: Athlete | None) -> Rower:
    """The rower behind an athlete, or one of club level about whom nothing is known."""
    if athlete is None:
        return Rower(None, Level.CLUB, None, None)
    return Rower(two_k_of(athlete), athlete.level, athlete.heart_rate_rest, _highest_heart_rate(athlete))


def _highest_heart_rate(athlete: Athlete) -> int | None:
    """As given, else 208 - 0.7 x age (Tanaka 2001, J Am Coll Cardiol 37:153-156 [S]; error 7 to 11)."""
    if athlete.heart_rate_max is not None or athlete.age is None:
        return athlete.heart_rate_max
    return round_half_up(208 - Fraction(7, 10) * athlete.age)


def target_of(effort: Effort, rate: int | None, rower: Rower, before: Fraction | None) -> Target:
    """The target of an effort at a rate; `before` is the last rowed split, which a change starts from."""
    match effort:
        case Pressure():
            return _with_power(effort, _fraction_of(effort, rate, rower.level), rower)
        case TwoKPower(fraction):
            return _with_power(None, fraction, rower)
        case Split(seconds):
            return _with_split(Target(), seconds, rower)
        case SplitOffset(seconds):
            split = rower.two_k.split + seconds if rower.two_k else None
            return _with_split(Target(split_offset=seconds), split, rower)
        case Change(seconds):
            split = before + seconds if before is not None else None
            return _with_split(Target(change=seconds), split, rower)
        case Cr10(value):
            return Target(cr10=value, talk=_talk(*value.as_integer_ratio(), TALK_BY_CR10))
        case HeartRate(unit, value):
            return Target(heart_rate=heart_rate_of(unit, value, rower))


def split_at_fraction(two_k_split: Fraction, fraction: Fraction) -> Fraction:
    """The split, to the tenth, at a fraction of the power of a 2 km split."""
    return _split_at(*two_k_split.as_integer_ratio(), *fraction.as_integer_ratio())


@lru_cache(maxsize=4096)
def _split_at(split: int, of_split: int, part: int, of_part: int) -> Fraction:
    """Kept by whole numbers, since a fraction is slow to hash."""
    return tenths_of(split / of_split * (part / of_part) ** (-1 / 3))


def within_range(split: Fraction | None) -> Fraction | None:
    """The split, or None when no rower could be asked for it."""
    if split is None:
        return None
    seconds, parts = split.as_integer_ratio()
    return split if SPLIT.low * parts <= seconds <= SPLIT.high * parts else None


@lru_cache(maxsize=1024)
def pressure_fraction(pressure: Pressure, rate: int, level: Level) -> Fraction:
    """The share of 2 km power, to the thousandth, that a pressure takes at a rate.

    Work per stroke against a race stroke, times the rate against the race rate (facts 6.6).
    """
    if pressure is Pressure.RACE:
        return Fraction(1)
    return _thousandths(WORK_PER_STROKE[pressure] * rate / RACE_RATE[level])


def _fraction_of(pressure: Pressure, rate: int | None, level: Level) -> Fraction | None:
    """As above; None where it takes a rate that is not known. Race pressure needs none."""
    if pressure is Pressure.RACE:
        return Fraction(1)
    return pressure_fraction(pressure, rate, level) if rate else None


def _with_power(pressure: Pressure | None, fraction: Fraction | None, rower: Rower) -> Target:
    if fraction is None:
        return Target(pressure=pressure)
    split = within_range(split_at_fraction(rower.two_k.split, fraction)) if rower.two_k else None
    return Target(pressure, split, fraction, talk=talk_at_power(fraction))


def _with_split(target: Target, split: Fraction | None, rower: Rower) -> Target:
    known = within_range(split)
    if known is None or rower.two_k is None:
        return replace(target, split=known)
    fraction = fraction_at_split(rower.two_k.split, known)
    return Target(None, known, fraction, target.split_offset, target.change, talk=talk_at_power(fraction))


def fraction_at_split(two_k_split: Fraction, split: Fraction) -> Fraction:
    """The share of 2 km power, to the thousandth, that a split takes."""
    (ours, of_ours), (theirs, of_theirs) = two_k_split.as_integer_ratio(), split.as_integer_ratio()
    above, below = (ours * of_theirs) ** 3, (theirs * of_ours) ** 3
    return Fraction((2000 * above + below) // (2 * below), 1000)


def _thousandths(fraction: Fraction) -> Fraction:
    return Fraction(round_half_up(fraction * 1000), 1000)


def talk_at_power(fraction: Fraction) -> str:
    """What can still be said aloud at a share of 2 km power."""
    value, parts = fraction.as_integer_ratio()
    return _talk(100 * value, parts, TALK_BY_POWER_PERCENT)


def _talk(value: int, parts: int, bands: tuple[tuple[int, str], ...]) -> str:
    """The words for value/parts; whole numbers, since comparing fractions is slow."""
    return next((words for most, words in bands if value <= most * parts), NO_TALK)


def heart_rate_of(unit: HeartRateUnit, value: int, rower: Rower) -> HeartRateTarget:
    """A heart rate as asked, in beats a minute where the rower's limits are known.

    Reserve: rest + share x (highest - rest), Karvonen 1957, Ann Med Exp Biol Fenn 35:307-315 [M].
    """
    rest, most = rower.heart_rate_rest, rower.heart_rate_max
    match unit:
        case HeartRateUnit.BPM:
            return HeartRateTarget(bpm=value)
        case HeartRateUnit.PERCENT_MAX:
            bpm = round_half_up(Fraction(value, 100) * most) if most is not None else None
            return HeartRateTarget(bpm=bpm, percent_max=value)
        case HeartRateUnit.PERCENT_RESERVE:
            if rest is None or most is None:
                return HeartRateTarget(percent_reserve=value)
            bpm = round_half_up(rest + Fraction(value, 100) * (most - rest))
            return HeartRateTarget(bpm=bpm, percent_reserve=value)
