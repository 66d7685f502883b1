"""Which bouts are all but maximal: flat out, or nearly, for as long as they last."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.bouts import Bout, bouts_above
from planner.checks.scene import Scene


def maximal_bouts(scene: Scene) -> Iterator[Bout]:
    """The bouts outside warm-ups that are all but maximal."""
    return bouts_above(scene, scene.hard_endurance.maximal)
