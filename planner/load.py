"""Training load: effort times minutes, and how even and how heavy a week of it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from statistics import fmean, pstdev, stdev

from planner.errors import InputError, Problem
from planner.limits import CR10

DAYS = 7


class Deviation(StrEnum):
    """Which standard deviation monotony is taken with: publications do not always say."""

    SAMPLE = "sample"
    POPULATION = "population"


@dataclass(frozen=True, slots=True)
class Evenness:
    """Monotony, mean over standard deviation, and strain, sum times monotony, by one named deviation.

    Both are None for a week whose days are all alike: there is nothing to divide by.
    """

    deviation: Deviation
    monotony: float | None
    strain: float | None


@dataclass(frozen=True, slots=True)
class Week:
    """The load of seven days: their sum, their mean, and how even they are, by either deviation."""

    total: float
    mean: float
    evenness: tuple[Evenness, ...]


def session_load(cr10: Fraction | float, minutes: Fraction | float) -> float:
    """Effort from 0 to 10, asked for about 30 min after the end, times the minutes of the session.

    Foster 2001, J Strength Cond Res 15:109-115 [S], on the session version of the scale. Raises InputError
    for an effort outside it or a length below 0.
    """
    problems = []
    if complaint := CR10.complaint(Fraction(cr10)):
        problems.append(Problem("/cr10", complaint))
    if not minutes >= 0:
        problems.append(Problem("/minutes", f"a session of {minutes} minutes is below 0: write its length"))
    if problems:
        raise InputError(problems)
    return float(cr10) * float(minutes)


def week_of(daily: Sequence[float]) -> Week:
    """The week of seven daily loads, a day of rest being 0 (Foster 1998, Med Sci Sports Exerc 30:1164 [M]).

    Raises InputError for other than seven days or a load below 0.
    """
    problems = [
        Problem(f"/{day}", f"a load of {load} is below 0: a day of rest is 0")
        for day, load in enumerate(daily)
        if not load >= 0
    ]
    if len(daily) != DAYS:
        problems.append(Problem("", f"{len(daily)} days are not a week: give {DAYS}, a day of rest as 0"))
    if problems:
        raise InputError(problems)
    total = sum(daily)
    return Week(
        total=total,
        mean=fmean(daily),
        evenness=(
            _evenness(Deviation.SAMPLE, total, daily, stdev(daily)),
            _evenness(Deviation.POPULATION, total, daily, pstdev(daily)),
        ),
    )


def _evenness(name: Deviation, total: float, daily: Sequence[float], deviation: float) -> Evenness:
    if deviation == 0:
        return Evenness(name, None, None)
    monotony = fmean(daily) / deviation
    return Evenness(name, monotony, total * monotony)
