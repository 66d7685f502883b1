"""When sounds begin in a recording, and where the recording itself stumbled.

The recording is free of noise: between two sounds there is only the tone of 30 Hz that the app keeps running.
So a sound has begun at the first sample whose second difference stands out of that: for a tone that swells
linearly from nothing, which is what the cues are, that is within a sample or two (0.02 to 0.04 ms).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tests.timing.sound_card import RATE, Samples

STANDS_OUT = 5e-6
"""A cue begins with 7e-5 or more, float noise and the tone kept running stay below 1e-6."""
QUIET_SECONDS = 0.025
SWELLS = int(0.012 * RATE)
"""By then a cue is well above the kept tone."""
PILOT_HERTZ = 30
PERIODS = 3
PILOT_LEAST = 2e-4
LOUD = 5e-3
STUMBLE_SECONDS = 0.0005


@dataclass(frozen=True, slots=True)
class Stumble:
    """The recorded sound jumped by `by` seconds (modulo a thirtieth) shortly before `at` seconds."""

    at: float
    by: float


def onsets(samples: Samples) -> NDArray[np.float64]:
    """The seconds at which sounds begin after a moment of quiet. A click in the kept tone is none."""
    standing_out = np.flatnonzero(np.abs(np.diff(samples.astype(np.float64), 2)) > STANDS_OUT)
    quiet_before = np.diff(standing_out, prepend=-RATE) > QUIET_SECONDS * RATE
    begun = standing_out[quiet_before]
    loudest = np.array([np.abs(samples[start : start + SWELLS]).max() for start in begun])
    return begun[loudest > LOUD] / RATE


def stumbles(samples: Samples) -> list[Stumble]:
    """Where the kept tone jumps: samples were lost, or nothing came in time, on the way to the recording."""
    size = PERIODS * RATE // PILOT_HERTZ
    blocks = samples[: len(samples) // size * size].reshape(-1, size).astype(np.float64)
    turns = np.exp(-2j * np.pi * PILOT_HERTZ / RATE * np.arange(size))
    pilot = 2 / size * (blocks @ turns)
    usable = (np.abs(blocks).max(axis=1) < LOUD) & (np.abs(pilot) > PILOT_LEAST)
    places = np.flatnonzero(usable)
    seconds = np.angle(pilot[places][1:] / pilot[places][:-1]) / (2 * np.pi * PILOT_HERTZ)
    jumps = np.flatnonzero(np.abs(seconds) > STUMBLE_SECONDS)
    return [Stumble(float(places[jump + 1] * size / RATE), float(seconds[jump])) for jump in jumps]


def silences(samples: Samples) -> list[tuple[float, float]]:
    """From when to when, in seconds, not even the kept tone is there, once it has begun."""
    size = PERIODS * RATE // PILOT_HERTZ
    blocks = samples[: len(samples) // size * size].reshape(-1, size)
    nothing = np.abs(blocks).max(axis=1) < PILOT_LEAST
    edges = np.flatnonzero(np.diff(nothing.astype(np.int8), prepend=0, append=0))
    spans = [(float(start * size / RATE), float(end * size / RATE)) for start, end in edges.reshape(-1, 2)]
    return [span for span in spans if span[0] > 0]
