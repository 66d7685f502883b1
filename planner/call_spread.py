"""Where in a block its calls fall: each said whole on a catch, well apart, and not too far apart."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import ceil

from planner.calls import WORDS_A_MINUTE, spoken_seconds
from planner.focus_points import TechnicalCall
from planner.limits import BLOCK_STROKES, CALLS_IN_BLOCK
from planner.plan import Call
from planner.strokes import Strokes

OPENING_SECONDS = 8
"""A block begins with the change itself: the first call waits until it has settled [C]."""
CLOSING_SECONDS = 10
"""The end of a block belongs to the voice that names the next one, 6 to 10 s ahead (design 3)."""
APART_SECONDS = 45
"""From one call to the next: time to try what was said [C]."""
QUIET_SECONDS = 150
"""Longer than this nobody rows without hearing a word, as far as there are calls: judgement [C]."""
TURNS = 4
"""In a set a call comes again after so many repetitions, or sooner where there are too few calls [C]."""


def spread(
    own: Sequence[TechnicalCall],
    strokes: Strokes,
    *,
    more: Sequence[TechnicalCall] = (),
    times: int = 1,
    words_a_minute: int = WORDS_A_MINUTE,
) -> tuple[Call, ...]:
    """The calls of a focus over a block of these strokes; where they are too few, `more` after them.

    Nothing is said in the first 8 s or the last 10 s, so a short burst has no call at all, nor after the last
    stroke that a plan can count to. Of a block that is rowed several `times` those at one stroke take turns.
    """
    pool = (*own, *more)
    if not pool:
        return ()
    room = _room(pool, strokes, words_a_minute)
    if room < 0:
        return ()
    apart, quiet = int(room // APART_SECONDS), ceil(room / QUIET_SECONDS)
    count = max(1, min(len(pool), CALLS_IN_BLOCK, apart, max(len(own), quiet)))
    turns = max(1, min(times, TURNS, CALLS_IN_BLOCK // count, len(pool) // count))
    return tuple(
        Call(
            pool[turn * count + index].text,
            stroke=_stroke_from(OPENING_SECONDS + index * room / count, strokes),
        )
        for index in range(count)
        for turn in range(turns)
    )


def _room(pool: Sequence[TechnicalCall], strokes: Strokes, words_a_minute: int) -> Fraction:
    """Seconds from the first moment at which a call may begin to the last."""
    longest = max(spoken_seconds(call.text, words_a_minute) for call in pool)
    end = min(strokes.duration - CLOSING_SECONDS - longest, strokes.catch(int(BLOCK_STROKES.high)))
    return end - OPENING_SECONDS - strokes.stroke


def _stroke_from(seconds: Fraction, strokes: Strokes) -> int:
    """The first stroke whose catch falls at that second or later."""
    return 1 - int(-seconds // strokes.stroke)
