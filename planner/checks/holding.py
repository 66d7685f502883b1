"""Whether what is asked can be held: short hard work against the reserve, long work against predictions."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from math import inf

from planner import reserve
from planner.advised_gap import RESERVE_WANTED
from planner.capacity import Capacity, CapacityBasis
from planner.checks.bouts import bouts_above, in_one_go, together
from planner.checks.easing import by_models, eased
from planner.checks.scene import Row, Scene
from planner.critical_power import MODEL_SECONDS
from planner.demand import Run
from planner.endurance import Endurance
from planner.findings import Finding, Severity
from planner.plan import PartKind
from planner.prediction import tenths_of
from planner.units import split_clock, told_time

OVERDRAWN = {CapacityBasis.FIT: -0.05, CapacityBasis.RESULT: -0.2, CapacityBasis.LEVEL: -0.2}
"""How far below an empty reserve the median model goes before a word is said, as a share of W': a fitted one
is not known better (one more trial moved it by 29 %: Hill 2003, facts 3.2), and one assumed for the level may
be off by a third; judgement [C]."""
LONG_SECONDS = MODEL_SECONDS[1]
"""Longer work is held against predictions: critical power describes it no more, and is no pace for hours."""
QUICKER = 1.02**3
"""How far above the predicted power of long work a word is said: 2 % of its time, by which the customs differ
between rowers; judgement [C]."""
ROUNDED = 1.01
"""How far above the predicted power a target may come by tenths of a split and by its pacing: a third of a
percent of the time [=]."""

_Predicted = Callable[[Endurance, float, int | None], float]

_HELD = (
    "All models of the reserve come from cycling and differ; this is the middle one, with what is known of "
    "the rower. Who has held it before knows better."
)
_LONG = (
    "Of more than a quarter of an hour the reserve says too little, so it is held against predictions. Who "
    "has held it before knows better."
)


def cannot_be_held(scene: Scene) -> Iterator[Finding]:
    """The first long work quicker than predicted; without any, the first block that overdraws the reserve.

    Of a warm-up `warm-up-spends-too-much` speaks.
    """
    found = next(_too_long(scene), None) or next(_overdrawn(scene), None)
    if found:
        yield found


def _too_long(scene: Scene) -> Iterator[Finding]:
    """Long work that asks for more than is predicted, by the likely and by the kindest prediction."""
    for bout in bouts_above(scene, partial(_allowed, scene, Endurance.likely)):
        if any(row.guessed for row in bout.rows):
            continue
        never = bout.share > _allowed(scene, Endurance.kindest, bout.seconds, bout.metres)
        likely = scene.endurance.likely(bout.seconds, bout.metres)
        yield Finding(
            "cannot-be-held",
            Severity.WARNING if never else Severity.ADVICE,
            bout.places[0],
            f"{together(scene, bout)} asks for more than there is: {_pace(scene, bout.share)}, where "
            f"{'your results point' if scene.endurance.known else 'the level points'} to about "
            f"{_pace(scene, likely)} for so long{', and not even the kindest to this' if never else ''}.",
            _LONG,
            eased(scene, bout.places, min(bout.share, likely)),
        )


def _allowed(scene: Scene, share: _Predicted, seconds: float, metres: int | None) -> float:
    """The most before a word is said, by all results or by those rowed hard; short work is not judged."""
    if seconds <= LONG_SECONDS:
        return inf
    return QUICKER * max(share(each, seconds, metres) for each in (scene.endurance, scene.hard_endurance))


def _pace(scene: Scene, share: float) -> str:
    two_k = scene.timeline.two_k
    if two_k is None:
        return f"{round(100 * share)} % of 2 km power"
    return f"{split_clock(tenths_of(float(two_k.split) * share ** (-1 / 3)))} per 500 m"


def _overdrawn(scene: Scene) -> Iterator[Finding]:
    """Each block in which more is spent than there is, by the median model or in the end by the kindest."""
    middle, kindest = _balances(scene.runs, scene.capacity)
    least = OVERDRAWN[scene.capacity.basis]
    for row in scene.rows:
        index = row.segment.index
        if not _may_overdraw(scene, row) or (middle[index] >= least and kindest[index] >= 0):
            continue
        if _is_predicted(scene, row, middle):
            continue
        place = row.segment.place
        never = any(kindest[s.index] < 0 for s in scene.at(place))
        yield Finding(
            "cannot-be-held",
            Severity.WARNING if never else Severity.ADVICE,
            place,
            f"{scene.named(row)} asks for more than there is: {_when(row)} the reserve for hard work is gone"
            f"{', and even the kindest model has none left at its end' if never else ''}.",
            _HELD,
            eased(scene, (place,), _most_at(scene, row)),
        )


def _most_at(scene: Scene, row: Row) -> float:
    share = row.share or 0.0
    if row.seconds <= LONG_SECONDS:
        return share
    return min(share, scene.endurance.likely(row.seconds, row.segment.stretch.metres_asked))


def _may_overdraw(scene: Scene, row: Row) -> bool:
    if row.share is None or row.guessed or row.segment.part == PartKind.WARM_UP:
        return False
    return row.share > scene.capacity.critical


def _is_predicted(scene: Scene, row: Row, middle: Sequence[float]) -> bool:
    """Whether all that is rowed in one go up to here, begun with a whole reserve, is no more than results
    predict: they know the rower better than the models do."""
    begun = row.segment.index
    while begun and _goes_on(scene.rows[begun - 1], row):
        begun -= 1
    if begun and middle[begun - 1] < RESERVE_WANTED:
        return False
    bout = in_one_go(scene.rows[begun : row.segment.index + 1])
    likely = (each.likely(bout.seconds, bout.metres) for each in (scene.endurance, scene.hard_endurance))
    return bout.share <= ROUNDED * max(likely)


def _goes_on(before: Row, row: Row) -> bool:
    return before.share is not None and before.segment.part_index == row.segment.part_index


def _balances(runs: Sequence[Run], capacity: Capacity) -> tuple[list[float], list[float]]:
    """After each run the share of W' left by the median model, and by the kindest model and capacity."""
    middle = reserve.medians(by_models(runs, capacity.middle, capacity))
    purses = (capacity.middle, *capacity.corners)
    every = [model for purse in purses for model in by_models(runs, purse, capacity)]
    return middle, [max(row) for row in zip(*every, strict=True)]


def _when(row: Row) -> str:
    round_ = row.segment.repetition
    if round_ and round_.times > 1:
        return f"in repetition {round_.number} of {round_.times}"
    return f"before its end, {told_time(round(float(row.segment.end)))} into the session,"
