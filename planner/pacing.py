"""How a piece is spread over its length: a split for each leg, in tenths, that together come to the goal."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from planner.errors import InputError, Problem
from planner.limits import SPLIT, TENTH, Bounds
from planner.units import clock, split_clock

QUARTERS = 4
OWN_OFFSET = Bounds("offset of a quarter", -10, 10, "seconds per 500 m", TENTH)
"""At 2:00 ten seconds quicker take 30 % more power [=]: beyond that it is no pacing of one piece [C]."""

LEG_METRES = (500, 250, 100, 50)
LEG_SECONDS = (60, 30, 15)
"""What a piece may be cut into, the longest first; nothing shorter stands alone: judgement [C]."""
_FINE_BELOW_METRES, _FINE_METRES = 1000, 100
_FINE_BELOW_SECONDS, _FINE_SECONDS = 180, 30
"""A short piece is cut finer from the first, so that its start can differ from its end."""

PACING_PLACE = "/pacing"


class Shape(StrEnum):
    """How the pace goes over the piece."""

    EVEN = "even"
    QUICK_START = "quick-start"
    NEGATIVE = "negative"
    OWN = "own"


# Seconds per 500 m against the even split: judgement [C]. A quick start lasts a tenth of the piece, one leg
# at least; what it and the end gain is spread over the rest. A negative piece gains each quarter.
_QUICK_SHARE = Fraction(1, 10)
_QUICK_START, _QUICK_END = Fraction(-15, 10), Fraction(-5, 10)
_NEGATIVE = (Fraction(1), Fraction(3, 10), Fraction(-3, 10), Fraction(-1))


@dataclass(frozen=True, slots=True)
class Pacing:
    """A shape; for one's own, seconds per 500 m against the even split in each quarter, to the tenth."""

    shape: Shape = Shape.EVEN
    own: tuple[Fraction, ...] = ()


@dataclass(frozen=True, slots=True)
class Leg:
    """A stretch of the piece: metres rowed in seconds."""

    metres: Fraction
    seconds: Fraction

    @property
    def split(self) -> Fraction:
        """Seconds per 500 m, exactly; in tenths for a leg of `legs_over` and `legs_in`."""
        return self.seconds * 500 / self.metres


def own_pacing(offsets: Sequence[Fraction], place: str = "/pacing/own") -> Pacing:
    """One's own pacing by quarters.

    Raises InputError unless there are four offsets within OWN_OFFSET that sum to nothing.
    """
    if len(offsets) != QUARTERS:
        sentence = f"own pacing has {len(offsets)} offsets: give one for each of the four quarters"
        raise InputError([Problem(place, sentence)])
    complaints = ((number, OWN_OFFSET.complaint(offset)) for number, offset in enumerate(offsets))
    if problems := [Problem(f"{place}/{number}", told) for number, told in complaints if told]:
        raise InputError(problems)
    if total := sum(offsets):
        more, less = ("slower", "lower") if total > 0 else ("quicker", "raise")
        raise InputError(
            [
                Problem(
                    place,
                    f"the offsets sum to {_signed(total)} s, which makes the piece {more} than its goal: "
                    f"{less} them by {_plain(abs(total))} s in all, so that they sum to 0",
                )
            ]
        )
    return Pacing(Shape.OWN, tuple(offsets))


def lengths_over(metres: int, shape: Shape) -> tuple[int, ...]:
    """The metres of each leg of a piece over metres; none where it is too short for the shape."""
    return _lengths(metres, LEG_METRES, _FINE_METRES if metres < _FINE_BELOW_METRES else None, shape)


def lengths_in(seconds: int, shape: Shape) -> tuple[int, ...]:
    """The seconds of each leg of a piece on the clock; none where it is too short for the shape."""
    return _lengths(seconds, LEG_SECONDS, _FINE_SECONDS if seconds < _FINE_BELOW_SECONDS else None, shape)


def legs_over(metres: int, goal: Fraction, pacing: Pacing, place: str = "/goal_seconds") -> tuple[Leg, ...]:
    """The legs of a piece over metres, each at a split in tenths, that come to the goal.

    `goal` is in seconds, to the tenth. Legs of one length come to it exactly; with an odd last one their sum
    is as near as a tenth in the split of one leg allows. Raises InputError where a split could not be rowed,
    and where the piece is too short for the shape.
    """
    lengths = lengths_over(metres, pacing.shape)
    if not lengths:
        raise _too_short(f"{metres} m are", f"{LEG_METRES[-1]} m")
    low, high = (Fraction(metres * bound) / 500 for bound in (SPLIT.low, SPLIT.high))
    span = f"{metres} m take from {clock(low)} to {clock(high)}"
    wanted = _wanted(goal * 500 / metres, lengths, pacing, place, span)
    splits = _in_tenths(wanted, goal, lambda index, split: lengths[index] * split / 500)
    _check(splits, PACING_PLACE, span)
    return tuple(
        Leg(Fraction(length), length * split / 500) for length, split in zip(lengths, splits, strict=True)
    )


def legs_in(seconds: int, goal: int, pacing: Pacing, place: str = "/goal_metres") -> tuple[Leg, ...]:
    """The legs of a piece on the clock, each at a split in tenths, that come to the goal in metres.

    Their sum is as near to it as a tenth in the split of one leg allows. Raises InputError as `legs_over`.
    """
    lengths = lengths_in(seconds, pacing.shape)
    if not lengths:
        raise _too_short(f"{seconds} s are", f"{LEG_SECONDS[-1]} s")
    low, high = (int(seconds * 500 / bound) for bound in (SPLIT.high, SPLIT.low))
    span = f"{clock(seconds)} holds from {low + 1} m to {high} m"
    wanted = _wanted(Fraction(seconds * 500, goal), lengths, pacing, place, span)
    rowed = sum(length * 500 / split for length, split in zip(lengths, wanted, strict=True))
    wanted = [split * rowed / goal for split in wanted]
    splits = _in_tenths(wanted, Fraction(goal), lambda index, split: lengths[index] * 500 / split)
    _check(splits, PACING_PLACE, span)
    return tuple(
        Leg(length * 500 / split, Fraction(length)) for length, split in zip(lengths, splits, strict=True)
    )


def _lengths(length: int, legs: tuple[int, ...], longest: int | None, shape: Shape) -> tuple[int, ...]:
    """In the longest legs that will do; for quarters legs of which each holds whole ones, if any do."""
    cuts = [_cut(length, leg, legs[-1]) for leg in legs if longest is None or leg <= longest]
    if shape is Shape.EVEN:
        return cuts[0]
    enough = [cut for cut in cuts if len(cut) >= QUARTERS]
    whole = [cut for cut in enough if len(cut) % QUARTERS == 0 and len(set(cut)) == 1]
    best = whole if whole and shape is not Shape.QUICK_START else enough
    return best[0] if best else ()


def _cut(length: int, leg: int, least: int) -> tuple[int, ...]:
    """The length in legs; what is over makes the last one longer where it is too short to stand alone."""
    whole, rest = divmod(length, leg)
    if (whole and 2 * rest < leg) or rest < least:
        return (*(leg,) * (whole - 1), leg + rest) if whole else (rest,)
    return (*(leg,) * whole, rest)


def stretches(pacing: Pacing, legs: int) -> list[tuple[Fraction, Fraction]]:
    """Each stretch of a piece of so many legs as its share of the whole and its offset.

    The offsets, each by its share, sum to nothing.
    """
    match pacing.shape:
        case Shape.QUICK_START:
            ends = max(_QUICK_SHARE, Fraction(1, legs))
            middle = -(_QUICK_START + _QUICK_END) * ends / (1 - 2 * ends)
            return [(ends, _QUICK_START), (1 - 2 * ends, middle), (ends, _QUICK_END)]
        case Shape.NEGATIVE:
            return [(Fraction(1, QUARTERS), offset) for offset in _NEGATIVE]
        case Shape.OWN:
            return [(Fraction(1, QUARTERS), offset) for offset in pacing.own]
        case Shape.EVEN:
            return [(Fraction(1), Fraction(0))]


def _wanted(even: Fraction, lengths: Sequence[int], pacing: Pacing, place: str, span: str) -> list[Fraction]:
    """The split of each leg, exactly: a leg across a border of the shape takes its part of both."""
    _check([even], place, span)
    total, shape = sum(lengths), stretches(pacing, len(lengths))
    wanted, start = [], Fraction(0)
    for length in lengths:
        end = start + Fraction(length, total)
        wanted.append(even + _integral(shape, start, end) / (end - start))
        start = end
    _check(wanted, PACING_PLACE, span)
    return wanted


def _integral(shape: list[tuple[Fraction, Fraction]], start: Fraction, end: Fraction) -> Fraction:
    found, begins = Fraction(0), Fraction(0)
    for share, offset in shape:
        inside = min(end, begins + share) - max(start, begins)
        found += max(inside, Fraction(0)) * offset
        begins += share
    return found


def _in_tenths(
    wanted: Sequence[Fraction], goal: Fraction, rowed: Callable[[int, Fraction], Fraction]
) -> list[Fraction]:
    """Tenths near the splits wanted, with which what is rowed comes as near to the goal as they allow.

    Each is taken to the quicker tenth, and those that lost most become a tenth slower while that brings the
    sum nearer; of equals the earlier ones, so that equal legs fall into two runs and not into a flicker.
    """
    splits = [Fraction(int(split * 10), 10) for split in wanted]
    off = sum((rowed(index, split) for index, split in enumerate(splits)), Fraction(0)) - goal
    for index in sorted(range(len(wanted)), key=lambda index: (splits[index] - wanted[index], index)):
        slower = splits[index] + TENTH
        change = rowed(index, slower) - rowed(index, splits[index])
        if abs(off + change) < abs(off):
            splits[index], off = slower, off + change
    return splits


def _check(splits: Sequence[Fraction], place: str, span: str) -> None:
    """Raises InputError at the place unless every split can be rowed."""
    wrong = next((split for split in splits if not SPLIT.low <= split <= SPLIT.high), None)
    if wrong is None:
        return
    sentence = (
        f"a split of {split_clock(wrong)} would come of it, and splits have to stay between 1:00.0 and "
        f"6:00.0 per 500 m: {span}"
    )
    raise InputError([Problem(place, sentence)])


def _too_short(length: str, leg: str) -> InputError:
    sentence = (
        f"{length} too short for this pacing, which needs four legs of at least {leg}: leave it out or row "
        "even"
    )
    return InputError([Problem(PACING_PLACE, sentence)])


def _signed(value: Fraction) -> str:
    return f"{'+' if value > 0 else '-'}{_plain(abs(value))}"


def _plain(value: Fraction) -> str:
    return f"{float(value):.1f}".removesuffix(".0")
