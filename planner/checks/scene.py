"""What every check looks at: a session as it is rowed, what it asks of whom, and the readiness it leaves."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any, NamedTuple

from planner.athlete import Athlete, Level, Room
from planner.capacity import Capacity, capacity_of
from planner.demand import Run, runs_of
from planner.endurance import Endurance, endurance_of
from planner.intensity import RACE_RATE, WORK_PER_STROKE
from planner.notation.writer import write_step
from planner.plan import Block, PartKind, Pressure, Repeat, Step
from planner.readiness import Readiness, readiness_of
from planner.start_line import HARD_SHARE, start_index
from planner.stretches import ROWED, Kind, Stretch
from planner.timeline import Segment, Timeline


class Row(NamedTuple):
    """A segment with the share of 2 km power it asks for; None in rests, and where nothing is said of it.

    A `guessed` share follows from effort, heart rate or a split without a result.
    """

    segment: Segment
    share: float | None
    guessed: bool

    @property
    def seconds(self) -> float:
        """How long it lasts."""
        return float(self.segment.stretch.duration)

    @property
    def is_rowed(self) -> bool:
        """Whether it is rowed, not sat out."""
        return self.segment.stretch.kind in ROWED

    @property
    def is_hard(self) -> bool:
        """Whether it is known to be hard."""
        return self.share is not None and self.share >= HARD_SHARE


@dataclass(frozen=True)
class Scene:
    """A session as it is rowed by somebody somewhere."""

    timeline: Timeline
    athlete: Athlete | None
    level: Level
    room: Room
    runs: tuple[Run, ...]
    rows: tuple[Row, ...]
    readiness: Readiness | None

    @property
    def age(self) -> int | None:
        """Years, where they are known."""
        return self.athlete.age if self.athlete else None

    @property
    def is_child(self) -> bool:
        """Whether a child rows it."""
        return self.athlete is not None and self.athlete.is_child

    @property
    def is_older(self) -> bool:
        """Whether an older adult rows it."""
        return self.athlete is not None and self.athlete.is_older

    @cached_property
    def capacity(self) -> Capacity:
        """What the rower can spend."""
        return self.readiness.capacity if self.readiness else capacity_of(self.athlete, self.level)

    @cached_property
    def endurance(self) -> Endurance:
        """How quick the rower can be over any length, by all results that count."""
        return endurance_of(self.athlete, self.level)

    @cached_property
    def hard_endurance(self) -> Endurance:
        """The same by those results that do not look rowed easily."""
        return self.endurance.without_easy()

    @cached_property
    def piece(self) -> Row | None:
        """The first hard rowing of a main part, or None."""
        return next((row for row in self.rows if row.segment.part == PartKind.MAIN and row.is_hard), None)

    @cached_property
    def start(self) -> float | None:
        """Seconds to the start line, or None where neither a main part nor a gap makes one."""
        segments = self.timeline.segments
        index = start_index(segments)
        if index < len(segments) and segments[index].part == PartKind.MAIN:
            return float(segments[index].start)
        gap = index and segments[index - 1].stretch.kind is Kind.GAP
        return float(segments[index - 1].end) if gap else None

    def before(self, row: Row) -> tuple[Row, ...]:
        """What is rowed before a row."""
        return tuple(other for other in self.rows[: row.segment.index] if other.is_rowed)

    def asked_of(self, row: Row) -> float:
        """The share of 2 km power that a row is taken to ask for, also where it says nothing of it."""
        return self.runs[row.segment.index].share

    def at(self, place: str) -> tuple[Segment, ...]:
        """The segments that come from a place in the plan, in order."""
        return tuple(row.segment for row in self.rows if row.segment.place == place)

    def block(self, place: str) -> Block:
        """The block at a place of the plan."""
        block: Block = self._found(place)
        return block

    def steps(self, place: str) -> tuple[Step, ...]:
        """The list of blocks at a place of the plan, such as /parts/0/blocks."""
        steps: tuple[Step, ...] = self._found(place)
        return steps

    def repeat(self, place: str) -> Repeat:
        """The repeat at a place of the plan."""
        repeat: Repeat = self._found(place)
        return repeat

    def named(self, row: Row) -> str:
        """A block as its writer sees it: 15 strokes r30 full."""
        return write_step(self.block(row.segment.place)).partition("\n")[0]

    def _found(self, place: str) -> Any:
        found: Any = self.timeline.plan
        for step in place.split("/")[1:]:
            found = found[int(step)] if isinstance(found, tuple) else getattr(found, step)
        return found


def scene_of(timeline: Timeline, athlete: Athlete | None, level: Level, room: Room) -> Scene:
    """The scene of a session; costs one simulation of it."""
    runs = tuple(runs_of(timeline.segments, athlete, level))
    return Scene(
        timeline=timeline,
        athlete=athlete,
        level=level,
        room=room,
        runs=runs,
        rows=tuple(_rows(timeline.segments, runs, athlete)),
        readiness=readiness_of(timeline, athlete, level, room),
    )


def _rows(segments: Sequence[Segment], runs: Sequence[Run], athlete: Athlete | None) -> Iterator[Row]:
    pulse_known = athlete is not None and (athlete.heart_rate_max is not None or athlete.age is not None)
    for segment, run in zip(segments, runs, strict=True):
        told = _says_how_hard(segment.stretch, pulse_known)
        yield Row(segment, run.share if told else None, run.guessed)


def _says_how_hard(stretch: Stretch, pulse_known: bool) -> bool:
    """A rate alone says nothing of effort, nor does a pulse when the highest is not known."""
    target = stretch.target
    if stretch.kind not in ROWED or target is None:
        return False
    return target.heart_rate is None or target.heart_rate.bpm is None or pulse_known


def share_of(pressure: Pressure, rate: int, level: Level) -> float:
    """The share of 2 km power that a pressure asks for at a rate."""
    return 1.0 if pressure is Pressure.RACE else float(WORK_PER_STROKE[pressure]) * rate / RACE_RATE[level]


def list_of(place: str) -> tuple[str, int]:
    """The list that a step stands in, and its index there: /parts/0/blocks and 2."""
    holder, _, index = place.rpartition("/")
    return holder, int(index)


def top_of(place: str) -> str:
    """The place of the step of a part that holds this one: /parts/0/blocks/2 of .../2/blocks/1."""
    return "/".join(place.split("/")[:5])
