"""What one result says of another distance or time, by the two laws that rowers go by.

Each law takes a result and gives seconds for metres or metres for seconds, whatever the range: `holds` says
whether its range does. Neither knows the rower: the 1.06 and the 5 s are averages, and personal.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from planner.athlete import Result
from planner.pace import SPLIT_METRES

POWER_LAW_EXPONENT = 1.06
"""T2 = T1 (D2/D1)^1.06: Riegel 1981, American Scientist 69:285-290 [M]."""
POWER_LAW_SECONDS = (210, 13_800)
"""The power law is said to hold for about 3.5 to 230 minutes [M]."""
PERSONAL_EXPONENTS = (1.03, 9 / 8)
"""How far the exponent goes with the rower: seldom under 1.03 in a hobby survey of rowers [C], and 9/8 in the
early fatigue law drawn from records (Kennelly 1906, Proc Am Acad Arts Sci 42(15) [S]; its exponent [M])."""
SECONDS_PER_DOUBLING = 5
"""Each doubling of the distance adds 5 s per 500 m: club custom [C]."""
DOUBLING_METRES = (500, 42_195)
"""The custom is used from about 500 m to 42 km [C]."""
_SLIP = 1e-12


class Custom(StrEnum):
    """The ways to predict, by the names that people know."""

    POWER_LAW = "power law"
    DOUBLING = "five seconds a doubling"
    CRITICAL_POWER = "critical power"


@dataclass(frozen=True, slots=True)
class Length:
    """A distance in metres with the seconds it takes: measured or predicted."""

    metres: float
    seconds: float

    @property
    def split(self) -> float:
        """Seconds per 500 m."""
        return self.seconds * SPLIT_METRES / self.metres


def by_power_law(
    result: Result | Length, metres: Fraction | float, exponent: float = POWER_LAW_EXPONENT
) -> float:
    """Predicted seconds for a distance by the endurance power law."""
    return float(result.seconds) * math.pow(metres / result.metres, exponent)


def metres_by_power_law(result: Result, seconds: float, exponent: float = POWER_LAW_EXPONENT) -> float:
    """Predicted metres in a time by the endurance power law."""
    return result.metres * math.pow(seconds / float(result.seconds), 1 / exponent)


def by_doubling(result: Result | Length, metres: Fraction | float) -> float:
    """Predicted seconds for a distance by the five-seconds-per-doubling custom."""
    split = float(result.split) + SECONDS_PER_DOUBLING * math.log2(metres / result.metres)
    return split * float(metres) / 500


def metres_by_doubling(result: Result, seconds: float) -> float:
    """Predicted metres in a time by the same custom: halving between bounds that hold the answer."""
    low, high = result.metres / 2.0, result.metres * 2.0
    while by_doubling(result, low) > seconds:
        low /= 2
    while by_doubling(result, high) < seconds:
        high *= 2
    while high - low > _SLIP * high:
        middle = (low + high) / 2
        low, high = (middle, high) if by_doubling(result, middle) < seconds else (low, middle)
    return high


def holds(custom: Custom, result: Result, predicted: Length) -> bool:
    """Whether both the result and what is predicted from it lie in the range of a custom of one result."""
    if custom is Custom.POWER_LAW:
        low, high = POWER_LAW_SECONDS
        return low <= result.seconds <= high and low <= predicted.seconds <= high
    low, high = DOUBLING_METRES
    return low <= result.metres <= high and low <= predicted.metres <= high
