"""What the API's own answers hold, beside plans and timelines; only described here, never loaded."""

from __future__ import annotations

from enum import StrEnum

from marshmallow import fields

from planner.athlete import Level
from planner.drills import Phase
from planner.schemas.fields import Inside, Several, Strict
from planner.schemas.finding_schema import FindingShape
from planner.schemas.plan_schema import PlanSchema
from planner.schemas.timeline_shape import TimelineShape
from planner.schemas.wall_schema import MOST_PLANS


def _word(words: type[StrEnum]) -> fields.String:
    return fields.String(required=True, metadata={"enum": [word.value for word in words]})


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
    level = _word(Level)
    plan = Inside("plan", PlanSchema, required=True)
    timeline = Inside("timeline", TimelineShape, required=True)


class LibraryPlanShape(Strict):
    """A built-in plan, how long it is, and what there is to say of it."""

    slug = fields.String(required=True)
    kind = fields.String(required=True)
    level = _word(Level)
    seconds_s = fields.Float(required=True)
    estimated = fields.Boolean(required=True)
    plan = Inside("plan", PlanSchema, required=True)
    findings = fields.List(Inside("a finding", FindingShape), required=True)


class LibraryShape(Strict):
    """Every built-in plan: what a phone keeps for when there is no signal. It compiles timelines itself."""

    plans = fields.List(Inside("a plan", LibraryPlanShape), required=True)


class PositionShape(Strict):
    """A position of the stroke: where everything is, and the fault to beware of."""

    phase = _word(Phase)
    looks = fields.String(required=True)
    beware = fields.String(required=True)


class SidesShape(Strict):
    """A drill done on one side after the other: how many, and seconds on each."""

    count = fields.Integer(required=True)
    least_seconds = fields.Integer(required=True)
    most_seconds = fields.Integer(required=True)


class KnownDrillShape(Strict):
    """A drill of the library."""

    name = fields.String(required=True)
    other_names = fields.List(fields.String(), required=True)
    phase = _word(Phase)
    mends = fields.String(required=True)
    how = fields.String(required=True)
    caution = fields.String(required=True)
    level = _word(Level)
    rate_low = fields.Integer(required=True)
    rate_high = fields.Integer(required=True)
    sides = Inside("sides", SidesShape)


class TechnicalCallShape(Strict):
    """One idea in a few words."""

    text = fields.String(required=True)
    mends = fields.String(required=True)
    phase = _word(Phase)
    level = _word(Level)
    caution = fields.String()
    highest_rate = fields.Integer(metadata={"description": "the rate above which it is not said"})


class FocusShape(Strict):
    """The one technical point of a block, and the calls that belong to it."""

    name = fields.String(required=True)
    phase = _word(Phase)
    calls = fields.List(Inside("a call", TechnicalCallShape), required=True)


class TechniqueLibraryShape(Strict):
    """The coach's library. `level` is the first level that something suits."""

    positions = fields.List(Inside("a position", PositionShape), required=True)
    drills = fields.List(Inside("a drill", KnownDrillShape), required=True)
    focuses = fields.List(Inside("a focus", FocusShape), required=True)


class ShorthandAnswerShape(Strict):
    """Canonical shorthand; and the plan, when shorthand was sent."""

    text = fields.String(required=True)
    plan = Inside("plan", PlanSchema)


class LinkShape(Strict):
    """The name of a published plan, and its address: a whole one where the server knows how it is reached."""

    id = fields.String(required=True, metadata={"description": "16 letters and digits, rarely more"})
    url = fields.String(required=True)


class LinkedPlanShape(Strict):
    """A published plan."""

    id = fields.String(required=True)
    plan = Inside("plan", PlanSchema, required=True)


class WallMadeShape(Strict):
    """A wall's name, its key, which is told to nobody else, and the address that its tablet opens."""

    id = fields.String(required=True)
    key = fields.String(required=True, metadata={"description": "256 bits, for a header or a fragment only"})
    url = fields.String(required=True)


class WallShape(Strict):
    """What a wall shows: the first of its plans, and those that come after it."""

    id = fields.String(required=True)
    version = fields.Integer(required=True, metadata={"description": "grows by one with each change"})
    plans = Several("plans", Inside("a plan", PlanSchema), MOST_PLANS, required=True)
    starts_at_s = fields.Integer(
        required=True,
        allow_none=True,
        metadata={
            "description": "when the first plan starts, in seconds since 1970 by the server; null: not yet"
        },
    )
    asked_s_ago = fields.Integer(
        allow_none=True,
        metadata={
            "description": "only with the key: for how many seconds no tablet has asked; null: none ever has"
        },
    )


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
        required=True,
        metadata={"enum": ["ready", "away"], "description": "without it, all but short links works"},
    )
