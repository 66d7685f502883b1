"""The sounds of a session as its timeline has them, from the exact fractions of the planner alone."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from planner.cues import CueKind, cues_of
from planner.timeline import Timeline
from web.exports.cue_sounds import SOUNDS

COUNT_IN = Fraction(10)
"""Seconds from the tap that starts a session to its first catch, unless somebody has chosen another count."""
QUIET_SECONDS = 0.02
"""What follows sooner upon another sound is not heard as a sound of its own."""


def sounds_of(timeline: Timeline) -> list[Fraction]:
    """Seconds from the tap to every beginning of a sound, in order, when nobody touches anything."""
    return sorted(COUNT_IN + cue.at + after for cue in cues_of(timeline) for after in _beginnings(cue.kind))


def _beginnings(kind: CueKind) -> Iterator[Fraction]:
    ended = -1.0
    for pulse in SOUNDS[kind]:
        if pulse.after - ended >= QUIET_SECONDS:
            yield Fraction(str(pulse.after))
        ended = pulse.after + pulse.seconds
