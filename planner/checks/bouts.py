"""What is rowed in one go, however a plan cuts it: blocks without a rest between, and sets like one piece."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import groupby
from typing import NamedTuple

from planner.checks.scene import Row, Scene, top_of
from planner.endurance import repetitions_alike
from planner.plan import PartKind


class Bout(NamedTuple):
    """Hard rows that belong together, and the one piece that they are like.

    `share` is their mean of 2 km power; the piece lasts `seconds`, and has `metres` where all rows do.
    """

    rows: tuple[Row, ...]
    share: float
    seconds: float
    metres: int | None

    @property
    def places(self) -> tuple[str, ...]:
        """Where in the plan its rows come from, each once."""
        return tuple(dict.fromkeys(row.segment.place for row in self.rows))


Limit = Callable[[float, int | None], float]
"""The share of 2 km power that is allowed for a piece of so many seconds, and metres where it has them."""


def bouts_above(scene: Scene, limit: Limit) -> Iterator[Bout]:
    """Bouts outside warm-ups whose mean share lies above the limit for their length."""
    for frame in _frames(scene.rows):
        rowed = [row for row in frame if row.share is not None]
        least = limit(sum(row.seconds for row in rowed), _metres(rowed))
        runs = list(_runs(frame, least))
        for bout in (*map(in_one_go, runs), *([_as_a_set(runs, frame)] if len(runs) > 1 else [])):
            if bout.share > limit(bout.seconds, bout.metres):
                yield bout


def _frames(rows: Sequence[Row]) -> Iterator[list[Row]]:
    """Everything that is rowed without a rest, and every repeat that stands in a part."""
    for _, part in groupby((r for r in rows if r.segment.part != PartKind.WARM_UP), key=_part):
        here = list(part)
        yield from (list(rows) for known, rows in groupby(here, key=_is_known) if known)
        for top, step in groupby(here, key=lambda row: top_of(row.segment.place)):
            steps = list(step)
            if steps[0].segment.place != top:
                yield steps


def _part(row: Row) -> int:
    return row.segment.part_index


def _is_known(row: Row) -> bool:
    return row.share is not None


def _runs(rows: Sequence[Row], least: float) -> Iterator[list[Row]]:
    """The stretches of rows above a share."""
    for above, run in groupby(rows, key=lambda row: (row.share or 0.0) > least):
        if above:
            yield list(run)


def together(scene: Scene, bout: Bout) -> str:
    """A bout by its first block, as its writer sees it."""
    name = scene.named(bout.rows[0])
    return name if len(bout.places) == 1 else f"What begins with {name}"


def in_one_go(run: Sequence[Row]) -> Bout:
    """Rows that follow each other as one bout."""
    return Bout(tuple(run), _mean_share(run), sum(row.seconds for row in run), _metres(run))


def _as_a_set(runs: Sequence[Sequence[Row]], frame: Sequence[Row]) -> Bout:
    """All runs with what lies between them taken for rest, as the piece that they are like."""
    rows = [row for run in runs for row in run]
    work = sum(row.seconds for row in rows)
    first, last = rows[0].segment.index, rows[-1].segment.index
    between = sum(row.seconds for row in frame if first <= row.segment.index <= last) - work
    alike = repetitions_alike(len(runs), work / len(runs), between / (len(runs) - 1)) / len(runs)
    metres = _metres(rows)
    alike_metres = round(metres * alike) if metres is not None else None
    return Bout(tuple(rows), _mean_share(rows), work * alike, alike_metres)


def _mean_share(rows: Sequence[Row]) -> float:
    return sum((row.share or 0.0) * row.seconds for row in rows) / sum(row.seconds for row in rows)


def _metres(rows: Sequence[Row]) -> int | None:
    asked = [row.segment.stretch.metres_asked for row in rows]
    known = [metres for metres in asked if metres is not None]
    return sum(known) if known and len(known) == len(asked) else None
