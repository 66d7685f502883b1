"""The API's description (OpenAPI 3.1), generated; `python -m web.api.document` prints it."""

from __future__ import annotations

import json
import sys
from collections.abc import Mapping
from typing import Any

from flask import Blueprint, Response, request
from marshmallow import Schema
from werkzeug.http import HTTP_STATUS_CODES

from planner.appraisal import appraise
from planner.notation.reader import read
from planner.notation.writer import write
from planner.schemas.appraisal_schema import dump_appraised
from planner.schemas.athlete_answer import dump_standing
from planner.schemas.athlete_schema import AthleteSchema, load_athlete
from planner.schemas.athlete_shape import AthleteAnswerShape
from planner.schemas.holding_schema import HoldingRequestSchema, HoldingShape, holding_answer
from planner.schemas.load_schema import WeekAnswerShape, WeekRequestSchema, week_answer
from planner.schemas.plan_schema import PlanSchema, dump_plan
from planner.schemas.request_schema import LinkRequestSchema, ShorthandRequestSchema, TimelineRequestSchema
from planner.schemas.session_schema import (
    SessionRequestSchema,
    SessionShape,
    dump_session,
    load_session_request,
)
from planner.schemas.timeline_shape import TimelineShape
from planner.schemas.wall_schema import WallRequestSchema
from planner.session import session_of
from planner.standing import standing_of
from planner.timeline import compile_timeline
from web.api.answer_shapes import (
    BuiltinPlanShape,
    HealthShape,
    LibraryShape,
    LinkedPlanShape,
    LinkShape,
    PlanListingShape,
    ProblemDocumentShape,
    ShorthandAnswerShape,
    TechniqueLibraryShape,
    WallMadeShape,
    WallShape,
)
from web.api.components import describe_types, reference
from web.api.errors import DETAILS, PROBLEM_JSON
from web.api.export_request import EXAMPLE_START, ExportRequestSchema
from web.api.exports import A_MINUTE, EXPORTS
from web.api.links import AWAY, LINKS, TAKEN_DOWN
from web.api.plans import plan_answers
from web.api.publishing import CLOSED, NO_KEY
from web.api.technique import technique_answer
from web.api.walls import CHANGED, WALLS
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
EXAMPLE_LINK = "mfrggzdfmztwq2lk"
EXAMPLE_TEXT = "title: A short piece\nmain\n2' r24 light\n  focus: long arms\n500m r28 @1:55"
REFUSALS = {
    400: ("The body is not JSON that can be read in one way only.", "line 1, column 9: expecting value"),
    401: ("A key is needed, as Authorization: Bearer, and there is none or a wrong one.", NO_KEY),
    403: ("Publishing is closed on this server.", CLOSED),
    410: ("It was taken down, and is not taken again.", TAKEN_DOWN),
    412: ("The wall has been changed since If-Match.", CHANGED),
    503: ("The store cannot be reached, or is full.", AWAY),
    404: ("There is nothing of that name.", "there is no built-in plan of that name"),
    405: ("This address does not do that.", DETAILS[405]),
    413: ("The body is too large.", DETAILS[413]),
    415: ("The body is not sent as plain JSON.", "send JSON, with Content-Type: application/json"),
    422: (
        "The JSON does not say what it should; each mistake is named.",
        "rate 62 is above 50 strokes a minute",
    ),
    429: (
        "Too much is asked for from one address; Retry-After says in how many seconds there is room again.",
        f"more than {A_MINUTE} downloads were asked for in a minute: try again in 20 s",
    ),
    500: ("A mistake of the server's own.", DETAILS[500]),
}
KEPT = {"304": {"description": "It has not changed since the ETag that was sent."}}
ANY = {"type": "object"}
READING = (405, 500)
SENDING = (400, 405, 413, 415, 422, 500)


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
    builtin = BuiltinPlan("a-short-piece", "steady", plan, timeline, appraisal)
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
            "get": _reading("getLibrary", "All built-in plans with their timelines", LibraryShape, together)
        },
        "/api/plans": {"get": _reading("listPlans", "The built-in plans", PlanListingShape, listing)},
        "/api/plans/{slug}": {
            "get": {
                **_reading("getPlan", "A built-in plan with its timeline", BuiltinPlanShape, whole, 404),
                "parameters": [slug],
            }
        },
        "/api/technique": {
            "get": _reading(
                "getTechnique", "Positions, drills and calls", TechniqueLibraryShape, _few(technique)
            )
        },
        "/api/timeline": {
            "post": _sending(
                "compileTimeline", "What is rowed", TimelineRequestSchema, asked, TimelineShape, told
            )
        },
        "/api/session": {
            "post": _sending(
                "makeSession",
                "A session for the piece ahead, and why it is so",
                SessionRequestSchema,
                piece,
                SessionShape,
                session,
            )
        },
        "/api/holding": {
            "post": _sending(
                "describeHolding",
                "Whether a target for intervals holds, and where it breaks",
                HoldingRequestSchema,
                EXAMPLE_TARGET,
                HoldingShape,
                holding_answer(EXAMPLE_TARGET),
            )
        },
        "/api/shorthand": {
            "post": _sending(
                "convertShorthand",
                "Shorthand to a plan, or a plan to shorthand",
                ShorthandRequestSchema,
                {"text": EXAMPLE_TEXT},
                ShorthandAnswerShape,
                written,
            )
        },
        "/api/athlete": {
            "post": _sending(
                "describeAthlete",
                "Predictions, critical power and bands",
                AthleteSchema,
                EXAMPLE_ATHLETE,
                AthleteAnswerShape,
                dump_standing(standing_of(load_athlete(EXAMPLE_ATHLETE))),
            )
        },
        "/api/load": {
            "post": _sending(
                "describeLoad",
                "The load of a week of rated sessions",
                WeekRequestSchema,
                EXAMPLE_WEEK,
                WeekAnswerShape,
                week_answer(EXAMPLE_WEEK),
            )
        },
        f"{EXPORTS}/{{kind}}": {"post": _exporting({**asked, "start": EXAMPLE_START})},
        LINKS: {"post": _publishing(asked)},
        f"{LINKS}/{{name}}": {"get": _linked(asked)},
        WALLS: {"post": _making_wall()},
        f"{WALLS}/{{name}}": _wall(asked),
        f"{WALLS}/{{name}}/key": {"post": _renewing()},
        "/api/openapi.json": {
            "get": _operation("getDescription", "This description", {"200": _described(ANY), **KEPT}, READING)
        },
        "/healthz": {"get": _reading("getHealth", "Whether the app is well", HealthShape, health)},
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
    files = {each.mimetype: {"schema": {"type": "string"}, **_example("")} for each in KINDS.values()}
    files[JSON] = {"schema": reference(PlanSchema), **_example(asked["plan"])}
    good = {"200": {"description": "The file, under a name made from the title.", "content": files}}
    body = {
        "required": True,
        "content": {JSON: {"schema": reference(ExportRequestSchema), **_example(asked)}},
    }
    operation = _operation("exportPlan", "A plan as a file", good, (404, *SENDING, 429))
    return {**operation, "parameters": [kind], "requestBody": body}


def _publishing(asked: Mapping[str, object]) -> dict[str, Any]:
    """A plan that is published already has its name again; otherwise it is made."""
    told = {"id": EXAMPLE_LINK, "url": f"/p/{EXAMPLE_LINK}"}
    known = _sending("publishPlan", "A short address for a plan", LinkRequestSchema, asked, LinkShape, told)
    made = {**known["responses"]["200"], "description": "It was not published before."}
    refusals = {str(status): _refusal(status) for status in (401, 403, 410, 429, 503)}
    return {**known, "responses": {**known["responses"], "201": made, **refusals}}


def _linked(asked: Mapping[str, object]) -> dict[str, Any]:
    name = {
        "name": "name",
        "in": "path",
        "required": True,
        "description": "the id of a published plan",
        "schema": {"type": "string"},
        "example": EXAMPLE_LINK,
    }
    example = {"id": EXAMPLE_LINK, "plan": asked["plan"]}
    reading = _reading("getLink", "A published plan", LinkedPlanShape, example, 404, 410, 429, 503)
    return {**reading, "parameters": [name]}


WALL_NAME = {
    "name": "name",
    "in": "path",
    "required": True,
    "description": "the id of a wall",
    "schema": {"type": "string"},
    "example": EXAMPLE_LINK,
}
MADE_WALL = {"id": EXAMPLE_LINK, "key": "k" * 43, "url": f"/wall/{EXAMPLE_LINK}"}


def _making_wall() -> dict[str, Any]:
    good = {"201": _described(reference(WallMadeShape), MADE_WALL)}
    return _operation(
        "makeWall", "A wall that can be led from afar", good, (401, 403, 405, 413, 415, 429, 500, 503)
    )


def _renewing() -> dict[str, Any]:
    good = {"200": _described(reference(WallMadeShape), MADE_WALL)}
    operation = _operation("renewWallKey", "Another key for a wall", good, (401, 404, 405, 429, 500, 503))
    return {**operation, "parameters": [WALL_NAME]}


def _wall(asked: Mapping[str, object]) -> dict[str, Any]:
    shown = {"id": EXAMPLE_LINK, "version": 2, "plans": [asked["plan"]], "starts_at_s": None}
    wanted = {"plans": [asked["plan"]], "start_in_seconds": 10}
    looking = _reading("getWall", "What a wall shows", WallShape, shown, 404, 429, 503)
    changing = _sending(
        "changeWall", "Let a wall show something else", WallRequestSchema, wanted, WallShape, shown
    )
    refusals = {str(status): _refusal(status) for status in (401, 404, 412, 429, 503)}
    changing = {**changing, "responses": {**changing["responses"], **refusals}}
    return {
        method: {**operation, "parameters": [WALL_NAME]}
        for method, operation in (("get", looking), ("put", changing))
    }


def _few(technique: dict[str, list[Any]]) -> dict[str, list[Any]]:
    """The first of each kind: enough for an example."""
    return {kind: items[:1] for kind, items in technique.items()}


def _reading(name: str, summary: str, shape: type[Schema], example: object, *refusals: int) -> dict[str, Any]:
    kept = {} if shape is HealthShape else KEPT
    good = {"200": _described(reference(shape), example), **kept}
    return _operation(name, summary, good, (*refusals, *READING))


def _sending(
    name: str, summary: str, asks: type[Schema], asked: object, shape: type[Schema], example: object
) -> dict[str, Any]:
    body = {"required": True, "content": {JSON: {"schema": reference(asks), **_example(asked)}}}
    good = {"200": _described(reference(shape), example)}
    return {**_operation(name, summary, good, SENDING), "requestBody": body}


def _operation(name: str, summary: str, good: dict[str, Any], refusals: tuple[int, ...]) -> dict[str, Any]:
    responses = {**good, **{str(status): _refusal(status) for status in sorted(refusals)}}
    return {"operationId": name, "summary": summary, "responses": responses}


def _described(schema: dict[str, Any], example: object = None) -> dict[str, Any]:
    content = {"schema": schema, **(_example(example) if example is not None else {})}
    return {"description": "What was asked for.", "content": {JSON: content}}


def _example(value: object) -> dict[str, Any]:
    return {"examples": {"one": {"value": value}}}


def _refusal(status: int) -> dict[str, Any]:
    description, detail = REFUSALS[status]
    problems = [{"pointer": "/plan/parts/0/blocks/0/rate", "sentence": detail}] if status == 422 else []
    document = {
        "type": "about:blank",
        "title": HTTP_STATUS_CODES[status],
        "status": status,
        "detail": detail,
        "problems": problems,
    }
    content = {PROBLEM_JSON: {"schema": reference(ProblemDocumentShape), **_example(document)}}
    return {"description": description, "content": content}


def document_api() -> Blueprint:
    """GET /api/openapi.json."""
    blueprint = Blueprint("document_api", __name__)
    stored = Stored(json_bytes(api_document()), JSON)

    @blueprint.get("/api/openapi.json")
    def document() -> Response:
        """The API's description."""
        return answer(stored, request)

    return blueprint


if __name__ == "__main__":
    json.dump(api_document(), sys.stdout, indent=2, sort_keys=True)
