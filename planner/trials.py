"""Which results can stand beside each other as all-out trials of one rower.

Nobody rows a longer piece at a quicker split than a shorter one, or does less work in a longer one, when both
were rowed flat out. Where two results say so by more than chance, one was not flat out or is mistyped.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations
from math import log, sqrt
from statistics import linear_regression

from planner.athlete import Result
from planner.customs import PERSONAL_EXPONENTS, Custom, Length, by_power_law, holds
from planner.pace import power_of_split

TIME_SPREAD = 0.01
"""Standard deviation of a rower's time over a repeated piece, as a share.

Power over 2000 m varies by 2.0 % (1.3 to 3.1 %) in well-trained rowers, time by a third of that (Schabort
1999, J Sports Sci 17:627-632, 10.1080/026404199365650 [S], abstract). The upper end is taken: 3.1 % / 3.
"""

CHANCE = 4 * TIME_SPREAD
"""How far two times may lie from what a law says of them by chance (logarithm): about three standard
deviations of the difference of two times. Judgement [C]."""


class Doubt(StrEnum):
    """Why a result is left out."""

    REPEATED = "repeated"
    BETTERED = "bettered"
    CONTRADICTED = "contradicted"
    OUTLYING = "outlying"
    OUTSIDE = "outside"
    EASY = "easy"


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A result by its index, why it is left out, and the indexes of those that speak against it."""

    index: int
    doubt: Doubt
    against: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Sifted:
    """The indexes of the results that stand beside each other, and those left out; both in order."""

    kept: tuple[int, ...]
    left_out: tuple[LeftOut, ...]


def sift(results: Sequence[Result]) -> Sifted:
    """Sets aside repeats, results bettered over the same distance or time, and contradicted ones.

    Of contradicting results the one in most contradictions goes first; of two with as many, the one without
    which the rest lie closer to one power law; and of two alone, the one that reads as not rowed flat out,
    because an easy piece is commoner than a slip that flatters.
    """
    left_out = {each.index: each for each in _surpassed(results)}
    kept = [index for index in range(len(results)) if index not in left_out]
    while contradictions := _contradictions(results, kept):
        worst = max(kept, key=lambda index: _weight(index, results, kept, contradictions))
        against = {i for pair in contradictions if worst in pair for i in pair} - {worst}
        left_out[worst] = LeftOut(worst, Doubt.CONTRADICTED, tuple(sorted(against)))
        kept.remove(worst)
    return Sifted(tuple(kept), tuple(left_out[index] for index in sorted(left_out)))


def looking_easy(results: Sequence[Result], kept: Sequence[int]) -> list[LeftOut]:
    """Results slower, by more than chance, than even the steepest law says from the nearest shorter one: not
    rowed flat out, or by somebody who holds on less long than others. Critical power must not come from them.
    """
    return [
        LeftOut(index, Doubt.EASY, (nearest,))
        for index in kept
        if (nearest := _nearest_shorter(index, results, kept)) is not None
        and log(float(results[index].seconds) / slowest_by(results[nearest], results[index].metres)) > CHANCE
    ]


def slowest_by(result: Result, metres: int) -> float:
    """The seconds that a longer distance takes by the steepest law that rowers have."""
    return by_power_law(result, metres, max(PERSONAL_EXPONENTS))


def _nearest_shorter(index: int, results: Sequence[Result], kept: Sequence[int]) -> int | None:
    longer = results[index]
    length = Length(longer.metres, float(longer.seconds))
    shorter = [i for i in kept if results[i].metres < longer.metres]
    inside = [i for i in shorter if holds(Custom.POWER_LAW, results[i], length)]
    return max(inside, key=lambda i: results[i].metres, default=None)


def kept_of(results: Sequence[Result], left_out: Sequence[LeftOut]) -> list[int]:
    """The indexes of results that count for the predictions near them.

    Being outside the model's range is no fault, and whoever looks to have rowed easily may hold on less long.
    """
    gone = {each.index for each in left_out if each.doubt not in (Doubt.OUTSIDE, Doubt.EASY)}
    return [index for index in range(len(results)) if index not in gone]


def _surpassed(results: Sequence[Result]) -> list[LeftOut]:
    """Repeats of an earlier result, and results that another one betters over the same length."""
    found: list[LeftOut] = []
    for index, result in enumerate(results):
        if result in results[:index]:
            found.append(LeftOut(index, Doubt.REPEATED, (results.index(result),)))
        elif better := [i for i, other in enumerate(results) if _betters(other, result)]:
            found.append(LeftOut(index, Doubt.BETTERED, tuple(better)))
    return found


def _betters(one: Result, other: Result) -> bool:
    """No less in no more time; of unlike lengths only where chance can explain it."""
    if one == other or one.metres < other.metres or one.seconds > other.seconds:
        return False
    alike = one.metres == other.metres or one.seconds == other.seconds
    return alike or _apart(one, other) <= CHANCE


def _contradictions(results: Sequence[Result], kept: Sequence[int]) -> list[tuple[int, int]]:
    """Pairs that cannot both be flat out; in each the one that reads as not flat out stands first."""
    found = (_contradiction(results, *pair) for pair in combinations(kept, 2))
    return [pair for pair in found if pair]


def _contradiction(results: Sequence[Result], one: int, other: int) -> tuple[int, int] | None:
    short, long = sorted((one, other), key=lambda index: results[index].metres)
    less, more = results[short], results[long]
    if less.seconds >= more.seconds:
        return short, long
    if _apart(less, more) <= CHANCE:
        return None
    if less.split >= more.split:
        return short, long
    return (long, short) if _work(less) >= _work(more) else None


def _work(result: Result) -> float:
    return float(power_of_split(result.split) * result.seconds)


def _weight(
    index: int, results: Sequence[Result], kept: Sequence[int], contradictions: Sequence[tuple[int, int]]
) -> tuple[int, float, int, int]:
    return (
        sum(index in pair for pair in contradictions),
        -_scatter([results[i] for i in kept if i != index]),
        sum(index == weak for weak, _ in contradictions),
        index,
    )


def _scatter(results: Sequence[Result]) -> float:
    """How far results lie off one power law: of the rower's own exponent, or of the usual one for two."""
    if len(results) < 2:
        return 0.0
    if len(results) == 2:
        return _apart(*results)
    distances = [log(result.metres) for result in results]
    times = [log(result.seconds) for result in results]
    slope, start = linear_regression(distances, times)
    errors = (y - start - slope * x for x, y in zip(distances, times, strict=True))
    return sqrt(sum(error**2 for error in errors) / (len(results) - 2))


def _apart(one: Result, other: Result) -> float:
    """How far two results lie from each other by the power law, as a share of their time (logarithm)."""
    return abs(log(float(one.seconds) / by_power_law(other, one.metres)))
