"""How whole strokes and whole seconds go together: lengths and counts at which both come out even."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import product

UNIT_SECONDS = 30
"""Half a minute holds whole strokes at every even rate."""
RUNG_STROKES = range(3, 8)
"""How many strokes at each rate on the way up to the last one."""
RUNG_WANTED = 4
LEAST_STROKES = 4
"""Fewer at the last rate would be over before they are felt."""
_SPREAD = 10


@dataclass(frozen=True, slots=True)
class Burst:
    """Strokes at each rate in turn, last the quickest, and the easy rowing that fills the slot after them."""

    counts: tuple[tuple[int, int], ...]
    easy_seconds: int
    easy_rate: int


def is_whole(seconds: int, rate: int) -> bool:
    """Whether so many seconds hold whole strokes at this rate."""
    return seconds * rate % 60 == 0


def shared_out(seconds: int, weights: Sequence[int]) -> tuple[int, ...]:
    """The seconds in half minutes by weight, at least one for each as long as there are enough.

    `seconds` has to be a multiple of 30. Where there are fewer half minutes than weights, the last ones get
    nothing.
    """
    units = seconds // UNIT_SECONDS
    kept = list(weights[:units])
    given = [1] * len(kept)
    for _ in range(units - len(kept)):
        poorest = max(range(len(kept)), key=lambda i: (Fraction(kept[i], given[i]), -i))
        given[poorest] += 1
    return tuple(unit * UNIT_SECONDS for unit in given)


@lru_cache(maxsize=512)
def burst_in(
    room: int, rates: tuple[int, ...], strokes: int, least_easy: int, easy_rates: tuple[int, ...]
) -> Burst:
    """The burst nearest to so many strokes at the last rate that leaves whole easy strokes to its room.

    `room` and `least_easy` in seconds. Raises ValueError when no count of strokes comes out even.
    """
    nearest = min(_bursts(room, rates, strokes, least_easy, easy_rates), default=None)
    if nearest is None:
        raise ValueError(f"no whole strokes at {rates} fit into {room} s with {least_easy} s of easy rowing")
    return nearest[1]


def _bursts(
    room: int, rates: tuple[int, ...], strokes: int, least_easy: int, easy_rates: tuple[int, ...]
) -> Iterator[tuple[tuple[int, tuple[int, ...]], Burst]]:
    """Every burst that comes out even, with how far it lies from the one that was wanted."""
    peaks = range(max(LEAST_STROKES, strokes - _SPREAD), strokes + _SPREAD + 1)
    for counts in product(*[RUNG_STROKES] * (len(rates) - 1), peaks):
        lasts = sum(Fraction(60 * count, rate) for count, rate in zip(counts, rates, strict=True))
        easy = room - lasts
        if easy.denominator != 1 or easy < least_easy:
            continue
        easy_rate = next((rate for rate in easy_rates if is_whole(int(easy), rate)), None)
        if easy_rate is not None:
            away = 2 * abs(counts[-1] - strokes) + sum(abs(count - RUNG_WANTED) for count in counts[:-1])
            yield (away, counts), Burst(tuple(zip(counts, rates, strict=True)), int(easy), easy_rate)
