"""POST /api/session: a session made for the piece ahead. Nothing about the person is kept."""

from __future__ import annotations

from flask import Blueprint, Response, request

from planner.schemas.session_schema import dump_session, load_session_request
from planner.session import session_of
from web.api.allowance import Allowance
from web.api.reading import json_body, parse
from web.api.writing import JSON, json_bytes
from web.stored import NEVER, Stored, answer


def sessions_api(allowance: Allowance) -> Blueprint:
    """The address."""
    blueprint = Blueprint("sessions_api", __name__)

    @blueprint.post("/api/session")
    def session() -> Response:
        """A plan for the piece, and why it is so."""
        allowance.take(request)
        made = session_of(load_session_request(parse(json_body(request))))
        return answer(Stored(json_bytes(dump_session(made)), JSON, NEVER), request)

    return blueprint
