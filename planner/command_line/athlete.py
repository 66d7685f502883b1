"""The command `athlete`: what results, age and heart rate say."""

from __future__ import annotations

import argparse
import json
from typing import Any

from planner.athlete import Athlete, Level
from planner.command_line.reading import one_of, read_result, read_whole
from planner.command_line.standing_text import standing_lines
from planner.schemas.athlete_answer import dump_standing
from planner.schemas.athlete_schema import load_athlete
from planner.standing import standing_of


def add_athlete(commands: Any) -> None:
    """Adds the command and its options to the parser's commands."""
    athlete = commands.add_parser("athlete", help="predict pieces and tell bands from results")
    athlete.add_argument(
        "--result", type=read_result, action="append", help="a best, such as 2000m=7:42 or 30:00=7500m"
    )
    athlete.add_argument(
        "--level", choices=list(Level), type=one_of(Level), help="how much rowing lies behind you"
    )
    athlete.add_argument("--age", type=read_whole, metavar="YEARS")
    athlete.add_argument("--heart-rate-rest", type=read_whole, metavar="BEATS", help="resting, a minute")
    athlete.add_argument("--heart-rate-max", type=read_whole, metavar="BEATS", help="highest, a minute")
    athlete.add_argument("--json", action="store_true", help="write the answer as the API does")


def athlete_text(asked: argparse.Namespace) -> str:
    """The standing as lines, or as JSON where that is asked for. Raises InputError as the API would."""
    standing = standing_of(_athlete(asked))
    if asked.json:
        return json.dumps(dump_standing(standing), ensure_ascii=False, allow_nan=False) + "\n"
    return "\n".join(standing_lines(standing)) + "\n"


def _athlete(asked: argparse.Namespace) -> Athlete:
    given = {
        "results": [{"metres": r.metres, "seconds": float(r.seconds)} for r in asked.result or ()],
        "level": asked.level,
        "age": asked.age,
        "heart_rate_rest": asked.heart_rate_rest,
        "heart_rate_max": asked.heart_rate_max,
    }
    return load_athlete({name: value for name, value in given.items() if value is not None})
