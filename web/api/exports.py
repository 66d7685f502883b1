"""POST /api/exports/<kind>: a plan as a file. Results are used and forgotten; no address holds any."""

from __future__ import annotations

from datetime import UTC, datetime

from flask import Blueprint, Response, abort, request

from planner.timeline import compile_timeline
from web.api.allowance import Allowance
from web.api.export_request import ExportRequest, load_export_request
from web.api.reading import json_body, parse
from web.exports.file_names import disposition
from web.exports.kinds import KINDS, Asked, Kind
from web.stored import NEVER, Stored, answer

EXPORTS = "/api/exports"
A_MINUTE = 120
"""A coach downloads a handful; a class behind one address a few dozen."""
NO_SUCH_KIND = f"there is no such download; there are {', '.join(KINDS)}"


def exports_api() -> Blueprint:
    """The address. It has no memory: splits are about a person."""
    blueprint = Blueprint("exports_api", __name__)
    allowance = Allowance("downloads", A_MINUTE)

    @blueprint.post(f"{EXPORTS}/<kind>")
    def export(kind: str) -> Response:
        """The file."""
        allowance.take(request)
        known = KINDS.get(kind) or abort(404, NO_SUCH_KIND)
        asked = load_export_request(parse(json_body(request)))
        made = Stored(known.make(_asked(asked)), known.content_type, NEVER)
        return _as_download(answer(made, request), asked, known)

    return blueprint


def _asked(asked: ExportRequest) -> Asked:
    timeline = compile_timeline(asked.plan, asked.athlete, asked.fit, asked.rhythm, asked.words_a_minute)
    return Asked(timeline, asked.start, datetime.now(UTC))


def _as_download(response: Response, asked: ExportRequest, kind: Kind) -> Response:
    response.headers["Content-Disposition"] = disposition(asked.plan.title, kind.ending)
    return response
