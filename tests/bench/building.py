"""Making a session, beside the simulation that it cannot do without: that of its start line for every gap."""

from __future__ import annotations

from collections.abc import Iterator

from planner.athlete import Level
from planner.pieces import IntervalSet, Piece, TestPiece
from planner.readiness import readiness_of
from planner.session import SessionRequest, session_of
from planner.timeline import compile_timeline
from tests.bench.measuring import Row, at_most, median_seconds
from tests.builders import rower_of_7_42

AIM = 3.0
ROUNDS = 15


def rows() -> Iterator[Row]:
    """One row for each kind of piece."""
    yield _row("make a session for 2 km, against its readiness", TestPiece(metres=2000))
    yield _row("make a session of intervals, against its readiness", IntervalSet(6, metres=500))


def _row(subject: str, piece: Piece) -> Row:
    athlete = rower_of_7_42()
    request = SessionRequest(piece, 20, athlete)
    timeline = compile_timeline(session_of(request).plan, athlete)
    taken = median_seconds(
        {
            "make": lambda: session_of(request),
            "simulate": lambda: readiness_of(timeline, athlete, Level.CLUB),
        },
        ROUNDS,
    )
    detail = f"{taken['make'] * 1000:.1f} ms against {taken['simulate'] * 1000:.1f} ms"
    return at_most(subject, taken["make"] / taken["simulate"], AIM, "x", detail)
