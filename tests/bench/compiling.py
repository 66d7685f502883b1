"""Compiling a plan, beside writing the very same timeline as JSON with the standard module."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from planner.plan import (
    Block,
    Call,
    ForSeconds,
    ForStrokes,
    Part,
    PartKind,
    Plan,
    Pressure,
    Repeat,
    SplitOffset,
)
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import compile_timeline
from tests.bench.measuring import Row, at_most, median_seconds
from tests.builders import rower_of_7_42
from web.builtin_plans import load_plan_file
from web.settings import Settings

AIM = 3.0
ROUNDS = 60
SHORT_PLAN = "twenty-minutes-before-500m"


def rows() -> Iterator[Row]:
    """One row for each plan."""
    yield _row("compile 20 min, against json.dumps", twenty_minutes())
    yield _row("compile 500 segments, all different", five_hundred_different())
    yield _row("compile 500 segments of repeats", five_hundred_repeated())


def twenty_minutes() -> Plan:
    """A built-in warm-up of twenty minutes, without the gap that follows it."""
    plan = load_plan_file(Settings().plans / f"{SHORT_PLAN}.yaml").plan
    return replace(plan, parts=plan.parts[:1])


def five_hundred_different() -> Plan:
    """Five parts of a hundred blocks, no two alike, each with a focus and a call."""
    parts = (tuple(_block(100 * part + block) for block in range(100)) for part in range(5))
    return Plan("Five hundred blocks", tuple(Part(PartKind.MAIN, blocks) for blocks in parts))


def _block(number: int) -> Block:
    return Block(
        ForSeconds(30 + number % 60),
        rate=18 + number % 15,
        effort=SplitOffset(Fraction(number % 25)),
        focus=f"One thing, the {number}th",
        calls=(Call(f"Call {number}", stroke=2),),
    )


def five_hundred_repeated() -> Plan:
    """A hundred repeats of five blocks."""
    hard = (Block(ForStrokes(10), 24 + rate, Pressure.FULL, calls=(Call("Legs"),)) for rate in range(4))
    easy = Block(ForSeconds(50), 20, Pressure.LIGHT, focus="Slow slide")
    return Plan("A hundred repeats", (Part(PartKind.MAIN, (Repeat(100, (*hard, easy)),)),))


def _row(subject: str, plan: Plan) -> Row:
    athlete = rower_of_7_42()
    timeline = compile_timeline(plan, athlete)
    document = dump_timeline(timeline)
    taken = median_seconds(
        {"compile": lambda: compile_timeline(plan, athlete), "write": lambda: json.dumps(document)}, ROUNDS
    )
    detail = (
        f"{len(timeline.segments)} segments: {taken['compile'] * 1000:.2f} ms "
        f"against {taken['write'] * 1000:.2f} ms"
    )
    return at_most(subject, taken["compile"] / taken["write"], AIM, "x", detail)
