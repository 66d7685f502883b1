"""Every session that is looked at: piece x minutes x level x room x with or without a result."""

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
RESULTS = {
    Level.NOVICE: Result(2000, Fraction(540)),
    Level.CLUB: Result(2000, Fraction(462)),
    Level.TRAINED: Result(2000, Fraction(380)),
}
"""Invented 2 km results of the levels."""


@dataclass(frozen=True)
class Case:
    """One session of the sweep."""

    piece: Piece
    minutes: int
    level: Level
    room: Room
    with_result: bool

    def __str__(self) -> str:
        result = ", with a result" if self.with_result else ""
        return f"{name_of(self.piece)}, {self.minutes} min, {self.level}, {self.room} room{result}"

    @property
    def request(self) -> SessionRequest:
        """What is asked of the planner."""
        athlete = Athlete((RESULTS[self.level],), level=self.level) if self.with_result else None
        return SessionRequest(self.piece, self.minutes, athlete, self.level, self.room)


def every_case() -> Iterator[Case]:
    """All of them, in order."""
    minutes = range(int(MINUTES.low), int(MINUTES.high) + 1)
    for parts in product(PIECES, minutes, Level, Room, (False, True)):
        yield Case(*parts)
