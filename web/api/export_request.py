"""What is asked of an export: a plan, for whom, by which policies, and when the session is to start."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from marshmallow import ValidationError, post_load

from planner import limits
from planner.athlete import Athlete
from planner.calls import WORDS_A_MINUTE
from planner.errors import InputError, Problem
from planner.expansion import check
from planner.plan import Plan
from planner.schemas.athlete_schema import AthleteSchema
from planner.schemas.fields import Inside, OneOf, Strict, StrictField, Whole, load
from planner.schemas.plan_schema import PlanSchema
from planner.strokes import Fit, Rhythm

_DAY = re.compile(r"(?:19|20|21)\d\d-\d\d-\d\d", re.ASCII)
_MINUTE = re.compile(rf"{_DAY.pattern}T\d\d:\d\d", re.ASCII)
EXAMPLE_START = "2026-12-01T18:00"


@dataclass(frozen=True, slots=True)
class ExportRequest:
    """A plan to make a file of; `start` is a time of day without a zone, `today` the day it is there."""

    plan: Plan
    athlete: Athlete | None = None
    fit: Fit = Fit.CLOCK
    rhythm: Rhythm = Rhythm.MACHINE
    words_a_minute: int = WORDS_A_MINUTE
    start: datetime | None = None
    today: date | None = None


class LocalMinute(StrictField[datetime]):
    """A date and a time of day to the minute, in no time zone: 2026-12-01T18:00."""

    def __init__(self, name: str, about: str) -> None:
        wire: dict[str, object] = {"type": "string", "pattern": f"^{_MINUTE.pattern}$", "description": about}
        super().__init__(name, wire)

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> datetime:
        if not isinstance(value, str) or not _MINUTE.fullmatch(value):
            raise self.refuse(value, f"write date and time as {EXAMPLE_START}")
        try:
            return datetime.fromisoformat(value)
        except ValueError:
            raise ValidationError(f'{self.wanted_name} "{value}" is not in any calendar: check it') from None


class LocalDay(StrictField[date]):
    """A date: 2026-12-01."""

    def __init__(self, name: str, about: str) -> None:
        wire: dict[str, object] = {"type": "string", "pattern": f"^{_DAY.pattern}$", "description": about}
        super().__init__(name, wire)

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> date:
        if not isinstance(value, str) or not _DAY.fullmatch(value):
            raise self.refuse(value, f"write a date as {EXAMPLE_START[:10]}")
        try:
            return date.fromisoformat(value)
        except ValueError:
            raise ValidationError(f'{self.wanted_name} "{value}" is not in any calendar: check it') from None


class ExportRequestSchema(Strict):
    """A plan to make a file of; without an athlete it says rate, pressure and change of split only."""

    plan = Inside("plan", PlanSchema, required=True)
    athlete = Inside("athlete", AthleteSchema)
    fit = OneOf("fit", Fit)
    rhythm = OneOf("rhythm", Rhythm)
    words_a_minute = Whole(limits.WORDS_A_MINUTE)
    start = LocalMinute(
        "start", "when the session starts, wherever that is; without it a calendar entry stands over today"
    )
    today = LocalDay("today", "the day it is where this is asked; without it, the day in UTC")

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> ExportRequest:
        return ExportRequest(**data)


def load_export_request(document: object) -> ExportRequest:
    """What to make a file of. Raises InputError with a JSON pointer to each mistake."""
    asked: ExportRequest = load(ExportRequestSchema, document)
    if problems := check(asked.plan):
        raise InputError(Problem(f"/plan{p.pointer}", p.sentence) for p in problems)
    return asked
