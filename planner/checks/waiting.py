"""The wait before the piece: its length, and what stands right before it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planner import warmth
from planner.advised_gap import CALM_BEFORE, FAIRLY_WARM, LEAST_GAP, RESERVE_WANTED, Wait
from planner.checks.building import added_to, asked_of, easy, inserted, softened, with_gap
from planner.checks.ease import EASY_TOP
from planner.checks.maximal import BURST_SECONDS
from planner.checks.rise import WARM_AFTER
from planner.checks.scene import Row, Scene, top_of
from planner.demand import Run
from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.plan import Part, PartKind
from planner.readiness import Readiness
from planner.stretches import Kind
from planner.units import told_time

SPENT_AT_START = 0.85
"""Starting a piece with less of W' than this by the median model is worth a warning: judgement [C]."""
MOST_EASY = 900
"""Seconds of easy rowing that a mend adds at most: after a quarter of an hour warmth rises no more [M]."""


def gap_length(scene: Scene) -> Iterator[Finding]:
    """A gap that is shorter or longer than readiness advises, or a warm-up after which none would do."""
    ready = scene.readiness
    if ready is None:
        return
    if ready.wait is Wait.OVERSPENT:
        yield _spends_too_much(scene, ready)
    elif scene.start is not None and ready.wait is Wait.SHORT:
        yield _too_short(scene, ready)
    elif scene.start is not None and ready.wait is Wait.LONG:
        yield _too_long(scene, ready)


def _spends_too_much(scene: Scene, ready: Readiness) -> Finding:
    before = [row for row in scene.rows if row.segment.part == PartKind.WARM_UP and row.is_rowed]
    part = (before or [row for row in scene.rows if row.is_rowed])[0].segment.part_index
    spending = [row for row in before if scene.asked_of(row) > scene.capacity.critical]
    guessed = any(row.guessed for row in spending)
    supposed = ", if what names no power is as hard as it looks" if guessed else ""
    return Finding(
        "warm-up-spends-too-much",
        Severity.ADVICE if guessed else Severity.WARNING,
        f"/parts/{part}",
        f"It takes {told_time(ready.advised_gap.low)} after this warm-up until nearly all the reserve is "
        f"back{supposed}.",
        "A warm-up should leave the reserve for the piece, and after so long a wait its warmth is gone too.",
        _softened(scene, spending),
    )


def _softened(scene: Scene, spending: Sequence[Row]) -> Mend | None:
    """All that spends and is longer than a burst, or without any the bursts, at a pressure that does not."""
    rows = [row for row in spending if row.seconds > BURST_SECONDS] or spending
    places = dict.fromkeys(row.segment.place for row in rows)
    edits = tuple(edit for place in places for edit in softened(scene, place, EASY_TOP))
    return Mend("Row its hard blocks easier", edits) if edits else None


def _before_start(scene: Scene) -> list[Row]:
    return [row for row in scene.rows if float(row.segment.start) < (scene.start or 0.0)]


def _too_short(scene: Scene, ready: Readiness) -> Finding:
    left = ready.at_start.reserve.middle
    needed = told_time(ready.advised_gap.low)
    guessed = any(
        row.guessed and scene.asked_of(row) > scene.capacity.critical for row in _before_start(scene)
    )
    return Finding(
        "gap-too-short",
        Severity.WARNING if left < SPENT_AT_START and not guessed else Severity.ADVICE,
        _place(scene),
        f"The {_named_wait(ready)} is shorter than the {needed} that the piece needs after this warm-up."
        if ready.wait_seconds
        else f"The piece follows the warm-up at once: it needs a gap of {needed} or more after this.",
        "Breath and muscles need the time to come back" + _missing(left),
        _new_gap(scene, ready),
    )


def _missing(left: float) -> str:
    if left >= RESERVE_WANTED:
        return "."
    percent = round(100 * left)
    if percent <= 0:
        return ": nothing of the reserve for hard work would be there."
    return f": only {percent} % of the reserve for hard work would be there."


def _too_long(scene: Scene, ready: Readiness) -> Finding:
    return Finding(
        "gap-too-long",
        Severity.ADVICE,
        _place(scene),
        f"The {_named_wait(ready)} is longer than {told_time(ready.advised_gap.high)}: the warmth of the "
        "warm-up is going.",
        "Muscles cool while one sits, and a gap of 15 to 20 minutes begins to cost.",
        _new_gap(scene, ready),
    )


def _named_wait(ready: Readiness) -> str:
    name = "wait" if ready.gap_seconds is None else "gap"
    return f"{name} of {told_time(round(ready.wait_seconds))}"


def _place(scene: Scene) -> str:
    """The last gap before the start; without one, the part that the piece stands in."""
    gaps = [row for row in _before_start(scene) if row.segment.stretch.kind is Kind.GAP]
    if gaps:
        return gaps[-1].segment.place
    main = next(row for row in scene.rows if row.segment.part == PartKind.MAIN)
    return f"/parts/{main.segment.part_index}"


def _new_gap(scene: Scene, ready: Readiness) -> Mend | None:
    """The best gap, where there is one gap to set, or room for one."""
    gaps = [row for row in _before_start(scene) if row.segment.stretch.kind is Kind.GAP]
    best = ready.advised_gap.best
    if not gaps:
        return Mend(f"Put in a gap of {told_time(best)}", (with_gap(best, _place(scene)),))
    if gaps[-1].seconds != ready.gap_seconds:
        return None
    return Mend(f"Wait {told_time(best)}", (Edit(Op.REPLACE, f"{gaps[-1].segment.place}/for/seconds", best),))


def burst_too_near(scene: Scene) -> Iterator[Finding]:
    """The last hard rowing of the warm-up so near the start that it is still felt there."""
    ready, start = scene.readiness, scene.start
    if ready is None or start is None or ready.wait is Wait.OVERSPENT:
        return
    before = [row for row in _before_start(scene) if row.segment.part == PartKind.WARM_UP]
    hard = [row for row in before if row.is_hard]
    if not hard or not LEAST_GAP <= ready.advised_gap.low <= ready.wait_seconds:
        return
    calm = start - float(hard[-1].segment.end)
    if calm >= CALM_BEFORE:
        return
    index = hard[-1].segment.part_index
    part = scene.timeline.plan.parts[index]
    more = [easy(CALM_BEFORE - calm)]
    yield Finding(
        "burst-too-near",
        Severity.ADVICE,
        hard[-1].segment.place,
        f"{scene.named(hard[-1])} ends {told_time(round(calm))} before the start.",
        "After hard strokes breath and muscles need about three minutes to be quiet again.",
        Mend("Row easy after it", added_to(part, f"/parts/{index}", more))
        if isinstance(part, Part)
        else None,
    )


def cool_at_start(scene: Scene) -> Iterator[Finding]:
    """A maximal piece to which one comes cool, though one has rowed and the wait is right: first the wait."""
    ready, start = scene.readiness, scene.start
    if ready is None or start is None or not (ready.before_maximal and ready.is_cool):
        return
    before = [row for row in _before_start(scene) if row.is_rowed]
    too_early = sum(row.seconds for row in before) < WARM_AFTER[scene.room]
    if too_early or ready.wait is not Wait.RIGHT:
        return
    percent = round(100 * ready.at_start.warmth.middle)
    yield Finding(
        "cool-at-start",
        Severity.ADVICE,
        _place(scene),
        f"You come to the start with {percent} % of a full warm-up's warmth: cool, and the piece is maximal.",
        "Cold muscles give less and strain sooner. Row easy for longer first, keep a layer on, and wait no "
        "longer than breath and legs need.",
        _warmed_first(scene, before[0]),
    )


def _warmed_first(scene: Scene, first: Row) -> Mend | None:
    """As many minutes of easy rowing before everything else as make one fairly warm at the start."""
    course = warmth.course_in(scene.room, warmth.COURSES[1])
    runs = scene.runs[: len(_before_start(scene))]
    block = easy(60)
    share = asked_of(block, scene.level)
    for seconds in range(60, MOST_EASY + 1, 60):
        left = warmth.degrees([Run(share, seconds), *runs], course)[-1] / warmth.FULL_RISE
        if left >= FAIRLY_WARM:
            more = inserted([easy(seconds)], top_of(first.segment.place))
            return Mend(f"Begin with {told_time(seconds)} more of easy rowing", more)
    return None
