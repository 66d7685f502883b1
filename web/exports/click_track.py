"""The session by ear as a WAV file: 16-bit PCM, one channel, every cue on the sample nearest to its moment.

It is made while it is sent, a piece at a time, so that twelve hours take no more memory than one minute. The
clock is that of `film`.
"""

from __future__ import annotations

import sys
import wave
from array import array
from collections.abc import Iterable, Iterator
from fractions import Fraction
from io import BytesIO

from planner.cues import Cue, cues_of
from planner.errors import InputError, Problem
from planner.limits import TOTAL_SECONDS
from planner.timeline import Timeline
from planner.units import clock, round_half_up
from web.exports.cue_sounds import SAMPLE_RATE, samples_of
from web.exports.film import film_time, whole_film

SAMPLE_BYTES = 2
RING_OUT = Fraction(1)
"""Silence at the end, into which the last sound rings out."""
PIECE_BYTES = 1 << 18
_SILENCE = bytes(PIECE_BYTES)
_LOW, _HIGH = -32_768, 32_767


def check_length(timeline: Timeline) -> None:
    """Raises InputError for a session that a slow rower's splits make longer than any plan may be."""
    seconds = timeline.totals.seconds
    if seconds > TOTAL_SECONDS:
        sentence = (
            f"at these splits the session lasts {clock(round_half_up(seconds))}, and a click track may last "
            f"{clock(TOTAL_SECONDS)}: shorten a block or use fewer repetitions"
        )
        raise InputError([Problem("/plan/parts", sentence)])


def track_bytes(timeline: Timeline) -> int:
    """The length of the whole file."""
    return len(_header(_samples(timeline))) + SAMPLE_BYTES * _samples(timeline)


def click_track(timeline: Timeline) -> Iterator[bytes]:
    """The file in pieces of some 256 KiB."""
    whole = _samples(timeline)
    return _pieces([_header(whole)], _sounded(cues_of(timeline), whole))


def _samples(timeline: Timeline) -> int:
    return _sample_at(whole_film(timeline) + RING_OUT)


def _sample_at(film_seconds: Fraction) -> int:
    """The sample that is nearest to a moment, a tie going up."""
    return round_half_up(film_seconds * SAMPLE_RATE)


def _header(samples: int) -> bytes:
    """Taken before the file is closed, which would write the length of what it has been given itself."""
    file = BytesIO()
    track = wave.open(file, "wb")  # noqa: SIM115
    track.setnchannels(1)
    track.setsampwidth(SAMPLE_BYTES)
    track.setframerate(SAMPLE_RATE)
    track.setnframes(samples)
    track.writeframesraw(b"")
    return file.getvalue()


def _sounded(cues: Iterable[Cue], whole: int) -> Iterator[bytes]:
    """Silence and sounds in turn. A sound is held back until the next one is known, for the two may meet."""
    begins, sound = 0, array("h")
    for cue in cues:
        at, next_sound = _sample_at(film_time(cue.at)), samples_of(cue.kind)
        ends = begins + len(sound)
        if at < ends:
            sound = _mixed(sound, next_sound, at - begins)
            continue
        yield _bytes(sound)
        yield from _silence(at - ends)
        begins, sound = at, next_sound
    yield _bytes(sound)
    yield from _silence(whole - begins - len(sound))


def _mixed(first: array[int], second: array[int], after: int) -> array[int]:
    """The second sound over the first, so many samples after its beginning."""
    length = max(len(first), after + len(second))
    mixed = array("h", first) + array("h", bytes(SAMPLE_BYTES * (length - len(first))))
    for index, sample in enumerate(second, after):
        mixed[index] = min(_HIGH, max(_LOW, mixed[index] + sample))
    return mixed


def _bytes(sound: array[int]) -> bytes:
    """Least significant byte first, on whatever machine."""
    if sys.byteorder == "big":
        sound = array("h", sound)
        sound.byteswap()
    return sound.tobytes()


def _silence(samples: int) -> Iterator[bytes]:
    left = SAMPLE_BYTES * samples
    while left > 0:
        yield _SILENCE[: min(left, PIECE_BYTES)]
        left -= PIECE_BYTES


def _pieces(begun: list[bytes], parts: Iterable[bytes]) -> Iterator[bytes]:
    """The parts put together to larger pieces."""
    size = sum(map(len, begun))
    for part in parts:
        begun.append(part)
        size += len(part)
        if size >= PIECE_BYTES:
            yield b"".join(begun)
            begun, size = [], 0
    yield b"".join(begun)
