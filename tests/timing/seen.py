"""What a page drew, against what was heard at that moment by the browser's own output timestamps."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import acos, pi

import numpy as np

from planner.timeline import Timeline
from tests.timing.expected import COUNT_IN
from tests.timing.matching import Moments, match

LIMITER_SECONDS = 0.006
"""Sounds leave the limiter so much later than they were put on the audio clock (measured: 288 of 48,000)."""
STEEP = (0.1, 0.9)
"""At its ends the rail hardly moves, and does not tell the time."""


@dataclass(frozen=True, slots=True)
class Frame:
    """One frame by the page's clock, the device's and the audio clock as heard, in seconds; the rail's seat.

    `along` is 0 at the catch and 1 at the finish.
    """

    page: float
    device: float
    audio: float
    along: float
    driving: bool


def frames_of(noted: Sequence[Sequence[float | str]]) -> list[Frame]:
    """The frames that witness.js noted, those without a beat left out."""
    return [
        Frame(float(now) / 1000, float(date) / 1000, float(audio), float(along), word == "drive")
        for now, date, audio, along, word in noted
        if word in ("drive", "recovery")
    ]


def picture_ms(timeline: Timeline, expected: Moments, put: Moments, frames: Sequence[Frame]) -> Moments:
    """How far each picture was ahead of the sound, in ms; `put` is when sounds come on the audio clock."""
    tied = match(expected, put)
    return np.array(
        [
            (drawn - heard) * 1000
            for frame in frames
            for heard in [(frame.audio - LIMITER_SECONDS - tied.offset) / tied.rate]
            for drawn in _moment_drawn(timeline, frame, heard)
        ]
    )


def _moment_drawn(timeline: Timeline, frame: Frame, near: float) -> Iterator[float]:
    """The moment of the session that the rail shows, of all strokes the one nearest to this moment."""
    if not STEEP[0] < frame.along < STEEP[1]:
        return
    after_start = near - float(COUNT_IN)
    for segment in timeline.segments:
        strokes, drive = segment.stretch.strokes, segment.stretch.drive
        if strokes and drive and segment.start <= after_start < segment.end:
            stroke, eased = float(strokes.stroke), acos(1 - 2 * frame.along) / pi
            within = eased * float(drive) if frame.driving else stroke - eased * (stroke - float(drive))
            start = float(COUNT_IN + segment.start) + within
            yield start + round((near - start) / stroke) * stroke


def device_times(put: Moments, frames: Sequence[Frame]) -> Moments:
    """What the device's clock showed when each of these sounds was heard, in seconds since 1970."""
    audio = np.array([frame.audio for frame in frames])
    device = np.array([frame.device for frame in frames])
    nearest = np.abs(audio[None, :] - (put + LIMITER_SECONDS)[:, None]).argmin(axis=1)
    return np.asarray(device[nearest] + put + LIMITER_SECONDS - audio[nearest])
