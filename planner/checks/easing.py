"""The hardest effort for some blocks that the reserve outlasts: the mend of what cannot be held."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, floor

from planner import reserve
from planner.capacity import Capacity, Purse
from planner.checks.scene import Row, Scene
from planner.demand import Run
from planner.findings import Edit, Mend, Op
from planner.limits import SPLIT, SPLIT_OFFSET, TWO_K_POWER
from planner.plan import Effort, Split, SplitOffset, TwoKPower
from planner.stretches import Ends
from planner.units import split_clock

_BISECTIONS = 24


def by_models(runs: Sequence[Run], purse: Purse, capacity: Capacity) -> tuple[list[float], ...]:
    """The share of W' left after each run by every model."""
    return reserve.by_every_model(runs, purse, reserve.tau_for(runs, purse, capacity))


def eased(scene: Scene, places: Sequence[str], most: float) -> Mend | None:
    """The hardest share up to `most` for the blocks at these places, in the words of each.

    It leaves the median model something to the last stroke of them. None where no share does.
    """
    share = _hardest(scene, places, most)
    if share is None:
        return None
    efforts = {place: _effort_at(scene, place, share) for place in places}
    edits = tuple(_edit(scene, place, effort) for place, effort in efforts.items() if effort is not None)
    if len(edits) < len(efforts):
        return None
    return Mend(f"Row it at {_told(efforts[places[0]])}", edits)


def _hardest(scene: Scene, places: Sequence[str], most: float) -> float | None:
    low, high = min(most, scene.capacity.critical), most
    if _lasts(scene, places, high):
        return high
    if not _lasts(scene, places, low):
        return None
    for _ in range(_BISECTIONS):
        middle = (low + high) / 2
        low, high = (middle, high) if _lasts(scene, places, middle) else (low, middle)
    return low


def _lasts(scene: Scene, places: Sequence[str], share: float) -> bool:
    """Whether the reserve outlasts all that is rowed at some places, if it is rowed at this share."""
    pairs = list(zip(scene.rows, scene.runs, strict=True))
    runs = [_at_share(row, run, share) if row.segment.place in places else run for row, run in pairs]
    left = reserve.medians(by_models(runs, scene.capacity.middle, scene.capacity))
    return all(
        balance >= 0 for (row, _), balance in zip(pairs, left, strict=True) if row.segment.place in places
    )


def _at_share(row: Row, run: Run, share: float) -> Run:
    """The run at another share: metres take longer in proportion to the cube root."""
    if run.share == 0:
        return run
    by_metres = row.segment.stretch.ends is Ends.METRES
    return Run(share, run.seconds * (run.share / share) ** (1 / 3) if by_metres else run.seconds)


def _edit(scene: Scene, place: str, effort: Effort) -> Edit:
    return Edit(Op.ADD if scene.block(place).effort is None else Op.REPLACE, f"{place}/effort", effort)


def _effort_at(scene: Scene, place: str, share: float) -> Effort | None:
    """The effort at a share or just below it, in the words of the block where it names a split."""
    two_k = scene.timeline.two_k
    effort = scene.block(place).effort
    if two_k and isinstance(effort, Split | SplitOffset):
        tenths = ceil(float(two_k.split) * share ** (-1 / 3) * 10 - 1e-6)
        split = Fraction(tenths, 10)
        if isinstance(effort, Split):
            return Split(split) if SPLIT.complaint(split) is None else None
        offset = split - two_k.split
        return SplitOffset(offset) if SPLIT_OFFSET.complaint(offset) is None else None
    fraction = Fraction(floor(share * 100), 100)
    return TwoKPower(fraction) if TWO_K_POWER.complaint(fraction) is None else None


def _told(effort: Effort | None) -> str:
    match effort:
        case Split(seconds):
            return f"{split_clock(seconds)} per 500 m"
        case SplitOffset(seconds):
            return f"2 km split {float(seconds):+.1f} s"
        case TwoKPower(fraction):
            return f"{round(fraction * 100)} % of 2 km power"
        case _:
            return "less"
