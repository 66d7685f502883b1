"""The command `check`: what is unwise in a plan, why, and what would mend it."""

from __future__ import annotations

import argparse
import json
from typing import Any

from planner.appraisal import appraise
from planner.athlete import Athlete, Level, Room
from planner.command_line.appraisal_text import appraisal_lines
from planner.command_line.reading import one_of, read_result
from planner.plan import Plan
from planner.schemas.appraisal_schema import dump_appraisal
from planner.timeline import compile_timeline


def add_check(commands: Any) -> None:
    """Adds the command and its options to the parser's commands; the file is added by the caller."""
    check = commands.add_parser("check", help="find what is unwise in a plan, and what would mend it")
    check.add_argument("--result", type=read_result, action="append", help="a best, such as 2000m=7:42")
    check.add_argument(
        "--level", choices=list(Level), type=one_of(Level), default=Level.CLUB, help="who rows it"
    )
    check.add_argument(
        "--room", choices=list(Room), type=one_of(Room), default=Room.NORMAL, help="how warm it is"
    )
    check.add_argument("--json", action="store_true", help="write readiness and findings as the API does")


def check_text(plan: Plan, asked: argparse.Namespace) -> str:
    """The readiness and the findings as lines, or as JSON. Raises InputError for a plan that is too large."""
    athlete = Athlete(tuple(asked.result or ()), level=asked.level)
    appraisal = appraise(compile_timeline(plan, athlete), athlete, asked.level, asked.room)
    if asked.json:
        return json.dumps(dump_appraisal(appraisal), ensure_ascii=False, allow_nan=False) + "\n"
    return "\n".join(appraisal_lines(appraisal)) + "\n"
