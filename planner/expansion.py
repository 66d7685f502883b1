"""How large a plan becomes when its repeats are rolled out: measured first, then rolled out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from planner.errors import Problem
from planner.limits import BLOCKS_IN_LIST, DEPTH, PARTS, SEGMENTS, TOTAL_SECONDS
from planner.plan import (
    Block,
    ForMetres,
    ForSeconds,
    ForStrokes,
    Gap,
    Open,
    Part,
    Plan,
    Repeat,
    Rest,
    Split,
    Step,
)
from planner.units import clock

OPEN_SECONDS = 300
"""What an open block is taken to last until somebody taps: judgement [C]."""
_SLOW_SPLIT = 150
"""Seconds per 500 m, only to bound the length of metre blocks whose own split is not written."""


@dataclass(frozen=True, slots=True)
class Size:
    """Segments and seconds of something expanded; metre and open blocks by a rough estimate."""

    segments: int = 0
    seconds: int = 0

    def __add__(self, other: Size) -> Size:
        return Size(self.segments + other.segments, self.seconds + other.seconds)

    def __mul__(self, times: int) -> Size:
        return Size(self.segments * times, self.seconds * times)


@dataclass(frozen=True, slots=True)
class Repetition:
    """Which time round of the innermost repeat: the first is 1."""

    number: int
    times: int


class Placed(NamedTuple):
    """One step of the expanded plan: where it is written, and in which repetition it stands."""

    step: Block | Rest
    place: str
    repetition: Repetition | None


def check(plan: Plan) -> tuple[Problem, ...]:
    """What makes a plan too large or too deep to expand, or nothing; costs one look at each step."""
    if not plan.parts:
        return (Problem("/parts", "a plan has no parts: it needs at least one block, such as 3' r18 light"),)
    if len(plan.parts) > PARTS:
        return (Problem("/parts", f"{len(plan.parts)} parts are more than {PARTS}"),)
    problems = tuple(p for i, part in enumerate(plan.parts) for p in _check_part(part, f"/parts/{i}"))
    return problems or _check_size(plan)


def _check_part(part: Part | Gap, place: str) -> Iterator[Problem]:
    if isinstance(part, Part):
        yield from _check_steps(part.blocks, f"{place}/blocks", 0)


def _check_steps(steps: tuple[Step, ...], place: str, depth: int) -> Iterator[Problem]:
    if not steps:
        yield Problem(place, "there is nothing to row here: write at least one block, such as 3' r18 light")
    if len(steps) > BLOCKS_IN_LIST:
        yield Problem(place, f"{len(steps)} blocks are more than {BLOCKS_IN_LIST} in one list: use repeats")
    for index, step in enumerate(steps):
        if not isinstance(step, Repeat):
            continue
        here = f"{place}/{index}"
        if depth == DEPTH:
            yield Problem(here, f"repeats stand more than {DEPTH} deep: write the inner ones out")
            return
        yield from _check_steps(step.blocks, f"{here}/blocks", depth + 1)
        if step.between:
            yield from _check_steps(step.between, f"{here}/between", depth + 1)


def _check_size(plan: Plan) -> tuple[Problem, ...]:
    total = Size()
    for index, part in enumerate(plan.parts):
        total += Size(1, part.seconds) if isinstance(part, Gap) else size_of(part.blocks)
        if total.segments > SEGMENTS:
            return (
                Problem(
                    f"/parts/{index}",
                    f"the plan comes to {total.segments} blocks when its repeats are rolled out, "
                    f"more than {SEGMENTS}: use fewer repetitions",
                ),
            )
        if total.seconds > TOTAL_SECONDS:
            return (
                Problem(
                    f"/parts/{index}",
                    f"the plan lasts about {clock(total.seconds)}, more than {clock(TOTAL_SECONDS)}: "
                    "shorten a block or use fewer repetitions",
                ),
            )
    return ()


def size_of(steps: tuple[Step, ...]) -> Size:
    """Segments and rough seconds of some steps, found without expanding them."""
    sizes = [_step_size(step) for step in steps]
    return Size(sum(size.segments for size in sizes), sum(size.seconds for size in sizes))


def _step_size(step: Step) -> Size:
    match step:
        case Rest(seconds):
            return Size(1, seconds)
        case Repeat(times, blocks, between):
            return size_of(blocks) * times + size_of(between) * (times - 1)
        case Block():
            sides = step.drill.sides if step.drill and step.drill.sides else 1
            swaps = sides - 1 if step.drill and step.drill.swap_seconds else 0
            return Size(sides + swaps, _rough_seconds(step))


def _rough_seconds(block: Block) -> int:
    match block.length:
        case ForSeconds(seconds):
            return seconds
        case ForMetres(metres):
            split = block.effort.seconds if isinstance(block.effort, Split) else _SLOW_SPLIT
            return int(metres * split // 500)
        case ForStrokes(strokes):
            return strokes * 60 // (block.rate or 20)
        case Open():
            return OPEN_SECONDS


def expand(steps: tuple[Step, ...], place: str, repetition: Repetition | None = None) -> Iterator[Placed]:
    """The steps with their repeats rolled out, in the order in which they are rowed."""
    for index, step in enumerate(steps):
        here = f"{place}/{index}"
        if isinstance(step, Repeat):
            yield from _expand_repeat(step, here)
        else:
            yield Placed(step, here, repetition)


def _expand_repeat(repeat: Repeat, place: str) -> Iterator[Placed]:
    for number in range(1, repeat.times + 1):
        round_ = Repetition(number, repeat.times)
        yield from expand(repeat.blocks, f"{place}/blocks", round_)
        if number < repeat.times:
            yield from expand(repeat.between, f"{place}/between", round_)
