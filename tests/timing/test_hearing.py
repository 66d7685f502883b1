"""The measuring itself, on recordings made here, whose every beginning is known."""

from __future__ import annotations

import numpy as np
import pytest

from tests.timing.hearing import onsets, silences, stumbles
from tests.timing.matching import match
from tests.timing.sound_card import RATE, Samples

SAMPLE = 1 / RATE
SOUNDS = [(880, 0.11, 1.0), (1320, 0.05, 0.4), (660, 0.04, 0.2), (1760, 0.08, 0.7)]
"""Hertz, seconds and level of a catch, a finish, a soft beat and a tick."""
ATTACK = 0.004


def recording(moments: list[float], seconds: float, volume: float = 0.64) -> Samples:
    """The kept tone, and at each moment one of the sounds: triangles that swell and die away, in floats."""
    time = np.arange(int(seconds * RATE)) / RATE
    tape = 0.0015 * np.sin(2 * np.pi * 30 * time)
    for number, moment in enumerate(moments):
        hertz, length, level = SOUNDS[number % len(SOUNDS)]
        here = slice(int(moment * RATE), int((moment + length + 0.01) * RATE))
        since = time[here] - moment
        tone = 2 / np.pi * np.arcsin(np.sin(2 * np.pi * hertz * since))
        swell = np.clip(since / ATTACK, 0, 1)
        fall = np.where(since > length / 2, 1e-4 ** np.clip(since / (length / 2) - 1, 0, 1), 1)
        tape[here] += volume * level * swell * fall * tone
    noise = np.random.default_rng(5).normal(0, 3e-8, len(tape))
    return (tape + noise).astype(np.float32)


def between_samples(count: int) -> list[float]:
    """Moments some 0.45 s apart, at every place within a sample."""
    shares = np.random.default_rng(3).random(count)
    return [0.5 + 0.45 * number + float(share) * 0.1 for number, share in enumerate(shares)]


@pytest.mark.parametrize("volume", [1.0, 0.64, 0.3])
def test_every_beginning_is_found_to_two_samples_whatever_the_sound_and_the_volume(volume: float) -> None:
    moments = between_samples(60)
    heard = onsets(recording(moments, 30, volume))
    assert len(heard) == len(moments)
    assert np.abs(heard - moments).max() < 2 * SAMPLE


def test_a_tone_that_goes_on_without_quiet_is_one_sound() -> None:
    assert len(onsets(recording([1.0, 1.1, 1.5], 2))) == 2


def test_a_rate_and_an_offset_are_taken_out_and_what_is_left_is_error() -> None:
    plan = np.array(between_samples(60))
    late = np.where(np.arange(60) == 30, 0.002, 0)
    heard = onsets(recording(list(7 + plan * (1 + 60e-6) + late), 40))
    matched = match(plan, heard)
    assert len(matched.missed) == len(matched.extra) == 0
    assert matched.rate == pytest.approx(1 + 60e-6, abs=5e-6)
    assert matched.error_ms(1) == pytest.approx(2, abs=0.15)
    assert matched.worst() == pytest.approx(plan[30])


def test_what_is_missing_and_what_is_too_many_is_named() -> None:
    plan = np.array(between_samples(40))
    heard = np.sort(np.append(np.delete(plan, 11), 9.05)) + 3
    matched = match(plan, heard)
    assert matched.missed.tolist() == [plan[11]]
    assert matched.extra.tolist() == pytest.approx([12.05])


def test_a_stroke_heard_twice_is_one_too_many() -> None:
    plan = np.array(between_samples(40))
    matched = match(plan, np.sort(np.append(plan, plan[7] + 0.03)))
    assert len(matched.extra) == 1


def test_hardly_any_sound_is_an_error_not_a_fit() -> None:
    with pytest.raises(ValueError, match="too few"):
        match(np.arange(10.0), np.array([3.0, 88.4]))


@pytest.mark.parametrize("lost_ms", [1, 5, 10, 20])
def test_samples_that_are_lost_are_a_stumble(lost_ms: int) -> None:
    tape = recording(between_samples(20), 10)
    lost = np.delete(tape, slice(5 * RATE, 5 * RATE + lost_ms * RATE // 1000))
    assert stumbles(tape) == []
    (stumble,) = stumbles(lost)
    assert stumble.at == pytest.approx(5, abs=0.5)
    assert stumble.by == pytest.approx((lost_ms / 1000 + 1 / 60) % (1 / 30) - 1 / 60, abs=2e-4)


def test_a_time_in_which_nothing_is_played_is_a_silence() -> None:
    tape = recording(between_samples(20), 10)
    tape[3 * RATE : 5 * RATE] = 0
    ((begun, over),) = silences(tape)
    assert (begun, over) == pytest.approx((3, 5), abs=0.1)
