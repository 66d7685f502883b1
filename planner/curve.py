"""One rower's time over every distance: a line through all results, on which more metres never go quicker.

Between two results it follows the rower's own power law, or the hyperbola of critical power where that is
sure, bent through both; beyond the first and the last it follows both customs. It has no step, and of two
distances the longer never has the quicker split, so that it always takes longer.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import exp, log, sqrt

from planner.athlete import Result
from planner.critical_power import Examined, Fit
from planner.customs import PERSONAL_EXPONENTS, Length, by_doubling, by_power_law
from planner.pace import SPLIT_METRES
from planner.trials import Doubt, kept_of

TRUSTED_ERROR = 0.02
"""A fit shapes the line where the standard error of the time it gives is at most this share of it: the five
seconds and the 6 % differ by as much between rowers (facts 3.1). Judgement [C]."""
_CLOSE, _STRIDE = 1e-12, log(2)
"""How near in the logarithm a distance is found, and the steps in which it is sought."""

Law = Callable[[Length, float], float]
"""Seconds for metres, by one result."""


@dataclass(frozen=True, slots=True)
class Curve:
    """Results by distance, their split never falling, and what is known of each distance among them.

    `easy` holds the distances that look rowed easily, `fitted` those that `fit` can shape the line between.
    """

    results: tuple[Length, ...]
    easy: frozenset[float]
    fit: Fit | None
    fitted: frozenset[float]

    def likely(self, metres: float) -> float:
        """Seconds for a distance."""
        return self._seconds(metres, customary, self._straight)

    def quickest(self, metres: float) -> float:
        """The least it may take: by the laws of rowers; between two results no quicker a split than that of
        the shorter."""

        def between(short: Length, long: Length, metres: float) -> float:
            return max(_at_split_of(short, metres), quickest_by(long, metres))

        return min(self._seconds(metres, quickest_by, between), self.likely(metres))

    def slowest(self, metres: float) -> float:
        """The most it may take: by the laws of rowers; between two results no slower a split than that of
        the longer."""

        def between(short: Length, long: Length, metres: float) -> float:
            return min(_at_split_of(long, metres), slowest_by(short, metres))

        return max(self._seconds(metres, slowest_by, between), self.likely(metres))

    def _seconds(self, metres: float, law: Law, between: Callable[[Length, Length, float], float]) -> float:
        above = bisect_left(self.results, metres, key=lambda result: result.metres)
        if above == len(self.results):
            return law(self.results[-1], metres)
        long = self.results[above]
        if above == 0 or long.metres == metres:
            return law(long, metres)
        short = self.results[above - 1]
        if long.metres not in self.easy:
            return between(short, long, metres)
        half_way = sqrt(short.metres * long.metres)
        if metres <= half_way:
            return law(short, metres)
        return own_law(Length(half_way, law(short, half_way)), long, metres)

    def _straight(self, short: Length, long: Length, metres: float) -> float:
        """By the rower's own power law, or by the fit bent through both results.

        The bent hyperbola is concave in its logarithms: it may pass the longer result's split before its end,
        and is held to it.
        """
        if self.fit is None or not {short.metres, long.metres} <= self.fitted:
            return own_law(short, long, metres)
        off = [log(each.seconds / self.fit.seconds_for(each.metres)) for each in (short, long)]
        along = log(metres / short.metres) / log(long.metres / short.metres)
        bent = self.fit.seconds_for(metres) * exp(off[0] + along * (off[1] - off[0]))
        return min(bent, _at_split_of(long, metres))


def curve_of(results: Sequence[Result], examined: Examined) -> Curve:
    """The line through the results, at least one, that were not left out as wrong.

    What a longer piece was rowed at a shorter one can be rowed at too: where chance has turned two about, the
    shorter takes the split of the longer.
    """
    kept = sorted(
        (rowed(results[i]) for i in kept_of(results, examined.left_out)), key=lambda each: each.metres
    )
    anchors: list[Length] = []
    for result in reversed(kept):
        held = result.seconds if not anchors else min(result.seconds, _at_split_of(anchors[0], result.metres))
        anchors.insert(0, Length(result.metres, held))
    easy = frozenset(
        float(results[each.index].metres) for each in examined.left_out if each.doubt is Doubt.EASY
    )
    fit = examined.fit if examined.fit and not examined.fit.stretched else None
    used = {float(results[index].metres) for index in fit.used} if fit else set()
    sure = frozenset(metres for metres in used if fit and fit.time_error(metres) <= TRUSTED_ERROR)
    return Curve(tuple(anchors), easy, fit, sure)


def rowed(result: Result) -> Length:
    """A result as a length."""
    return Length(float(result.metres), float(result.seconds))


def customary(result: Length, metres: float) -> float:
    """The mean of both customs, also where the range of one does not hold: to change from one to the other
    at the edge of a range would let a quicker result predict a slower piece."""
    return (by_power_law(result, metres) + by_doubling(result, metres)) / 2


def quickest_by(result: Length, metres: float) -> float:
    """The least of both customs and of the exponents that rowers have: both customs may agree and both be
    wrong."""
    return min(_by_every_law(result, metres))


def slowest_by(result: Length, metres: float) -> float:
    """The most of them."""
    return max(_by_every_law(result, metres))


def own_law(short: Length, long: Length, metres: float) -> float:
    """By the power law that leads from one to the other."""
    exponent = log(long.seconds / short.seconds) / log(long.metres / short.metres)
    return by_power_law(short, metres, exponent)


def metres_in(seconds: float, seconds_for: Callable[[float], float], near: Length) -> float:
    """The distance that takes so long: false position in logarithms, halving the end that stays put."""

    def over(far: float) -> float:
        return log(seconds_for(exp(far)) / seconds)

    low = high = log(near.metres * seconds / near.seconds)
    while (below := over(low)) > 0:
        low -= _STRIDE
    while (above := over(high)) < 0:
        high += _STRIDE
    while high - low > _CLOSE and above > below:
        middle = (low * above - high * below) / (above - below)
        here = over(middle)
        if abs(here) < _CLOSE:
            return exp(middle)
        if here < 0:
            low, below, above = middle, here, above / 2
        else:
            high, above, below = middle, here, below / 2
    return exp(high)


def _by_every_law(result: Length, metres: float) -> tuple[float, ...]:
    by_exponents = (by_power_law(result, metres, exponent) for exponent in PERSONAL_EXPONENTS)
    return by_power_law(result, metres), by_doubling(result, metres), *by_exponents


def _at_split_of(result: Length, metres: float) -> float:
    return result.split * metres / SPLIT_METRES
