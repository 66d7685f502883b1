"""A week of rated sessions as JSON, and the load it comes to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from marshmallow import fields, post_load

from planner.errors import InputError, Problem
from planner.limits import CR10, SESSION_MINUTES, SESSIONS_A_DAY
from planner.load import DAYS, session_load, week_of
from planner.schemas.fields import Inside, Several, Stepped, Strict, Whole, load
from planner.schemas.readiness_schema import dump_week
from planner.schemas.readiness_shape import WeekShape


@dataclass(frozen=True, slots=True)
class RatedSession:
    """How hard a session was, from 0 to 10, and how many minutes it lasted."""

    cr10: Fraction
    minutes: int


class RatedSessionSchema(Strict):
    """One session: its effort on the session version of the 0 to 10 scale, and its minutes."""

    cr10 = Stepped(CR10, required=True)
    minutes = Whole(SESSION_MINUTES, required=True)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> RatedSession:
        return RatedSession(**data)


class WeekRequestSchema(Strict):
    """Seven days in order, each a list of its sessions; a day of rest is an empty list."""

    days = Several(
        "days",
        Several("sessions of a day", Inside("a session", RatedSessionSchema), SESSIONS_A_DAY),
        DAYS,
        required=True,
    )


class WeekAnswerShape(WeekShape):
    """The load of each day, effort times minutes, and of the week."""

    daily = fields.List(fields.Float(), required=True)


def week_answer(document: object) -> dict[str, object]:
    """The load of the week in a JSON document. Raises InputError with a JSON pointer to each mistake."""
    days: list[list[RatedSession]] = load(WeekRequestSchema, document)["days"]
    return dump_daily([sum(session_load(each.cr10, each.minutes) for each in day) for day in days])


def dump_daily(daily: list[float]) -> dict[str, object]:
    """Seven daily loads and what they come to, as JSON. Raises InputError for other than seven."""
    try:
        return {"daily": daily, **dump_week(week_of(daily))}
    except InputError as error:
        raise InputError(Problem(f"/days{p.pointer}", p.sentence) for p in error.problems) from None
