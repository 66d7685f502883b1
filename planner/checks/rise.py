"""Before a hard piece: whether one is warm when it first gets hard, and has been at its work and its rate."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import takewhile

from planner.athlete import Room
from planner.checks.building import (
    EASY_RATE,
    added_to,
    asked_of,
    burst,
    easy,
    inserted,
    short_warm_up,
    steps_up,
    unforced,
    with_gap,
)
from planner.checks.scene import Row, Scene, share_of, top_of
from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.plan import Block, Gap, Part, PartKind, Pressure, Step
from planner.stretches import ROWED
from planner.units import told_time

WARM_AFTER = {Room.COLD: 300, Room.NORMAL: 180, Room.HOT: 180}
"""Seconds of rowing before the first hard stroke: muscles warm within 3-5 min (Saltin 1968; Bishop 2003, part
I, Sports Med 33:439-454 [M]); the lower end, in the cold the upper: judgement [C]."""
RISE_SHARE = 0.7
"""A warm-up comes at least to this part of what the piece asks: common practice [C]."""
RISE_ENOUGH = 0.8
"""Of 2 km power: more than this no warm-up has to reach, whatever follows: judgement [C]."""
RATE_SHORT = 3
"""Strokes a minute by which a warm-up may stay below the rate of the piece: judgement [C]."""
CALM_AFTER = 120
GAP_SECONDS = 300
"""Ideally about five minutes between warm-up and a maximal piece: common practice [C]."""

_COLD = (
    "Muscles take three to five minutes to get warm, and hard work on cold ones strains them and costs more "
    "breath."
)
_RISE = "The first strokes of hard work come easier when body and stroke have been there once before."


def hard_too_early(scene: Scene) -> Iterator[Finding]:
    """Hard rowing before one can be warm."""
    first = next((row for row in scene.rows if row.is_hard), None)
    if first is None or first.segment.part == PartKind.COOL_DOWN:
        return
    rowed = sum(row.seconds for row in scene.before(first))
    if rowed >= WARM_AFTER[scene.room] or (rowed == 0 and first.segment.part == PartKind.MAIN):
        return
    first_rowed = next(row for row in scene.rows if row.is_rowed)
    more = easy(WARM_AFTER[scene.room] - rowed)
    yield Finding(
        "hard-too-early",
        Severity.ADVICE,
        first.segment.place,
        f"{scene.named(first)} comes after only {told_time(round(rowed))} of rowing.",
        _COLD,
        Mend("Begin with more easy rowing", inserted([more], top_of(first_rowed.segment.place))),
    )


def no_warm_up(scene: Scene) -> Iterator[Finding]:
    """A hard piece before which nothing is rowed."""
    piece = scene.piece
    if piece is None or scene.before(piece):
        return
    yield Finding(
        "no-warm-up",
        Severity.ADVICE,
        piece.segment.place,
        f"Nothing is rowed before {scene.named(piece)}, and it is hard from the first stroke.",
        _COLD,
        Mend("Put a short warm-up before it", tuple(_whole_warm_up(scene, piece))),
    )


def _whole_warm_up(scene: Scene, piece: Row) -> Iterator[Edit]:
    """A warm-up in front of everything, and a gap unless there is one."""
    rate = piece.segment.stretch.rate or 24
    yield Edit(Op.ADD, "/parts/0", short_warm_up(rate, _wanted(piece), scene.level))
    if not any(isinstance(part, Gap) for part in scene.timeline.plan.parts[: piece.segment.part_index]):
        yield with_gap(GAP_SECONDS, "/parts/1")


def no_rise(scene: Scene) -> Iterator[Finding]:
    """A hard piece to which nothing has risen; or whose rate has not been tried."""
    piece = scene.piece
    if piece is None or piece.share is None:
        return
    before = scene.before(piece)
    if not before or sum(row.seconds for row in before) < WARM_AFTER[scene.room]:
        return
    highest = max((row.share for row in before if row.share is not None), default=0.0)
    if highest < _wanted(piece):
        yield Finding(
            "no-rise",
            Severity.ADVICE,
            piece.segment.place,
            f"{scene.named(piece)} asks for {_percent(piece.share)} of 2 km power, and nothing before it for "
            f"more than {_percent(highest)}.",
            _RISE,
            Mend("Add a burst before it", _burst_before(scene, piece, piece.segment.stretch.rate or 24)),
        )
    else:
        yield from _rate_not_tried(scene)


def _rate_not_tried(scene: Scene) -> Iterator[Finding]:
    """The first hard block of the main part that goes beyond every rate rowed before it."""
    highest = 0
    for row in takewhile(lambda row: row.segment.part != PartKind.COOL_DOWN, scene.rows):
        rate = row.segment.stretch.rate or 0
        if row.segment.part == PartKind.MAIN and row.is_hard and highest and rate > highest + RATE_SHORT:
            yield Finding(
                "peak-rate-not-reached",
                Severity.ADVICE,
                row.segment.place,
                f"{scene.named(row)} is rowed at r{rate}, but nothing before it goes above r{highest}.",
                "A rate that has not been tried that day costs length and calm when it is needed.",
                Mend(f"Add a burst at r{rate} before it", _burst_before(scene, row, rate)),
            )
            return
        if row.segment.stretch.kind in ROWED:
            highest = max(highest, rate)


def _burst_before(scene: Scene, piece: Row, rate: int) -> tuple[Edit, ...]:
    """A burst at the end of the warm-up, easy rowing after it; without a warm-up before the piece itself."""
    last = scene.before(piece)[-1].segment
    parts = scene.timeline.plan.parts
    warm_up = parts[last.part_index]
    if isinstance(warm_up, Part) and warm_up.kind is PartKind.WARM_UP:
        led_to = [row for row in scene.before(piece) if row.segment.part_index <= last.part_index]
        steps = _risen(scene, led_to, burst(rate, _wanted(piece), scene.level))
        return added_to(warm_up, f"/parts/{last.part_index}", steps)
    place = top_of(piece.segment.place)
    first = next(row for row in scene.rows if top_of(row.segment.place) == place)
    top = unforced(burst(rate, _wanted(piece), scene.level), _wanted(piece), scene.level)
    return inserted(_risen(scene, scene.before(first), top), place)


def _risen(scene: Scene, led_to: Sequence[Row], top: Block) -> list[Step]:
    """A burst as a body may come to it: warm, up by steps from what is rowed before it, and down again."""
    rowed = sum(row.seconds for row in led_to)
    warming = [easy(WARM_AFTER[scene.room] - rowed)] if rowed < WARM_AFTER[scene.room] else []
    start = (EASY_RATE, share_of(Pressure.LIGHT, EASY_RATE, scene.level))
    if not warming:
        last = led_to[-1]
        start = (last.segment.stretch.rate or EASY_RATE, last.share or start[1])
    end = (top.rate or EASY_RATE, asked_of(top, scene.level))
    return [*warming, *steps_up(start, end, scene.level), top, easy(CALM_AFTER)]


def _wanted(piece: Row) -> float:
    return min(RISE_SHARE * (piece.share or 0.0), RISE_ENOUGH)


def _percent(share: float) -> str:
    return f"{round(100 * share)} %"
