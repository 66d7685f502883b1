"""What each cue sounds like as samples: the tones of the app, triangle waves of whole harmonics.

Written once at the start; a track is put together from them.
"""

from __future__ import annotations

from array import array
from functools import cache
from math import exp, log, pi, sin
from typing import NamedTuple

from planner.cues import CueKind

SAMPLE_RATE = 24_000
"""Half of what films use, so that an editor doubles it exactly; twelve hours stay below 2 GiB, which every
reader of WAV takes."""
LOUDEST = 16_000
"""Of 32 767: two sounds at one moment still fit."""
ATTACK_SECONDS = 0.001
SILENCE = 0.0001


class Pulse(NamedTuple):
    """A tone that begins so many seconds after the cue's moment; `level` is from 0 to 1."""

    after: float
    hertz: int
    seconds: float
    level: float


def _catch(after: float) -> Pulse:
    return Pulse(after, 880, 0.11, 1)


SOUNDS: dict[CueKind, tuple[Pulse, ...]] = {
    CueKind.CATCH: (_catch(0),),
    CueKind.FINISH: (Pulse(0, 1320, 0.05, 0.4),),
    CueKind.BETWEEN: (Pulse(0, 660, 0.04, 0.2),),
    CueKind.SECOND_LAST: (_catch(0), _catch(0.15)),
    CueKind.LAST: (_catch(0), _catch(0.15), _catch(0.3)),
    CueKind.CHANGE: (Pulse(0, 880, 0.12, 1), Pulse(0.12, 1760, 0.28, 1)),
    CueKind.COUNT_IN: (Pulse(0, 1760, 0.08, 0.7),),
    CueKind.END: tuple(Pulse(after, 1760, 0.25, 1) for after in (0, 0.3, 0.6)),
}
"""As static/src/audio/sounds.ts has them (common practice [C])."""


@cache
def samples_of(kind: CueKind) -> array[int]:
    """A cue as 16-bit samples; the very first one is not silent, so that its moment can be measured."""
    sound: array[int] = array("h")
    for pulse in SOUNDS[kind]:
        silence = round(pulse.after * SAMPLE_RATE) - len(sound)
        sound.extend([0] * silence)
        sound.extend(_pulse(pulse))
    return sound


def _pulse(pulse: Pulse) -> list[int]:
    middles = ((number + 0.5) / SAMPLE_RATE for number in range(round(pulse.seconds * SAMPLE_RATE)))
    return [
        round(LOUDEST * pulse.level * _envelope(t, pulse.seconds) * _triangle(t, pulse.hertz))
        for t in middles
    ]


def _envelope(seconds: float, length: float) -> float:
    """A sharp rise, held for half the length, then away by a constant ratio."""
    if seconds < length / 2:
        return min(1.0, seconds / ATTACK_SECONDS)
    return exp(log(SILENCE) * (2 * seconds / length - 1))


def _triangle(seconds: float, hertz: int) -> float:
    """A triangle wave of those odd harmonics that lie below half the sample rate."""
    odd = range(1, SAMPLE_RATE // 2 // hertz + 1, 2)
    return 8 / pi**2 * sum((1 - n % 4 // 2 * 2) * sin(2 * pi * n * hertz * seconds) / n**2 for n in odd)
