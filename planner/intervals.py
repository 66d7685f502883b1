"""How hard a set of intervals can be rowed: the power that leaves a chosen part of W', and where one breaks.

Every repetition and rest is simulated by the three models of `reserve`; their median decides. The set is
taken to start with the whole reserve.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate
from math import cbrt, ceil

from planner.capacity import Capacity, Purse, Range
from planner.demand import Run, in_seconds
from planner.errors import InputError, Problem
from planner.limits import BLOCK_METRES, BLOCK_SECONDS, LEAVE_PERCENT, REST_SECONDS, TIMES, Bounds
from planner.pace import split_of_power
from planner.phosphocreatine import ALL_OUT_SHARES
from planner.plan import ForMetres, ForSeconds
from planner.prediction import TWO_K_METRES
from planner.reserve import by_every_model, medians, tau_for
from planner.units import clock

MOST_SHARE = ALL_OUT_SHARES[-1]
"""No repetition is solved beyond the power of the hardest 30 s all-out."""
LONGEST_REPETITION = 1800
LONGEST_WORK = 3600
"""Seconds. Critical power describes efforts of about 2-15 min and is not a pace for hours [M]; how far beyond
that it still serves is judgement [C]."""
MOST_SIMULATIONS = 39
CLOSE_ENOUGH = 1e-4
"""How near the balance at the end comes to the one asked for, as a share of W'."""


@dataclass(frozen=True, slots=True)
class Intervals:
    """A set: so many times a length of hard rowing, with seconds of rest between, none after the last."""

    times: int
    length: ForMetres | ForSeconds
    rest_seconds: int


@dataclass(frozen=True, slots=True)
class Solution:
    """The share of 2 km power to row at, and what it leaves of W' at the end of the last repetition.

    `left` is the median of the models with the lowest and highest of all models and capacities;
    `after_each` holds the median after each repetition. `split` is in seconds per 500 m, None without a
    result.
    """

    share: float
    split: float | None
    repetition_seconds: float
    left: Range
    after_each: tuple[float, ...]
    simulations: int


@dataclass(frozen=True, slots=True)
class NoSolution:
    """Why no power leaves what was asked for."""

    reason: str
    simulations: int


@dataclass(frozen=True, slots=True)
class Break:
    """Where a set gives out: the repetition, from 1, and the second of it in which that happens, from 1."""

    repetition: int
    second: int


@dataclass(frozen=True, slots=True)
class Holding:
    """Whether a target holds to the end by the median model, where it breaks, and what it leaves."""

    breaks: Break | None
    left: Range
    after_each: tuple[float, ...]

    @property
    def holds(self) -> bool:
        """Whether the reserve lasts to the end."""
        return self.breaks is None


def solve(asked: Intervals, capacity: Capacity, leave_percent: float = 10) -> Solution | NoSolution:
    """The power that leaves so many percent of W' after the last repetition, or why there is none.

    Raises InputError for a set or a percentage outside the bounds of `limits`.
    """
    _check(asked)
    _within("/leave_percent", LEAVE_PERCENT, leave_percent)
    seconds = repetition_seconds(asked, capacity.critical, capacity)
    if seconds > LONGEST_REPETITION or seconds * asked.times > LONGEST_WORK:
        return NoSolution(_too_long(seconds, asked.times), 0)
    simulation = _Simulation(asked, capacity)
    leave = leave_percent / 100
    spare = simulation.left_at(MOST_SHARE) - leave
    if spare > 0:
        return NoSolution(_never_spent(leave_percent, leave + spare), simulation.count)
    share = _root(lambda at: simulation.left_at(at) - leave, capacity.critical, 1 - leave, MOST_SHARE, spare)
    runs = tuple(runs_of_set(asked, share, capacity))
    return Solution(
        share=share,
        split=split_of_power(share * capacity.two_k_watts) if capacity.two_k_watts else None,
        repetition_seconds=runs[0].seconds,
        left=_left(runs, capacity),
        after_each=tuple(_median_balance(runs, capacity.middle, capacity)[::2]),
        simulations=simulation.count + 4,
    )


def holds(asked: Intervals, share: float, capacity: Capacity) -> Holding:
    """Whether a share of 2 km power lasts through a set. Raises InputError outside the bounds."""
    _check(asked)
    if not 0 < share <= MOST_SHARE:
        sentence = f"share of 2 km power {share:.3g} is not above 0 and up to {MOST_SHARE:g}"
        raise InputError([Problem("/share", sentence)])
    runs = tuple(runs_of_set(asked, share, capacity))
    broken = breaking_second(runs, capacity)
    return Holding(
        breaks=_place(broken, runs) if broken is not None else None,
        left=_left(runs, capacity),
        after_each=tuple(_median_balance(runs, capacity.middle, capacity)[::2]),
    )


def breaking_second(runs: Sequence[Run], capacity: Capacity) -> float | None:
    """Seconds from the start until the median balance of W' is below 0, or None when it never is.

    The runs may be a set, or a whole session.
    """
    seconds = tuple(in_seconds(runs))
    balances = _median_balance(seconds, capacity.middle, capacity)
    ends = accumulate(run.seconds for run in seconds)
    return next((end for end, left in zip(ends, balances, strict=True) if left < 0), None)


def runs_of_set(asked: Intervals, share: float, capacity: Capacity) -> Iterator[Run]:
    """The set as runs: every second one is a rest, and the last is a repetition."""
    repetition = Run(share, repetition_seconds(asked, share, capacity))
    for number in range(asked.times):
        if number:
            yield Run(0.0, float(asked.rest_seconds))
        yield repetition


def repetition_seconds(asked: Intervals, share: float, capacity: Capacity) -> float:
    """How long one repetition takes at a share of 2 km power; speed goes with the cube root of power."""
    match asked.length:
        case ForSeconds(seconds):
            return float(seconds)
        case ForMetres(metres):
            return metres / TWO_K_METRES * capacity.two_k_seconds / cbrt(share)


class _Simulation:
    """The median balance at the end of the set, counting how often it is asked for."""

    def __init__(self, asked: Intervals, capacity: Capacity) -> None:
        self._asked, self._capacity = asked, capacity
        self.count = 0

    def left_at(self, share: float) -> float:
        """The share of W' left at the end of the last repetition, rowed at a share of 2 km power."""
        self.count += 1
        runs = tuple(runs_of_set(self._asked, share, self._capacity))
        return _median_balance(runs, self._capacity.middle, self._capacity)[-1]


def _median_balance(runs: Sequence[Run], purse: Purse, capacity: Capacity) -> list[float]:
    return medians(by_every_model(runs, purse, tau_for(runs, purse, capacity)))


def _left(runs: Sequence[Run], capacity: Capacity) -> Range:
    ends = [
        balance[-1]
        for purse in (capacity.middle, *capacity.corners)
        for balance in by_every_model(runs, purse, tau_for(runs, purse, capacity))
    ]
    return Range(min(ends), sorted(ends[:3])[1], max(ends))


def _root(value: Callable[[float], float], low: float, at_low: float, high: float, at_high: float) -> float:
    """Where a falling value crosses 0 between two ends: false position, halving the end that stays put."""
    for turn in range(MOST_SIMULATIONS - 5):
        middle = (low + high) / 2 if turn % 4 == 3 else (low * at_high - high * at_low) / (at_high - at_low)
        here = value(middle)
        if abs(here) <= CLOSE_ENOUGH:
            break
        if here > 0:
            low, at_low, at_high = middle, here, at_high / 2
        else:
            high, at_high, at_low = middle, here, at_low / 2
    return middle


def _place(seconds: float, runs: Sequence[Run]) -> Break:
    begun = 0.0
    for index, run in enumerate(runs):
        if seconds <= begun + run.seconds + 1e-6:
            return Break(index // 2 + 1, ceil(seconds - begun - 1e-6))
        begun += run.seconds
    raise ValueError(f"{seconds} s is beyond the set's {begun} s")


def _too_long(seconds: float, times: int) -> str:
    return (
        f"{times} x {clock(round(seconds))} of work is beyond what critical power describes: repetitions of "
        f"up to {LONGEST_REPETITION // 60} minutes and {LONGEST_WORK // 60} minutes together. Choose shorter "
        "ones, or row them by pressure."
    )


def _never_spent(leave_percent: float, left: float) -> str:
    return (
        f"Even at {MOST_SHARE:g} times 2 km power, about the hardest half minute there is, "
        f"{100 * left:.0f} % of the reserve would be left, not {leave_percent:g} %. "
        "Ask for longer or more repetitions, shorter rests, or more left over."
    )


def _check(asked: Intervals) -> None:
    _within("/times", TIMES, asked.times)
    _within("/rest_seconds", REST_SECONDS, asked.rest_seconds)
    match asked.length:
        case ForSeconds(seconds):
            _within("/seconds", BLOCK_SECONDS, seconds)
        case ForMetres(metres):
            _within("/metres", BLOCK_METRES, metres)


def _within(place: str, bounds: Bounds, value: float) -> None:
    if complaint := bounds.complaint(Fraction(value)):
        raise InputError([Problem(place, complaint)])
