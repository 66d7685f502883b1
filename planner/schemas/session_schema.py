"""A session as JSON: what is asked for, and the plan that is answered with its reasons."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import ValidationError, fields, post_load, validates_schema

from planner import pieces
from planner.athlete import Level, Room
from planner.errors import InputError
from planner.limits import LEAVE_PERCENT, RESULT_SECONDS, TENTH, Bounds
from planner.pacing import OWN_OFFSET, QUARTERS, Pacing, Shape, own_pacing
from planner.pieces import IntervalSet, Piece, SteadyRow, Technique, TestPiece
from planner.schemas.athlete_schema import AthleteSchema
from planner.schemas.fields import (
    Inside,
    OneKey,
    OneOf,
    Several,
    Stepped,
    Strict,
    StrictField,
    Whole,
    YesNo,
    load,
    number,
    schema_of,
)
from planner.schemas.plan_schema import PlanSchema, dump_plan
from planner.session import GAP_SECONDS, Session, SessionRequest
from planner.warm_up.rules import MINUTES

GOAL_SECONDS = Bounds("goal", RESULT_SECONDS.low, RESULT_SECONDS.high, "seconds", TENTH)
GOAL_METRES = Bounds("goal", 50, 100_000, "metres")
NAMED_SHAPES = [shape.value for shape in Shape if shape is not Shape.OWN]


class MeasuredSchema(Strict):
    """Something over metres or on the clock: exactly one of the two."""

    @validates_schema
    def _one_length(self, data: Mapping[str, Any], **_: object) -> None:
        given = [name for name in ("metres", "seconds") if name in data]
        if len(given) != 1:
            received = "both" if given else "neither"
            raise ValidationError(f"a length in metres or in seconds is needed here, not {received}")


class TestPieceSchema(MeasuredSchema):
    """A piece rowed as quick or as far as it goes, perhaps at a capped rate."""

    __test__ = False
    metres = Whole(pieces.TEST_METRES)
    seconds = Whole(pieces.TEST_SECONDS)
    rate_cap = Whole(pieces.RATE_CAP)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> TestPiece:
        return TestPiece(**data)


class RepetitionsSchema(MeasuredSchema):
    """Repetitions over metres or on the clock, with rests between them."""

    times = Whole(pieces.REPETITIONS, required=True)
    metres = Whole(pieces.REPETITION_METRES)
    seconds = Whole(pieces.REPETITION_SECONDS)
    rest_seconds = Whole(pieces.BREAK_SECONDS, required=True)


class IntervalSetSchema(RepetitionsSchema):
    """Repetitions with rests; `leave_percent` of the reserve is to be left after the last."""

    leave_percent = Whole(LEAVE_PERCENT)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> IntervalSet:
        return IntervalSet(**data)


class SteadyRowSchema(Strict):
    """Rowing at which one can talk."""

    seconds = Whole(pieces.STEADY_SECONDS, required=True)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> SteadyRow:
        return SteadyRow(**data)


class TechniqueSchema(Strict):
    """Drills and easy rowing in turn."""

    seconds = Whole(pieces.TECHNIQUE_SECONDS, required=True)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Technique:
        return Technique(**data)


class PieceSchema(OneKey):
    """What is rowed today."""

    test = Inside("test piece", TestPieceSchema)
    intervals = Inside("interval set", IntervalSetSchema)
    steady = Inside("steady row", SteadyRowSchema)
    technique = Inside("technique", TechniqueSchema)

    @post_load
    def _make(self, data: Mapping[str, Piece], **_: object) -> Piece:
        (piece,) = data.values()
        return piece


class PacingField(StrictField[Pacing]):
    """The name of a shape, or one's own offsets from the even split by quarters."""

    def __init__(self, **options: Any) -> None:
        offset = {"type": "number", "minimum": number(OWN_OFFSET.low), "maximum": number(OWN_OFFSET.high)}
        own = {
            "type": "object",
            "properties": {
                "own": {"type": "array", "items": offset, "minItems": QUARTERS, "maxItems": QUARTERS}
            },
            "required": ["own"],
            "additionalProperties": False,
        }
        shapes = {"type": "string", "enum": NAMED_SHAPES}
        super().__init__("pacing", {"oneOf": [shapes, own]}, **options)

    def _deserialize(self, value: object, attr: str | None, data: object, **_: object) -> Pacing:
        if isinstance(value, str) and value in NAMED_SHAPES:
            return Pacing(Shape(value))
        if not isinstance(value, dict) or set(value) != {"own"}:
            named = ", ".join(NAMED_SHAPES)
            raise self.refuse(value, f'write one of {named}, or {{"own": [...]}} with four offsets')
        offsets = schema_of(OwnPacingSchema).load(value)["own"]
        try:
            return own_pacing(offsets)
        except InputError as error:
            raise ValidationError({"own": [problem.sentence for problem in error.problems]}) from None


class OwnPacingSchema(Strict):
    """Seconds per 500 m against the even split in each quarter."""

    own = Several("offsets", Stepped(OWN_OFFSET), QUARTERS, required=True)


class SessionRequestSchema(Strict):
    """What to make a session for. Without a level the athlete's counts; without a gap the advised one."""

    piece = Inside("piece", PieceSchema, required=True)
    warmup_minutes = Whole(MINUTES)
    athlete = Inside("athlete", AthleteSchema)
    level = OneOf("level", Level)
    room = OneOf("room", Room)
    gap_seconds = Whole(GAP_SECONDS)
    pacing = PacingField()
    goal_seconds = Stepped(GOAL_SECONDS)
    goal_metres = Whole(GOAL_METRES)
    only_warm_up = YesNo("only_warm_up")

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> SessionRequest:
        return SessionRequest(**data)


class SessionShape(Strict):
    """A plan, and why its shape, its peak, its dose and its gap are what they are."""

    plan = Inside("plan", PlanSchema, required=True)
    reasons = fields.List(fields.String(), required=True)


def load_session_request(document: object) -> SessionRequest:
    """What to make. Raises InputError with a JSON pointer to each mistake."""
    asked: SessionRequest = load(SessionRequestSchema, document)
    return asked


def dump_session(session: Session) -> dict[str, object]:
    """A session as JSON."""
    return {"plan": dump_plan(session.plan), "reasons": list(session.reasons)}
