"""The API's description (OpenAPI 3.1), generated; `python -m web.api.document` prints it."""

from __future__ import annotations

import json
import sys
from functools import cache
from typing import Any

from flask import Blueprint, Response, request

from planner.appraisal import appraise
from planner.athlete import Level
from planner.notation.reader import read
from planner.notation.writer import write
from planner.schemas.appraisal_schema import dump_appraised
from planner.schemas.athlete_answer import dump_standing
from planner.schemas.athlete_schema import AthleteSchema, load_athlete
from planner.schemas.athlete_shape import AthleteAnswerShape
from planner.schemas.holding_schema import HoldingRequestSchema, HoldingShape, holding_answer
from planner.schemas.load_schema import WeekAnswerShape, WeekRequestSchema, week_answer
from planner.schemas.plan_schema import PlanSchema, dump_plan
from planner.schemas.request_schema import ShorthandRequestSchema, TimelineRequestSchema
from planner.schemas.session_schema import (
    SessionRequestSchema,
    SessionShape,
    dump_session,
    load_session_request,
)
from planner.schemas.timeline_shape import TimelineShape
from planner.session import session_of
from planner.standing import standing_of
from planner.timeline import compile_timeline
from web.api.answer_shapes import (
    BuiltinPlanShape,
    HealthShape,
    LibraryShape,
    PlanListingShape,
    ShorthandAnswerShape,
    TechniqueLibraryShape,
)
from web.api.components import describe_types, reference
from web.api.export_request import EXAMPLE_START, ExportRequestSchema
from web.api.exports import EXPORTS
from web.api.operations import (
    ANY,
    KEPT,
    READING,
    SENDING,
    described,
    in_examples,
    operation,
    reading,
    sending,
)
from web.api.plans import plan_answers
from web.api.shared_document import shared_paths
from web.api.technique import technique_answer
from web.api.writing import JSON, json_bytes
from web.builtin_plans import BuiltinPlan, Library
from web.exports.kinds import KINDS
from web.settings import VERSION
from web.stored import Stored, answer

ABOUT = (
    "Plans of indoor-rowing sessions, and the timelines compiled from them. Exact times cross the wire as "
    "pairs of whole numbers beside plain ones. Every error is a problem document that names each mistake and "
    "its place. JSON in UTF-8 only, at most 256 KiB; whole numbers are written as such: 1, not 1.0."
)
EXAMPLE_ATHLETE = {
    "results": [{"metres": 2000, "seconds": 462}, {"metres": 1000, "seconds": 217.5}],
    "heart_rate_max": 188,
}
EXAMPLE_TARGET: dict[str, Any] = {
    "intervals": {"times": 8, "metres": 500, "rest_seconds": 180},
    "target": {"split": 108},
    "athlete": {"results": [{"metres": 2000, "seconds": 462}]},
}
EXAMPLE_WEEK: dict[str, Any] = {
    "days": [[{"cr10": 6, "minutes": 45}], [], [{"cr10": 3, "minutes": 60}], [], [], [], []]
}
EXAMPLE_TEXT = "title: A short piece\nmain\n2' r24 light\n  focus: long arms\n500m r28 @1:55"


def api_document() -> dict[str, Any]:
    """The whole description as JSON."""
    spec = describe_types("Slipway", VERSION, ABOUT)
    for path, operations in _paths().items():
        spec.path(path=path, operations=operations)
    return dict(spec.to_dict())


def _paths() -> dict[str, dict[str, Any]]:
    plan = read(EXAMPLE_TEXT)
    timeline = compile_timeline(plan)
    appraisal = appraise(timeline)
    builtin = BuiltinPlan("a-short-piece", "steady", Level.CLUB, plan, timeline, appraisal)
    answers = plan_answers(Library({builtin.slug: builtin}, ()))
    listing, together, whole = (json.loads(stored.body) for stored in answers.values())
    asked, told = {"plan": dump_plan(plan)}, dump_appraised(timeline, appraisal)
    piece = {"piece": {"test": {"metres": 2000}}, "warmup_minutes": 5, "only_warm_up": True}
    session = dump_session(session_of(load_session_request(piece)))
    written = {"plan": dump_plan(plan), "text": write(plan)}
    technique = _few(json.loads(technique_answer().body))
    health = {"status": "ok", "version": VERSION, "database": "ready"}
    slug = {
        "name": "slug",
        "in": "path",
        "required": True,
        "description": "a plan's name, from the listing",
        "schema": {"type": "string"},
        "example": builtin.slug,
    }
    return {
        "/api/library": {
            "get": reading("getLibrary", "All built-in plans, to be kept", LibraryShape, together)
        },
        "/api/plans": {"get": reading("listPlans", "The built-in plans", PlanListingShape, listing)},
        "/api/plans/{slug}": {
            "get": {
                **reading("getPlan", "A built-in plan with its timeline", BuiltinPlanShape, whole, 404),
                "parameters": [slug],
            }
        },
        "/api/technique": {
            "get": reading(
                "getTechnique", "Positions, drills and calls", TechniqueLibraryShape, _few(technique)
            )
        },
        "/api/timeline": {
            "post": sending(
                "compileTimeline", "What is rowed", TimelineRequestSchema, asked, TimelineShape, told
            )
        },
        "/api/session": {
            "post": sending(
                "makeSession",
                "A session for the piece ahead, and why it is so",
                SessionRequestSchema,
                piece,
                SessionShape,
                session,
            )
        },
        "/api/holding": {
            "post": sending(
                "describeHolding",
                "Whether a target for intervals holds, and where it breaks",
                HoldingRequestSchema,
                EXAMPLE_TARGET,
                HoldingShape,
                holding_answer(EXAMPLE_TARGET),
            )
        },
        "/api/shorthand": {
            "post": sending(
                "convertShorthand",
                "Shorthand to a plan, or a plan to shorthand",
                ShorthandRequestSchema,
                {"text": EXAMPLE_TEXT},
                ShorthandAnswerShape,
                written,
            )
        },
        "/api/athlete": {
            "post": sending(
                "describeAthlete",
                "Predictions, critical power and bands",
                AthleteSchema,
                EXAMPLE_ATHLETE,
                AthleteAnswerShape,
                dump_standing(standing_of(load_athlete(EXAMPLE_ATHLETE))),
            )
        },
        "/api/load": {
            "post": sending(
                "describeLoad",
                "The load of a week of rated sessions",
                WeekRequestSchema,
                EXAMPLE_WEEK,
                WeekAnswerShape,
                week_answer(EXAMPLE_WEEK),
            )
        },
        f"{EXPORTS}/{{kind}}": {"post": _exporting({**asked, "start": EXAMPLE_START})},
        **shared_paths(asked),
        "/api/openapi.json": {
            "get": operation("getDescription", "This description", {"200": described(ANY), **KEPT}, READING)
        },
        "/healthz": {"get": reading("getHealth", "Whether the app is well", HealthShape, health)},
    }


def _exporting(asked: dict[str, object]) -> dict[str, Any]:
    """A file of whichever kind the address names; all but the plan itself are more than JSON can describe."""
    about = "; ".join(f"{name}: {kind.about}" for name, kind in KINDS.items())
    kind = {
        "name": "kind",
        "in": "path",
        "required": True,
        "description": about,
        "schema": {"type": "string", "enum": list(KINDS)},
        "example": next(iter(KINDS)),
    }
    files = {each.mimetype: {"schema": {"type": "string"}, **in_examples("")} for each in KINDS.values()}
    files[JSON] = {"schema": reference(PlanSchema), **in_examples(asked["plan"])}
    good = {"200": {"description": "The file, under a name made from the title.", "content": files}}
    body = {
        "required": True,
        "content": {JSON: {"schema": reference(ExportRequestSchema), **in_examples(asked)}},
    }
    exporting = operation("exportPlan", "A plan as a file", good, (404, *SENDING, 429))
    return {**exporting, "parameters": [kind], "requestBody": body}


def _few(technique: dict[str, list[Any]]) -> dict[str, list[Any]]:
    """The first of each kind: enough for an example."""
    return {kind: items[:1] for kind, items in technique.items()}


def document_api() -> Blueprint:
    """GET /api/openapi.json, written when it is first asked for, since that takes a while."""
    blueprint = Blueprint("document_api", __name__)
    stored = cache(lambda: Stored(json_bytes(api_document()), JSON))

    @blueprint.get("/api/openapi.json")
    def document() -> Response:
        """The API's description."""
        return answer(stored(), request)

    return blueprint


if __name__ == "__main__":
    json.dump(api_document(), sys.stdout, indent=2, sort_keys=True)
