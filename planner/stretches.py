"""One block of a plan as the stretches it is rowed in: exact length, strokes, target, calls."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from planner.calls import WORDS_A_MINUTE, Misfit, PlacedCall, place_calls
from planner.expansion import OPEN_SECONDS
from planner.findings import Severity
from planner.intensity import Rower, Target, split_at_fraction, target_of
from planner.pace import metres_in, seconds_for
from planner.plan import Block, Call, Drill, ForMetres, ForSeconds, ForStrokes, Open, Setting
from planner.prediction import ASSUMED_TWO_K_SPLIT
from planner.strokes import ClockMark, Fit, Rhythm, Strokes, clock_mark, drive_seconds, strokes_at, strokes_in


class Kind(StrEnum):
    """What a person does in a segment."""

    ROW = "row"
    REST = "rest"
    GAP = "gap"
    DRILL = "drill"


ROWED = (Kind.ROW, Kind.DRILL)
SPLIT_OUT_OF_RANGE = "split-out-of-range"
"""What is said once, of the first block that it holds of: a slow rower's easy rowing is all of it alike."""


class Ends(StrEnum):
    """What ends a segment."""

    TIME = "time"
    METRES = "metres"
    STROKES = "strokes"
    TAP = "tap"


class Basis(StrEnum):
    """How a length of time is known: exactly, from metres at the target split, or only assumed."""

    CLOCK = "clock"
    SPLIT = "split"
    ASSUMED = "assumed"


@dataclass(frozen=True, slots=True)
class Turn:
    """A drill as it stands in one segment: which of its sides, or the swap between two of them."""

    name: str
    side: int | None = None
    sides: int | None = None
    swap: bool = False


@dataclass(frozen=True, slots=True)
class Remark:
    """Something noticed about a stretch, before its place in the plan is added."""

    code: str
    severity: Severity
    sentence: str
    reason: str | None = None


@dataclass(frozen=True, slots=True)
class Stretch:
    """What is rowed in a segment, wherever that segment starts. Lengths in exact seconds."""

    kind: Kind
    duration: Fraction
    ends: Ends = Ends.TIME
    basis: Basis = Basis.CLOCK
    rate: int | None = None
    strokes: Strokes | None = None
    drive: Fraction | None = None
    clock_mark: ClockMark | None = None
    target: Target | None = None
    metres: Fraction | None = None
    metres_asked: int | None = None
    focus: str | None = None
    drill: Turn | None = None
    calls: tuple[PlacedCall, ...] = ()
    setting: Setting | None = None
    remarks: tuple[Remark, ...] = ()


@dataclass(frozen=True, slots=True)
class Terms:
    """What holds for a whole compilation."""

    rower: Rower
    fit: Fit
    rhythm: Rhythm
    words_a_minute: int = WORDS_A_MINUTE


@dataclass(frozen=True, slots=True)
class Before:
    """The last rowed target of the expanded plan: whether there was one, and its split where known."""

    exists: bool = False
    split: Fraction | None = None


class _Length(NamedTuple):
    duration: Fraction
    ends: Ends
    basis: Basis
    strokes: Strokes | None


def stretches_of(block: Block, before: Before, terms: Terms) -> tuple[Stretch, ...]:
    """The stretches of a block: one, or each side and swap of a sided drill."""
    target = target_of(block.effort, block.rate, terms.rower, before.split) if block.effort else None
    remarks = tuple(_target_remarks(target, before, terms.rower)) if target else ()
    if block.drill and block.drill.sides:
        return _sides(block, block.drill, target, remarks, terms)
    length = _length(block, target, terms)
    return (_stretch(block, length, target, block.calls, remarks, terms),)


def _length(block: Block, target: Target | None, terms: Terms) -> _Length:
    rate = block.rate
    match block.length:
        case ForSeconds(seconds):
            return _for_time(Fraction(seconds), rate, Ends.TIME, Basis.CLOCK, terms.fit)
        case ForStrokes(count):
            strokes = strokes_at(count, rate or 1)
            return _Length(strokes.duration, Ends.STROKES, Basis.CLOCK, strokes)
        case ForMetres(metres):
            if target and target.split:
                at_split = seconds_for(metres, target.split)
                return _for_time(at_split, rate, Ends.METRES, Basis.SPLIT, terms.fit)
            assumed = seconds_for(metres, _assumed_split(target, terms.rower))
            return _for_time(assumed, rate, Ends.METRES, Basis.ASSUMED, Fit.RATE)
        case Open():
            return _for_time(Fraction(OPEN_SECONDS), rate, Ends.TAP, Basis.ASSUMED, Fit.RATE)


def _for_time(seconds: Fraction, rate: int | None, ends: Ends, basis: Basis, fit: Fit) -> _Length:
    if rate is None:
        return _Length(seconds, ends, basis, None)
    strokes = strokes_in(seconds, rate, fit)
    return _Length(seconds if fit is Fit.CLOCK else strokes.duration, ends, basis, strokes)


def _assumed_split(target: Target | None, rower: Rower) -> Fraction:
    two_k_split = rower.two_k.split if rower.two_k else ASSUMED_TWO_K_SPLIT[rower.level]
    fraction = target.two_k_power_fraction if target else None
    return split_at_fraction(two_k_split, fraction) if fraction else two_k_split


def _stretch(
    block: Block,
    length: _Length,
    target: Target | None,
    calls: tuple[Call, ...],
    remarks: tuple[Remark, ...],
    terms: Terms,
    turn: Turn | None = None,
) -> Stretch:
    strokes = length.strokes
    placed, misfits = place_calls(
        calls,
        strokes,
        length.duration,
        length_known=length.basis is not Basis.ASSUMED,
        words_a_minute=terms.words_a_minute,
    )
    asked = block.length.metres if isinstance(block.length, ForMetres) else None
    return Stretch(
        kind=Kind.DRILL if block.drill else Kind.ROW,
        duration=length.duration,
        ends=length.ends,
        basis=length.basis,
        rate=block.rate,
        strokes=strokes,
        drive=drive_seconds(strokes.stroke, target.pressure if target else None, terms.rhythm)
        if strokes
        else None,
        clock_mark=clock_mark(strokes.stroke) if strokes else None,
        target=target,
        metres=_metres(asked, length, target),
        metres_asked=asked,
        focus=block.focus,
        drill=turn or (Turn(block.drill.name) if block.drill else None),
        calls=placed,
        setting=block.setting,
        remarks=(*remarks, *_rate_remarks(block, strokes), *map(misfit_remark, misfits)),
    )


def _metres(asked: int | None, length: _Length, target: Target | None) -> Fraction | None:
    if asked is not None:
        return Fraction(asked)
    if length.basis is Basis.ASSUMED or target is None or target.split is None:
        return None
    return metres_in(length.duration, target.split)


def _sides(
    block: Block, drill: Drill, target: Target | None, remarks: tuple[Remark, ...], terms: Terms
) -> tuple[Stretch, ...]:
    """Calls counted from the start belong to the first side, those counted from the end to the last."""
    from_start = tuple(c for c in block.calls if c.strokes_left is None)
    from_end = tuple(c for c in block.calls if c.strokes_left is not None)
    sides = drill.sides or 1
    length = _for_time(Fraction(drill.side_seconds or 1), block.rate, Ends.TIME, Basis.CLOCK, terms.fit)
    stretches: list[Stretch] = []
    for side in range(1, sides + 1):
        if side > 1 and drill.swap_seconds:
            swap = Turn(drill.name, side, sides, swap=True)
            stretches.append(Stretch(Kind.REST, Fraction(drill.swap_seconds), drill=swap))
        calls = from_start if side == 1 else from_end if side == sides else ()
        turn = Turn(drill.name, side, sides)
        stretches.append(_stretch(block, length, target, calls, remarks if side == 1 else (), terms, turn))
    return tuple(stretches)


def _target_remarks(target: Target, before: Before, rower: Rower) -> Iterator[Remark]:
    if target.change is not None and not before.exists:
        yield Remark(
            "change-without-target",
            Severity.ADVICE,
            "This block changes a split, but no block before it, other than a drill, has a target to change.",
            "Give an earlier block an effort, or this one a split of its own.",
        )
    if target.split is None and _has_a_split(target, before, rower):
        yield Remark(
            SPLIT_OUT_OF_RANGE,
            Severity.NOTE,
            "What is asked for here comes to a split that no rower could be asked for, so none is shown. "
            "Where that comes again, no more is said.",
            "A split has to stay between 1:00 and 6:00 per 500 m.",
        )


def _has_a_split(target: Target, before: Before, rower: Rower) -> bool:
    if target.change is not None:
        return before.split is not None
    relative = target.split_offset is not None or target.two_k_power_fraction is not None
    return relative and rower.two_k is not None


def _rate_remarks(block: Block, strokes: Strokes | None) -> Iterator[Remark]:
    if block.rate is None:
        yield Remark(
            "no-rate",
            Severity.NOTE,
            "This block has no rate, so it has no beat and its strokes are not counted.",
            "Give it one, such as r20, if you want the rhythm; to sit still, write rest after its length.",
        )
    if block.rate and strokes and strokes.strays_from(block.rate):
        yield Remark(
            "paced-rate",
            Severity.NOTE,
            f"Whole strokes make this block {strokes.count} strokes at r{float(strokes.rate):.1f} "
            f"instead of r{block.rate}.",
            "Its length does not hold whole strokes at the rate asked for.",
        )


def misfit_remark(misfit: Misfit) -> Remark:
    """What is said of a call that was left out."""
    return Remark(
        "call-does-not-fit",
        Severity.ADVICE,
        f'The call "{misfit.call.text}" is left out: {misfit.sentence}.',
        "A call has to begin and end inside its block, clear of the call before it.",
    )
