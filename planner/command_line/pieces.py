"""Reading what is to be rowed as a coach writes it: pieces, goals, pacing, targets, as the API takes them."""

from __future__ import annotations

import argparse
import re
from typing import Any

from planner.command_line.reading import read_number
from planner.schemas.session_schema import NAMED_SHAPES
from planner.units import read_clock

INTERVALS = '"6 x 500m / 2:00" or "8 x 1:00 / 1:00"'
PIECES = (
    f'2000m, "30 min" or "30 min r20" for a test piece; {INTERVALS} for '
    'intervals; "steady 40 min"; "technique 20 min"'
)
PACINGS = f"{', '.join(NAMED_SHAPES)}, or your own by quarters, such as own=-2,1,1.5,-0.5"
TARGETS = "a split such as 1:48.5, or a share of 2 km power such as 105%"
_TIME = r"\d{1,3} ?min|\d{1,3} ?s|\d{1,2}(?::[0-5]\d){1,2}"
_LENGTH = rf"(?:(?P<km>\d{{1,3}}(?:\.\d{{1,3}})?) ?km|(?P<metres>\d{{1,6}}) ?m|(?P<time>{_TIME}))"
_TEST = re.compile(rf"{_LENGTH}(?: r(?P<cap>\d{{1,3}}))?", re.ASCII)
_INTERVALS = re.compile(rf"(?P<times>\d{{1,4}}) ?x ?{_LENGTH} ?/ ?(?P<rest>{_TIME})", re.ASCII)
_EASY = re.compile(rf"(?P<kind>steady|technique) (?P<time>{_TIME})", re.ASCII)


def read_piece(text: str) -> dict[str, Any]:
    """The piece; raises ArgumentTypeError, with examples, for anything else."""
    plain = _plain(text)
    if found := _EASY.fullmatch(plain):
        return {found["kind"]: {"seconds": _seconds(found["time"])}}
    if found := _INTERVALS.fullmatch(plain):
        return {"intervals": _intervals(found)}
    if found := _TEST.fullmatch(plain):
        cap = {"rate_cap": int(found["cap"])} if found["cap"] else {}
        return {"test": {**_length(found), **cap}}
    raise argparse.ArgumentTypeError(f'cannot read the piece "{text}": write {PIECES}')


def read_intervals(text: str) -> dict[str, int]:
    """An interval set; raises ArgumentTypeError, with examples, for anything else."""
    if found := _INTERVALS.fullmatch(_plain(text)):
        return _intervals(found)
    raise argparse.ArgumentTypeError(f'cannot read the set "{text}": write {INTERVALS}')


def read_goal(text: str) -> dict[str, int | float]:
    """A goal in time or in metres; raises ArgumentTypeError with what would do."""
    if found := re.fullmatch(r"(\d{1,6}) ?m", text.strip(), re.ASCII):
        return {"goal_metres": int(found[1])}
    try:
        return {"goal_seconds": _json_seconds(text.strip())}
    except ValueError:
        raise argparse.ArgumentTypeError(
            f'cannot read the goal "{text}": write a time such as 7:35, or metres such as 8000m'
        ) from None


def read_pacing(text: str) -> str | dict[str, list[int | float]]:
    """The name of a shape, or own offsets by quarters; raises ArgumentTypeError with what would do."""
    if text in NAMED_SHAPES:
        return text
    name, _, offsets = text.partition("=")
    try:
        if name == "own":
            return {"own": [read_number(offset.strip()) for offset in offsets.split(",")]}
    except argparse.ArgumentTypeError:
        pass
    raise argparse.ArgumentTypeError(f'cannot read the pacing "{text}": write {PACINGS}')


def read_target(text: str) -> dict[str, int | float]:
    """A split or a share of 2 km power; raises ArgumentTypeError with what would do."""
    if found := re.fullmatch(r"(\d{1,3}) ?%", text.strip(), re.ASCII):
        return {"two_k_power_fraction": int(found[1]) / 100}
    try:
        return {"split": _json_seconds(text.strip())}
    except ValueError:
        raise argparse.ArgumentTypeError(f'cannot read the target "{text}": write {TARGETS}') from None


def read_gap(text: str) -> int:
    """A gap in seconds; raises ArgumentTypeError with what would do."""
    if re.fullmatch(_TIME, text, re.ASCII):
        return _seconds(text)
    raise argparse.ArgumentTypeError(f'cannot read the time "{text}": write it as 5:00 or 5 min')


def _plain(text: str) -> str:
    return " ".join(text.lower().split())


def _intervals(found: re.Match[str]) -> dict[str, int]:
    return {"times": int(found["times"]), **_length(found), "rest_seconds": _seconds(found["rest"])}


def _length(found: re.Match[str]) -> dict[str, int]:
    if found["time"]:
        return {"seconds": _seconds(found["time"])}
    return {"metres": int(found["metres"]) if found["metres"] else round(float(found["km"]) * 1000)}


def _seconds(text: str) -> int:
    if text.endswith("min"):
        return int(text.removesuffix("min")) * 60
    return int(read_clock(text.removesuffix("s").strip()))


def _json_seconds(text: str) -> int | float:
    seconds = read_clock(text)
    return int(seconds) if seconds.denominator == 1 else float(seconds)
