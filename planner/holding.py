"""Whether a target for a set of intervals holds to its end, where it gives out, and what would last.

As in `intervals`, the median of three models decides, and the set starts with the whole reserve.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate
from math import ceil, floor

from planner.capacity import Capacity, CapacityBasis, Range
from planner.demand import Run, in_seconds, share_at_split
from planner.errors import InputError, Problem
from planner.intervals import (
    LONG_SET_SECONDS,
    MOST_SHARE,
    Intervals,
    NoSolution,
    check,
    median_balance,
    runs_of_set,
    solve,
    too_long,
)
from planner.plan import Split, TwoKPower
from planner.reserve import by_every_model, tau_for
from planner.units import split_clock, told_time

SPARE_PERCENT = 1
"""What the hardest target that is said to last leaves of W': more than the solver may be off."""

_BY_LEVEL = "No result is known, so it rests on the level alone. "
_ESTIMATE = "It is an estimate by models from cycling, which are kind to rests: coaches ask for less."
_OF_LONG_SETS = (
    "The models come from cycling, are kind to rests, and say too much of so long a set: row it no quicker "
    "than one piece of half its work."
)


@dataclass(frozen=True, slots=True)
class Break:
    """Where a set gives out: the repetition, from 1, and the second of it in which that happens, from 1."""

    repetition: int
    second: int


@dataclass(frozen=True, slots=True)
class Target:
    """A share of 2 km power, and its split in seconds per 500 m, to the tenth: None where none is known."""

    share: float
    split: Fraction | None

    def __str__(self) -> str:
        if self.split is not None:
            return f"{split_clock(self.split)} per 500 m"
        return f"{floor(100 * self.share + 1e-6)} % of 2 km power"


@dataclass(frozen=True, slots=True)
class Holding:
    """Whether a target holds to the end by the median model, where it breaks, and what it leaves of W'.

    `left` is the median of the models with the lowest and highest of all models and capacities, below 0 where
    more is asked for than there is; `after_each` holds the median after each repetition. `lasting` is the
    hardest target that lasts with a percent to spare, None where none within the model's reach is too hard.
    """

    target: Target
    breaks: Break | None
    left: Range
    after_each: tuple[float, ...]
    lasting: Target | None
    basis: CapacityBasis
    work_seconds: float
    """Of all repetitions together, rests left out."""

    @property
    def sentence(self) -> str:
        """What a coach would say."""
        whence = _BY_LEVEL if self.basis is CapacityBasis.LEVEL else ""
        doubt = _OF_LONG_SETS if self.work_seconds > LONG_SET_SECONDS else _ESTIMATE
        if self.breaks is None:
            return (
                f"{self.target} holds to the end by the middle of three models and leaves about "
                f"{round(100 * self.left.middle)} % of the reserve. {whence}{doubt}"
            )
        remedy = f"By the same model {self.lasting} would last. " if self.lasting else ""
        return (
            f"{self.target} is too hard by the middle of three models: the reserve is gone in repetition "
            f"{self.breaks.repetition}, {told_time(self.breaks.second)} into it. {remedy}{whence}{doubt}"
        )


def holding_of(asked: Intervals, wanted: Split | TwoKPower, capacity: Capacity) -> Holding:
    """Whether a split or a share of 2 km power lasts through a set.

    Without a result a split is set against the 2 km that the level is taken to row. Raises InputError outside
    the bounds, and for a set that critical power says nothing of.
    """
    check(asked)
    target = _target(wanted, capacity)
    if complaint := too_long(asked, target.share, capacity):
        raise InputError([Problem("/intervals", complaint)])
    runs = tuple(runs_of_set(asked, target.share, capacity))
    broken = breaking_second(runs, capacity)
    return Holding(
        target=target,
        breaks=_place(broken, runs) if broken is not None else None,
        left=_left(runs, capacity),
        after_each=tuple(median_balance(runs, capacity)[::2]),
        lasting=_lasting(asked, target.split is not None, capacity),
        basis=capacity.basis,
        work_seconds=sum(run.seconds for run in runs[::2]),
    )


def breaking_second(runs: Sequence[Run], capacity: Capacity) -> float | None:
    """Seconds from the start until the median balance of W' is below 0, or None when it never is."""
    seconds = tuple(in_seconds(runs))
    balances = median_balance(seconds, capacity)
    ends = accumulate(run.seconds for run in seconds)
    return next((end for end, left in zip(ends, balances, strict=True) if left < 0), None)


def _target(wanted: Split | TwoKPower, capacity: Capacity) -> Target:
    """The target as a share; with its split where one is asked for or the rower's 2 km is known."""
    if isinstance(wanted, Split):
        target = Target(share_at_split(float(wanted.seconds), capacity.two_k_seconds / 4), wanted.seconds)
    else:
        share = float(wanted.fraction)
        target = Target(share, _split_at(share, capacity) if capacity.two_k_watts else None)
    if target.share > MOST_SHARE:
        most = Target(MOST_SHARE, _split_at(MOST_SHARE, capacity) if target.split else None)
        sentence = f"{target} is beyond the hardest half minute there is: ask for {most} or less power"
        place = "split" if isinstance(wanted, Split) else "two_k_power_fraction"
        raise InputError([Problem(f"/target/{place}", sentence)])
    return target


def _lasting(asked: Intervals, in_splits: bool, capacity: Capacity) -> Target | None:
    found = solve(asked, capacity, SPARE_PERCENT)
    if isinstance(found, NoSolution):
        return None
    return Target(found.share, _split_at(found.share, capacity) if in_splits else None)


def _split_at(share: float, capacity: Capacity) -> Fraction:
    """The split of a share, to the next slower tenth."""
    return Fraction(ceil(capacity.two_k_seconds / 4 * share ** (-1 / 3) * 10 - 1e-6), 10)


def _left(runs: Sequence[Run], capacity: Capacity) -> Range:
    ends = [
        balance[-1]
        for purse in (capacity.middle, *capacity.corners)
        for balance in by_every_model(runs, purse, tau_for(runs, purse, capacity))
    ]
    return Range(min(ends), sorted(ends[:3])[1], max(ends))


def _place(seconds: float, runs: Sequence[Run]) -> Break:
    begun = 0.0
    for index, run in enumerate(runs):
        if seconds <= begun + run.seconds + 1e-6:
            return Break(index // 2 + 1, ceil(seconds - begun - 1e-6))
        begun += run.seconds
    raise ValueError(f"{seconds} s is beyond the set's {begun} s")
