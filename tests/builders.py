"""Short ways to write plans in tests."""

from __future__ import annotations

from fractions import Fraction

from planner.athlete import Athlete, Result
from planner.plan import (
    Block,
    Effort,
    ForMetres,
    ForSeconds,
    ForStrokes,
    Gap,
    Open,
    Part,
    PartKind,
    Plan,
    Step,
)


def seconds(length: int, rate: int | None = None, effort: Effort | None = None) -> Block:
    """A block on the clock."""
    return Block(ForSeconds(length), rate, effort)


def strokes(count: int, rate: int, effort: Effort | None = None) -> Block:
    """A block counted in strokes."""
    return Block(ForStrokes(count), rate, effort)


def metres(length: int, rate: int | None = None, effort: Effort | None = None) -> Block:
    """A block in metres."""
    return Block(ForMetres(length), rate, effort)


def open_row(rate: int | None = None, effort: Effort | None = None) -> Block:
    """A block that a tap ends."""
    return Block(Open(), rate, effort)


def main_piece(*steps: Step) -> Plan:
    """A plan of one main part."""
    return Plan("A piece", (Part(PartKind.MAIN, steps),))


def warm_up_then(gap_seconds: int, warm_up: Step, piece: Step) -> Plan:
    """A warm-up, a gap and a piece."""
    return Plan(
        "Warm-up and piece",
        (Part(PartKind.WARM_UP, (warm_up,)), Gap(gap_seconds), Part(PartKind.MAIN, (piece,))),
    )


def rower_of_7_42() -> Athlete:
    """The invented rower of the examples: 2000 m in 7:42.0."""
    return Athlete((Result(2000, Fraction(462)),))
