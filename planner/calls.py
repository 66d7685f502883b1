"""When a coach's calls fall in a block, and which of them can be spoken there."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from operator import itemgetter

from planner.expansion import Repetition
from planner.plan import Call
from planner.strokes import Strokes

WORDS_A_MINUTE = 150
"""An unhurried speaking voice, unless another is asked for: common practice [C]."""
SHORTEST_CALL = Fraction(1)
START = Fraction(0)
COACH_RANK = 2
"""Calls of the plan yield to announcements of a change, which have rank 1."""


@dataclass(frozen=True, slots=True)
class PlacedCall:
    """A call in its segment: `at` and `seconds` in seconds, `at` from the segment's start."""

    text: str
    at: Fraction
    seconds: Fraction
    stroke: int | None
    rank: int = COACH_RANK


@dataclass(frozen=True, slots=True)
class Misfit:
    """A call that was left out, and why."""

    call: Call
    sentence: str


@lru_cache(maxsize=4096)
def spoken_seconds(text: str, words_a_minute: int = WORDS_A_MINUTE) -> Fraction:
    """How many seconds a text takes to say."""
    return max(SHORTEST_CALL, Fraction(len(text.split()) * 60, words_a_minute))


def calls_of(calls: Sequence[Call], repetition: Repetition | None) -> tuple[Call, ...]:
    """The calls of one repetition: of those written at the same stroke each has its turn.

    Those that no repetition is left for stay in the first one, where they do not fit. Outside a repeat all
    are left as they are.
    """
    if repetition is None:
        return tuple(calls)
    here: list[Call] = []
    for same in _by_stroke(calls):
        here.append(same[(repetition.number - 1) % len(same)])
        if repetition.number == 1:
            here.extend(same[repetition.times :])
    return tuple(here)


def take_turns(calls: Sequence[Call]) -> bool:
    """Whether any of them are written at the same stroke."""
    return len(_by_stroke(calls)) < len(calls)


def _by_stroke(calls: Sequence[Call]) -> list[list[Call]]:
    found: dict[tuple[int | None, int | None], list[Call]] = {}
    for call in calls:
        counted = call.stroke if call.strokes_left is not None else call.stroke or 1
        found.setdefault((counted, call.strokes_left), []).append(call)
    return list(found.values())


def place_calls(
    calls: Sequence[Call],
    strokes: Strokes | None,
    duration: Fraction,
    *,
    length_known: bool,
    words_a_minute: int = WORDS_A_MINUTE,
) -> tuple[tuple[PlacedCall, ...], tuple[Misfit, ...]]:
    """Puts calls on their strokes, in order; what cannot be said there whole is a misfit.

    With an unknown length nothing can be counted back from the end, and nothing is too late.
    """
    if not calls:
        return (), ()
    placed: list[PlacedCall] = []
    misfits: list[Misfit] = []
    free = START
    for call, stroke in sorted([(c, _stroke_of(c, strokes)) for c in calls], key=itemgetter(1)):
        if sentence := _trouble(call, stroke, strokes, length_known):
            misfits.append(Misfit(call, sentence))
            continue
        at = strokes.catch(stroke) if strokes and stroke > 1 else START
        seconds = spoken_seconds(call.text, words_a_minute)
        end = at + seconds
        if placed and at < free:
            misfits.append(Misfit(call, f'it would begin while "{placed[-1].text}" is still being said'))
        elif length_known and end > duration:
            misfits.append(Misfit(call, "it would still be going on when the block ends"))
        else:
            placed.append(PlacedCall(call.text, at, seconds, stroke if strokes else None))
            free = end
    return tuple(placed), tuple(misfits)


def _stroke_of(call: Call, strokes: Strokes | None) -> int:
    if call.strokes_left is not None:
        return (strokes.count if strokes else 0) - call.strokes_left + 1
    return call.stroke or 1


def _trouble(call: Call, stroke: int, strokes: Strokes | None, length_known: bool) -> str | None:
    counted = call.stroke is not None or call.strokes_left is not None
    if counted and strokes is None:
        return "the block has no rate, so its strokes cannot be counted"
    if call.strokes_left is not None and not length_known:
        return "the block's length is not known, so its last strokes cannot be counted"
    if strokes and length_known and not 1 <= stroke <= strokes.count:
        return f"the block has only {strokes.count} strokes"
    return None
