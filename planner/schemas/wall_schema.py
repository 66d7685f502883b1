"""What is asked of a wall: the plans it is to show one after the other, and when the first of them starts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import ValidationError, post_load, validates_schema

from planner.errors import InputError, Problem
from planner.expansion import check
from planner.limits import Bounds
from planner.plan import Plan
from planner.schemas.fields import Inside, Several, Strict, Whole, load
from planner.schemas.plan_schema import PlanSchema

MOST_PLANS = 12
START_IN = Bounds("time to the start", 3, 3_600, "seconds")
MOMENT = Bounds("moment of the start", 0, 10**11, "seconds since 1970")


@dataclass(frozen=True, slots=True)
class WallRequest:
    """Plans in the order in which they come; the first starts at a moment, or in some seconds, or not yet."""

    plans: tuple[Plan, ...] = ()
    start_in_seconds: int | None = None
    starts_at_s: int | None = None


class WallRequestSchema(Strict):
    """What a wall is to show. Without plans it is cleared; at most one of the two starts is given."""

    plans = Several("plans", Inside("a plan", PlanSchema), MOST_PLANS, required=True)
    start_in_seconds = Whole(START_IN)
    starts_at_s = Whole(MOMENT)

    @validates_schema
    def _one_start(self, data: Mapping[str, Any], **_: object) -> None:
        starts = [name for name in ("start_in_seconds", "starts_at_s") if name in data]
        if len(starts) == 2:
            raise ValidationError("a start is given in seconds from now or as a moment, not both", starts[0])
        if starts and not data.get("plans"):
            raise ValidationError("nothing can start where there is no plan", starts[0])

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> WallRequest:
        return WallRequest(**{**data, "plans": tuple(data["plans"])})


def load_wall_request(document: object) -> WallRequest:
    """What to show. Raises InputError with a JSON pointer to each mistake."""
    asked: WallRequest = load(WallRequestSchema, document)
    problems = [
        Problem(f"/plans/{index}{problem.pointer}", problem.sentence)
        for index, plan in enumerate(asked.plans)
        for problem in check(plan)
    ]
    if problems:
        raise InputError(problems)
    return asked
