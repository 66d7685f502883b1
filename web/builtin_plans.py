"""The plans that come with the app: one small YAML file each, read and compiled once, at the start."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

import yaml

from planner.appraisal import Appraisal, appraise
from planner.athlete import Level
from planner.plan import Plan
from planner.plan_file import LONGEST_FILE, PlanFileError, read_plan_file
from planner.timeline import Timeline, compile_timeline

NAME = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True)
class BuiltinPlan:
    """A plan of ours, its kind and level for the library, its timeline for anybody, and its appraisal."""

    slug: str
    kind: str
    level: Level
    plan: Plan
    timeline: Timeline
    appraisal: Appraisal


@dataclass(frozen=True, slots=True)
class Damaged:
    """A plan file that cannot be used: which, on what line (from 1), and why."""

    file: str
    line: int
    reason: str


@dataclass(frozen=True, slots=True)
class Library:
    """The plans that can be used, by slug, and the files that cannot."""

    plans: dict[str, BuiltinPlan]
    damaged: tuple[Damaged, ...]


def load_library(folder: Path) -> Library:
    """Every plan file of a folder; a damaged one never keeps the others from being served."""
    plans: dict[str, BuiltinPlan] = {}
    damaged: list[Damaged] = []
    for path in sorted(folder.glob("*.yaml")):
        try:
            plans[path.stem] = load_plan_file(path)
        except PlanFileError as error:
            damaged.append(Damaged(path.name, error.line, error.reason))
    return Library(plans, tuple(damaged))


def load_plan_file(path: Path) -> BuiltinPlan:
    """One plan file. Raises PlanFileError."""
    if not NAME.fullmatch(path.stem):
        raise PlanFileError(1, "the file's name has to be small letters, digits and single hyphens")
    read = read_plan_file(_text_of(path), yaml)
    timeline = compile_timeline(read.plan)
    return BuiltinPlan(path.stem, read.kind, read.level, read.plan, timeline, appraise(timeline))


def _text_of(path: Path) -> str:
    try:
        if path.stat().st_size > LONGEST_FILE:
            raise PlanFileError(1, f"the file is longer than {LONGEST_FILE} bytes")
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        raise PlanFileError(1, "the file is not in UTF-8") from None
    except OSError as error:
        raise PlanFileError(1, f"it cannot be read: {error.strerror}") from None
