"""What is asked of the planner from outside: a timeline for a plan, or shorthand to and from a plan."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import post_load

from planner import limits
from planner.athlete import Athlete, Room
from planner.calls import WORDS_A_MINUTE
from planner.errors import InputError, Problem
from planner.expansion import check
from planner.notation.reader import MOST_CHARACTERS
from planner.plan import Plan
from planner.schemas.athlete_schema import AthleteSchema
from planner.schemas.fields import Inside, OneKey, OneOf, Strict, Text, Whole, load
from planner.schemas.plan_schema import PlanSchema
from planner.strokes import Fit, Rhythm


@dataclass(frozen=True, slots=True)
class TimelineRequest:
    """A plan to compile, for whom, by which policies, and in how warm a room."""

    plan: Plan
    athlete: Athlete | None = None
    fit: Fit = Fit.CLOCK
    rhythm: Rhythm = Rhythm.MACHINE
    words_a_minute: int = WORDS_A_MINUTE
    room: Room = Room.NORMAL


class TimelineRequestSchema(Strict):
    """A plan to compile; without an athlete it runs on rate, pressure and change of split."""

    plan = Inside("plan", PlanSchema, required=True)
    athlete = Inside("athlete", AthleteSchema)
    fit = OneOf("fit", Fit)
    rhythm = OneOf("rhythm", Rhythm)
    words_a_minute = Whole(limits.WORDS_A_MINUTE)
    room = OneOf("room", Room)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> TimelineRequest:
        return TimelineRequest(**data)


class LinkRequestSchema(Strict):
    """A plan to be published under a short address."""

    plan = Inside("plan", PlanSchema, required=True)


class ShorthandRequestSchema(OneKey):
    """Shorthand to be read, or a plan to be written as shorthand."""

    text = Text("shorthand", MOST_CHARACTERS)
    plan = Inside("plan", PlanSchema)

    @post_load
    def _make(self, data: Mapping[str, str | Plan], **_: object) -> str | Plan:
        (found,) = data.values()
        return found


def load_timeline_request(document: object) -> TimelineRequest:
    """What to compile. Raises InputError with a JSON pointer to each mistake."""
    asked: TimelineRequest = load(TimelineRequestSchema, document)
    _check_size(asked.plan)
    return asked


def load_link_request(document: object) -> Plan:
    """The plan to publish. Raises InputError with a JSON pointer to each mistake."""
    plan: Plan = load(LinkRequestSchema, document)["plan"]
    _check_size(plan)
    return plan


def load_shorthand_request(document: object) -> str | Plan:
    """The text to read, or the plan to write. Raises InputError with a JSON pointer to each mistake."""
    asked: str | Plan = load(ShorthandRequestSchema, document)
    if isinstance(asked, Plan):
        _check_size(asked)
    return asked


def _check_size(plan: Plan) -> None:
    if problems := check(plan):
        raise InputError(Problem(f"/plan{p.pointer}", p.sentence) for p in problems)
