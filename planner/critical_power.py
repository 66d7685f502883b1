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
from planner.hyperbola import least_squares, misfit, normal_sums, seconds_for, slopes
from planner.pace import CUBIC, SPLIT_METRES
from planner.trials import TIME_SPREAD, Doubt, LeftOut, looking_easy, sift

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


class Refusal(StrEnum):
    """Why results give no critical power."""

    TOO_FEW = "too few"
    UNCERTAIN = "uncertain"
    UNLIKELY = "unlikely"


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

    def seconds_for(self, metres: float) -> float:
        """The time that a distance takes."""
        return seconds_for(self.watts, self.reserve_joules, metres)

    def metres_in(self, seconds: float) -> float:
        """The distance covered in a time."""
        return seconds * cbrt(self.watts_over(seconds) / CUBIC)

    def time_error(self, metres: float) -> float:
        """The standard error of the time a distance takes, as a share of it."""
        by_watts, by_reserve = slopes(self.watts, self.reserve_joules, self.seconds_for(metres))
        return sqrt(
            (by_watts * self.watts_error) ** 2
            + (by_reserve * self.reserve_joules_error) ** 2
            + 2 * by_watts * by_reserve * self.covariance
        )


@dataclass(frozen=True, slots=True)
class Examined:
    """The fit, or why there is none; and every result that did not go into it.

    `unlikely_share` is the critical power of a fit that was set aside, as a share of 2 km power.
    """

    fit: Fit | None
    refusal: Refusal | None
    left_out: tuple[LeftOut, ...]
    unlikely_share: float | None = None


def examine(results: Sequence[Result]) -> Examined:
    """The fit of the results that can stand together, and what was left out of it or stood against it."""
    sifted = sift(results)
    easy = looking_easy(results, sifted.kept)
    rowed_hard = [i for i in sifted.kept if i not in {each.index for each in easy}]
    chosen = _in_range(results, rowed_hard)
    outside = [LeftOut(i, Doubt.OUTSIDE) for i in rowed_hard if i not in chosen]
    left_out = [*sifted.left_out, *easy, *outside]
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
    spread = max(TIME_SPREAD, sqrt(misfit(watts, reserve, trials) / over)) if over else TIME_SPREAD
    aa, ab, bb = normal_sums(watts, reserve, trials)
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
