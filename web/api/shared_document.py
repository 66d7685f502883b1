"""How the API's description tells of what goes between devices: published plans, and walls."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from planner.schemas.request_schema import LinkRequestSchema
from planner.schemas.wall_schema import WallKeyRequestSchema, WallRequestSchema
from web.api.answer_shapes import LinkedPlanShape, LinkShape, WallMadeShape, WallShape
from web.api.components import reference
from web.api.links import LINKS
from web.api.operations import described, operation, reading, refusal, sending
from web.api.walls import WALLS

EXAMPLE_LINK = "mfrggzdfmztwq2lk"


def shared_paths(asked: Mapping[str, object]) -> dict[str, dict[str, Any]]:
    """The operations by path; `asked` holds a plan for the examples."""
    return {
        LINKS: {"post": _publishing(asked)},
        f"{LINKS}/{{name}}": {"get": _linked(asked)},
        WALLS: {"post": _making_wall()},
        f"{WALLS}/{{name}}": _wall(asked),
        f"{WALLS}/{{name}}/key": {"post": _renewing()},
    }


def _publishing(asked: Mapping[str, object]) -> dict[str, Any]:
    """A plan that is published already has its name again; otherwise it is made."""
    told = {"id": EXAMPLE_LINK, "url": f"/p/{EXAMPLE_LINK}"}
    known = sending("publishPlan", "A short address for a plan", LinkRequestSchema, asked, LinkShape, told)
    made = {**known["responses"]["200"], "description": "It was not published before."}
    refusals = {str(status): refusal(status) for status in (401, 403, 410, 429, 503)}
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
    told = reading("getLink", "A published plan", LinkedPlanShape, example, 404, 410, 429, 503)
    return {**told, "parameters": [name]}


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
    good = {"201": described(reference(WallMadeShape), MADE_WALL)}
    return operation(
        "makeWall", "A wall that can be led from afar", good, (401, 403, 405, 413, 415, 429, 500, 503)
    )


def _renewing() -> dict[str, Any]:
    wanted = {"key": MADE_WALL["key"]}
    summary = "Another key for a wall, made by whoever asks"
    renewing = sending("renewWallKey", summary, WallKeyRequestSchema, wanted, WallMadeShape, MADE_WALL)
    refusals = {str(status): refusal(status) for status in (401, 404, 429, 503)}
    return {**renewing, "responses": {**renewing["responses"], **refusals}, "parameters": [WALL_NAME]}


def _wall(asked: Mapping[str, object]) -> dict[str, Any]:
    shown = {"id": EXAMPLE_LINK, "version": 2, "plans": [asked["plan"]], "starts_at_s": None}
    wanted = {"plans": [asked["plan"]], "start_in_seconds": 10}
    looking = reading("getWall", "What a wall shows", WallShape, shown, 401, 404, 429, 503)
    changing = sending(
        "changeWall", "Let a wall show something else", WallRequestSchema, wanted, WallShape, shown
    )
    refusals = {str(status): refusal(status) for status in (401, 404, 412, 429, 503)}
    changing = {**changing, "responses": {**changing["responses"], **refusals}}
    return {
        method: {**each, "parameters": [WALL_NAME]} for method, each in (("get", looking), ("put", changing))
    }
