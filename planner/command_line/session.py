"""The command `session`: a plan for the piece ahead, its reasons before it."""

from __future__ import annotations

import argparse
import json
import re
from typing import Any

from planner.athlete import Level, Room
from planner.command_line.reading import read_result
from planner.notation.writer import write
from planner.schemas.session_schema import NAMED_SHAPES, dump_session, load_session_request
from planner.session import DEFAULT_MINUTES, Session, session_of
from planner.units import read_clock

_PIECES = (
    '2000m, "30 min" or "30 min r20" for a test piece; "6 x 500m / 2:00" or "8 x 1:00 / 1:00" for '
    'intervals; "steady 40 min"; "technique 20 min"'
)
_TIME = r"\d{1,3} ?min|\d{1,3} ?s|\d{1,2}:\d{2}(?::\d{2})?"
_LENGTH = rf"(?:(?P<km>\d{{1,3}}(?:\.\d{{1,3}})?) ?km|(?P<metres>\d{{1,6}}) ?m|(?P<time>{_TIME}))"
_FORMS = {
    "test": re.compile(rf"{_LENGTH}(?: r(?P<cap>\d{{1,3}}))?", re.ASCII),
    "intervals": re.compile(rf"(?P<times>\d{{1,4}}) ?x ?{_LENGTH} ?/ ?(?P<rest>{_TIME})", re.ASCII),
    "easy": re.compile(rf"(?P<kind>steady|technique) (?P<time>{_TIME})", re.ASCII),
}


def add_session(commands: Any) -> None:
    """Adds the command and its options to the parser's commands."""
    session = commands.add_parser("session", help="make a session for a piece")
    session.add_argument("piece", type=read_piece, help=_PIECES)
    session.add_argument("--warm-up", type=int, default=DEFAULT_MINUTES, metavar="MINUTES", help="5 to 30")
    session.add_argument("--level", choices=list(Level), type=Level, help="how much rowing lies behind you")
    session.add_argument("--room", choices=list(Room), type=Room, default=Room.NORMAL, help="how warm it is")
    session.add_argument("--result", type=read_result, action="append", help="a best, such as 2000m=7:42")
    session.add_argument("--gap", type=_read_seconds, help="time before the piece, such as 5:00")
    session.add_argument("--pacing", choices=NAMED_SHAPES, help="how the pace goes over a test piece")
    session.add_argument("--goal", type=read_goal, help="a goal such as 7:35, or 8000m in a time")
    session.add_argument("--only-warm-up", action="store_true", help="leave out the piece and what follows")
    session.add_argument("--json", action="store_true", help="write the session as the API does")


def session_text(asked: argparse.Namespace) -> str:
    """The session as text, or as JSON where that is asked for. Raises InputError as `session_of` does."""
    session = session_of(load_session_request(_document(asked)))
    if asked.json:
        return json.dumps(dump_session(session), ensure_ascii=False, allow_nan=False) + "\n"
    return _reasons(session) + write(session.plan)


def read_piece(text: str) -> dict[str, Any]:
    """The piece as the API takes it; raises ArgumentTypeError, with examples, for anything else."""
    plain = " ".join(text.lower().split())
    if found := _FORMS["easy"].fullmatch(plain):
        return {found["kind"]: {"seconds": _seconds(found["time"])}}
    if found := _FORMS["intervals"].fullmatch(plain):
        rest = _seconds(found["rest"])
        return {"intervals": {"times": int(found["times"]), **_length(found), "rest_seconds": rest}}
    if found := _FORMS["test"].fullmatch(plain):
        cap = {"rate_cap": int(found["cap"])} if found["cap"] else {}
        return {"test": {**_length(found), **cap}}
    raise argparse.ArgumentTypeError(f'cannot read the piece "{text}": write {_PIECES}')


def read_goal(text: str) -> dict[str, Any]:
    """A goal in time or in metres as the API takes it; raises ArgumentTypeError with what would do."""
    if found := re.fullmatch(r"(\d{1,6}) ?m", text.strip(), re.ASCII):
        return {"goal_metres": int(found[1])}
    try:
        seconds = read_clock(text)
    except ValueError as error:
        raise argparse.ArgumentTypeError(str(error)) from None
    return {"goal_seconds": int(seconds) if seconds.denominator == 1 else float(seconds)}


def _document(asked: argparse.Namespace) -> dict[str, Any]:
    results = [{"metres": r.metres, "seconds": float(r.seconds)} for r in asked.result or ()]
    given = {
        "athlete": {"results": results} if results else None,
        "level": asked.level,
        "gap_seconds": asked.gap,
        "pacing": asked.pacing,
        **(asked.goal or {}),
    }
    return {
        "piece": asked.piece,
        "warmup_minutes": asked.warm_up,
        "room": asked.room,
        "only_warm_up": asked.only_warm_up,
        **{name: value for name, value in given.items() if value is not None},
    }


def _reasons(session: Session) -> str:
    return "\n".join(["reasons", *(f"  {reason}" for reason in session.reasons)]) + "\n\n"


def _length(found: re.Match[str]) -> dict[str, int]:
    if found["time"]:
        return {"seconds": _seconds(found["time"])}
    return {"metres": int(found["metres"]) if found["metres"] else round(float(found["km"]) * 1000)}


def _read_seconds(text: str) -> int:
    if re.fullmatch(_TIME, text, re.ASCII):
        return _seconds(text)
    raise argparse.ArgumentTypeError(f'cannot read the time "{text}": write it as 5:00 or 5 min')


def _seconds(text: str) -> int:
    if text.endswith("min"):
        return int(text.removesuffix("min")) * 60
    return int(read_clock(text.removesuffix("s").strip()))
