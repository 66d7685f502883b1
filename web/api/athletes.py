"""POST /api/athlete: what results and heart rate say. Worked out, answered and forgotten."""

from __future__ import annotations

from flask import Blueprint, Response, request

from planner.schemas.athlete_answer import dump_standing
from planner.schemas.athlete_schema import load_athlete
from planner.standing import standing_of
from web.api.allowance import Allowance
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.stored import NEVER, Stored, answer


def athletes_api(allowance: Allowance) -> Blueprint:
    """The address. It has no memory: everything that comes here is about a person."""
    blueprint = Blueprint("athletes_api", __name__)

    @blueprint.post("/api/athlete")
    def athlete() -> Response:
        """The standing of an athlete."""
        allowance.take(request)
        standing = standing_of(load_athlete(parse(json_body(request))))
        return answer(Stored(json_bytes(dump_standing(standing)), JSON, NEVER), request)

    return blueprint
