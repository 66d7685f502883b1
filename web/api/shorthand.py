"""POST /api/shorthand: a coach's text to a plan, or a plan to the text a coach would write."""

from __future__ import annotations

from flask import Blueprint, Response, request

from planner.notation.reader import read
from planner.notation.writer import write
from planner.schemas.plan_schema import dump_plan
from planner.schemas.request_schema import load_shorthand_request
from web.api.allowance import Allowance
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.stored import NEVER, Stored, answer


def shorthand_api(allowance: Allowance) -> Blueprint:
    """The address."""
    blueprint = Blueprint("shorthand_api", __name__)

    @blueprint.post("/api/shorthand")
    def shorthand() -> Response:
        """The plan that a text means with its canonical text, or the text of a plan."""
        allowance.take(request)
        asked = load_shorthand_request(parse(json_body(request)))
        if isinstance(asked, str):
            plan = read(asked)
            found: dict[str, object] = {"plan": dump_plan(plan), "text": write(plan)}
        else:
            found = {"text": write(asked)}
        return answer(Stored(json_bytes(found), JSON, NEVER), request)

    return blueprint
