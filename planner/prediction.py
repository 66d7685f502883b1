"""The likely 2 km split from one result, by two customs and their spread."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from planner.athlete import Athlete, Level, Result
from planner.customs import POWER_LAW_SECONDS, by_doubling, by_power_law

TWO_K_METRES = 2000

ASSUMED_TWO_K_SPLIT = {
    Level.NOVICE: Fraction(135),
    Level.CLUB: Fraction(120),
    Level.TRAINED: Fraction(105),
}
"""Only for a rough length of metre blocks when there is no result: judgement [C]."""


def tenths_of(value: float) -> Fraction:
    """The nearest tenth of a computed number of seconds, a tie going up."""
    return Fraction(math.floor(value * 10 + 0.5), 10)


@dataclass(frozen=True, slots=True)
class TwoK:
    """A 2 km split in seconds per 500 m, to the tenth, and the least and most the customs give."""

    split: Fraction
    low: Fraction
    high: Fraction


def two_k_from(result: Result) -> TwoK:
    """The 2 km split of a result: its own over 2000 m, else the mean of both customs.

    Outside the range of the power law the doubling custom stands alone, but the spread still shows both.
    """
    law, custom = (f(result, TWO_K_METRES) / 4 for f in (by_power_law, by_doubling))
    low, high = POWER_LAW_SECONDS
    best = (law + custom) / 2 if low <= result.seconds <= high else custom
    return TwoK(tenths_of(best), tenths_of(min(law, custom)), tenths_of(max(law, custom)))


def two_k_of(athlete: Athlete | None) -> TwoK | None:
    """The 2 km split of an athlete's first result, or None without one."""
    return two_k_from(athlete.results[0]) if athlete and athlete.results else None
