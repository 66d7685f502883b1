"""What the API's own answers hold, beside plans and timelines; only described here, never loaded."""

from __future__ import annotations

from marshmallow import fields

from planner.schemas.fields import Inside, Strict
from planner.schemas.plan_schema import PlanSchema
from planner.schemas.timeline_shape import TimelineShape


class PlanSummaryShape(Strict):
    """A built-in plan as it stands in the library."""

    slug = fields.String(required=True, metadata={"description": "its name in addresses"})
    title = fields.String(required=True)
    summary = fields.String(required=True)
    kind = fields.String(required=True, metadata={"description": "a short word for the library"})
    seconds_s = fields.Float(required=True)
    strokes = fields.Integer(required=True)
    estimated = fields.Boolean(required=True)


class PlanListingShape(Strict):
    """The built-in plans."""

    plans = fields.List(Inside("a plan", PlanSummaryShape), required=True)


class BuiltinPlanShape(Strict):
    """A built-in plan with its timeline for anybody, by the clock."""

    slug = fields.String(required=True)
    kind = fields.String(required=True)
    plan = Inside("plan", PlanSchema, required=True)
    timeline = Inside("timeline", TimelineShape, required=True)


class LibraryShape(Strict):
    """Every built-in plan with its timeline for anybody: what a phone keeps for when there is no signal."""

    plans = fields.List(Inside("a plan", BuiltinPlanShape), required=True)


class ShorthandAnswerShape(Strict):
    """Canonical shorthand; and the plan, when shorthand was sent."""

    text = fields.String(required=True)
    plan = Inside("plan", PlanSchema)


class ProblemShape(Strict):
    """One mistake. In shorthand it also has a line and a column, what was read there, and what would do."""

    pointer = fields.String(required=True, metadata={"description": "JSON pointer into what was sent"})
    sentence = fields.String(required=True)
    line = fields.Integer()
    column = fields.Integer()
    received = fields.String()
    accepted = fields.List(fields.String())


class ProblemDocumentShape(Strict):
    """Problem details (RFC 9457)."""

    type = fields.String(required=True)
    title = fields.String(required=True)
    status = fields.Integer(required=True)
    detail = fields.String(required=True)
    problems = fields.List(Inside("a problem", ProblemShape), required=True)


class HealthShape(Strict):
    """Whether the app is well."""

    status = fields.String(required=True, metadata={"enum": ["ok"]})
    version = fields.String(required=True)
    database = fields.String(
        required=True, metadata={"enum": ["none"], "description": "nothing is stored on the server"}
    )
