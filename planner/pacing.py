"""How a piece is spread over its length: targets for each 500 m or minute that sum exactly to the goal."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from planner.errors import InputError, Problem
from planner.limits import SPLIT, TENTH, Bounds
from planner.units import clock, split_clock

LEG_METRES, SHORT_LEG_METRES, FINE_BELOW_METRES = 500, 100, 1000
LEG_SECONDS, SHORT_LEG_SECONDS, FINE_BELOW_SECONDS = 60, 30, 180
"""A short piece is cut finer, so that its start can differ from its end."""

QUARTERS = 4
OWN_OFFSET = Bounds("offset of a quarter", -30, 30, "seconds per 500 m", TENTH)


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
    """A stretch of the piece with its target: metres in seconds. One is its length, the other the target.

    The target is in tenths, of a second or of a metre.
    """

    metres: Fraction
    seconds: Fraction

    @property
    def split(self) -> Fraction:
        """Seconds per 500 m, exactly."""
        return self.seconds * 500 / self.metres


def own_pacing(offsets: Sequence[Fraction], place: str = "/pacing/own") -> Pacing:
    """One's own pacing by quarters. Raises InputError unless there are four offsets that sum to nothing."""
    if len(offsets) != QUARTERS:
        sentence = f"own pacing has {len(offsets)} offsets: give one for each of the four quarters"
        raise InputError([Problem(place, sentence)])
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


def legs_over(metres: int, goal: Fraction, pacing: Pacing, place: str = "/goal_seconds") -> tuple[Leg, ...]:
    """The targets of a piece over metres, in tenths of a second, whose sum is the goal.

    `goal` is in seconds, to the tenth. Raises InputError when a target would be no split that can be rowed.
    """
    lengths = _cut(metres, LEG_METRES if metres >= FINE_BELOW_METRES else SHORT_LEG_METRES)
    even = goal * 500 / metres
    offsets = _offsets(lengths, pacing)
    low, high = (Fraction(metres * bound) / 500 for bound in (SPLIT.low, SPLIT.high))
    span = f"{metres} m take from {clock(low)} to {clock(high)}"
    _check(even, [even + offset for offset in offsets], place, span)
    wanted = [(even + offset) * length / 500 for length, offset in zip(lengths, offsets, strict=True)]
    legs = tuple(
        Leg(Fraction(length), seconds)
        for length, seconds in zip(lengths, _in_tenths(wanted, goal, more_is_quicker=False), strict=True)
    )
    _check(even, [leg.split for leg in legs], place, span)
    return legs


def legs_in(seconds: int, goal: int, pacing: Pacing, place: str = "/goal_metres") -> tuple[Leg, ...]:
    """The targets of a piece on the clock, in tenths of a metre, whose sum is the goal in metres."""
    lengths = _cut(seconds, LEG_SECONDS if seconds >= FINE_BELOW_SECONDS else SHORT_LEG_SECONDS)
    even = Fraction(seconds * 500, goal)
    offsets = _offsets(lengths, pacing)
    low, high = (int(seconds * 500 / bound) for bound in (SPLIT.high, SPLIT.low))
    span = f"{clock(seconds)} holds from {low + 1} m to {high} m"
    _check(even, [even + offset for offset in offsets], place, span)
    shares = [length / (even + offset) for length, offset in zip(lengths, offsets, strict=True)]
    wanted = [goal * share / sum(shares) for share in shares]
    legs = tuple(
        Leg(metres, Fraction(length))
        for length, metres in zip(lengths, _in_tenths(wanted, goal, more_is_quicker=True), strict=True)
    )
    _check(even, [leg.split for leg in legs], place, span)
    return legs


def _cut(length: int, leg: int) -> list[int]:
    """The length in legs; less than half a leg that is over makes the last one longer."""
    whole, rest = divmod(length, leg)
    if whole and 2 * rest < leg:
        return [*[leg] * (whole - 1), leg + rest]
    return [leg] * whole + ([rest] if rest else [])


def _stretches(pacing: Pacing, legs: int) -> list[tuple[Fraction, Fraction]]:
    """Each stretch of the piece as its share of the whole and its offset; the offsets sum to nothing."""
    match pacing.shape:
        case Shape.QUICK_START if legs > 2:
            ends = max(_QUICK_SHARE, Fraction(1, legs))
            middle = -(_QUICK_START + _QUICK_END) * ends / (1 - 2 * ends)
            return [(ends, _QUICK_START), (1 - 2 * ends, middle), (ends, _QUICK_END)]
        case Shape.QUICK_START if legs == 2:
            return [(Fraction(1, 2), _QUICK_START / 2), (Fraction(1, 2), -_QUICK_START / 2)]
        case Shape.NEGATIVE:
            return [(Fraction(1, QUARTERS), offset) for offset in _NEGATIVE]
        case Shape.OWN:
            return [(Fraction(1, QUARTERS), offset) for offset in pacing.own]
        case _:
            return [(Fraction(1), Fraction(0))]


def _offsets(lengths: list[int], pacing: Pacing) -> list[Fraction]:
    """The mean offset over each leg, so that a leg across a border takes its part of both."""
    total = sum(lengths)
    stretches = _stretches(pacing, len(lengths))
    offsets, start = [], Fraction(0)
    for length in lengths:
        end = start + Fraction(length, total)
        offsets.append(_integral(stretches, start, end) / (end - start))
        start = end
    return offsets


def _integral(stretches: list[tuple[Fraction, Fraction]], start: Fraction, end: Fraction) -> Fraction:
    found, begins = Fraction(0), Fraction(0)
    for share, offset in stretches:
        inside = min(end, begins + share) - max(start, begins)
        found += max(inside, Fraction(0)) * offset
        begins += share
    return found


def _in_tenths(wanted: Sequence[Fraction], total: Fraction | int, *, more_is_quicker: bool) -> list[Fraction]:
    """Tenths near those wanted whose sum is the total: each is rounded down and the rest is given out.

    It goes to those that lost most; of equals, where it makes the later leg the quicker one, so that equal
    legs fall into two runs and not into a flicker.
    """
    down = [int(value * 10) for value in wanted]
    order = sorted(range(len(wanted)), key=lambda i: (down[i] - wanted[i] * 10, -i if more_is_quicker else i))
    rest = int(total * 10) - sum(down)
    for place in range(rest):
        down[order[place % len(order)]] += 1
    return [Fraction(tenths, 10) for tenths in down]


def _check(even: Fraction, splits: Sequence[Fraction], place: str, span: str) -> None:
    """Every target has to be a split that can be rowed, and the goal itself before them."""
    inside = [split for split in (even, min(splits), max(splits)) if SPLIT.low <= split <= SPLIT.high]
    if len(inside) == 3:
        return
    wrong = even if even not in inside else next(s for s in splits if not SPLIT.low <= s <= SPLIT.high)
    sentence = (
        f"a split of {split_clock(wrong)} would come of it, and splits have to stay between 1:00.0 and "
        f"6:00.0 per 500 m: {span}"
    )
    raise InputError([Problem(place, sentence)])


def _signed(value: Fraction) -> str:
    return f"{'+' if value > 0 else '-'}{_plain(abs(value))}"


def _plain(value: Fraction) -> str:
    return f"{float(value):.1f}".removesuffix(".0")
