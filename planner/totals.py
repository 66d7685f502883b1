"""Sums over what is rowed: time, strokes, distance, work, and the averages that follow from them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from planner.pace import metres_in, power_of_split, split_of
from planner.stretches import ROWED, Basis, Stretch


@dataclass(frozen=True, slots=True)
class Totals:
    """Seconds, strokes, metres, joules, seconds per 500 m, watts; None where some rowing is not known.

    The split is rowing time over distance and the watts are work over rowing time: neither is
    converted from the other.
    """

    seconds: Fraction
    strokes: int
    metres: Fraction | None
    work_joules: Fraction | None
    split: Fraction | None
    watts: Fraction | None
    estimated: bool


@dataclass(frozen=True, slots=True)
class PartTotals:
    """The sums of one part."""

    part: str
    part_index: int
    totals: Totals


def totals_of(stretches: Iterable[Stretch]) -> Totals:
    """The exact sums over some stretches."""
    everything = tuple(stretches)
    rowed = [s for s in everything if s.kind in ROWED]
    rowing = sum((s.duration for s in rowed), Fraction(0))
    metres = _metres(rowed)
    work = _work(rowed)
    return Totals(
        seconds=rowing + sum((s.duration for s in everything if s.kind not in ROWED), Fraction(0)),
        strokes=sum(s.strokes.count for s in rowed if s.strokes),
        metres=metres,
        work_joules=work,
        split=split_of(metres, rowing) if metres is not None and work is not None else None,
        watts=work / rowing if work is not None else None,
        estimated=any(s.basis is not Basis.CLOCK for s in everything),
    )


def _metres(rowed: list[Stretch]) -> Fraction | None:
    if not rowed or any(s.metres is None for s in rowed):
        return None
    asked = sum(s.metres_asked for s in rowed if s.metres_asked is not None)
    at_splits = _seconds_by_split([s for s in rowed if s.metres_asked is None])
    return asked + sum((metres_in(t, split) for split, t in at_splits.items()), Fraction(0))


def _work(rowed: list[Stretch]) -> Fraction | None:
    if not rowed or any(s.target is None or s.target.split is None for s in rowed):
        return None
    by_split = _seconds_by_split(rowed)
    return sum((power_of_split(split) * t for split, t in by_split.items()), Fraction(0))


def _seconds_by_split(stretches: Iterable[Stretch]) -> dict[Fraction, Fraction]:
    """Time at each split: adding times first keeps the fractions short."""
    seconds: dict[Fraction, Fraction] = defaultdict(Fraction)
    for stretch in stretches:
        if stretch.target and stretch.target.split:
            seconds[stretch.target.split] += stretch.duration
    return seconds
