"""POST /api/exports/<kind>: a plan as a file. Results are used and forgotten; no address holds any."""

from __future__ import annotations

from datetime import UTC, datetime
from threading import Semaphore

from flask import Blueprint, Response, abort, request
from limits.storage import Storage
from werkzeug.exceptions import TooManyRequests

from planner.timeline import compile_timeline
from web.api.allowance import Allowance
from web.api.export_request import ExportRequest, load_export_request
from web.api.reading import json_body, parse
from web.exports.file_names import disposition
from web.exports.kinds import KINDS, Asked, InPieces, Kind
from web.stored import NEVER, Stored, answer
from web.streamed import answer_streamed

EXPORTS = "/api/exports"
A_MINUTE = 120
"""A coach downloads a handful; a class behind one address a few dozen."""
LARGE_AT_ONCE = 2
"""Of the server's eight threads: a slow reader of a large file keeps one busy."""
BUSY_SECONDS = 5
NO_SUCH_KIND = f"there is no such download; there are {', '.join(KINDS)}"


def exports_api(page: str, counts: Storage) -> Blueprint:
    """The address, with no memory: splits are about a person. `page` is the one-file page without a plan."""
    blueprint = Blueprint("exports_api", __name__)
    allowance = Allowance("downloads", A_MINUTE, counts=counts)
    at_once = Semaphore(LARGE_AT_ONCE)

    @blueprint.post(f"{EXPORTS}/<kind>")
    def export(kind: str) -> Response:
        """The file."""
        allowance.take(request)
        known = KINDS.get(kind) or abort(404, NO_SUCH_KIND)
        asked = load_export_request(parse(json_body(request)))
        return _as_download(_answered(known, known.make(_asked(asked, page)), at_once), asked, known)

    return blueprint


def _asked(asked: ExportRequest, page: str) -> Asked:
    terms = asked.fit, asked.rhythm, asked.words_a_minute
    for_anybody = compile_timeline(asked.plan, None, *terms)
    timeline = compile_timeline(asked.plan, asked.athlete, *terms) if asked.athlete else for_anybody
    now = datetime.now(UTC)
    start = asked.start or asked.today or now.date()
    return Asked(timeline, for_anybody, asked.athlete, start, now, page)


def _answered(kind: Kind, made: bytes | InPieces, at_once: Semaphore) -> Response:
    if isinstance(made, bytes):
        return answer(Stored(made, kind.content_type, NEVER), request)
    if not at_once.acquire(blocking=False):
        raise TooManyRequests(
            f"{LARGE_AT_ONCE} files of that kind are being made already: try again in {BUSY_SECONDS} s",
            retry_after=BUSY_SECONDS,
        )
    response = answer_streamed(made.pieces, made.length, kind.content_type, request)
    response.call_on_close(at_once.release)
    return response


def _as_download(response: Response, asked: ExportRequest, kind: Kind) -> Response:
    response.headers["Content-Disposition"] = disposition(asked.plan.title, kind.ending)
    return response
