"""What a timeline asks of a rower, as shares of that rower's own 2 km power (1.0 is 2 km power).

A block that names no power is given a stated assumption and marked as guessed, never passed over.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from planner.athlete import Athlete, Level
from planner.customs import POWER_LAW_EXPONENT
from planner.intensity import RACE_RATE, WORK_PER_STROKE, Rower, Target, rower_of
from planner.limits import SPLIT
from planner.pace import power_of_split
from planner.plan import Pressure
from planner.prediction import ASSUMED_TWO_K_SPLIT
from planner.stretches import ROWED, Kind, Stretch
from planner.timeline import Segment

# Effort from 0 to 10 to a share of 2 km power: the two lists of what can still be said aloud in
# `intensity`, laid side by side (easy talk ends at 3 and at 55 %, and so on); the ends are judgement [C].
SHARE_BY_CR10 = ((0.0, 0.25), (3.0, 0.55), (5.0, 0.70), (7.0, 0.85), (9.0, 0.97), (10.0, 1.05))

# Percent of the highest heart rate to percent of the reserve: edges of the ACSM bands (Garber 2011 [S],
# two copies); the first and the last pair are judgement. A share of the reserve is about that share of the
# oxygen reserve (same table), and 2 km power is taken for the power of the highest uptake [C].
RESERVE_BY_HIGHEST = ((37.0, 0.0), (57.0, 30.0), (64.0, 40.0), (77.0, 60.0), (96.0, 90.0), (100.0, 100.0))
LEAST_SHARE_BY_HEART_RATE = 0.2

ASSUMED_RATE = 20
"""Strokes a minute where a block has a pressure but no rate [C]."""
_EASY_RATE = 18

_POWER_EXPONENT = 3 * (POWER_LAW_EXPONENT - 1) / POWER_LAW_EXPONENT
"""Power falls with time to this power: the power law of times with the cubic of air machines [=]."""


class Run(NamedTuple):
    """A stretch at one power: share of 2 km power, seconds, and whether the share is an assumption."""

    share: float
    seconds: float
    guessed: bool = False


def runs_of(segments: Iterable[Segment], athlete: Athlete | None, level: Level) -> Iterator[Run]:
    """The run of each segment. A change of split starts from the share of the last rowed target."""
    rower = rower_of(athlete)
    before: float | None = None
    known: dict[int, Run] = {}
    for segment in segments:
        stretch = segment.stretch
        depends = stretch.target is not None and stretch.target.change is not None
        if depends or id(stretch) not in known:
            known[id(stretch)] = _run(stretch, before, rower, level)
        run = known[id(stretch)]
        if stretch.kind is Kind.ROW and stretch.target:
            before = run.share
        yield run


def in_seconds(runs: Iterable[Run]) -> Iterator[Run]:
    """The runs cut into pieces of one second; where a run ends within a second, its last piece is shorter."""
    for share, seconds, guessed in runs:
        whole = int(seconds)
        yield from [Run(share, 1.0, guessed)] * whole
        if seconds > whole:
            yield Run(share, seconds - whole, guessed)


def share_at_split(split: float, two_k_split: float) -> float:
    """The share of 2 km power that a split takes: the cubic of air machines."""
    return (two_k_split / split) ** 3


def holdable_share(seconds: float, two_k_seconds: float) -> float:
    """The share of 2 km power that the power law gives for so long, never above 1: a guess's upper end."""
    return min(1.0, (two_k_seconds / seconds) ** _POWER_EXPONENT) if seconds > 0 else 1.0


def interpolate(points: Sequence[tuple[float, float]], at: float) -> float:
    """The value on straight lines between points; level beyond the first and the last."""
    if at <= points[0][0]:
        return points[0][1]
    if at >= points[-1][0]:
        return points[-1][1]
    index = bisect_right(points, at, key=lambda point: point[0])
    (x0, y0), (x1, y1) = points[index - 1], points[index]
    return y0 + (y1 - y0) * (at - x0) / (x1 - x0)


def _run(stretch: Stretch, before: float | None, rower: Rower, level: Level) -> Run:
    seconds = float(stretch.duration)
    if stretch.kind not in ROWED:
        return Run(0.0, seconds)
    target = stretch.target
    if target and target.two_k_power_fraction is not None:
        return Run(float(target.two_k_power_fraction), seconds)
    return Run(_guess(stretch, target, before, rower, level), seconds, guessed=True)


def _guess(
    stretch: Stretch, target: Target | None, before: float | None, rower: Rower, level: Level
) -> float:
    two_k_split = float(ASSUMED_TWO_K_SPLIT[level])
    if target is None:
        return _by_rate(stretch, level)
    if target.split is not None:
        return float(power_of_split(target.split) / power_of_split(ASSUMED_TWO_K_SPLIT[level]))
    if target.split_offset is not None:
        return _beside(two_k_split, target.split_offset, two_k_split)
    if target.change is not None and before:
        return _beside(two_k_split * before ** (-1 / 3), target.change, two_k_split)
    if target.pressure is not None:
        return float(WORK_PER_STROKE[target.pressure] * ASSUMED_RATE / RACE_RATE[level])
    most = holdable_share(float(stretch.duration), 4 * two_k_split)
    if target.cr10 is not None:
        return min(most, interpolate(SHARE_BY_CR10, float(target.cr10)))
    by_heart = _by_heart_rate(target, rower)
    return _by_rate(stretch, level) if by_heart is None else min(most, by_heart)


def _beside(split: float, offset: Fraction, two_k_split: float) -> float:
    """The share at a split so many seconds away, kept to splits that can be asked for."""
    wanted = min(max(split + float(offset), float(SPLIT.low)), float(SPLIT.high))
    return share_at_split(wanted, two_k_split)


def _by_rate(stretch: Stretch, level: Level) -> float:
    """Light strokes up to r18 and in drills, rising evenly to full ones at the race rate [C]."""
    race = RACE_RATE[level]
    rate = stretch.rate or _EASY_RATE
    light = float(WORK_PER_STROKE[Pressure.LIGHT])
    ends = ((float(_EASY_RATE), light), (float(race), 1.0))
    work = light if stretch.kind is Kind.DRILL else interpolate(ends, rate)
    return work * rate / race


def _by_heart_rate(target: Target, rower: Rower) -> float | None:
    asked = target.heart_rate
    if asked is None:
        return None
    rest, most = rower.heart_rate_rest, rower.heart_rate_max
    if asked.percent_reserve is not None:
        reserve = float(asked.percent_reserve)
    elif asked.bpm is not None and rest is not None and most is not None:
        reserve = 100 * (asked.bpm - rest) / (most - rest)
    elif asked.percent_max is not None:
        reserve = interpolate(RESERVE_BY_HIGHEST, asked.percent_max)
    elif asked.bpm is not None and most is not None:
        reserve = interpolate(RESERVE_BY_HIGHEST, 100 * asked.bpm / most)
    else:
        return None
    return max(LEAST_SHARE_BY_HEART_RATE, min(reserve, 100.0) / 100)
