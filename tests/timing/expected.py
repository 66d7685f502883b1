"""The sounds of a session as its timeline has them, from the planner's exact fractions alone."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from planner.timeline import Segment, Timeline

COUNT_IN = Fraction(10)
"""Seconds from the tap that starts a session to its first catch (static/src/timeline/place.ts)."""
SLOW_RECOVERY = Fraction(18, 10)
TICKS_BEFORE = (3, 2, 1)
# How each cue goes on after it has begun, as far as there is quiet in between (static/src/audio/sounds.ts).
PULSES: dict[str, tuple[Fraction, ...]] = {
    "second-last": (Fraction(15, 100),),
    "last": (Fraction(15, 100), Fraction(30, 100)),
    "end": (Fraction(30, 100), Fraction(60, 100)),
}


class Sound(NamedTuple):
    """A sound that begins so many seconds after the tap that started the session."""

    at: Fraction
    cue: str


def sounds_of(timeline: Timeline) -> list[Sound]:
    """Every beginning of a sound, in order, when all segments are rowed to their ends by time."""
    cues = sorted({*_cues_of(timeline)})
    later = [Sound(cue.at + after, cue.cue) for cue in cues for after in PULSES.get(cue.cue, ())]
    return sorted([*cues, *later])


def _cues_of(timeline: Timeline) -> Iterator[Sound]:
    segments = timeline.segments
    yield from _ticks_to(COUNT_IN)
    for segment in segments:
        start = COUNT_IN + segment.start
        counted_in = segment.index == 0
        yield Sound(start, "catch" if counted_in else "change")
        yield from _strokes_of(segment, start)
        if segment.index + 1 < len(segments) and _leads_to_the_handle(segment, segments[segment.index + 1]):
            yield from _ticks_to(COUNT_IN + segment.end)
    yield Sound(COUNT_IN + segments[-1].end, "end")


def _strokes_of(segment: Segment, start: Fraction) -> Iterator[Sound]:
    strokes, drive = segment.stretch.strokes, segment.stretch.drive
    if strokes is None or drive is None:
        return
    names = {strokes.count: "last", strokes.count - 1: "second-last"}
    for number in range(1, strokes.count + 1):
        caught = start + strokes.catch(number)
        if number > 1:
            yield Sound(caught, names.get(number, "catch"))
        yield Sound(caught + drive, "finish")
        recovery = strokes.stroke - drive
        if recovery > SLOW_RECOVERY:
            yield Sound(caught + drive + recovery / 2, "between")


def _leads_to_the_handle(segment: Segment, following: Segment) -> bool:
    return segment.stretch.strokes is None and following.stretch.strokes is not None


def _ticks_to(moment: Fraction) -> Iterator[Sound]:
    for seconds in TICKS_BEFORE:
        yield Sound(moment - seconds, "count-in")
