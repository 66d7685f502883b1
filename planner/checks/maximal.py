"""Which bouts are all but maximal: flat out, or nearly, for as long as they last; and how to ease them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from planner.checks.bouts import Bout, bouts_above, in_one_go
from planner.checks.building import softened
from planner.checks.scene import Scene
from planner.endurance import MAXIMAL_SHARE
from planner.findings import Mend
from planner.plan import PartKind

BURST_SECONDS = 30
"""In a warm-up hard strokes of up to so many seconds are no piece: judgement [C]."""
JUST_BELOW = 0.01
"""Of 2 km power: what is softened stays by so much under the least that is maximal."""


def maximal_bouts(scene: Scene) -> Iterator[Bout]:
    """The bouts outside warm-ups that are all but maximal."""
    return bouts_above(scene, scene.hard_endurance.maximal)


def long_bursts(scene: Scene) -> Iterator[Bout]:
    """Maximal rowing in a warm-up that is longer than a burst."""
    for row in scene.rows:
        hard = row.share is not None and row.share >= MAXIMAL_SHARE and row.seconds > BURST_SECONDS
        if hard and row.segment.part == PartKind.WARM_UP:
            yield in_one_go([row])


def eased_all(scene: Scene, bouts: Iterable[Bout]) -> Mend:
    """Every block of the bouts at a pressure that is maximal in none of them."""
    lowest: dict[str, float] = {}
    for bout in bouts:
        most = scene.hard_endurance.maximal(bout.seconds, bout.metres) - JUST_BELOW
        lowest.update({place: min(most, lowest.get(place, most)) for place in bout.places})
    edits = (edit for place, most in lowest.items() for edit in softened(scene, place, most))
    return Mend("Take the pressure down", tuple(edits))
