"""Stroke rate to exact stroke moments, rhythm and clock marks, all as fractions of seconds."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from planner.plan import Pressure

MINUTE = 60
CLOCK_MARK_STROKES = 8
"""The most strokes between two clock marks that a person can still follow."""


class Fit(StrEnum):
    """What gives way when a length does not hold whole strokes at its rate."""

    CLOCK = "clock"
    RATE = "rate"


class Rhythm(StrEnum):
    """Where the drive's share of the stroke comes from."""

    MACHINE = "machine"
    BOAT = "boat"


@dataclass(frozen=True, slots=True)
class Strokes:
    """A whole number of strokes, each lasting `stroke` seconds; catch k (from 0) is at k x stroke."""

    count: int
    stroke: Fraction

    @property
    def duration(self) -> Fraction:
        """How long they last together, in seconds."""
        seconds, parts = self.stroke.as_integer_ratio()
        return Fraction(self.count * seconds, parts)

    def catch(self, number: int) -> Fraction:
        """When the catch of a stroke falls, in seconds from the first one; strokes count from 1."""
        seconds, parts = self.stroke.as_integer_ratio()
        return Fraction((number - 1) * seconds, parts)

    @property
    def rate(self) -> Fraction:
        """Strokes a minute as paced."""
        return MINUTE / self.stroke

    def strays_from(self, rate: int) -> bool:
        """Whether the paced rate differs by more than half a stroke a minute from the one asked."""
        seconds, parts = self.stroke.as_integer_ratio()
        return 2 * abs(MINUTE * parts - rate * seconds) > seconds


def strokes_in(seconds: Fraction | int, rate: int, fit: Fit = Fit.CLOCK) -> Strokes:
    """The whole strokes nearest to a length of time at a rate: a tie goes up, and there is at least one.

    By the clock the length stays and the strokes are paced evenly through it; by the rate the stroke
    stays 60/rate seconds and the length becomes that of the whole strokes.
    """
    whole, parts = seconds.as_integer_ratio()
    count = max(1, (2 * whole * rate + parts * MINUTE) // (2 * parts * MINUTE))
    return Strokes(count, Fraction(whole, parts * count)) if fit is Fit.CLOCK else strokes_at(count, rate)


def strokes_at(count: int, rate: int) -> Strokes:
    """So many strokes at exactly this rate."""
    return Strokes(count, Fraction(MINUTE, rate))


@dataclass(frozen=True, slots=True)
class ClockMark:
    """Every `strokes` strokes last a whole number of `seconds`: how to check a rate by a clock's hand."""

    strokes: int
    seconds: int


def clock_mark(stroke: Fraction) -> ClockMark | None:
    """The clock mark of a stroke of p/q seconds in lowest terms, or None when q is over 8."""
    if stroke.denominator > CLOCK_MARK_STROKES:
        return None
    return ClockMark(stroke.denominator, stroke.numerator)


# Machine rhythm: all [C], common practice without a source (facts 6.6). The share shrinks a little with
# pressure because on machines the drive's time follows intensity (Sports Biomechanics 2022,
# 10.1080/14763141.2022.2135457 [S]); by how much is judgement.
_SLOW_SHARE, _SLOW_RATE = Fraction(1, 3), 22
_QUICK_SHARE, _QUICK_RATE = Fraction(45, 100), 34
_LESS_WITH_PRESSURE = {
    Pressure.THREE_QUARTER: Fraction(1, 100),
    Pressure.FULL: Fraction(2, 100),
    Pressure.RACE: Fraction(2, 100),
}

# Drive time in single sculls falls 15 ms for each stroke a minute from 0.91 s at 36, rates 20 to 44
# (Kleshnev, Rowing Biomechanics Newsletter, early 2021 [S]); the line is held level outside 18 to 44.
_BOAT_DRIVE_AT_36 = Fraction(91, 100)
_BOAT_DRIVE_SLOPE = Fraction(15, 1000)
_BOAT_RATES = (18, 44)


def drive_share(
    rate: Fraction | int, pressure: Pressure | None = None, rhythm: Rhythm = Rhythm.MACHINE
) -> Fraction:
    """The part of the stroke, between 0 and 1, that the drive takes at a rate."""
    return _boat_share(rate) if rhythm is Rhythm.BOAT else _machine_share(rate, pressure)


def drive_seconds(stroke: Fraction, pressure: Pressure | None, rhythm: Rhythm) -> Fraction:
    """How long the drive of such a stroke lasts."""
    return _drive_seconds(*stroke.as_integer_ratio(), pressure, rhythm)


@lru_cache(maxsize=4096)
def _drive_seconds(seconds: int, parts: int, pressure: Pressure | None, rhythm: Rhythm) -> Fraction:
    """Kept by whole numbers, since a fraction is slow to hash."""
    stroke = Fraction(seconds, parts)
    return stroke * drive_share(MINUTE / stroke, pressure, rhythm)


def _machine_share(rate: Fraction | int, pressure: Pressure | None) -> Fraction:
    held = min(max(rate, _SLOW_RATE), _QUICK_RATE)
    rise = (_QUICK_SHARE - _SLOW_SHARE) * (held - _SLOW_RATE) / (_QUICK_RATE - _SLOW_RATE)
    less = _LESS_WITH_PRESSURE.get(pressure, Fraction(0)) if pressure else Fraction(0)
    return _SLOW_SHARE + rise - less


def _boat_share(rate: Fraction | int) -> Fraction:
    low, high = _BOAT_RATES
    held = min(max(rate, low), high)
    drive = _BOAT_DRIVE_AT_36 - _BOAT_DRIVE_SLOPE * (held - 36)
    return drive * held / MINUTE
