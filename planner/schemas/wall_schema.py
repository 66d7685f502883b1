"""What is asked of a wall: the plans it is to show one after the other, and when the first of them starts."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from marshmallow import ValidationError, post_load, validates_schema

from planner.errors import InputError, Problem
from planner.expansion import check
from planner.limits import Bounds
from planner.plan import Plan
from planner.schemas.fields import Inside, Several, Strict, StrictField, Whole, load
from planner.schemas.plan_schema import PlanSchema

MOST_PLANS = 12
START_IN = Bounds("time to the start", 3, 3_600, "seconds")
KEY = re.compile(r"[A-Za-z0-9_-]{43}", re.ASCII)
"""256 bits in base64url (RFC 4648, 5), without padding."""
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


class WallKey(StrictField[str]):
    """A key of a wall; what was sent in its place is not told back."""

    def __init__(self, **options: Any) -> None:
        super().__init__("the key", {"type": "string", "pattern": f"^{KEY.pattern}$"}, **options)

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> str:
        if not isinstance(value, str) or not KEY.fullmatch(value):
            raise ValidationError(
                "the key is none: make 256 bits by chance, and send them as 43 letters of base64url"
            )
        return value


class WallKeyRequestSchema(Strict):
    """Another key for a wall, made by whoever asks, so that it is not lost where the answer is."""

    key = WallKey(required=True)


def load_wall_key(document: object) -> str:
    """The key that a wall is to have. Raises InputError with a JSON pointer to each mistake."""
    asked: dict[str, str] = load(WallKeyRequestSchema, document)
    return asked["key"]


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
