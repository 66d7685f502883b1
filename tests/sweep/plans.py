"""Plans as people might write them, wise and unwise, drawn by chance from a seed: what mends are held to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from random import Random

from planner.athlete import Athlete, Level, Result, Room
from planner.errors import InputError
from planner.plan import (
    Block,
    Call,
    Cr10,
    Effort,
    ForMetres,
    ForSeconds,
    ForStrokes,
    Gap,
    Length,
    Part,
    PartKind,
    Plan,
    Pressure,
    Repeat,
    Rest,
    Setting,
    Split,
    SplitOffset,
    Step,
    TwoKPower,
)
from planner.timeline import compile_timeline

_SECONDS = (10, 20, 30, 45, 60, 95, 120, 180, 240, 300, 600, 1200, 1900, 2400)
_METRES = (100, 250, 500, 1000, 2000, 5000)
_STROKES = (5, 10, 15, 20, 60, 217, 400)
_RATES = (16, 18, 20, 22, 23, 24, 26, 28, 30, 32, 36, 40, 44, 50)
_RESTS = (10, 30, 60, 120, 300)
_GAPS = (30, 60, 120, 300, 600, 1200)
_CALLS = ("Long arms", "Push", "Sit up tall and breathe out all the way to the end now")


@dataclass(frozen=True)
class Sketch:
    """A plan, who rows it and where."""

    plan: Plan
    athlete: Athlete
    room: Room


def sketches(seed: int, count: int) -> Iterator[Sketch]:
    """So many plans that can be compiled, always the same ones for a seed."""
    chance = Random(seed)
    made = 0
    while made < count:
        sketch = Sketch(_plan(chance), _athlete(chance), chance.choice(list(Room)))
        try:
            compile_timeline(sketch.plan, sketch.athlete)
        except InputError:
            continue
        made += 1
        yield sketch


def _plan(chance: Random) -> Plan:
    parts: list[Part | Gap] = []
    if chance.random() < 0.7:
        parts.append(Part(PartKind.WARM_UP, _steps(chance)))
    if chance.random() < 0.5:
        parts.append(Gap(chance.choice(_GAPS)))
    if chance.random() < 0.9 or not parts:
        parts.append(Part(PartKind.MAIN, _steps(chance)))
    if chance.random() < 0.4:
        parts.append(Part(PartKind.COOL_DOWN, _steps(chance)))
    setting = Setting(lever=chance.randint(1, 10)) if chance.random() < 0.3 else None
    return Plan("By chance", tuple(parts), setting=setting)


def _steps(chance: Random, depth: int = 0) -> tuple[Step, ...]:
    return tuple(_step(chance, depth) for _ in range(chance.randint(1, 4)))


def _step(chance: Random, depth: int) -> Step:
    kind = chance.random()
    if kind < 0.12:
        return Rest(chance.choice(_RESTS))
    if kind > 0.3 or depth == 2:
        return _block(chance)
    between: tuple[Step, ...] = ()
    if chance.random() < 0.7:
        between = (Rest(chance.choice(_RESTS)) if chance.random() < 0.6 else _block(chance),)
    return Repeat(chance.choice((2, 3, 5, 8)), _steps(chance, depth + 1), between)


def _block(chance: Random) -> Block:
    rate = chance.choice(_RATES) if chance.random() < 0.85 else None
    calls = tuple(
        Call(chance.choice(_CALLS), chance.randint(1, 8)) for _ in range(chance.choice((0, 0, 0, 1, 3)))
    )
    setting = Setting(lever=chance.randint(1, 10)) if chance.random() < 0.1 else None
    effort = _effort(chance) if chance.random() < 0.85 else None
    return Block(_length(chance, rate), rate, effort, calls=calls, setting=setting)


def _length(chance: Random, rate: int | None) -> Length:
    kind = chance.random()
    if kind < 0.55 or (kind > 0.8 and rate is None):
        return ForSeconds(chance.choice(_SECONDS))
    return ForMetres(chance.choice(_METRES)) if kind < 0.8 else ForStrokes(chance.choice(_STROKES))


def _effort(chance: Random) -> Effort:
    kind = chance.random()
    if kind < 0.6:
        return chance.choice(list(Pressure))
    if kind < 0.7:
        return Split(Fraction(chance.randint(850, 2000), 10))
    if kind < 0.8:
        return SplitOffset(Fraction(chance.randint(-150, 400), 10))
    if kind < 0.93:
        return TwoKPower(Fraction(chance.randint(20, 160), 100))
    return Cr10(Fraction(chance.choice((1, 3, 5, 7, 9, 10))))


def _athlete(chance: Random) -> Athlete:
    level = chance.choice(list(Level))
    age = chance.choice((None, None, 10, 15, 40, 75))
    if chance.random() < 0.4:
        return Athlete(level=level, age=age)
    split, exponent = chance.uniform(88, 150), chance.uniform(0.04, 0.12)
    metres = chance.sample((500, 1000, 2000, 5000, 6000, 10_000), chance.choice((1, 1, 2, 3)))
    results = tuple(Result(m, _tenths(split * (m / 2000) ** exponent * m / 500)) for m in metres)
    return Athlete(results, level=level, age=age)


def _tenths(seconds: float) -> Fraction:
    return Fraction(round(10 * seconds), 10)
