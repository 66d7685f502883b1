"""POST /api/load: what a week of rated sessions comes to. Worked out, answered and forgotten."""

from __future__ import annotations

from flask import Blueprint, Response, request

from planner.schemas.load_schema import week_answer
from web.api.allowance import Allowance
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.stored import NEVER, Stored, answer


def loads_api(allowance: Allowance) -> Blueprint:
    """The address. It has no memory: a training week is about a person."""
    blueprint = Blueprint("loads_api", __name__)

    @blueprint.post("/api/load")
    def week() -> Response:
        """The load of seven days."""
        allowance.take(request)
        told = week_answer(parse(json_body(request)))
        return answer(Stored(json_bytes(told), JSON, NEVER), request)

    return blueprint
