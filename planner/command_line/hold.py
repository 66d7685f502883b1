"""The command `hold`: whether a target for intervals lasts to the end, and where it breaks if not."""

from __future__ import annotations

import argparse
import json
from typing import Any

from planner.athlete import Level
from planner.command_line.pieces import INTERVALS, TARGETS, read_intervals, read_target
from planner.command_line.reading import one_of, read_result
from planner.schemas.holding_schema import holding_answer


def add_hold(commands: Any) -> None:
    """Adds the command and its options to the parser's commands."""
    hold = commands.add_parser("hold", help="tell whether a target for intervals holds, and where it breaks")
    hold.add_argument("intervals", type=read_intervals, help=INTERVALS)
    hold.add_argument("target", type=read_target, help=TARGETS.replace("%", "%%"))
    hold.add_argument("--result", type=read_result, action="append", help="a best, such as 2000m=7:42")
    hold.add_argument(
        "--level", choices=list(Level), type=one_of(Level), help="how much rowing lies behind you"
    )
    hold.add_argument("--json", action="store_true", help="write the answer as the API does")


def hold_text(asked: argparse.Namespace) -> str:
    """What a coach would say and what is left after each, or JSON. Raises InputError as the API would."""
    results = [{"metres": r.metres, "seconds": float(r.seconds)} for r in asked.result or ()]
    document = {"intervals": asked.intervals, "target": asked.target, "athlete": {"results": results}}
    told: Any = holding_answer({**document, **({"level": asked.level} if asked.level else {})})
    if asked.json:
        return json.dumps(told, ensure_ascii=False, allow_nan=False) + "\n"
    after = "  ".join(map(str, told["after_each_percent"]))
    return f"{told['sentence']}\nreserve in percent after each: {after}\n"
