"""How long to wait between warm-up and piece: for the reserve, by custom, and before the warmth is gone."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from itertools import accumulate, groupby, takewhile
from typing import NamedTuple

from planner.athlete import Level
from planner.capacity import Capacity
from planner.demand import Run
from planner.endurance import Endurance, repetitions_alike
from planner.intensity import RACE_RATE
from planner.start_line import Circumstances, Course, StartLine

RESERVE_WANTED = 0.95
"""Least share of W' at the start line, by the median model: what Slipway aims for [C]."""
LEAST_GAP, IDEAL_GAP = 120, 300
"""Seconds before a maximal piece: at least 2, ideally about 5 minutes, common practice [C]."""
GAP_AFTER_HEAVY = 540
"""Seconds from a heavy bout to the piece: 9 min or more (Bailey 2009, J Appl Physiol 107:1743-1756 [S]:
tolerance +15 % with 9 min between, -16 % with 3). Between was easy pedalling, so easy rowing counts [M]."""
HEAVY = 0.7
"""A warm-up that takes the median balance below this share was a heavy bout: judgement [C]."""
WARMTH_KEPT = 0.8
"""The longest advised gap keeps this part of the warm-up's warmth: judgement [C]."""
WARM, FAIRLY_WARM = 0.7, 0.45
"""Of a full warm-up's 3 degrees, from which one is called warm, or fairly warm; below one is cool: [C]."""
WARMTH_WANTED = 0.6
"""A gap that leaves less than this part of a full warm-up's 3 degrees is cut short: judgement [C]. What is
not warm through has more to lose by waiting than a breath that is back has to gain."""
CALM_BEFORE = 180
"""Seconds from the last hard stroke to the start: a hard bout 3 min before cost 16 % of the time that heavy
work could be held (Bailey 2009, J Appl Physiol 107:1743-1756 [S]); shorter bursts cost less [C]."""
COSTLY_GAP = 900
"""Seconds: waiting 15-20 min starts to cost, in any room (West 2013, J Sci Med Sport 16:172 [S])."""
LOST_GAP = 2700
"""Seconds: readiness counts as lost by 45-60 min (Burnley 2006, J Appl Physiol 101:1320 [S]; judgement)."""
LONGEST_NEEDED = 600
"""A warm-up that takes longer than this to recover from was none: judgement [C]."""
EASY_GAPS = (0, 60, COSTLY_GAP)
"""Least, best and longest seconds before a piece that is not maximal: go on, or stand up and drink [C]."""
GRID = range(0, LOST_GAP + 1, 30)
"""The gaps in seconds among which the advised one is looked for."""

_SOON = 120.0
_NEAR_CRITICAL = 0.9
"""A piece that asks for nearly the critical share within its first two minutes starts hard: judgement [C]."""
_NEAR_FULL = 0.95
"""Of the work of a full stroke: judgement [C]."""


class AdvisedGap(NamedTuple):
    """Seconds to leave between warm-up and piece: the least, the best, the longest."""

    low: int
    best: int
    high: int


class Wait(StrEnum):
    """How a wait before the piece compares with the advised gap, or that no wait would do."""

    RIGHT = "right"
    SHORT = "short"
    LONG = "long"
    OVERSPENT = "overspent"


def advised_gap(line: StartLine, hard: bool) -> AdvisedGap:
    """The gap to leave. `hard` says that the piece is maximal."""
    needed = next((gap for gap in GRID if line.after(gap).reserve.middle >= RESERVE_WANTED), LOST_GAP)
    least, ideal, longest = (LEAST_GAP, IDEAL_GAP, COSTLY_GAP) if hard else EASY_GAPS
    if hard:
        least = max(least, _still_to_wait(line))
    warm = line.after(0).warmth.middle * WARMTH_KEPT
    kept = max(gap for gap in GRID if gap <= longest and line.after(gap).warmth.middle >= warm)
    low = max(least, needed)
    best = max(low, min(ideal, kept))
    if hard:
        best = max(low, _to_be_calm(line), min(best, _still_warm(line)))
    return AdvisedGap(low, best, max(best, kept))


def _still_warm(line: StartLine) -> int:
    """The longest gap that leaves the warmth that is wanted; none where the warm-up does not reach it."""
    return max((gap for gap in GRID if line.after(gap).warmth.middle >= WARMTH_WANTED), default=0)


def _to_be_calm(line: StartLine) -> int:
    """What is left of the calm after the last hard stroke when the warm-up ends."""
    since = line.seconds_since_hard()
    return 0 if since is None else next((gap for gap in GRID if gap >= CALM_BEFORE - since), 0)


def is_cut_short(advised: AdvisedGap) -> bool:
    """Whether less than the ideal gap is the best, because the body would come too cool to the piece."""
    return LEAST_GAP <= advised.best < IDEAL_GAP


def judged(wait_seconds: float, advised: AdvisedGap) -> Wait:
    """What there is to say of a wait: the one judgement for sentences and findings."""
    if advised.low > LONGEST_NEEDED:
        return Wait.OVERSPENT
    if wait_seconds < advised.low:
        return Wait.SHORT
    return Wait.LONG if wait_seconds > advised.high else Wait.RIGHT


def is_restored(line: StartLine) -> bool:
    """Whether any gap brings back as much of W' as is wanted."""
    return line.after(LOST_GAP).reserve.middle >= RESERVE_WANTED


def lengthened_by_heavy(line: StartLine) -> bool:
    """Whether a bout that spent much of W' lies so short before the end that the gap must make up for it."""
    return _still_to_wait(line) > LEAST_GAP


def _still_to_wait(line: StartLine) -> int:
    """What is left of the time after a heavy bout when the warm-up ends; easy rowing since then counts."""
    since = line.seconds_since_below(HEAVY)
    if since is None:
        return 0
    left = GAP_AFTER_HEAVY - since
    return next((gap for gap in GRID if gap >= left), LOST_GAP)


def is_hard(course: Course, given: Circumstances, endurance: Endurance) -> bool:
    """Whether the piece starts hard, is all but maximal for its length, or is rowed with full strokes.

    Without a piece it is taken so. What is broken by rests counts as the one piece that it is like. At a low
    rate full strokes come to little power, and each of them is as hard.
    """
    main = course.main
    if not main:
        return True
    first = tuple(takewhile(_is_rowed, main))
    if _starts_hard(first, given.capacity) or _has_full_strokes(course, given.level):
        return True
    bouts = [list(runs) for rowed, runs in groupby(main, key=_is_rowed) if rowed]
    return _is_maximal(bouts[:1], main, endurance) or _is_maximal(bouts, main, endurance)


def _is_rowed(run: Run) -> bool:
    return run.share > 0


def _starts_hard(first: Sequence[Run], capacity: Capacity) -> bool:
    begun = accumulate((run.seconds for run in first), initial=0.0)
    return any(
        run.share >= _NEAR_CRITICAL * capacity.critical
        for run, begins in zip(first, begun, strict=False)
        if begins < _SOON
    )


def _has_full_strokes(course: Course, level: Level) -> bool:
    """Whether its strokes hold on average nearly the work of race strokes, where its rates are known."""
    rowed = [(run, rate) for run, rate in zip(course.main, course.main_rates, strict=True) if _is_rowed(run)]
    if not rowed or any(rate is None for _, rate in rowed):
        return False
    strokes = sum((rate or 0) * run.seconds for run, rate in rowed)
    work = RACE_RATE[level] * sum(run.share * run.seconds for run, _ in rowed)
    return work >= _NEAR_FULL * strokes


def _is_maximal(bouts: Sequence[Sequence[Run]], main: Sequence[Run], endurance: Endurance) -> bool:
    rowed = [run for bout in bouts for run in bout]
    seconds = sum(run.seconds for run in rowed)
    if not seconds:
        return False
    waits = sum(run.seconds for run in main if not _is_rowed(run)) / max(1, len(bouts) - 1)
    each = seconds / len(bouts)
    alike = each * repetitions_alike(len(bouts), each, waits)
    return sum(run.share * run.seconds for run in rowed) / seconds >= endurance.maximal(alike)
