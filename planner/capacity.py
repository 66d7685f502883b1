"""What a rower can spend: the critical share of 2 km power, and the reserve above it (W').

The unit is the rower's own 2 km power, so that everything runs without a result; watts and kilojoules come
only from one.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import NamedTuple

from planner.athlete import Athlete, Level
from planner.critical_power import Fit, Refusal
from planner.pace import power_of_split
from planner.prediction import ASSUMED_TWO_K_SPLIT, examined_of, two_k_by

# The share of 2 km power that can be held for long: judgement by level [C], near the shares that the fact
# sheet's rowers come to [=] (3.2): 0.877 for CP 250 W and W' 15 kJ, 0.897 and 0.920 for the rower of Hill,
# Alain & Kennedy 2003, Med Sci Sports Exerc 35:2098-2105.
CRITICAL_SHARE = {Level.NOVICE: 0.85, Level.CLUB: 0.87, Level.TRAINED: 0.89}
SPREAD_WITH_RESULT = 0.04
SPREAD_WITHOUT = 0.05
TIME_SPREAD_WITHOUT = 0.10
"""How far a level's 2 km time may be off either way, as a share of it: judgement [C]."""


class CapacityBasis(StrEnum):
    """What a capacity rests on: a fit of several results, one result, or only a level."""

    FIT = "fit"
    RESULT = "result"
    LEVEL = "level"


class Range(NamedTuple):
    """An estimate with the least and the most that the models give."""

    low: float
    middle: float
    high: float


class Purse(NamedTuple):
    """One pair for a simulation: the critical share and the reserve in 2 km power x seconds."""

    critical: float
    reserve_seconds: float


@dataclass(frozen=True, slots=True)
class Capacity:
    """Critical share of 2 km power; reserve and 2 km time in seconds; each with its lowest and highest.

    `reserve_seconds` is W' in units of 2 km power x seconds. A low critical share belongs to a high
    reserve and the other way round, as in every fit. `two_k_watts` is None without a result.
    """

    basis: CapacityBasis
    critical: float
    critical_low: float
    critical_high: float
    reserve_seconds: float
    reserve_seconds_low: float
    reserve_seconds_high: float
    two_k_seconds: float
    two_k_watts: float | None
    assumed_watts: float
    """What the level would row over 2 km, in watts: only where a published formula asks for watts."""
    fit_set_aside: bool = False
    """The results give a fit, but its critical power does not go with the 2 km power that they predict."""

    @property
    def watts_in_formulas(self) -> float:
        """2 km watts of the result, else of the level: time constants in watts need one of them."""
        return self.two_k_watts if self.two_k_watts is not None else self.assumed_watts

    @property
    def middle(self) -> Purse:
        """The likeliest pair."""
        return Purse(self.critical, self.reserve_seconds)

    @property
    def corners(self) -> tuple[Purse, Purse]:
        """The pairs at the ends of the range."""
        return (
            Purse(self.critical_low, self.reserve_seconds_high),
            Purse(self.critical_high, self.reserve_seconds_low),
        )


def capacity_of(athlete: Athlete | None, level: Level) -> Capacity:
    """The capacity of a rower, from results where there are any, else from the level's defaults.

    By level the reserve is such that 2 km at 2 km power spends it exactly: (1 - critical) x 2 km time.
    """
    assumed = ASSUMED_TWO_K_SPLIT[level]
    assumed_watts = float(power_of_split(assumed))
    if athlete is None or not athlete.results:
        middle = 4 * float(assumed)
        times = Range(*(middle * (1 + way * TIME_SPREAD_WITHOUT) for way in (-1, 0, 1)))
        return _by_level(CapacityBasis.LEVEL, level, times, SPREAD_WITHOUT, None, assumed_watts)
    examined = examined_of(athlete.results)
    two_k = two_k_by(athlete.results, examined)
    times = Range(*(4 * float(split) for split in (two_k.low, two_k.split, two_k.high)))
    watts = float(power_of_split(two_k.split))
    if examined.fit:
        return _by_fit(examined.fit, times.middle, watts, assumed_watts)
    by_level = _by_level(CapacityBasis.RESULT, level, times, SPREAD_WITH_RESULT, watts, assumed_watts)
    return replace(by_level, fit_set_aside=examined.refusal is Refusal.UNLIKELY)


def _by_fit(fit: Fit, two_k_seconds: float, watts: float, assumed_watts: float) -> Capacity:
    """One standard error either way."""
    return Capacity(
        basis=CapacityBasis.FIT,
        critical=fit.watts / watts,
        critical_low=(fit.watts - fit.watts_error) / watts,
        critical_high=(fit.watts + fit.watts_error) / watts,
        reserve_seconds=fit.reserve_joules / watts,
        reserve_seconds_low=(fit.reserve_joules - fit.reserve_joules_error) / watts,
        reserve_seconds_high=(fit.reserve_joules + fit.reserve_joules_error) / watts,
        two_k_seconds=two_k_seconds,
        two_k_watts=watts,
        assumed_watts=assumed_watts,
    )


def _by_level(
    basis: CapacityBasis, level: Level, times: Range, spread: float, known: float | None, watts: float
) -> Capacity:
    critical = CRITICAL_SHARE[level]
    low, high = critical - spread, critical + spread
    return Capacity(
        basis=basis,
        critical=critical,
        critical_low=low,
        critical_high=high,
        reserve_seconds=(1 - critical) * times.middle,
        reserve_seconds_low=(1 - high) * times.low,
        reserve_seconds_high=(1 - low) * times.high,
        two_k_seconds=times.middle,
        two_k_watts=known,
        assumed_watts=watts,
    )
