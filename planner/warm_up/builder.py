"""Lays a warm-up: rise, drills, sharpening, calm; exact to the second, every block in whole strokes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from planner.athlete import Level
from planner.coaching import Purpose, Stage
from planner.intensity import RACE_RATE, WORK_PER_STROKE
from planner.plan import Block, Drill, ForSeconds, ForStrokes, Pressure, Rest
from planner.units import told_time
from planner.warm_up.choice import Choice, choose, row_for, rungs_to
from planner.warm_up.circumstances import Circumstances
from planner.warm_up.rules import (
    DRILL_SECONDS,
    LEAST_EASY,
    START_STROKES,
    STILL_SECONDS,
    STROKES,
    TOUCH,
    Sharpening,
)
from planner.warm_up.whole_strokes import burst_in, shared_out


@dataclass(frozen=True, slots=True)
class WarmUp:
    """The stages of a warm-up, what was chosen for it, and why."""

    stages: tuple[Stage, ...]
    choice: Choice
    reasons: tuple[str, ...]


def warm_up_for(at: Circumstances) -> WarmUp:
    """A warm-up that lasts the minutes there are to the second."""
    choice = choose(at)
    sharp = choice.slot * len(choice.sharp_rates)
    drills = DRILL_SECONDS * len(choice.exercises)
    rise = at.minutes * 60 - sharp - choice.reset - choice.tail - drills
    stages = (
        *_rise(choice, rise),
        *_easy(choice.reset, choice, Purpose.RESET),
        *_sharpening(choice, at),
        *_calm(choice),
    )
    return WarmUp(stages, choice, (*choice.reasons, _spent(at.minutes * 60, rise + drills, choice)))


def _rise(choice: Choice, seconds: int) -> Iterator[Stage]:
    """The steps, with the drills after the first of them, while everything is easy."""
    lengths = shared_out(seconds, [step.weight for step in choice.steps])
    for index, (step, length) in enumerate(zip(choice.steps, lengths, strict=False)):
        block = Block(ForSeconds(length), step.rate, step.pressure)
        yield Stage(block, Purpose.RISE if index else Purpose.FIRST)
        if index == 0:
            for exercise in choice.exercises:
                drill = Drill(exercise.name)
                yield Stage(
                    Block(ForSeconds(DRILL_SECONDS), exercise.rate, Pressure.LIGHT, drill), Purpose.EXERCISE
                )


def _easy(seconds: int, choice: Choice, purpose: Purpose) -> Iterator[Stage]:
    if seconds:
        yield Stage(Block(ForSeconds(seconds), choice.easy_rates[0], Pressure.LIGHT), purpose)


def _sharpening(choice: Choice, at: Circumstances) -> Iterator[Stage]:
    least_easy = row_for(LEAST_EASY, choice.slot)
    starts = choice.sharpening is Sharpening.STARTS
    for number, rate in enumerate(choice.sharp_rates, 1):
        last = number == len(choice.sharp_rates)
        rates = rungs_to(rate, choice.rate_step)
        if starts:
            yield Stage(Rest(STILL_SECONDS), Purpose.SHARP)
            rates = rates[-2:]
        wanted = START_STROKES if starts else STROKES[at.character]
        room = choice.slot - (STILL_SECONDS if starts else 0)
        burst = burst_in(room, rates, wanted, least_easy, choice.easy_rates)
        for index, (count, at_rate) in enumerate(burst.counts):
            held = (number == 1 and not last) or (len(rates) == 1 and choice.gentle)
            rungs_left = len(burst.counts) - 1 - index
            pressure = _pressure(rungs_left, held=held)
            hard = _share(pressure, at_rate, at.level) > TOUCH.fraction
            effort = TOUCH if choice.touches and hard else pressure
            yield Stage(Block(ForStrokes(count), at_rate, effort), Purpose.SHARP, opens=index == 0)
        easy = Block(ForSeconds(burst.easy_seconds), burst.easy_rate, Pressure.LIGHT)
        yield Stage(easy, Purpose.EASY)


def _pressure(rungs_left: int, *, held: bool) -> Pressure:
    """Half, then three-quarter, then full; a burst that is held back stays one below."""
    ladder = (Pressure.FULL, Pressure.THREE_QUARTER, Pressure.HALF)
    return ladder[min(rungs_left + held, len(ladder) - 1)]


def _share(pressure: Pressure, rate: int, level: Level) -> Fraction:
    return WORK_PER_STROKE[pressure] * rate / RACE_RATE[level]


def _calm(choice: Choice) -> Iterator[Stage]:
    rate = min(18, *choice.easy_rates)
    yield Stage(Block(ForSeconds(choice.tail), rate, Pressure.LIGHT), Purpose.CALM)


def _spent(total: int, rise: int, choice: Choice) -> str:
    sharp = choice.slot * len(choice.sharp_rates)
    parts = [f"{told_time(rise)} to rise"]
    if sharp:
        parts.append(f"{told_time(sharp + choice.reset)} for quick strokes with easy rowing around them")
    return f"Of the {total // 60} minutes, {' and '.join(parts)}; the last {told_time(choice.tail)} is calm."
