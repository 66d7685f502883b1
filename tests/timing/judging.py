"""What a recording has to keep to, as rows of a table."""

from __future__ import annotations

import os
from collections.abc import Iterator

import numpy as np

from tests.bench.measuring import Row
from tests.timing.expected import COUNT_IN
from tests.timing.matching import Matched
from tests.timing.recording import Recording

ERROR_MS = 0.1
AFTER_FREEZE_MS = 10.0
PICTURE_MIDDLE_MS = 8.0
FRAME_MS = 1000 / 60


def sound_row(subject: str, recording: Recording) -> Row:
    """None missed or doubled, the 99th percentile of error within a tenth of a millisecond."""
    matched = recording.matched()
    error = matched.error_ms(0.99)
    whole = not len(matched.missed) and not len(matched.extra) and not recording.put_twice()
    held = whole and error <= ERROR_MS and not recording.stumbles
    return Row(
        subject, _told(recording, matched), f"p99 at most {ERROR_MS} ms, none missed, none extra", held
    )


def freeze_row(subject: str, recording: Recording) -> Row:
    """From one stroke after the freeze on: nothing missed or extra, all within 10 ms of the plan."""
    begun, over = max(recording.silences, key=lambda span: span[1] - span[0])
    thaw = _expected_at(recording, begun, over)
    stroke = _stroke_at(recording, thaw)
    thawed = thaw + stroke
    matched = recording.matched(fitted_until=_expected_at(recording, begun, begun) - 1)
    after = np.abs(matched.errors_ms[matched.expected > thawed])
    missed = np.count_nonzero(matched.missed > thawed)
    extra = np.count_nonzero(matched.extra > over + stroke)
    stray = np.count_nonzero((matched.extra > over) & (matched.extra <= over + stroke))
    told = (
        f"silent {over - begun:.1f} s; after it {len(after)} sounds, at most {after.max():.2f} ms off, "
        f"{missed} missed, {extra} extra, {stray} astray in the first stroke; {_machine(recording)}"
    )
    held = bool(after.max() <= AFTER_FREEZE_MS and not missed and not extra)
    return Row(subject, told, f"within {AFTER_FREEZE_MS:g} ms one stroke later", held)


def picture_row(subject: str, recording: Recording) -> Row:
    """The picture's lead over the sound: its middle within 8 ms, nine tenths within a frame either way."""
    low, middle, high = np.percentile(recording.picture_ms(), [5, 50, 95])
    told = f"middle {middle:.2f} ms, p5 {low:.2f}, p95 {high:.2f}, {len(recording.frames)} frames"
    held = abs(middle) <= PICTURE_MIDDLE_MS and low >= -FRAME_MS and high <= FRAME_MS
    aim = f"middle within {PICTURE_MIDDLE_MS:g} ms, p5 to p95 within {FRAME_MS:.1f} ms"
    return Row(f"{subject}: picture against sound", told, aim, bool(held))


def _expected_at(recording: Recording, begun: float, moment: float) -> float:
    """The moment of the session that a moment of the tape should be, by what was heard before the freeze."""
    before = recording.heard[recording.heard < begun]
    first = before[0] - float(COUNT_IN - 3)
    return float(moment - first)


def _stroke_at(recording: Recording, moment: float) -> float:
    """The seconds that a stroke lasts at a moment of the session."""
    for segment in recording.timeline.segments:
        if segment.stretch.strokes and moment < float(COUNT_IN + segment.end):
            return float(segment.stretch.strokes.stroke)
    raise ValueError(f"nothing is rowed {moment:.1f} s into the session")


def _told(recording: Recording, matched: Matched) -> str:
    p50, p99, most = (matched.error_ms(share) for share in (0.5, 0.99, 1.0))
    extra = len(matched.extra) + recording.put_twice()
    return (
        f"p50 {p50:.3f}, p99 {p99:.3f}, most {most:.3f} ms (at {matched.worst():.1f} s); "
        f"{len(matched.heard)} of {len(recording.expected)} heard, {extra} extra, "
        f"rate off by {(matched.rate - 1) * 1e6:.1f} ppm; {_machine(recording)}"
    )


def _machine(recording: Recording) -> str:
    stumbled = f", the recording stumbled {len(recording.stumbles)} times" if recording.stumbles else ""
    return f"load {recording.load:.1f} on {os.cpu_count()}{stumbled}"


def rows_of(subject: str, recording: Recording) -> Iterator[Row]:
    """The sound, and the picture where one was drawn."""
    yield sound_row(subject, recording)
    if recording.frames:
        yield picture_row(subject, recording)
