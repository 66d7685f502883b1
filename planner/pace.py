"""Split, speed, power and work under the air-machine display convention.

The cubic P = 2.80 v^3 (W, m/s) is how air machines show power: a named convention [S2], not physics of
magnetic or water machines and not derived from the rower (facts 1.1). Displayed watts may read several
percent low against the handle (Treff 2022, 10.3389/fspor.2021.801617; Holt 2021,
10.3389/fphys.2021.758015 [S]).
"""

from __future__ import annotations

from fractions import Fraction
from math import cbrt

CUBIC = Fraction(14, 5)
"""Watts per (m/s) cubed; a calibration constant of the convention [S2]."""

SPLIT_METRES = 500


def power_of_split(split: Fraction) -> Fraction:
    """Watts shown at a split in seconds per 500 m, exactly."""
    seconds, parts = split.as_integer_ratio()
    return Fraction(CUBIC.numerator * (SPLIT_METRES * parts) ** 3, CUBIC.denominator * seconds**3)


def work_at(split: Fraction, seconds: Fraction) -> Fraction:
    """Joules shown for a time at a split in seconds per 500 m, exactly."""
    (pace, of_pace), (time, of_time) = split.as_integer_ratio(), seconds.as_integer_ratio()
    above = CUBIC.numerator * (SPLIT_METRES * of_pace) ** 3 * time
    return Fraction(above, CUBIC.denominator * pace**3 * of_time)


def split_of_power(watts: float) -> float:
    """Seconds per 500 m shown at a power in watts."""
    return SPLIT_METRES * cbrt(float(CUBIC) / watts)


def split_of(metres: Fraction | int, seconds: Fraction | int) -> Fraction:
    """Seconds per 500 m of a distance covered in a time: total time over total distance."""
    return Fraction(seconds) * SPLIT_METRES / metres


def metres_in(seconds: Fraction, split: Fraction) -> Fraction:
    """Metres covered in a time at a split."""
    (time, of_time), (pace, of_pace) = seconds.as_integer_ratio(), split.as_integer_ratio()
    return Fraction(time * SPLIT_METRES * of_pace, of_time * pace)


def seconds_for(metres: int, split: Fraction) -> Fraction:
    """Seconds that a distance takes at a split."""
    return metres * split / SPLIT_METRES
