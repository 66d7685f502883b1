"""The command `load`: what a week of sessions, each rated from 0 to 10, comes to."""

from __future__ import annotations

import argparse
import json
import re
from typing import Any

from planner.schemas.load_schema import week_answer

_SESSION = re.compile(r"(\d{1,2}(?:\.5)?)x(\d{1,4})", re.ASCII)
_REST = "rest"


def add_load(commands: Any) -> None:
    """Adds the command and its options to the parser's commands."""
    load = commands.add_parser("load", help="tell the load of a week, and how even it was")
    load.add_argument(
        "day",
        nargs="+",
        type=read_day,
        help="seven days: effort from 0 to 10 x minutes, such as 6x45 or 4x60+7x20, or rest",
    )
    load.add_argument("--json", action="store_true", help="write the week as the API does")


def read_day(text: str) -> list[dict[str, float]]:
    """The sessions of a day; raises ArgumentTypeError with what would do."""
    if text == _REST:
        return []
    found = [_SESSION.fullmatch(each) for each in text.split("+")]
    if not all(found):
        raise argparse.ArgumentTypeError(f'cannot read the day "{text}": write 6x45, 4x60+7x20 or rest')
    return [{"cr10": _number(m[1]), "minutes": int(m[2])} for m in found if m]


def _number(text: str) -> float:
    return float(text) if "." in text else int(text)


def load_text(asked: argparse.Namespace) -> str:
    """The week as lines, or as JSON. Raises InputError for a week that cannot be."""
    week: Any = week_answer({"days": asked.day})
    if asked.json:
        return json.dumps(week, allow_nan=False) + "\n"
    lines = [
        "effort x minutes: " + "  ".join(f"{daily:g}" for daily in week["daily"]),
        f"week {week['total']}, {week['mean']:g} a day",
    ]
    for each in week["evenness"]:
        lines.append(
            f"monotony {each['monotony']:g}, strain {each['strain']} ({each['deviation']} deviation)"
            if "monotony" in each
            else f"every day alike: no monotony or strain ({each['deviation']} deviation)"
        )
    return "\n".join(lines) + "\n"
