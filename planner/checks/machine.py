"""The machine and the drills on it: a heavy setting, one-sided drills that are too long or too quick."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from planner.checks.building import whole_stroke_seconds
from planner.checks.scene import Row, Scene
from planner.drills import KnownDrill, drill_named
from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.limits import SIDE_SECONDS
from planner.plan import Block, ForSeconds, Setting
from planner.units import told_time

HEAVY_LEVER = 7
HEAVY_DRAG = 150
"""From here on a setting is heavy: a mid lever is the usual start, training uses drag factors of about 110 to
140, all common practice [C] (facts 1.2)."""
MIDDLE_LEVER, MIDDLE_DRAG = 4, 125
LOW_RATE = 22
LOW_RATE_SECONDS = 120
LONG_SECONDS = 600
"""Rowing at a low rate and in all, from which a heavy setting is worth a word: judgement [C]."""
_HEAVY = (
    "A heavy wheel loads the lower back with every stroke, most of all at low rates and over a long time; it "
    "does not make anyone stronger or quicker. Whoever runs the room may know better."
)


def heavy_setting(scene: Scene) -> Iterator[Finding]:
    """Each setting that is heavy for low-rate or for long work."""
    by_place: dict[str, list[Row]] = {}
    for row in scene.rows:
        if row.is_rowed:
            place = row.segment.place if row.segment.stretch.setting else ""
            by_place.setdefault(f"{place}/setting", []).append(row)
    for place, rows in by_place.items():
        setting = rows[0].segment.stretch.setting or scene.timeline.plan.setting
        if setting and _is_heavy(setting) and (work := _work(rows)):
            yield Finding(
                "heavy-setting",
                Severity.ADVICE,
                place,
                f"{_named(setting)} is heavy for {work}.",
                _HEAVY,
                _lighter(setting, place),
            )


def _is_heavy(setting: Setting) -> bool:
    return (setting.lever or 0) >= HEAVY_LEVER or (setting.drag_factor or 0) >= HEAVY_DRAG


def _work(rows: list[Row]) -> str | None:
    """The work that a heavy setting is too much for, in words."""
    low = sum(row.seconds for row in rows if (row.segment.stretch.rate or LOW_RATE + 1) <= LOW_RATE)
    everything = sum(row.seconds for row in rows)
    if low >= LOW_RATE_SECONDS:
        return f"{told_time(round(low))} of rowing at r{LOW_RATE} and below"
    return f"{told_time(round(everything))} of rowing" if everything >= LONG_SECONDS else None


def _named(setting: Setting) -> str:
    return f"Lever {setting.lever}" if setting.lever is not None else f"Drag factor {setting.drag_factor}"


def _lighter(setting: Setting, place: str) -> Mend:
    if setting.lever is not None:
        return Mend(f"Set the lever to {MIDDLE_LEVER}", (Edit(Op.REPLACE, f"{place}/lever", MIDDLE_LEVER),))
    edit = Edit(Op.REPLACE, f"{place}/drag_factor", MIDDLE_DRAG)
    return Mend(f"Set the drag factor to {MIDDLE_DRAG}", (edit,))


def one_sided_drill(scene: Scene) -> Iterator[Finding]:
    """Drills on one foot or arm that go on longer on a side, or at a higher rate, than the library says."""
    told: set[str] = set()
    for row in scene.rows:
        turn, place = row.segment.stretch.drill, row.segment.place
        drill = drill_named(turn.name) if turn and not turn.swap else None
        if drill is None or drill.sides is None or place in told:
            continue
        told.add(place)
        yield from _too_long(scene, row, drill, drill.sides.most_seconds)
        yield from _too_quick(scene, row, drill)


def _too_long(scene: Scene, row: Row, drill: KnownDrill, most: int) -> Iterator[Finding]:
    if row.seconds <= most:
        return
    yield Finding(
        "one-sided-drill-too-long",
        Severity.ADVICE,
        row.segment.place,
        f"{told_time(round(row.seconds))} on a side is long for the drill {drill.name}: {most} s will do.",
        drill.caution,
        _shorter(scene.block(row.segment.place), row.segment.place, most),
    )


def _shorter(block: Block, place: str, most: int) -> Mend | None:
    step = whole_stroke_seconds(block.rate) if block.rate else 1
    seconds = max(most // step * step, 0) or most
    if not isinstance(block.length, ForSeconds) or SIDE_SECONDS.complaint(seconds):
        return None
    length = Edit(Op.REPLACE, f"{place}/for/seconds", seconds)
    if block.drill and block.drill.sides:
        total = replace(block.drill, side_seconds=seconds).total_seconds
        sides = Edit(Op.REPLACE, f"{place}/drill/side_seconds", seconds)
        return Mend(f"Make each side {seconds} s", (sides, replace(length, value=total)))
    return Mend(f"Make it {seconds} s", (length,))


def _too_quick(scene: Scene, row: Row, drill: KnownDrill) -> Iterator[Finding]:
    low, high = drill.rates
    rate = row.segment.stretch.rate
    if rate is None or rate <= high:
        return
    yield Finding(
        "one-sided-drill-too-quick",
        Severity.ADVICE,
        row.segment.place,
        f"r{rate} is quick for the drill {drill.name}: it is meant for r{low} to r{high}.",
        drill.caution,
        Mend(f"Row it at r{high}", (Edit(Op.REPLACE, f"{row.segment.place}/rate", high),)),
    )
