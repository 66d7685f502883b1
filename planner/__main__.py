"""The command line: shorthand, timelines, findings, sessions, athletes: the API without a browser."""

from __future__ import annotations

import argparse
import json
import sys
from pathlib import Path

import yaml

from planner.appraisal import appraise
from planner.athlete import Athlete
from planner.calls import WORDS_A_MINUTE
from planner.command_line.athlete import add_athlete, athlete_text
from planner.command_line.check import add_check, check_text
from planner.command_line.hold import add_hold, hold_text
from planner.command_line.load import add_load, load_text
from planner.command_line.reading import one_of, read_result, read_words
from planner.command_line.session import add_session, session_text
from planner.errors import InputError
from planner.notation.reader import read
from planner.notation.writer import write
from planner.plan import Plan
from planner.plan_file import read_plan_file
from planner.schemas.appraisal_schema import dump_appraised
from planner.strokes import Fit, Rhythm
from planner.timeline import Timeline, compile_timeline
from planner.units import clock, split_clock

YAML_SUFFIXES = {".yaml", ".yml"}


def main(arguments: list[str] | None = None) -> int:
    """Runs one command; 1, with a sentence on the error stream, when the input cannot be used."""
    asked = _parser().parse_args(arguments)
    try:
        print(_answer(asked), end="")
    except InputError as error:
        print("\n".join(problem.sentence for problem in error.problems), file=sys.stderr)
        return 1
    except (OSError, UnicodeDecodeError) as error:
        print(f"{asked.file} cannot be read: {error}", file=sys.stderr)
        return 1
    return 0


def _answer(asked: argparse.Namespace) -> str:
    if asked.command == "session":
        return session_text(asked)
    if asked.command == "athlete":
        return athlete_text(asked)
    if asked.command == "hold":
        return hold_text(asked)
    if asked.command == "load":
        return load_text(asked)
    plan = _plan_in(asked.file)
    if asked.command == "check":
        return check_text(plan, asked)
    return write(plan) if asked.command == "shorthand" else _timeline(plan, asked)


def _plan_in(path: Path) -> Plan:
    """The plan in a file: of the kind in plans/ by its name, else in the coach's shorthand."""
    text = path.read_text(encoding="utf-8")
    return read_plan_file(text, yaml).plan if path.suffix in YAML_SUFFIXES else read(text)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser("python -m planner", description="Rowing plans, to the stroke.")
    commands = parser.add_subparsers(dest="command", required=True)
    shorthand = commands.add_parser("shorthand", help="write a plan's text in canonical form")
    timeline = commands.add_parser("timeline", help="list what is rowed, with exact starts")
    add_check(commands)
    for command in (shorthand, timeline, commands.choices["check"]):
        command.add_argument("file", type=Path, help="a text in the coach's shorthand, or a plan in YAML")
    timeline.add_argument("--result", type=read_result, help="a recent best, such as 2000m=7:42")
    timeline.add_argument(
        "--fit", type=one_of(Fit), choices=list(Fit), default=Fit.CLOCK, help="keep length or rate"
    )
    timeline.add_argument("--rhythm", type=one_of(Rhythm), choices=list(Rhythm), default=Rhythm.MACHINE)
    timeline.add_argument(
        "--words-a-minute", type=read_words, default=WORDS_A_MINUTE, help="speed of the voice"
    )
    timeline.add_argument("--json", action="store_true", help="write the timeline as the API does")
    add_session(commands)
    add_athlete(commands)
    add_hold(commands)
    add_load(commands)
    return parser


def _timeline(plan: Plan, asked: argparse.Namespace) -> str:
    athlete = Athlete((asked.result,)) if asked.result else None
    timeline = compile_timeline(plan, athlete, asked.fit, asked.rhythm, asked.words_a_minute)
    if asked.json:
        appraised = dump_appraised(timeline, appraise(timeline, athlete))
        return json.dumps(appraised, ensure_ascii=False, allow_nan=False) + "\n"
    return "\n".join(_rows(timeline)) + "\n"


def _rows(timeline: Timeline) -> list[str]:
    rows = [f"{'start':>9} {'length':>9} {'rate':>5} {'strokes':>7} {'split':>7}  what"]
    for segment in timeline.segments:
        stretch = segment.stretch
        split = stretch.target.split if stretch.target else None
        rows.append(
            f"{clock(segment.start):>9} {clock(stretch.duration):>9} {stretch.rate or '':>5} "
            f"{stretch.strokes.count if stretch.strokes else '':>7} "
            f"{split_clock(split) if split else '':>7}  "
            f"{segment.part}, {stretch.kind.value}{' (estimated)' if segment.estimated else ''}"
        )
    rows.extend(f"{finding.severity.value}: {finding.sentence}" for finding in timeline.findings)
    return rows


if __name__ == "__main__":
    sys.exit(main())
