"""Which bouts are all but maximal: flat out, or nearly, for as long as they last."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.bouts import Bout, bouts_above
from planner.checks.scene import Scene
from planner.demand import holdable_share

MAXIMAL_SHARE = 0.95
"""From this share of what can be held for so long on, never more than 2 km power, work is all but maximal:
judgement [C]."""


def maximal_bouts(scene: Scene) -> Iterator[Bout]:
    """The bouts outside warm-ups that are all but maximal."""
    return bouts_above(scene, lambda seconds, metres: maximal_from(scene, seconds, metres))


def maximal_from(scene: Scene, seconds: float, metres: int | None = None) -> float:
    """The share of 2 km power above which so long a bout is all but maximal.

    By the law of times and distances, or by the rower's own longer results where they come to less.
    """
    if not seconds:
        return MAXIMAL_SHARE
    held = holdable_share(seconds, 4 * float(scene.endurance.two_k_split))
    return MAXIMAL_SHARE * min(held, scene.hard_endurance.likely(seconds, metres))
