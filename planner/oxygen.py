"""Oxygen uptake as a share of the uptake at 2 km power, above rest: how it rises and how it falls.

VO2(t) = baseline + A (1 - exp(-(t - TD)/tau)); the short delay TD is left out. The uptake that work leads to
is taken to be in proportion to power up to 2 km power, and no more above it [C].
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import exp, log

from planner.athlete import Level
from planner.demand import Run

FALL_AFTER_EXHAUSTION = 74 / log(2)
"""Seconds: from a half-time of 74 s (Ferguson 2010, J Appl Physiol 108:866-874 [S])."""


@dataclass(frozen=True, slots=True)
class Kinetics:
    """Time constants in seconds for a rising and for a falling uptake."""

    rise: float
    fall: float


@dataclass(frozen=True, slots=True)
class Readings:
    """Two published readings of the same rower: after moderate and after heavy rowing."""

    moderate: Kinetics
    heavy: Kinetics


def _readings(moderate: float, heavy: float) -> Readings:
    """After moderate work uptake falls as it rose [M]; after exhausting work much more slowly."""
    return Readings(Kinetics(moderate, moderate), Kinetics(heavy, FALL_AFTER_EXHAUSTION))


# Rise, moderate and heavy. Healthy men rowing: Roberts 2005, Respir Physiol Neurobiol 146:247-258 [S]. Club
# rowers and Olympic champions: Ingham 2007, Med Sci Sports Exerc 39(5) [S]. Which of them stands for which
# level is judgement [C].
READINGS = {
    Level.NOVICE: _readings(25.9, 26.5),
    Level.CLUB: _readings(19.4, 22.4),
    Level.TRAINED: _readings(13.9, 18.7),
}


def uptake(runs: Iterable[Run], kinetics: Kinetics) -> list[float]:
    """The uptake after each run, starting from rest."""
    now = 0.0
    after = []
    for share, seconds, _ in runs:
        goal = min(share, 1.0)
        now = goal + (now - goal) * exp(-seconds / (kinetics.rise if goal > now else kinetics.fall))
        after.append(now)
    return after
