"""What the rules choose for given circumstances: shapes, peak, dose, drills, each with its reason."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby

from planner.athlete import Level, Room
from planner.pieces import Character
from planner.plan import Pressure
from planner.warm_up.circumstances import Circumstances, first_that_holds
from planner.warm_up.rules import (
    DOSES,
    EASY_RATES,
    EXERCISES,
    LESS,
    LIFT,
    LONG_STEP_WEIGHT,
    LONGER_SLOT,
    RATE_STEP,
    RESETS,
    RISES,
    RUNGS,
    SHARP_RATES,
    SHARPENINGS,
    SLOTS,
    STEPS,
    TAILS,
    TOUCHES,
    Exercise,
    Rise,
    Sharpening,
    Step,
)

_NUMBERS = {2: "Two", 3: "Three", 4: "Four"}


@dataclass(frozen=True, slots=True)
class Choice:
    """All that is decided before any block is laid: seconds, strokes a minute.

    `gentle` says that a burst without strokes on the way up to it is not rowed at full pressure, `touches`
    that no burst is rowed hard.
    """

    rise: Rise
    steps: tuple[Step, ...]
    sharpening: Sharpening
    peak: int
    sharp_rates: tuple[int, ...]
    slot: int
    reset: int
    tail: int
    exercises: tuple[Exercise, ...]
    easy_rates: tuple[int, ...]
    rate_step: int
    gentle: bool
    touches: bool
    reasons: tuple[str, ...]


def choose(at: Circumstances) -> Choice:
    """The choice for these circumstances; the same each time."""
    rise, sharpening, less, exercises, touches = (
        first_that_holds(RISES, at),
        first_that_holds(SHARPENINGS, at),
        first_that_holds(LESS, at),
        first_that_holds(EXERCISES, at),
        first_that_holds(TOUCHES, at),
    )
    sharp = sharpening.gives is not Sharpening.NONE
    wanted = row_for(DOSES[at.character], at.minutes) if sharp else 0
    count = max(1, wanted - less.gives) if sharp else 0
    peak = peak_rate(at)
    longer = at.level is Level.NOVICE or peak not in SHARP_RATES
    reasons = (
        rise.reason,
        sharpening.reason,
        _dose_reason(count, peak, at, sharpening.gives, less.reason if count < wanted else ""),
        touches.reason if sharp else "",
        exercises.reason,
        _room_reason(at.room, sharpening.gives),
    )
    return Choice(
        rise=rise.gives,
        steps=_steps(rise.gives, at),
        sharpening=sharpening.gives,
        peak=peak,
        sharp_rates=_sharp_rates(peak, count, capped=at.capped),
        slot=max(row_for(SLOTS, at.minutes), LONGER_SLOT if longer else 0),
        reset=row_for(RESETS, at.minutes) if sharp else 0,
        tail=row_for(TAILS, at.minutes),
        exercises=tuple(e._replace(rate=min(e.rate, at.rate)) for e in exercises.gives),
        easy_rates=tuple(r for r in EASY_RATES[at.level] if not at.capped or r <= at.rate) or (at.rate,),
        rate_step=RATE_STEP[at.level],
        gentle=at.level is Level.NOVICE,
        touches=touches.gives,
        reasons=tuple(reason for reason in reasons if reason),
    )


def row_for(table: tuple[tuple[int, int], ...], value: int) -> int:
    """The value of the last row whose first number is not above the one given."""
    return [row[1] for row in table if row[0] <= value][-1]


def peak_rate(at: Circumstances) -> int:
    """The highest rate that the warm-up has to reach: that of the piece, or a little more at the end."""
    if at.character is Character.EASY:
        return max(step.rate for step in STEPS[Rise.EASY_BUILD])
    if at.capped or first_that_holds(SHARPENINGS, at).gives is Sharpening.NONE:
        return at.rate
    if at.character is Character.LONG:
        return at.rate + LIFT[at.level]
    wanted = at.rate + (LIFT[at.level] if at.character is Character.MIDDLE else 0)
    return min((rate for rate in SHARP_RATES if rate >= at.rate), key=lambda rate: (abs(rate - wanted), rate))


def rungs_to(peak: int, rate_step: int) -> tuple[int, ...]:
    """The rates from easy rowing up to a burst's own, in steps that the level allows."""
    rates = [peak]
    while rates[0] > RUNGS[0]:
        rates.insert(0, next(rung for rung in RUNGS if rung >= rates[0] - rate_step))
    return tuple(rates)


def _sharp_rates(peak: int, count: int, *, capped: bool) -> tuple[int, ...]:
    """The rate of each burst: a step quicker each time, the last at the peak."""
    below = (
        [] if capped else [rate for rate in SHARP_RATES if rate < peak][-(count - 1) :] if count > 1 else []
    )
    return ((peak,) * count + (*below, peak))[-count:] if count else ()


def _steps(rise: Rise, at: Circumstances) -> tuple[Step, ...]:
    """The steps up to the rate of a long or capped piece; those that come out alike are one."""
    steps = list(STEPS[rise])
    if at.character is Character.LONG:
        firm = steps[-1]
        further = range(firm.rate + 2, at.rate + 1, 2)
        steps += [firm._replace(rate=rate, weight=LONG_STEP_WEIGHT) for rate in further]
    if at.character is Character.LONG or at.capped:
        steps = [step._replace(rate=min(step.rate, at.rate)) for step in steps]
    suited = [_suited(step, at, last=step is steps[-1]) for step in steps]
    return tuple(
        alike[0]._replace(weight=sum(step.weight for step in alike))
        for alike in (list(group) for _, group in groupby(suited, key=lambda step: step[:2]))
    )


def _suited(step: Step, at: Circumstances, *, last: bool) -> Step:
    """A step for the level and the room: a novice is firm only at the end, heat takes from what is firm."""
    if step.pressure is Pressure.THREE_QUARTER:
        if at.level is Level.NOVICE and not last:
            return step._replace(pressure=Pressure.HALF)
        if at.room is Room.HOT:
            return step._replace(weight=max(1, step.weight // 2))
    if step.pressure is Pressure.LIGHT and at.room is Room.COLD:
        return step._replace(weight=step.weight + 1)
    return step


def _dose_reason(count: int, peak: int, at: Circumstances, sharpening: Sharpening, fewer: str) -> str:
    if not count:
        return ""
    word = "practice start" if sharpening is Sharpening.STARTS else "burst"
    many = f"One {word}" if count == 1 else f"{_NUMBERS[count]} {word}s"
    why = f" ({fewer})" if fewer else ""
    if peak > at.rate:
        return f"{many}{why} will do; the last touches r{peak}, just above the r{at.rate} of the piece."
    return f"{many}{why} will do; the last is at r{peak}, the rate of the piece."


def _room_reason(room: Room, sharpening: Sharpening) -> str:
    """What to do about the room. What it changes in the warm-up stands with the rules, where it does."""
    if room is Room.COLD:
        return f"The room is cold: rise slowly, and keep a layer on until {_WARM_BY[sharpening]}."
    return "The room is hot: fan on, drink before you are thirsty." if room is Room.HOT else ""


_WARM_BY = {
    Sharpening.BURSTS: "the bursts",
    Sharpening.STARTS: "the practice starts",
    Sharpening.NONE: "you are warm",
}
