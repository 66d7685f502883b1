"""The click track, measured: read by SciPy, onsets found with NumPy, held against the timeline to the sample.

What is expected is worked out here from starts and strokes; the renderer's own list of cues is not asked.
"""

from __future__ import annotations

import tracemalloc
from collections.abc import Callable, Iterator
from fractions import Fraction
from io import BytesIO
from math import floor
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest
from scipy.io import wavfile

from planner.athlete import Athlete, Result
from planner.errors import InputError
from planner.notation.reader import read
from planner.plan import Pressure
from planner.stretches import Kind
from planner.timeline import Segment, Timeline, compile_timeline
from tests.builders import main_piece, metres, rower_of_7_42, seconds
from web.builtin_plans import load_plan_file
from web.exports.click_track import PIECE_BYTES, check_length, click_track, track_bytes
from web.settings import Settings

RATE = 24_000
LEAD = 5
APART = RATE // 50
"""A silence of 20 ms parts two sounds; tones of 660 Hz and more cross zero far more often."""
PULSES_AFTER = (Fraction(0), Fraction(15, 100), Fraction(3, 10), Fraction(6, 10))
"""Where in a cue its own pulses begin: two and three for the last strokes, three for the end."""

Samples = npt.NDArray[np.int16]


def samples_of(timeline: Timeline) -> Samples:
    rate, samples = wavfile.read(BytesIO(b"".join(click_track(timeline))))
    assert (rate, samples.dtype, samples.ndim) == (RATE, np.int16, 1)
    return np.asarray(samples)


def onsets(samples: Samples) -> list[int]:
    """The first sample of each sound, which follows a silence."""
    loud = np.flatnonzero(samples)
    return [int(at) for at in loud[np.flatnonzero(np.diff(loud, prepend=-RATE) > APART)]]


def on_sample(session_seconds: Fraction) -> int:
    return floor((LEAD + session_seconds) * RATE + Fraction(1, 2))


def catches(segment: Segment) -> list[Fraction]:
    strokes = segment.stretch.strokes
    count, stroke = (strokes.count, strokes.stroke) if strokes else (1, Fraction(0))
    return [segment.start + number * stroke for number in range(count)]


def after_catches(segment: Segment) -> Iterator[Fraction]:
    stretch = segment.stretch
    if stretch.strokes and stretch.drive:
        recovery = stretch.strokes.stroke - stretch.drive
        for catch in catches(segment):
            yield catch + stretch.drive
            if recovery > Fraction(18, 10):
                yield catch + stretch.drive + recovery / 2


def ticks(timeline: Timeline) -> Iterator[Fraction]:
    """Three a second apart before the first catch, and out of whatever has no beat to the handle."""
    yield from (Fraction(-before) for before in (3, 2, 1))
    for here, after in zip(timeline.segments, [*timeline.segments[1:], None], strict=True):
        stretch = here.stretch
        rowed = stretch.kind in (Kind.ROW, Kind.DRILL)
        leads = rowed or (after is not None and after.stretch.kind in (Kind.ROW, Kind.DRILL))
        ends_by_itself = stretch.kind is Kind.GAP or not here.waits
        if stretch.strokes is None and leads and ends_by_itself:
            yield from (m for b in (3, 2, 1) if (m := here.end - b) >= here.start)


def expected(timeline: Timeline) -> set[int]:
    moments = {*ticks(timeline), timeline.totals.seconds}
    for segment in timeline.segments:
        moments |= {*catches(segment), *after_catches(segment)}
    return {on_sample(moment) for moment in moments}


PLANS = (
    "half-hour-at-twenty",
    "rate-ladder",
    "drills-from-the-finish",
    "two-kilometre-test",
    "stroke-pyramid",
)


def plan_named(name: str) -> Timeline:
    return compile_timeline(load_plan_file(Path(Settings().plans) / f"{name}.yaml").plan, rower_of_7_42())


@pytest.mark.parametrize("name", PLANS)
def test_every_cue_of_a_built_in_plan_is_on_its_sample_and_nothing_else_sounds(name: str) -> None:
    timeline = plan_named(name)
    wanted = expected(timeline)
    heard = onsets(samples_of(timeline))
    pulses = {at + round(after * RATE) for at in wanted for after in PULSES_AFTER}
    assert wanted <= set(heard)
    assert set(heard) <= pulses


def test_strokes_that_are_no_whole_number_of_samples_do_not_drift() -> None:
    """At r28 a stroke is 15/7 s, 51 428.57 samples; after an hour a catch is as near as the first."""
    timeline = compile_timeline(read("title: x\nmain\n60' r28"))
    (segment,) = timeline.segments
    heard = set(onsets(samples_of(timeline)))
    assert len(catches(segment)) == 1680
    assert {on_sample(moment) for moment in catches(segment)} <= heard


def pitch(samples: Samples, at: int, length_seconds: float) -> float:
    """The strongest frequency in so much sound."""
    window = samples[at : at + round(length_seconds * RATE)].astype(float)
    spectrum = np.abs(np.fft.rfft(window * np.hanning(len(window)), n=RATE))
    return float(np.argmax(spectrum))


def test_what_a_cue_means_is_heard_by_its_pitch_and_its_pulses() -> None:
    timeline = compile_timeline(main_piece(seconds(30, 20), seconds(30, 24)))
    samples = samples_of(timeline)

    def heard(at: float, length: float) -> float:
        return pitch(samples, on_sample(Fraction(at).limit_denominator(1000)), length)

    assert [heard(-b, 0.08) for b in (3, 2, 1)] == [pytest.approx(1760, abs=15)] * 3
    assert heard(0, 0.1) == pytest.approx(880, abs=15)  # the first catch
    assert heard(1, 0.05) == pytest.approx(1320, abs=15)  # its finish, after a third of 3 s
    assert heard(2, 0.04) == pytest.approx(660, abs=15)  # half way through the recovery of 2 s
    assert [heard(27 + a, 0.1) for a in (0, 0.15, 0.3)] == [pytest.approx(880, abs=15)] * 3  # the last stroke
    assert [heard(24 + a, 0.1) for a in (0, 0.15)] == [pytest.approx(880, abs=15)] * 2
    assert (heard(30, 0.1), heard(30.14, 0.2)) == (pytest.approx(880, abs=15), pytest.approx(1760, abs=15))


def test_sounds_that_meet_are_both_heard_and_nothing_is_cut_off() -> None:
    """A rest of 3 s begins with its change and with the first of the three ticks that lead out of it."""
    timeline = compile_timeline(read('title: x\nmain\n30" r20\n3" rest\n30" r20'))
    samples = samples_of(timeline)
    both = samples[on_sample(Fraction(30)) :][: round(0.08 * RATE)]
    assert pitch(both, 0, 0.08) == pytest.approx(880, abs=15)
    spectrum = np.abs(np.fft.rfft(both.astype(float), n=RATE))
    assert spectrum[1740:1780].max() > 0.3 * spectrum[860:900].max()
    assert 10_000 < int(np.abs(samples.astype(int)).max()) < 32_767


def test_the_file_is_as_long_as_it_says_and_rings_out() -> None:
    timeline = compile_timeline(main_piece(seconds(60, 20)))
    pieces = list(click_track(timeline))
    assert sum(map(len, pieces)) == track_bytes(timeline)
    samples = samples_of(timeline)
    assert len(samples) == (LEAD + 60 + 1) * RATE
    assert not samples[-RATE // 10 :].any()


def _peak_memory(act: Callable[[], Any]) -> int:
    tracemalloc.start()
    act()
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    return peak


def test_the_longest_session_takes_no_more_memory_than_a_short_one() -> None:
    """Twelve hours are 2.07 GB, below what 31 bits can say, which some readers of WAV hold to."""
    timeline = compile_timeline(read("title: x\nmain\n3 x 240' r10"))
    assert float(timeline.totals.seconds) == 12 * 3600
    assert track_bytes(timeline) < 2**31
    peak = _peak_memory(lambda: [None for _ in click_track(timeline)])
    assert peak < 8 * PIECE_BYTES


def test_a_session_that_a_slow_rower_makes_longer_than_any_plan_is_refused() -> None:
    easy = main_piece(metres(100_000, 18, Pressure.LIGHT))
    slow = compile_timeline(easy, Athlete((Result(2000, Fraction(660)),)))
    assert float(slow.totals.seconds) > 12 * 3600
    with pytest.raises(InputError, match="a click track may last 12:00:00"):
        check_length(slow)
