"""POST /api/holding: whether a target for intervals holds. Worked out, answered and forgotten."""

from __future__ import annotations

from flask import Blueprint, Response, request

from planner.schemas.holding_schema import holding_answer
from web.api.allowance import Allowance
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.stored import NEVER, Stored, answer


def holdings_api(allowance: Allowance) -> Blueprint:
    """The address. It has no memory: results are about a person."""
    blueprint = Blueprint("holdings_api", __name__)

    @blueprint.post("/api/holding")
    def holding() -> Response:
        """Whether the target lasts, and where the reserve is gone if it does not."""
        allowance.take(request)
        told = holding_answer(parse(json_body(request)))
        return answer(Stored(json_bytes(told), JSON, NEVER), request)

    return blueprint
