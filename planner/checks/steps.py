"""Steps up in rate or effort that are too steep for the level."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from planner.athlete import Level
from planner.checks.building import RATE_STEP, SHARE_STEP, inserted, steps_up
from planner.checks.scene import Row, Scene
from planner.findings import Finding, Mend, Severity
from planner.plan import PartKind

_RATE_REASON = (
    "When the rate leaps, length and order of the stroke are lost: a few strokes between keep them."
)
_SHARE_REASON = "A warm-up prepares by rising: a few strokes between spare muscles and back the jolt."


class _Jump(NamedTuple):
    before: Row
    after: Row
    sentence: str


def jump_too_steep(scene: Scene) -> Iterator[Finding]:
    """A block far above the one rowed right before it: in a warm-up; for novices also the rate in a piece."""
    by_place: dict[str, list[_Jump]] = {}
    for jump in _jumps(scene):
        by_place.setdefault(jump.after.segment.place, []).append(jump)
    for place, jumps in by_place.items():
        before, after, sentence = max(jumps, key=lambda jump: (_leap(*jump[:2]), _rise(*jump[:2])))
        by_rate = _leap(before, after) > RATE_STEP[scene.level]
        yield Finding(
            "jump-too-steep",
            Severity.ADVICE,
            place,
            sentence,
            _RATE_REASON if by_rate else _SHARE_REASON,
            _mend(scene, [jump.before for jump in jumps], after),
        )


def _jumps(scene: Scene) -> Iterator[_Jump]:
    for before, after in pairwise(scene.rows):
        same_part = before.segment.part_index == after.segment.part_index
        if before.is_rowed and after.is_rowed and same_part and (told := _too_steep(scene, before, after)):
            yield _Jump(before, after, told)


def _too_steep(scene: Scene, before: Row, after: Row) -> str | None:
    in_warm_up = after.segment.part == PartKind.WARM_UP
    novice = scene.level is Level.NOVICE
    rates = _rates(before, after)
    if rates and _leap(before, after) > RATE_STEP[scene.level] and (in_warm_up or novice):
        return (
            f"{scene.named(after)} leaps from r{rates[0]} to r{rates[1]}: "
            f"more than {RATE_STEP[scene.level]} strokes a minute at once."
        )
    if not in_warm_up or before.share is None or after.share is None:
        return None
    if after.share - before.share > SHARE_STEP[scene.level]:
        low, high = (round(100 * share) for share in (before.share, after.share))
        return f"{scene.named(after)} leaps from {low} to {high} % of 2 km power."
    return None


def _rates(before: Row, after: Row) -> tuple[int, int] | None:
    rates = before.segment.stretch.rate, after.segment.stretch.rate
    return (rates[0], rates[1]) if rates[0] and rates[1] else None


def _leap(before: Row, after: Row) -> int:
    rates = _rates(before, after)
    return rates[1] - rates[0] if rates else 0


def _rise(before: Row, after: Row) -> float:
    return after.share - before.share if before.share is not None and after.share is not None else 0.0


def _mend(scene: Scene, befores: Sequence[Row], after: Row) -> Mend | None:
    """Strokes at rates and efforts in between, from the lowest of all that comes before it.

    In a repeat that may be the block in front of it the first time, and the last of a round from then on.
    """
    rates = [row.segment.stretch.rate for row in befores if row.segment.stretch.rate]
    rate = after.segment.stretch.rate or max(rates, default=None)
    if rate is None:
        return None
    shares = [row.share for row in befores if row.share is not None]
    high = after.share if after.share is not None else max(shares, default=0.5)
    low = min(shares, default=high)
    between = steps_up((min(rates, default=rate), low), (rate, high), scene.level)
    return Mend("Put a few strokes in between", inserted(between, after.segment.place)) if between else None
