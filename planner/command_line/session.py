"""The command `session`: a plan for the piece ahead; its reasons and what is to be said of it before it."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterable, Iterator
from typing import Any

from planner.appraisal import appraise
from planner.athlete import Level, Room
from planner.command_line.appraisal_text import appraisal_lines
from planner.command_line.pieces import PACINGS, PIECES, read_gap, read_goal, read_pacing, read_piece
from planner.command_line.reading import one_of, read_number, read_result, read_whole
from planner.errors import InputError, Problem
from planner.notation.writer import write
from planner.schemas.session_schema import dump_session, load_session_request
from planner.session import DEFAULT_MINUTES, Session, SessionRequest, session_of
from planner.timeline import compile_timeline

_OPTIONS = {
    "/warmup_minutes": "--warm-up",
    "/gap_seconds": "--gap",
    "/pacing": "--pacing",
    "/goal_seconds": "--goal",
    "/goal_metres": "--goal",
    "/athlete/mass_kg": "--mass",
    "/athlete/age": "--age",
    "/piece/intervals/leave_percent": "--leave",
}
"""By which option each part of a request was given."""


def add_session(commands: Any) -> None:
    """Adds the command and its options to the parser's commands."""
    session = commands.add_parser("session", help="make a session for a piece")
    add = session.add_argument
    add("piece", type=read_piece, help=PIECES)
    add("--warm-up", type=read_whole, default=DEFAULT_MINUTES, metavar="MINUTES", help="5 to 30")
    add("--level", choices=list(Level), type=one_of(Level), help="how much rowing lies behind you")
    add("--room", choices=list(Room), type=one_of(Room), default=Room.NORMAL, help="how warm it is")
    add("--result", type=read_result, action="append", help="a best, such as 2000m=7:42")
    add("--age", type=read_whole, metavar="YEARS", help="children and older adults get other advice")
    add("--mass", type=read_number, metavar="KG", help="of the body: tells the energy by the tables")
    add("--gap", type=read_gap, metavar="TIME", help="before the piece, such as 5:00")
    add("--pacing", type=read_pacing, help=f"how the pace goes over a test piece: {PACINGS}")
    add("--goal", type=read_goal, help="a goal such as 7:35, or 8000m in a time")
    add("--leave", type=read_whole, metavar="PERCENT", help="of the reserve after the last repetition")
    add("--only-warm-up", action="store_true", help="leave out the piece and what follows")
    add("--json", action="store_true", help="write the session as the API does")


def session_text(asked: argparse.Namespace) -> str:
    """The session as text, or as JSON where that is asked for. Raises InputError, in the options' words."""
    try:
        request = load_session_request(_document(asked))
        session = session_of(request)
    except InputError as error:
        raise InputError(_in_options(problem) for problem in error.problems) from None
    if asked.json:
        return json.dumps(dump_session(session), ensure_ascii=False, allow_nan=False) + "\n"
    said = _section("readiness and findings", _said(request, session))
    return _section("reasons", session.reasons) + said + write(session.plan)


def _document(asked: argparse.Namespace) -> dict[str, Any]:
    results = [{"metres": r.metres, "seconds": float(r.seconds)} for r in asked.result or ()]
    athlete = _given(results=results or None, mass_kg=asked.mass, age=asked.age)
    return {
        "piece": _piece(asked.piece, asked.leave),
        "warmup_minutes": asked.warm_up,
        "room": asked.room,
        "only_warm_up": asked.only_warm_up,
        **_given(athlete=athlete or None, level=asked.level, gap_seconds=asked.gap, pacing=asked.pacing),
        **(asked.goal or {}),
    }


def _given(**values: Any) -> dict[str, Any]:
    return {name: value for name, value in values.items() if value is not None}


def _piece(piece: dict[str, Any], leave: int | None) -> dict[str, Any]:
    if leave is None:
        return piece
    if "intervals" not in piece:
        sentence = "only an interval set leaves a share of the reserve: leave it out here"
        raise InputError([Problem("/piece/intervals/leave_percent", sentence)])
    return {"intervals": {**piece["intervals"], "leave_percent": leave}}


def _in_options(problem: Problem) -> Problem:
    """The problem under the name of the option that it lies in."""
    for place, option in _OPTIONS.items():
        if problem.pointer == place or problem.pointer.startswith(f"{place}/"):
            return Problem(problem.pointer, f"{option}: {problem.sentence}")
    return problem


def _said(request: SessionRequest, session: Session) -> Iterator[str]:
    rower = request.rower
    timeline = compile_timeline(session.plan, rower)
    return appraisal_lines(appraise(timeline, rower, rower.level, request.room))


def _section(title: str, lines: Iterable[str]) -> str:
    return "\n".join([title, *(f"  {line}" for line in lines)]) + "\n\n"
