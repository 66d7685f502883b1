"""How long to wait between warm-up and piece: for the reserve, by custom, and before the warmth is gone."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from planner.capacity import Capacity
from planner.demand import Run, holdable_share
from planner.start_line import StartLine

RESERVE_WANTED = 0.95
"""Least share of W' at the start line, by the median model: what Slipway aims for [C]."""
LEAST_GAP, IDEAL_GAP = 120, 300
"""Seconds before a maximal piece: at least 2, ideally about 5 minutes, common practice [C]."""
GAP_AFTER_HEAVY = 540
"""Seconds: a heavy bout needs 9 min or more (Bailey 2009, J Appl Physiol 107:1743-1756 [S]: tolerance +15 %
with a 9 min gap, -16 % with 3)."""
HEAVY = 0.7
"""A warm-up that takes the median balance below this share was a heavy bout: judgement [C]."""
WARMTH_KEPT = 0.8
"""The longest advised gap keeps this part of the warm-up's warmth: judgement [C]."""
COSTLY_GAP = 900
"""Seconds: waiting 15-20 min starts to cost, in any room (West 2013, J Sci Med Sport 16:172 [S])."""
LOST_GAP = 2700
"""Seconds: readiness counts as lost by 45-60 min (Burnley 2006, J Appl Physiol 101:1320 [S]; judgement)."""
EASY_GAPS = (0, 60, COSTLY_GAP)
"""Least, best and longest seconds before a piece that is not maximal: go on, or stand up and drink [C]."""
GRID = range(0, LOST_GAP + 1, 30)
"""The gaps in seconds among which the advised one is looked for."""

_SOON = 120.0
_NEAR_CRITICAL = 0.9
_NEAR_HOLDABLE = 0.95
"""A piece is maximal when it asks for nearly the critical share within its first two minutes, or on average
for nearly what the power law says can be held for so long: judgement [C]."""


class AdvisedGap(NamedTuple):
    """Seconds to leave between warm-up and piece: the least, the best, the longest."""

    low: int
    best: int
    high: int


def advised_gap(line: StartLine, hard: bool) -> AdvisedGap:
    """The gap to leave. `hard` says that the piece is maximal."""
    needed = next((gap for gap in GRID if line.after(gap).reserve.middle >= RESERVE_WANTED), LOST_GAP)
    least, ideal, longest = (LEAST_GAP, IDEAL_GAP, COSTLY_GAP) if hard else EASY_GAPS
    if hard and is_heavy(line):
        least = GAP_AFTER_HEAVY
    warm = line.after(0).warmth.middle * WARMTH_KEPT
    kept = max(gap for gap in GRID if gap <= longest and line.after(gap).warmth.middle >= warm)
    low = max(least, needed)
    best = max(low, min(ideal, kept))
    return AdvisedGap(low, best, max(best, kept))


def is_restored(line: StartLine) -> bool:
    """Whether any gap brings back as much of W' as is wanted."""
    return line.after(LOST_GAP).reserve.middle >= RESERVE_WANTED


def is_heavy(line: StartLine) -> bool:
    """Whether the warm-up held a bout that spent much of W'."""
    return line.lowest_reserve < HEAVY


def is_maximal(main: Sequence[Run], capacity: Capacity) -> bool:
    """Whether the piece starts hard, or asks for nearly the most that can be held; taken so without one."""
    if not main:
        return True
    seconds = work = 0.0
    for share, length, _ in main:
        if share == 0:
            break
        if seconds < _SOON and share >= _NEAR_CRITICAL * capacity.critical:
            return True
        seconds += length
        work += share * length
    return seconds > 0 and work / seconds >= _NEAR_HOLDABLE * holdable_share(seconds, capacity.two_k_seconds)
