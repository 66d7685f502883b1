"""How hard a set of intervals can be rowed: the power that leaves a chosen part of W'.

Every repetition and rest is simulated by the three models of `reserve`; their median decides. The set is
taken to start with the whole reserve.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import cbrt

from planner.capacity import Capacity
from planner.demand import Run
from planner.errors import InputError, Problem
from planner.limits import BLOCK_METRES, BLOCK_SECONDS, LEAVE_PERCENT, REST_SECONDS, TIMES, Bounds
from planner.pace import split_of_power
from planner.phosphocreatine import ALL_OUT_SHARES
from planner.plan import ForMetres, ForSeconds
from planner.prediction import TWO_K_METRES
from planner.reserve import by_every_model, medians, tau_for
from planner.units import told_time

MOST_SHARE = ALL_OUT_SHARES[-1]
"""No repetition is solved beyond the power of the hardest 30 s all-out."""
LONGEST_REPETITION = 1800
LONGEST_WORK = 3600
"""Seconds. Critical power describes efforts of about 2-15 min and is not a pace for hours [M]; how far beyond
that it still serves is judgement [C]."""
LONG_SET_SECONDS = 1200
"""Work in all from which the models say too much of a set [C]: critical power is not a pace for hours [M]."""
MOST_SIMULATIONS = 39
CLOSE_ENOUGH = 1e-4
"""How near the balance at the end comes to the one asked for, as a share of W'."""


_BEYOND = "Critical power describes no work so long, so the target rests on single pieces alone."
_LEFT_OVER = (
    "Even all out, so little work with such rests leaves more of the reserve than was asked for, so the "
    "target rests on single pieces alone."
)


@dataclass(frozen=True, slots=True)
class Intervals:
    """A set: so many times a length of hard rowing, with seconds of rest between, none after the last."""

    times: int
    length: ForMetres | ForSeconds
    rest_seconds: int


@dataclass(frozen=True, slots=True)
class Solution:
    """The share of 2 km power to row at, and how long each repetition then takes.

    `split` is in seconds per 500 m, None without a result.
    """

    share: float
    split: float | None
    repetition_seconds: float


@dataclass(frozen=True, slots=True)
class NoSolution:
    """Why no power leaves what was asked for, with the remedy; `told` is the same where none is needed."""

    reason: str
    told: str


def solve(asked: Intervals, capacity: Capacity, leave_percent: float = 10) -> Solution | NoSolution:
    """The power that leaves so many percent of W' after the last repetition, or why there is none.

    Raises InputError for a set or a percentage outside the bounds of `limits`.
    """
    check(asked)
    _within("/leave_percent", LEAVE_PERCENT, leave_percent)
    if complaint := too_long(asked, capacity.critical, capacity):
        return NoSolution(complaint, _BEYOND)
    leave = leave_percent / 100

    def spare_at(share: float) -> float:
        return median_balance(tuple(runs_of_set(asked, share, capacity)), capacity)[-1] - leave

    spare = spare_at(MOST_SHARE)
    if spare > 0:
        return NoSolution(_never_spent(leave_percent, leave + spare), _LEFT_OVER)
    share = _root(spare_at, capacity.critical, 1 - leave, MOST_SHARE, spare)
    return Solution(
        share=share,
        split=split_of_power(share * capacity.two_k_watts) if capacity.two_k_watts else None,
        repetition_seconds=repetition_seconds(asked, share, capacity),
    )


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


def median_balance(runs: Sequence[Run], capacity: Capacity) -> list[float]:
    """The share of W' left after each run, by the median model for the likeliest capacity."""
    purse = capacity.middle
    return medians(by_every_model(runs, purse, tau_for(runs, purse, capacity)))


def too_long(asked: Intervals, share: float, capacity: Capacity) -> str | None:
    """Why critical power says nothing of a set rowed at a share of 2 km power, or None where it does."""
    seconds = repetition_seconds(asked, share, capacity)
    if seconds <= LONGEST_REPETITION and seconds * asked.times <= LONGEST_WORK:
        return None
    return (
        f"{asked.times} × {told_time(round(seconds))} of work is beyond what critical power describes: "
        f"repetitions of up to {LONGEST_REPETITION // 60} minutes and {LONGEST_WORK // 60} minutes together. "
        "Choose shorter ones, or row them by pressure."
    )


def check(asked: Intervals) -> None:
    """Raises InputError for a set outside the bounds of `limits`."""
    _within("/times", TIMES, asked.times)
    _within("/rest_seconds", REST_SECONDS, asked.rest_seconds)
    match asked.length:
        case ForSeconds(seconds):
            _within("/seconds", BLOCK_SECONDS, seconds)
        case ForMetres(metres):
            _within("/metres", BLOCK_METRES, metres)


def _root(value: Callable[[float], float], low: float, at_low: float, high: float, at_high: float) -> float:
    """Where a falling value crosses 0 between two ends: false position, halving the end that stays put."""
    for turn in range(MOST_SIMULATIONS - 1):
        middle = (low + high) / 2 if turn % 4 == 3 else (low * at_high - high * at_low) / (at_high - at_low)
        here = value(middle)
        if abs(here) <= CLOSE_ENOUGH:
            break
        if here > 0:
            low, at_low, at_high = middle, here, at_high / 2
        else:
            high, at_high, at_low = middle, here, at_low / 2
    return middle


def _never_spent(leave_percent: float, left: float) -> str:
    return (
        f"Even at {MOST_SHARE:g} times 2 km power, about the hardest half minute there is, "
        f"{100 * left:.0f} % of the reserve would be left, not {leave_percent:g} %. "
        "Ask for longer or more repetitions, shorter rests, or more left over."
    )


def _within(place: str, bounds: Bounds, value: float) -> None:
    if complaint := bounds.complaint(Fraction(value)):
        raise InputError([Problem(place, complaint)])
