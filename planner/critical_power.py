"""Critical power and the reserve above it, W', from two or more all-out results.

The model: power P can be held for t seconds when (P - CP) t = W' (Monod & Scherrer 1965, Ergonomics 8:329-338
[M]; the form in Hill 2003 and Skiba 2012 [S]), for efforts of about 2 to 15 minutes; CP is not a pace for
hours [M].

The form: of a test piece the distance is set and the time is measured. Work and mean power are both worked
out from that time, so neither the work-time line nor power against 1/t has an exact side, and plain least
squares on them gives most say to the longest or to the shortest piece. Here each distance is exact, the model
says the time it takes on the cubic, and the squares of the relative errors of time are least: rowers repeat
a piece to within about the same percentage of its time. On exact data all forms agree.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import cbrt, hypot, log, sqrt

from planner.athlete import Result
from planner.pace import CUBIC, SPLIT_METRES
from planner.trials import TIME_SPREAD, Doubt, LeftOut, sift

FORM = "time over the distance"
"""The name of the form, for people: relative error of time, the distance taken as exact."""

MODEL_SECONDS = (120, 900)
"""The model is said to hold for about 2 to 15 minutes [M]."""
STRETCHED_SECONDS = (60, 1800)
"""Half and twice that: results taken, and called stretched, when fewer than two lie inside. Judgement [C]."""

OUTLYING = 4
"""So many standard deviations off what the other results say, and a result is left out: judgement [C]."""
REFERENCE_METRES = 2000
"""The distance at which the reserve is turned to metres."""
MOST_STEPS = 50
SHORTEST_STEP = 1e-6
"""Of a Gauss-Newton step: where no such share of it fits better, only rounding is left."""

Trial = tuple[float, float]
"""Metres and seconds of one all-out piece."""


class Refusal(StrEnum):
    """Why results give no critical power."""

    TOO_FEW = "too few"
    UNCERTAIN = "uncertain"


@dataclass(frozen=True, slots=True)
class Fit:
    """Critical power in watts and W' in joules, with standard errors and their covariance (W J).

    `time_spread` is the relative standard deviation of the times: that of the residuals, or TIME_SPREAD where
    they are closer or there are only two. `used` are indexes of the results; `stretched` those among them
    outside 2 to 15 minutes. Readings of the model: no limits of range are applied here.
    """

    watts: float
    watts_error: float
    reserve_joules: float
    reserve_joules_error: float
    covariance: float
    time_spread: float
    used: tuple[int, ...]
    stretched: tuple[int, ...] = ()

    @property
    def metres_per_second(self) -> float:
        """Critical velocity: the speed shown at critical power."""
        return cbrt(self.watts / CUBIC)

    @property
    def split(self) -> float:
        """Seconds per 500 m at critical power."""
        return SPLIT_METRES / self.metres_per_second

    @property
    def reserve_metres(self) -> float:
        """How far ahead of critical velocity W' carries over 2000 m.

        It differs a little with the distance: the hyperbolas of power and of velocity cannot both be exact on
        a cubic.
        """
        return REFERENCE_METRES - self.metres_per_second * self.seconds_for(REFERENCE_METRES)

    def watts_over(self, seconds: float) -> float:
        """The most mean power that can be held for so long."""
        return self.watts + self.reserve_joules / seconds

    def seconds_at(self, watts: float) -> float | None:
        """How long a power can be held; None at or below critical power, where the model sets no end."""
        return self.reserve_joules / (watts - self.watts) if watts > self.watts else None

    def seconds_for(self, metres: float) -> float:
        """The time that a distance takes."""
        return _seconds_for(self.watts, self.reserve_joules, metres)

    def metres_in(self, seconds: float) -> float:
        """The distance covered in a time."""
        return seconds * cbrt(self.watts_over(seconds) / CUBIC)

    def time_error(self, metres: float) -> float:
        """The standard error of the time a distance takes, as a share of it."""
        by_watts, by_reserve = _slopes(self.watts, self.reserve_joules, self.seconds_for(metres))
        return sqrt(
            (by_watts * self.watts_error) ** 2
            + (by_reserve * self.reserve_joules_error) ** 2
            + 2 * by_watts * by_reserve * self.covariance
        )


@dataclass(frozen=True, slots=True)
class Examined:
    """The fit, or why there is none; and every result that did not go into it."""

    fit: Fit | None
    refusal: Refusal | None
    left_out: tuple[LeftOut, ...]


def fit_of(results: Sequence[Result]) -> Fit | None:
    """Critical power and W' of the results that fit the model, or None when they give none."""
    return examine(results).fit


def examine(results: Sequence[Result]) -> Examined:
    """The fit of the results that can stand together, and what was left out of it or stood against it."""
    sifted = sift(results)
    chosen = _in_range(results, sifted.kept)
    left_out = [*sifted.left_out, *(LeftOut(i, Doubt.OUTSIDE) for i in sifted.kept if i not in chosen)]
    while (odd := _outlier(results, chosen)) is not None:
        chosen.remove(odd)
        left_out.append(LeftOut(odd, Doubt.OUTLYING, tuple(chosen)))
    fit, refusal = _judged(results, chosen)
    return Examined(fit, refusal, tuple(sorted(left_out, key=lambda each: each.index)))


def _in_range(results: Sequence[Result], kept: Sequence[int]) -> list[int]:
    """Those of 2 to 15 minutes; those of half and twice that when there are not two of them."""
    for low, high in (MODEL_SECONDS, STRETCHED_SECONDS):
        inside = [index for index in kept if low <= results[index].seconds <= high]
        if len(inside) > 1:
            break
    return inside


def _judged(results: Sequence[Result], chosen: Sequence[int]) -> tuple[Fit | None, Refusal | None]:
    if len(chosen) < 2:
        return None, Refusal.TOO_FEW
    fit = _fit(results, chosen)
    if fit is None or fit.watts_error >= fit.watts or fit.reserve_joules_error >= fit.reserve_joules:
        return None, Refusal.UNCERTAIN
    return fit, None


def _outlier(results: Sequence[Result], chosen: Sequence[int]) -> int | None:
    """The result that the others contradict most, if they do; which one it is needs at least three others."""
    if len(chosen) < 4:
        return None
    distance = {index: _distance(results, index, [i for i in chosen if i != index]) for index in chosen}
    worst = max(chosen, key=lambda index: distance[index])
    return worst if distance[worst] > OUTLYING else None


def _distance(results: Sequence[Result], index: int, others: Sequence[int]) -> float:
    """How many standard deviations a result lies off what the others say of its distance."""
    fit = _fit(results, others)
    if fit is None:
        return 0.0
    metres, seconds = results[index].metres, float(results[index].seconds)
    return abs(log(seconds / fit.seconds_for(metres))) / hypot(fit.time_spread, fit.time_error(metres))


def _fit(results: Sequence[Result], chosen: Sequence[int]) -> Fit | None:
    trials = [(float(results[index].metres), float(results[index].seconds)) for index in chosen]
    found = least_squares(trials)
    if found is None:
        return None
    watts, reserve = found
    over = len(trials) - 2
    spread = max(TIME_SPREAD, sqrt(_misfit(watts, reserve, trials) / over)) if over else TIME_SPREAD
    aa, ab, bb = _normal(watts, reserve, trials)
    scale = spread**2 / (aa * bb - ab * ab)
    low, high = MODEL_SECONDS
    return Fit(
        watts=watts,
        watts_error=sqrt(scale * bb),
        reserve_joules=reserve,
        reserve_joules_error=sqrt(scale * aa),
        covariance=-scale * ab,
        time_spread=spread,
        used=tuple(chosen),
        stretched=tuple(index for index in chosen if not low <= results[index].seconds <= high),
    )


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


def _nearer(watts: float, reserve: float, trials: Sequence[Trial]) -> tuple[float, float] | None:
    """The next approach, shortened until it fits better, or None where none does: this is the best."""
    misfit = _misfit(watts, reserve, trials)
    by_watts, by_reserve = _step(watts, reserve, trials)
    share = 1.0
    while share > SHORTEST_STEP:
        next_watts, next_reserve = watts + share * by_watts, reserve + share * by_reserve
        if min(next_watts, next_reserve) > 0 and _misfit(next_watts, next_reserve, trials) < misfit:
            return next_watts, next_reserve
        share /= 2
    return None


def _step(watts: float, reserve: float, trials: Sequence[Trial]) -> tuple[float, float]:
    aa, ab, bb = _normal(watts, reserve, trials)
    slopes = [_slopes(watts, reserve, _seconds_for(watts, reserve, metres)) for metres, _ in trials]
    errors = _errors(watts, reserve, trials)
    a = sum(slope * error for (slope, _), error in zip(slopes, errors, strict=True))
    b = sum(slope * error for (_, slope), error in zip(slopes, errors, strict=True))
    size = aa * bb - ab * ab
    return (a * bb - b * ab) / size, (b * aa - a * ab) / size


def _normal(watts: float, reserve: float, trials: Sequence[Trial]) -> tuple[float, float, float]:
    """The three sums of the normal equations."""
    slopes = [_slopes(watts, reserve, _seconds_for(watts, reserve, metres)) for metres, _ in trials]
    return sum(a * a for a, _ in slopes), sum(a * b for a, b in slopes), sum(b * b for _, b in slopes)


def _misfit(watts: float, reserve: float, trials: Sequence[Trial]) -> float:
    return sum(error**2 for error in _errors(watts, reserve, trials))


def _errors(watts: float, reserve: float, trials: Sequence[Trial]) -> list[float]:
    """The relative error of each time: the logarithm of measured over modelled."""
    return [log(seconds / _seconds_for(watts, reserve, metres)) for metres, seconds in trials]


def _slopes(watts: float, reserve: float, seconds: float) -> tuple[float, float]:
    """How the logarithm of a modelled time changes with CP (1/W) and with W' (1/J)."""
    below = -1 / (3 * watts * seconds + 2 * reserve)
    return seconds * below, below


def _seconds_for(watts: float, reserve: float, metres: float) -> float:
    """The time in which CP t + W' is the work 2.8 D^3 / t^2 that the distance takes (Newton, from above)."""
    cube = float(CUBIC) * metres**3
    seconds = cbrt(cube / watts)
    while True:
        excess = (watts * seconds + reserve) * seconds**2 - cube
        nearer = seconds - excess / ((3 * watts * seconds + 2 * reserve) * seconds)
        if not nearer < seconds * (1 - 1e-15):
            return nearer
        seconds = nearer


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
