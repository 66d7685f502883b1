"""The main part of a session: a test piece by its pacing, an interval set, steady rowing, or technique."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby
from math import ceil, floor

from planner.athlete import Level
from planner.capacity import Capacity
from planner.coaching import Purpose, Stage, with_words
from planner.errors import InputError, Problem
from planner.intervals import MOST_SHARE, Intervals, NoSolution, Solution, repetition_seconds, solve
from planner.limits import TWO_K_POWER
from planner.pace import split_of_power
from planner.pacing import LEG_METRES, PACING_PLACE, Leg, Pacing, Shape, legs_in, legs_over
from planner.pacing_words import missed_told, spread_told
from planner.pieces import Expectation, IntervalSet, TestPiece
from planner.plan import Block, Effort, ForMetres, ForSeconds, Pressure, Repeat, Rest, Split, TwoKPower
from planner.units import round_half_up, split_clock, told_metres, told_time
from planner.warm_up.whole_strokes import is_whole

QUICKER_BY = 2
"""Strokes a minute more where a leg is clearly quicker than the even split: judgement [C]."""
_CLEARLY = Fraction(4, 10)
_NEAR_RATE = 2
"""How far a rate may be moved, in strokes a minute, to hold whole strokes: judgement [C]."""
BLOCK_METRES, BLOCK_SECONDS = 2000, 600
"""A longer stretch at one pace is cut, so that each part has a focus of its own."""


@dataclass(frozen=True, slots=True)
class Goal:
    """What the piece is to come to: seconds over metres, or metres on the clock; `asked` for, or expected."""

    metres: int
    seconds: Fraction
    asked: bool = False


def goal_of(
    piece: TestPiece, expected: Expectation, seconds: Fraction | None, metres: int | None
) -> Goal | None:
    """The goal asked for, else the expected one where a result is known, else none."""
    if piece.metres is not None and seconds is not None:
        return Goal(piece.metres, seconds, asked=True)
    if piece.metres is None and metres is not None:
        return Goal(metres, expected.seconds, asked=True)
    return Goal(int(expected.metres), expected.seconds) if expected.known else None


@dataclass(frozen=True, slots=True)
class AllOut:
    """A test piece as it is rowed, and how it is paced, in a sentence or two."""

    stages: tuple[Stage, ...]
    reason: str


def all_out(piece: TestPiece, expected: Expectation, pacing: Pacing, goal: Goal | None, peak: int) -> AllOut:
    """A test piece in legs that come to its goal; without one, in shares of 2 km power.

    No leg is rowed at a higher rate than the warm-up's `peak` has tried out.
    Metres whose split is not known are one block, since each of several would wait for a tap. Raises
    InputError when they are to be paced all the same, and as `legs_over` does.
    """
    if goal is None and piece.metres is not None:
        if pacing.shape is not Shape.EVEN:
            raise InputError([Problem(PACING_PLACE, _NOTHING_TO_PACE)])
        block = Block(ForMetres(piece.metres), expected.rate, share_effort(expected.share))
        return AllOut((Stage(block, Purpose.PIECE, seconds=expected.seconds),), _NO_RESULT)
    aim = goal or Goal(int(expected.metres), expected.seconds)
    legs = _legs(piece, aim, pacing)

    def share(leg: Leg) -> float:
        even = pacing.shape is Shape.EVEN  # a tenth more or less in the split is no change of power
        return expected.share * (1.0 if even else float(expected.split / leg.split) ** 3)

    def effort(leg: Leg) -> Effort:
        return Split(leg.split) if goal is not None else share_effort(share(leg))

    def target(leg: Leg) -> str:
        return split_clock(leg.split) if goal is not None else f"{round(100 * share(leg))} %"

    spread = spread_told(legs, pacing, by_metres=piece.metres is not None, target=target)
    by_metres = piece.metres is not None
    missed = missed_told(legs, goal.seconds, goal.metres, by_metres=by_metres) if goal is not None else ""
    told = (_goal_told(piece, goal) if goal is not None else _NO_RESULT, missed, spread)
    stages = tuple(_stages(piece, legs, effort, aim, expected.rate, peak))
    return AllOut(stages, " ".join(each for each in told if each))


def _stages(
    piece: TestPiece, legs: Sequence[Leg], effort: Callable[[Leg], Effort], aim: Goal, rate: int, peak: int
) -> Iterator[Stage]:
    even = aim.seconds * 500 / aim.metres
    for same in _runs(legs, effort):
        leg = _joined(same)
        length = ForMetres(int(leg.metres)) if piece.metres is not None else ForSeconds(int(leg.seconds))
        held = _rate(leg, even, rate, max(peak, rate))
        yield Stage(Block(length, held, effort(same[0])), Purpose.PIECE, seconds=leg.seconds)


def _legs(piece: TestPiece, aim: Goal, pacing: Pacing) -> tuple[Leg, ...]:
    if piece.metres is not None:
        return legs_over(piece.metres, aim.seconds, pacing)
    return legs_in(int(aim.seconds), aim.metres, pacing)


def _runs(legs: Sequence[Leg], effort: Callable[[Leg], Effort]) -> Iterator[Sequence[Leg]]:
    """Legs of one effort together, cut where they would be too long for one focus."""
    for _, same in groupby(legs, key=effort):
        run = list(same)
        parts = ceil(len(run) / _legs_in_a_block(legs))
        start = 0
        for number in range(parts):
            end = start + len(run) // parts + (number < len(run) % parts)
            yield run[start:end]
            start = end


def _legs_in_a_block(legs: Sequence[Leg]) -> int:
    """A quarter of the piece, so that its focus moves on, yet no longer than one focus carries."""
    usual = legs[0]  # the last one may be longer or shorter
    quarter = max(ceil(len(legs) / 4), LEG_METRES[0] // int(usual.metres))
    return max(1, min(quarter, BLOCK_METRES // int(usual.metres), int(BLOCK_SECONDS / usual.seconds)))


def _rate(leg: Leg, even: Fraction, rate: int, highest: int) -> int:
    """Two strokes a minute more where it is clearly quicker; of a short leg, that of its whole strokes."""
    wanted = rate + (QUICKER_BY if even - leg.split >= _CLEARLY else 0)
    held = min(wanted, highest)
    fewer = int(leg.seconds * held / 60)
    whole = [round_half_up(60 * strokes / leg.seconds) for strokes in (fewer, fewer + 1)]
    near = [other for other in whole if abs(other - held) <= _NEAR_RATE and other <= highest]
    return min(near, key=lambda other: (abs(other - held), other), default=held)


def _joined(legs: Sequence[Leg]) -> Leg:
    nothing = Fraction(0)
    return Leg(sum((leg.metres for leg in legs), nothing), sum((leg.seconds for leg in legs), nothing))


def share_effort(share: float) -> Effort:
    """A share of 2 km power as an effort, to the hundredth; the whole of it is race pressure."""
    hundredths = Fraction(round_half_up(Fraction(share) * 100), 100)
    held = min(max(hundredths, Fraction(TWO_K_POWER.low)), Fraction(TWO_K_POWER.high))
    return Pressure.RACE if held == 1 else TwoKPower(held)


def interval_steps(
    asked: IntervalSet, expected: Expectation, capacity: Capacity, level: Level
) -> tuple[Repeat, str]:
    """The set with its words, at one effort for all its repetitions, and why it is that.

    It leaves the asked percent of the reserve at the end: as a split to the next slower tenth where a result
    is known, else as the nearest hundredth of 2 km power. It leaves more where that would be quicker than is
    expected: models of recovery are kind to rests, and critical power is not a pace for hours [M]. Where the
    models say nothing of the set, as no power leaves so little or it is too long, the expected counts alone.
    """
    length = ForMetres(asked.metres) if asked.metres is not None else ForSeconds(asked.seconds or 0)
    intervals = Intervals(asked.times, length, asked.rest_seconds)
    found = solve(intervals, capacity, asked.leave_percent)
    most = min(expected.share, MOST_SHARE)
    held = isinstance(found, NoSolution) or found.share > most
    share = most if isinstance(found, NoSolution) else min(found.share, most)
    effort: Effort = share_effort(floor(share * 100) / 100 if held else share)
    if capacity.two_k_watts is not None:
        quickest = Fraction(split_of_power((MOST_SHARE if held else share) * capacity.two_k_watts))
        effort = Split(Fraction(ceil((max(quickest, expected.split) if held else quickest) * 10), 10))
    rate = _whole_rate(asked.seconds, expected.rate) if asked.seconds else expected.rate
    seconds = Fraction(round(repetition_seconds(intervals, share, capacity)))
    stage = Stage(Block(length, rate, effort), Purpose.REPETITION, seconds=seconds, times=asked.times)
    repeat = Repeat(asked.times, with_words([stage], level), (Rest(asked.rest_seconds),))
    return repeat, _interval_reason(asked, expected, found, held=held)


def _interval_reason(
    asked: IntervalSet, expected: Expectation, found: Solution | NoSolution, *, held: bool
) -> str:
    if held:
        unsolved = f"{found.told} " if isinstance(found, NoSolution) else ""
        return (
            f"{unsolved}With such rests a set is rowed no quicker than one piece of about "
            f"{told_time(round(expected.alike_seconds))} would be, and slower than one repetition flat out. "
            "It is an estimate: mend it after the second repetition."
        )
    left = f"about {asked.leave_percent} %" if asked.leave_percent else "nothing"
    return (
        f"The target leaves {left} of your reserve after the last repetition, by the middle of three models. "
        "It is an estimate: mend it after the second one."
    )


def _whole_rate(seconds: int, rate: int) -> int:
    """The rate nearest to one at which the seconds hold whole strokes, if there is one within two."""
    near = sorted(range(rate - 2, rate + 3), key=lambda other: (abs(other - rate), other))
    return next((other for other in near if is_whole(seconds, other)), rate)


_NO_RESULT = (
    "No result is known, so the targets are shares of your 2 km power: go by feel and by the calls. "
    "One result makes splits of them."
)
_NOTHING_TO_PACE = (
    "without a goal or a result there is no split to pace by: give one of them, leave the pacing out or "
    "row even"
)


def _goal_told(piece: TestPiece, goal: Goal) -> str:
    """What the goal is and how it was found."""
    split = split_clock(goal.seconds * 500 / goal.metres)
    what = told_time(goal.seconds) if piece.metres is not None else told_metres(goal.metres)
    whence = "as you asked" if goal.asked else "what your result points to"
    return f"The goal is {what}, {whence}: {split} per 500 m on average."
