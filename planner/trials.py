"""Which results can stand beside each other as all-out trials of one rower.

Nobody rows a longer piece at a quicker split than a shorter one, or does less work in a longer one, when both
were rowed flat out. Where two results say so, one of them was not flat out or is mistyped.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations
from math import log
from statistics import median

from planner.athlete import Result
from planner.customs import by_power_law
from planner.pace import power_of_split


class Doubt(StrEnum):
    """Why a result is left out."""

    REPEATED = "repeated"
    BETTERED = "bettered"
    CONTRADICTED = "contradicted"
    OUTLYING = "outlying"
    OUTSIDE = "outside"


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

    Of contradicting results the one in most contradictions goes first; of two with as many, the one that lies
    farther from what the others say by the power law; and of two with no others, the one that reads as not
    rowed flat out, because an easy piece is commoner than a slip that flatters.
    """
    left_out = {each.index: each for each in _surpassed(results)}
    kept = [index for index in range(len(results)) if index not in left_out]
    while contradictions := _contradictions(results, kept):
        worst = max(kept, key=lambda index: _weight(index, results, kept, contradictions))
        against = {i for pair in contradictions if worst in pair for i in pair} - {worst}
        left_out[worst] = LeftOut(worst, Doubt.CONTRADICTED, tuple(sorted(against)))
        kept.remove(worst)
    return Sifted(tuple(kept), tuple(left_out[index] for index in sorted(left_out)))


def kept_of(results: Sequence[Result], left_out: Sequence[LeftOut]) -> list[int]:
    """The indexes of results that can be believed; being outside the model's range is no fault."""
    gone = {each.index for each in left_out if each.doubt is not Doubt.OUTSIDE}
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
    same_distance, same_time = one.metres == other.metres, one.seconds == other.seconds
    return (same_distance and one.seconds < other.seconds) or (same_time and one.metres > other.metres)


def _contradictions(results: Sequence[Result], kept: Sequence[int]) -> list[tuple[int, int]]:
    """Pairs that cannot both be flat out; in each the one that reads as not flat out stands first."""
    found = (_contradiction(results, *pair) for pair in combinations(kept, 2))
    return [pair for pair in found if pair]


def _contradiction(results: Sequence[Result], one: int, other: int) -> tuple[int, int] | None:
    short, long = sorted((one, other), key=lambda index: results[index].metres)
    if results[short].split >= results[long].split:
        return short, long
    return (long, short) if _work(results[short]) >= _work(results[long]) else None


def _work(result: Result) -> float:
    return float(power_of_split(result.split) * result.seconds)


def _weight(
    index: int, results: Sequence[Result], kept: Sequence[int], contradictions: Sequence[tuple[int, int]]
) -> tuple[int, float, int, int]:
    against = {i for pair in contradictions if index in pair for i in pair}
    others = [results[i] for i in kept if i not in against and i != index]
    return (
        sum(index in pair for pair in contradictions),
        median(_off(results[index], other) for other in others) if others else 0.0,
        sum(index == weak for weak, _ in contradictions),
        index,
    )


def _off(result: Result, other: Result) -> float:
    """How far a time lies off what another result says of its distance, as a share (logarithm)."""
    return abs(log(float(result.seconds) / by_power_law(other, result.metres)))
