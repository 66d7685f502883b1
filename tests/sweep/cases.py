"""Every session that is looked at: piece x minutes x level x room x none to three results."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from planner.athlete import Athlete, Level, Result, Room
from planner.pieces import STANDARD_PIECES, IntervalSet, Piece, SteadyRow, Technique, TestPiece, name_of
from planner.session import SessionRequest
from planner.warm_up.rules import MINUTES

PIECES: tuple[Piece, ...] = (
    *STANDARD_PIECES,
    *(TestPiece(metres=metres) for metres in (137, 1001, 2040, 42_195)),
    TestPiece(metres=2000, rate_cap=24),
    TestPiece(seconds=1800, rate_cap=20),
    TestPiece(seconds=1200, rate_cap=18),
    IntervalSet(10, metres=100, rest_seconds=60),
    IntervalSet(12, seconds=40, rest_seconds=60),
    IntervalSet(6, metres=500, rest_seconds=120),
    IntervalSet(4, seconds=420, rest_seconds=180),
    SteadyRow(2400),
    Technique(1800),
)


def _results(*pairs: tuple[int, float]) -> tuple[Result, ...]:
    return tuple(Result(metres, Fraction(str(seconds))) for metres, seconds in pairs)


RESULTS: dict[Level, tuple[tuple[Result, ...], ...]] = {
    Level.NOVICE: (
        (),
        _results((2000, 540)),
        _results((500, 119.2), (5000, 1466)),
        _results((1000, 262.6), (3000, 823.2), (10_000, 2879.6)),
    ),
    Level.CLUB: (
        (),
        _results((2000, 462)),
        _results((500, 102), (5000, 1254.3)),
        _results((1000, 224.7), (3000, 704.3), (10_000, 2463.7)),
    ),
    Level.TRAINED: (
        (),
        _results((2000, 380)),
        _results((500, 83.9), (5000, 1031.7)),
        _results((1000, 184.8), (3000, 579.3), (10_000, 2026.4)),
    ),
}
"""Invented results of the levels: none; a 2 km; two of somebody quick over short pieces (power law of 1.09);
three of somebody who lasts (1.04)."""


@dataclass(frozen=True)
class Case:
    """One session of the sweep."""

    piece: Piece
    minutes: int
    level: Level
    room: Room
    results: tuple[Result, ...]

    def __str__(self) -> str:
        known = f", by {len(self.results)} of {self.results[0].metres} m up" if self.results else ""
        return f"{name_of(self.piece)}, {self.minutes} min, {self.level}, {self.room} room{known}"

    @property
    def request(self) -> SessionRequest:
        """What is asked of the planner."""
        athlete = Athlete(self.results, level=self.level) if self.results else None
        return SessionRequest(self.piece, self.minutes, athlete, self.level, self.room)


def every_case() -> Iterator[Case]:
    """All of them, in order."""
    minutes = range(int(MINUTES.low), int(MINUTES.high) + 1)
    for piece, length, level, room in product(PIECES, minutes, Level, Room):
        for results in RESULTS[level]:
            yield Case(piece, length, level, room, results)
