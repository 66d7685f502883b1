"""Readiness: what is left at the start line, how long to wait for it, and what a coach would say.

The session is simulated exactly over stretches of constant power, which is finer than second by second.
Everything is a range, never a promise.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import NamedTuple

from planner.advised_gap import (
    FAIRLY_WARM,
    GRID,
    LOST_GAP,
    RESERVE_WANTED,
    WARM,
    AdvisedGap,
    Wait,
    advised_gap,
    is_cut_short,
    is_hard,
    is_restored,
    judged,
    lengthened_by_heavy,
)
from planner.athlete import Athlete, Level, Room
from planner.capacity import Capacity, CapacityBasis, capacity_of
from planner.demand import Run
from planner.endurance import endurance_of
from planner.start_line import Circumstances, Course, StartLine, State, course_of, states_of
from planner.timeline import Timeline
from planner.units import told_time

GAPS = tuple(60 * minutes for minutes in range(31))
"""Seconds between warm-up and piece for which the start line is told."""
SERIES_POINTS = 120

MOST, HALF = 0.85, 0.5
"""From which shares of the reserve the coach's words are used: judgement [C]."""


class AtGap(NamedTuple):
    """The start line after a gap of so many seconds."""

    gap_seconds: int
    state: State


@dataclass(frozen=True, slots=True)
class Series:
    """The session as written in equal steps from its beginning, in shares as in `State`."""

    step_seconds: int
    reserve: tuple[float, ...]
    reserve_low: tuple[float, ...]
    reserve_high: tuple[float, ...]
    oxygen: tuple[float, ...]
    warmth: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Readiness:
    """The start line of a session, what to wait for it, and how sure that is.

    `start_seconds` is its place, from the session's beginning. `wait_seconds` is the gap, or without one the
    rests before the piece, and `wait` what there is to say of it. `before_maximal`
    says that a piece follows and counts as maximal.
    """

    capacity: Capacity
    start_seconds: float
    gap_seconds: float | None
    wait_seconds: float
    advised_gap: AdvisedGap
    wait: Wait
    before_maximal: bool
    at_start: State
    by_gap: tuple[AtGap, ...]
    series: Series
    sentence: str
    notes: tuple[str, ...]

    @property
    def is_cool(self) -> bool:
        """Whether one comes to the start cool, by the middle of the models."""
        return self.at_start.warmth.middle < FAIRLY_WARM

    @property
    def gap_is_cut_short(self) -> bool:
        """Whether the advised gap is shorter than usual, because waiting would cool the body too much."""
        return is_cut_short(self.advised_gap)

    @property
    def basis(self) -> CapacityBasis:
        """What the rower's capacity rests on."""
        return self.capacity.basis


def readiness_of(
    timeline: Timeline,
    athlete: Athlete | None,
    level: Level,
    room: Room = Room.NORMAL,
) -> Readiness | None:
    """The readiness of a session, or None when nothing is rowed before its start line."""
    course = course_of(timeline, athlete, level)
    if course is None:
        return None
    given = Circumstances(capacity_of(athlete, level), level, room)
    hard = is_hard(course, given, endurance_of(athlete, level))
    wait = course.gap_seconds
    line = StartLine(course, sorted({*GRID, *GAPS, *([wait] if wait is not None else [])}), given)
    advised = advised_gap(line, hard)
    at_start = line.after(wait if wait is not None else 0 if course.main else advised.best)
    return Readiness(
        capacity=given.capacity,
        start_seconds=course.start_seconds,
        gap_seconds=wait,
        wait_seconds=course.wait_seconds,
        advised_gap=advised,
        wait=judged(course.wait_seconds, advised),
        before_maximal=hard and bool(course.main),
        at_start=at_start,
        by_gap=tuple(AtGap(gap, line.after(gap)) for gap in GAPS),
        series=_series(course, given),
        sentence=f"You come to the start {_body(at_start)}. {_advice(course, line, advised, hard)}",
        notes=tuple(_notes(given.capacity, course, line, hard)),
    )


def _series(course: Course, given: Circumstances) -> Series:
    total = sum(run.seconds for run in course.everything)
    step = max(1, ceil(total / (SERIES_POINTS - 1)))
    pieces, marks = _cut(course.everything, step, floor(total / step))
    states = states_of(pieces, course.before, given)
    at = [states[mark] for mark in marks]
    return Series(
        step_seconds=step,
        reserve=(1.0, *(state.reserve.middle for state in at)),
        reserve_low=(1.0, *(state.reserve.low for state in at)),
        reserve_high=(1.0, *(state.reserve.high for state in at)),
        oxygen=(0.0, *(state.oxygen.middle for state in at)),
        warmth=(0.0, *(state.warmth.middle for state in at)),
    )


def _cut(runs: Sequence[Run], step: int, times: int) -> tuple[list[Run], list[int]]:
    """The runs cut at every step, and the index of the piece that ends at each step."""
    pieces: list[Run] = []
    marks: list[int] = []
    left = float(step)
    for share, seconds, guessed in runs:
        while seconds > left - 1e-9 and len(marks) < times:
            marks.append(len(pieces))
            pieces.append(Run(share, left, guessed))
            seconds -= left
            left = float(step)
        if seconds > 1e-9:
            pieces.append(Run(share, seconds, guessed))
            left -= seconds
    return pieces, marks


def _body(state: State) -> str:
    warm = state.warmth.middle
    words = "warm" if warm >= WARM else "fairly warm" if warm >= FAIRLY_WARM else "cool"
    left = state.reserve.middle
    if left >= RESERVE_WANTED:
        kept = "with nearly all of your reserve"
    elif left >= MOST:
        kept = "with most of your reserve"
    elif left >= HALF:
        kept = "with part of your reserve already spent"
    else:
        kept = "with most of your reserve already spent"
    return f"{words} and {kept}"


def _advice(course: Course, line: StartLine, advised: AdvisedGap, hard: bool) -> str:
    """What a coach would say of the wait."""
    name = "wait" if course.gap_seconds is None else "gap"
    told = _minutes(course.wait_seconds)
    _, best, high = (_minutes(seconds) for seconds in advised)
    match judged(course.wait_seconds, advised):
        case Wait.OVERSPENT if is_restored(line):
            return f"It takes {_minutes(advised.low)} until nearly all of it is back: row it easier."
        case Wait.OVERSPENT:
            return f"Not even {_minutes(LOST_GAP)} would bring back what this warm-up spends: row it easier."
        case Wait.SHORT if not course.wait_seconds:
            return f"Leave about {best} before the piece: {_between(advised)} will do."
        case Wait.SHORT:
            return f"A {name} of {told} is short: make it about {best}; {_between(advised)} will do."
        case Wait.LONG:
            return f"A {name} of {told} is long: you cool down. Start after {best}, or at most {high}."
    if not course.wait_seconds and not hard:
        return "Go straight on, or stand up and drink for a minute first."
    if not hard or not is_cut_short(advised):
        return f"The {name} of {told} is right: {_between(advised)} will do."
    if course.wait_seconds > advised.best:
        return f"The {name} of {told} will do, but you are not warm through: {best} would cool you less."
    return (
        f"The {name} of {told} is right: you are not warm through, and more would cool you. A longer warm-up "
        "would help most."
    )


def _between(advised: AdvisedGap) -> str:
    low, _, high = (_minutes(seconds) for seconds in advised)
    if advised.low == advised.high:
        return "hardly more or less"
    return f"anything from {low} to {high}" if advised.low else f"anything up to {high}"


def _minutes(seconds: float) -> str:
    if seconds == 60:
        return "1 minute"
    if seconds % 60 == 0:
        return f"{int(seconds) // 60} minutes"
    return f"{int(seconds)} seconds" if seconds < 60 else told_time(round(seconds))


def _notes(capacity: Capacity, course: Course, line: StartLine, hard: bool) -> Iterator[str]:
    match capacity.basis:
        case CapacityBasis.LEVEL:
            yield (
                f"No result is known, so a 2 km of about {told_time(round(capacity.two_k_seconds))} "
                f"({round(capacity.assumed_watts)} W) is assumed for the level, and the range is wide."
            )
        case CapacityBasis.RESULT:
            yield (
                "Critical power as fitted does not go with your likely 2 km, so the reserve is assumed for "
                "the level."
                if capacity.fit_set_aside
                else "The reserve is assumed for the level, in a wide range; two all-out pieces of 2 to 15 "
                "minutes would tell it."
            )
        case CapacityBasis.FIT:
            yield "The reserve comes from your own results; its range follows their scatter."
    guessed = sum(run.seconds for run in course.everything if run.guessed)
    if guessed:
        yield f"{told_time(round(guessed))} of rowing name no power: guessed from rate, effort or heart rate."
    yield (
        "The models of recovery come from cycling and differ by a factor of two; the range shows all three, "
        "and none is a promise."
    )
    if hard:
        yield (
            "Reports conflict on a hard bout before a hard piece: some held on longer after 9 to 20 minutes "
            "of rest, others, rowers among them, less long. No gain is counted on here."
        )
    if lengthened_by_heavy(line):
        yield "This warm-up holds a heavy bout, so the gap is longer than usual."
