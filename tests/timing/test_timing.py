"""Every stroke is heard at its moment, in recordings of what Chromium really plays.

An idle page and a blocked one: the short form of `make timing`.
"""

from __future__ import annotations

import os

import numpy as np
import pytest

from tests.timing.disturbances import both_blocks
from tests.timing.judging import ERROR_MS, PICTURE_MIDDLE_MS
from tests.timing.plans import SHORT
from tests.timing.recording import Disturbance, Recording, record


def undisturbed(_: object) -> None:
    """Nothing happens to the page."""


@pytest.mark.parametrize("disturb", [undisturbed, both_blocks])
def test_every_stroke_is_heard_once_and_within_a_tenth_of_a_millisecond(disturb: Disturbance) -> None:
    recording = recorded_without_stumbling(disturb)
    matched = recording.matched()
    assert matched.missed.tolist() == []
    assert matched.extra.tolist() == []
    assert recording.put_twice() == 0
    assert matched.error_ms(0.99) <= ERROR_MS
    assert abs(np.median(recording.picture_ms())) <= PICTURE_MIDDLE_MS
    assert recording.problems == []


def recorded_without_stumbling(disturb: Disturbance) -> Recording:
    """The recording; once more if the machine lost some of it. Where it is too busy, nothing can be said."""
    for _ in range(2):
        recording = record(SHORT, disturb)
        if not recording.stumbles:
            return recording
    busy = recording.load > (os.cpu_count() or 1)
    if busy or not recording.at_once:
        pytest.skip(
            f"the machine lost {len(recording.stumbles)} pieces of sound: it is too busy to time anything"
        )
    return recording
