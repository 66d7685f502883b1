"""Sums over what is rowed: time, strokes, distance, work, and the averages that follow from them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from planner.pace import split_of, work_at
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
    rowing = exact_sum(s.duration for s in rowed)
    metres = _metres(rowed)
    work = _work(rowed)
    return Totals(
        seconds=rowing + exact_sum(s.duration for s in everything if s.kind not in ROWED),
        strokes=sum(s.strokes.count for s in rowed if s.strokes),
        metres=metres,
        work_joules=work,
        split=split_of(metres, rowing) if metres is not None and work is not None else None,
        watts=work / rowing if work is not None else None,
        estimated=any(s.basis is not Basis.CLOCK for s in everything),
    )


def _metres(rowed: list[Stretch]) -> Fraction | None:
    known = [s.metres for s in rowed if s.metres is not None]
    return exact_sum(known) if known and len(known) == len(rowed) else None


def _work(rowed: list[Stretch]) -> Fraction | None:
    if not rowed or any(s.target is None or s.target.split is None for s in rowed):
        return None
    return exact_sum(work_at(split, seconds) for split, seconds in _seconds_by_split(rowed))


def _seconds_by_split(stretches: Iterable[Stretch]) -> list[tuple[Fraction, Fraction]]:
    """Splits with the time rowed at each: adding times first keeps the fractions short.

    Kept by whole numbers, since a fraction is slow to hash.
    """
    times: dict[tuple[int, int], tuple[Fraction, list[Fraction]]] = {}
    for stretch in stretches:
        if stretch.target and (split := stretch.target.split):
            times.setdefault(split.as_integer_ratio(), (split, []))[1].append(stretch.duration)
    return [(split, exact_sum(seconds)) for split, seconds in times.values()]


def exact_starts(lengths: Iterable[Fraction]) -> Iterator[Fraction]:
    """What lies before each of them, over one denominator."""
    ratios = [length.as_integer_ratio() for length in lengths]
    whole = lcm(*{denominator for _, denominator in ratios})
    before = 0
    for numerator, denominator in ratios:
        yield Fraction(before, whole)
        before += numerator * (whole // denominator)


def exact_sum(values: Iterable[Fraction]) -> Fraction:
    """Their sum, over one denominator: far quicker than adding one by one."""
    ratios = [value.as_integer_ratio() for value in values]
    whole = lcm(*{denominator for _, denominator in ratios})
    return Fraction(sum(numerator * (whole // denominator) for numerator, denominator in ratios), whole)
