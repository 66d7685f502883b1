"""The hyperbola (P - CP) t = W' on the cubic, and its least squares over raw trials.

Each distance is exact and the squares of the relative errors of time are least. CP is in watts, W' in joules,
a trial in metres and seconds.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import cbrt, log

from planner.pace import CUBIC

MOST_STEPS = 50
SHORTEST_STEP = 1e-6
"""Of a Gauss-Newton step: where no such share of it fits better, only rounding is left."""

Trial = tuple[float, float]
"""Metres and seconds of one all-out piece."""


def least_squares(trials: Sequence[Trial]) -> tuple[float, float] | None:
    """CP in watts and W' in joules with the least squares of relative errors of time (Gauss-Newton).

    None when the trials ask for a CP or a W' that is not positive, or all last equally long.
    """
    found = work_time_line(trials)
    if found is None or min(found) <= 0:
        return None
    for _ in range(MOST_STEPS):
        nearer = _nearer(*found, trials)
        if nearer is None:
            break
        found = nearer
    return found


def work_time_line(trials: Sequence[Trial]) -> tuple[float, float] | None:
    """CP and W' of the line W = CP t + W', each work weighed by its own size: the first approach.

    None when all trials last equally long.
    """
    times = [seconds for _, seconds in trials]
    works = [float(CUBIC) * metres**3 / seconds**2 for metres, seconds in trials]
    weights = [1 / work**2 for work in works]
    total = sum(weights)
    mean_time = sum(w * t for w, t in zip(weights, times, strict=True)) / total
    mean_work = sum(w * work for w, work in zip(weights, works, strict=True)) / total
    across = sum(w * (t - mean_time) ** 2 for w, t in zip(weights, times, strict=True))
    if across <= 0:
        return None
    along = sum(
        w * (t - mean_time) * (work - mean_work) for w, t, work in zip(weights, times, works, strict=True)
    )
    watts = along / across
    return watts, mean_work - watts * mean_time


def seconds_for(watts: float, reserve: float, metres: float) -> float:
    """The time in which CP t + W' is the work 2.8 D^3 / t^2 that the distance takes (Newton, from above)."""
    cube = float(CUBIC) * metres**3
    seconds = cbrt(cube / watts)
    while True:
        excess = (watts * seconds + reserve) * seconds**2 - cube
        nearer = seconds - excess / ((3 * watts * seconds + 2 * reserve) * seconds)
        if not nearer < seconds * (1 - 1e-15):
            return nearer
        seconds = nearer


def slopes(watts: float, reserve: float, seconds: float) -> tuple[float, float]:
    """How the logarithm of a modelled time changes with CP (1/W) and with W' (1/J)."""
    below = -1 / (3 * watts * seconds + 2 * reserve)
    return seconds * below, below


def normal_sums(watts: float, reserve: float, trials: Sequence[Trial]) -> tuple[float, float, float]:
    """The three sums of the normal equations."""
    pairs = _slopes_of(watts, reserve, trials)
    return sum(a * a for a, _ in pairs), sum(a * b for a, b in pairs), sum(b * b for _, b in pairs)


def misfit(watts: float, reserve: float, trials: Sequence[Trial]) -> float:
    """The sum of the squares of the relative errors of time."""
    return sum(error**2 for error in _errors(watts, reserve, trials))


def _nearer(watts: float, reserve: float, trials: Sequence[Trial]) -> tuple[float, float] | None:
    """The next approach, shortened until it fits better, or None where none does: this is the best."""
    now = misfit(watts, reserve, trials)
    by_watts, by_reserve = _step(watts, reserve, trials)
    share = 1.0
    while share > SHORTEST_STEP:
        next_watts, next_reserve = watts + share * by_watts, reserve + share * by_reserve
        if min(next_watts, next_reserve) > 0 and misfit(next_watts, next_reserve, trials) < now:
            return next_watts, next_reserve
        share /= 2
    return None


def _step(watts: float, reserve: float, trials: Sequence[Trial]) -> tuple[float, float]:
    aa, ab, bb = normal_sums(watts, reserve, trials)
    pairs = _slopes_of(watts, reserve, trials)
    errors = _errors(watts, reserve, trials)
    a = sum(slope * error for (slope, _), error in zip(pairs, errors, strict=True))
    b = sum(slope * error for (_, slope), error in zip(pairs, errors, strict=True))
    size = aa * bb - ab * ab
    return (a * bb - b * ab) / size, (b * aa - a * ab) / size


def _errors(watts: float, reserve: float, trials: Sequence[Trial]) -> list[float]:
    """The relative error of each time: the logarithm of measured over modelled."""
    return [log(seconds / seconds_for(watts, reserve, metres)) for metres, seconds in trials]


def _slopes_of(watts: float, reserve: float, trials: Sequence[Trial]) -> list[tuple[float, float]]:
    return [slopes(watts, reserve, seconds_for(watts, reserve, metres)) for metres, _ in trials]
