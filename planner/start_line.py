"""A session up to its start line, simulated: what is left there after gaps of any length.

The start line is the start of the first main block; without a main part it is the end of the gap, or of the
warm-up. Every state is a range over models and over what is not known of the rower.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise, takewhile
from typing import NamedTuple

from planner import oxygen, phosphocreatine, reserve, warmth
from planner.athlete import Athlete, Level, Room
from planner.capacity import Capacity, Range
from planner.demand import Run, runs_of
from planner.plan import PartKind
from planner.stretches import ROWED, Kind
from planner.timeline import Segment, Timeline

HARD_SHARE = 0.85
"""From this share of 2 km power on rowing is hard: the lower edge of oxygen transport work [C], unsure
(facts 6.5)."""


class State(NamedTuple):
    """The start line in shares: of W', of phosphocreatine at rest, of uptake at 2 km power, of a full
    warm-up's 3 degrees. The reserve may be below 0 and the warmth above 1."""

    reserve: Range
    phosphocreatine: Range
    oxygen: Range
    warmth: Range


class Course(NamedTuple):
    """A session cut at its start line: what comes before the gap, the gap, and what follows.

    `start_seconds` is the start line itself, from the session's beginning. `main_rates` are the strokes a
    minute of the runs of `main`, None where none is asked for.
    """

    before: tuple[Run, ...]
    gap_seconds: float | None
    main: tuple[Run, ...]
    main_rates: tuple[int | None, ...]
    everything: tuple[Run, ...]
    start_seconds: float

    @property
    def wait_seconds(self) -> float:
        """The gap; where there is none, the rests at the end of what comes before."""
        if self.gap_seconds is not None:
            return self.gap_seconds
        return sum(run.seconds for run in takewhile(lambda run: run.share == 0, reversed(self.before)))


def course_of(timeline: Timeline, athlete: Athlete | None, level: Level) -> Course | None:
    """The session cut at its start line, or None when nothing is rowed before it."""
    segments = timeline.segments
    everything = tuple(runs_of(segments, athlete, level))
    start = start_index(segments)
    wait = start
    while wait and segments[wait - 1].stretch.kind is Kind.GAP:
        wait -= 1
    if not any(s.stretch.kind in ROWED and s.part != PartKind.COOL_DOWN for s in segments[:wait]):
        return None
    gap = float(sum(s.stretch.duration for s in segments[wait:start])) if wait < start else None
    piece = [index for index in range(start, len(segments)) if segments[index].part == PartKind.MAIN]
    at = segments[start].start if start < len(segments) else segments[-1].end
    return Course(
        before=everything[:wait],
        gap_seconds=gap,
        main=tuple(everything[index] for index in piece),
        main_rates=tuple(segments[index].stretch.rate for index in piece),
        everything=everything,
        start_seconds=float(at),
    )


def start_index(segments: Sequence[Segment]) -> int:
    """The first main segment; without one, what follows the last warm-up and the gaps right behind it."""
    for index, segment in enumerate(segments):
        if segment.part == PartKind.MAIN:
            return index
    end = max((i + 1 for i, s in enumerate(segments) if s.part == PartKind.WARM_UP), default=0)
    while end < len(segments) and segments[end].stretch.kind is Kind.GAP:
        end += 1
    return end


class Circumstances(NamedTuple):
    """Who rows and where: all that a simulation needs besides the session."""

    capacity: Capacity
    level: Level
    room: Room


def states_of(runs: Sequence[Run], session: Sequence[Run], given: Circumstances) -> list[State]:
    """The state after each run, from rest.

    One model takes a mean over the `session`: over what comes before the start line, so that neither the wait
    nor what follows changes what is left there.
    """
    return [
        State(*each)
        for each in zip(
            _reserves(runs, session, given.capacity),
            _phosphocreatines(runs, given.level),
            _uptakes(runs, given.level),
            _warmths(runs, given.room),
            strict=True,
        )
    ]


class StartLine:
    """The states after a warm-up and each of some gaps, given in ascending seconds from 0."""

    def __init__(self, course: Course, gaps: Sequence[float], given: Circumstances) -> None:
        waits = (Run(0.0, later - sooner) for sooner, later in pairwise(gaps))
        states = states_of((*course.before, Run(0.0, 0.0), *waits), course.before, given)
        self._after = dict(zip(gaps, states[len(course.before) :], strict=True))
        self._before = course.before
        self._left = [state.reserve.middle for state in states[: len(course.before)]]

    def seconds_since_below(self, share: float) -> float | None:
        """Seconds from the end of the last run that left less than a share of W', by the median model, to the
        end of the warm-up; None when none did."""
        below = [index for index, left in enumerate(self._left) if left < share]
        return sum(run.seconds for run in self._before[below[-1] + 1 :]) if below else None

    def seconds_since_hard(self) -> float | None:
        """Seconds from the end of the last hard run to the end of the warm-up; None when none was hard."""
        hard = [index for index, run in enumerate(self._before) if run.share >= HARD_SHARE]
        return sum(run.seconds for run in self._before[hard[-1] + 1 :]) if hard else None

    def after(self, gap: float) -> State:
        """The state at the start line after one of the gaps."""
        return self._after[gap]


def _reserves(runs: Sequence[Run], session: Sequence[Run], capacity: Capacity) -> list[Range]:
    """The balance of W' after each run: the median of three models, the least and the most of any."""
    middle, *ends = (
        reserve.by_every_model(runs, purse, reserve.tau_for(session, purse, capacity))
        for purse in (capacity.middle, *capacity.corners)
    )
    others = [balance for models in ends for balance in models]
    rows = zip(*middle, *others, strict=True)
    return [Range(min(row), sorted(row[:3])[1], max(row)) for row in rows]


def _uptakes(runs: Sequence[Run], level: Level) -> list[Range]:
    """Between the moderate and the heavy reading, their mean in the middle."""
    readings = oxygen.READINGS[level]
    pairs = zip(oxygen.uptake(runs, readings.moderate), oxygen.uptake(runs, readings.heavy), strict=True)
    return [Range(min(pair), sum(pair) / 2, max(pair)) for pair in pairs]


def _phosphocreatines(runs: Sequence[Run], level: Level) -> list[Range]:
    kinetics = oxygen.READINGS[level].heavy
    uptakes = oxygen.uptake(runs, kinetics)
    rows = zip(
        *(
            phosphocreatine.remaining(runs, uptakes, kinetics.rise, share)
            for share in phosphocreatine.ALL_OUT_SHARES
        ),
        strict=True,
    )
    return [Range(min(row), row[1], max(row)) for row in rows]


def _warmths(runs: Sequence[Run], room: Room) -> list[Range]:
    rows = zip(
        *(warmth.degrees(runs, warmth.course_in(room, course)) for course in warmth.COURSES), strict=True
    )
    full = warmth.FULL_RISE
    return [Range(min(row) / full, row[1] / full, max(row) / full) for row in rows]
