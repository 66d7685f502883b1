"""Steps up in rate or effort that are too steep for the level."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from planner.athlete import Level
from planner.checks.building import RATE_STEP, SHARE_STEP, inserted, steps_up
from planner.checks.scene import Row, Scene
from planner.findings import Finding, Mend, Severity
from planner.plan import PartKind

_RATE_REASON = (
    "When the rate leaps, length and order of the stroke are lost: a few strokes between keep them."
)
_SHARE_REASON = "A warm-up prepares by rising: a few strokes between spare muscles and back the jolt."


def jump_too_steep(scene: Scene) -> Iterator[Finding]:
    """A block far above the one rowed right before it: in a warm-up; for novices also the rate in a piece."""
    told: set[str] = set()
    for before, after in pairwise(scene.rows):
        if not (before.is_rowed and after.is_rowed) or before.segment.part_index != after.segment.part_index:
            continue
        sentence = _too_steep(scene, before, after)
        if sentence and after.segment.place not in told:
            told.add(after.segment.place)
            by_rate = _rates(before, after) is not None and _leap(before, after) > RATE_STEP[scene.level]
            yield Finding(
                "jump-too-steep",
                Severity.ADVICE,
                after.segment.place,
                sentence,
                _RATE_REASON if by_rate else _SHARE_REASON,
                _mend(scene, before, after),
            )


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


def _mend(scene: Scene, before: Row, after: Row) -> Mend | None:
    """Strokes at rates and efforts in between."""
    rate = after.segment.stretch.rate or before.segment.stretch.rate
    if rate is None:
        return None
    low_rate = before.segment.stretch.rate or rate
    high = after.share if after.share is not None else before.share
    low = before.share if before.share is not None else high
    if low is None or high is None:
        low = high = 0.5
    between = steps_up((low_rate, low), (rate, high), scene.level)
    return Mend("Put a few strokes in between", inserted(between, after.segment.place)) if between else None
