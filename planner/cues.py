"""What sounds when, if a session runs by its plan from the first catch to the end: as the player does by ear.

The moments are exact. Where the player would wait for a tap, this goes on by the plan.
"""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from planner.stretches import ROWED, Kind
from planner.timeline import Segment, Timeline


class CueKind(StrEnum):
    """What a cue means."""

    CATCH = "catch"
    FINISH = "finish"
    BETWEEN = "between"
    SECOND_LAST = "second-last"
    LAST = "last"
    CHANGE = "change"
    COUNT_IN = "count-in"
    END = "end"


class Cue(NamedTuple):
    """A cue at seconds from the first catch; those that count in to it are before zero."""

    at: Fraction
    kind: CueKind


SLOW_RECOVERY = Fraction(18, 10)
"""People lose a beat slower than about 1.8 s (Repp 2006, Adv Cogn Psychol 2:163-181 [S]; facts 10.3): such a
recovery gets a soft beat half way."""
COUNT_IN_TICKS = (3, 2, 1)
"""Seconds before a first catch: three, as starters count [C]."""


def cues_of(timeline: Timeline) -> Iterator[Cue]:
    """All cues in order."""
    segments = timeline.segments
    for segment in segments:
        following = segments[segment.index + 1] if segment.index + 1 < len(segments) else None
        yield from sorted(_cues(segment, following))
    yield Cue(timeline.totals.seconds, CueKind.END)


def _cues(segment: Segment, following: Segment | None) -> Iterator[Cue]:
    stretch = segment.stretch
    counted_in = segment.index == 0 and stretch.kind in ROWED
    if counted_in:
        yield from _ticks(segment.start)
    opening = CueKind.CATCH if counted_in and stretch.strokes else CueKind.CHANGE
    yield Cue(segment.start, opening)
    if stretch.strokes:
        yield from _strokes(segment)
    elif stretch.kind is Kind.GAP or not segment.waits:
        to_the_handle = stretch.kind in ROWED or (following and following.stretch.kind in ROWED)
        yield from (tick for tick in _ticks(segment.end) if to_the_handle and tick.at >= segment.start)


def _ticks(moment: Fraction) -> Iterator[Cue]:
    return (Cue(moment - before, CueKind.COUNT_IN) for before in COUNT_IN_TICKS)


def _strokes(segment: Segment) -> Iterator[Cue]:
    """Catches, finishes and soft beats; the catch that opens the segment is not among them."""
    strokes, drive = segment.stretch.strokes, segment.stretch.drive
    assert strokes is not None and drive is not None  # noqa: PT018 - strokes have a drive
    recovery = strokes.stroke - drive
    for number in range(strokes.count):
        catch = segment.start + strokes.catch(number + 1)
        if number:
            yield Cue(catch, _catch_kind(number, strokes.count, segment.waits))
        yield Cue(catch + drive, CueKind.FINISH)
        if recovery > SLOW_RECOVERY:
            yield Cue(catch + drive + recovery / 2, CueKind.BETWEEN)


def _catch_kind(number: int, count: int, waits: bool) -> CueKind:
    """Nobody knows which strokes are the last of a segment that a tap ends."""
    left = count - number
    return CueKind.CATCH if waits or left > 2 else CueKind.LAST if left == 1 else CueKind.SECOND_LAST
