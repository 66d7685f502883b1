"""Every error in one shape: problem details (RFC 9457), with each mistake's place, sentence and remedy."""

from __future__ import annotations

import logging
from collections.abc import Iterable

from flask import Flask, Response
from werkzeug.exceptions import HTTPException, MethodNotAllowed, TooManyRequests, Unauthorized
from werkzeug.http import HTTP_STATUS_CODES

from planner.errors import InputError, Problem
from planner.notation.mistake import ShorthandProblem
from web.api.writing import json_bytes
from web.stored import NEVER

PROBLEM_JSON = "application/problem+json"
DETAILS = {
    404: "there is nothing at this address",
    405: "this address does not do that: its Allow header says what it does",
    413: "the body is larger than 256 KiB: send less",
    500: "something went wrong on the server; it is not your plan's fault, and nothing was stored",
}
"""Our own words where the library would use its own."""

_log = logging.getLogger("slipway")


def problem(status: int, detail: str, problems: Iterable[Problem] = ()) -> Response:
    """A problem document."""
    document = {
        "type": "about:blank",
        "title": HTTP_STATUS_CODES[status],
        "status": status,
        "detail": detail,
        "problems": [_dump(item) for item in problems],
    }
    response = Response(json_bytes(document), status, content_type=PROBLEM_JSON)
    response.headers["Cache-Control"] = NEVER
    return response


def _dump(item: Problem) -> dict[str, object]:
    fields: dict[str, object] = {"pointer": item.pointer, "sentence": item.sentence}
    if isinstance(item, ShorthandProblem):
        fields |= {
            "line": item.line,
            "column": item.column,
            "received": item.received,
            "accepted": list(item.accepted),
        }
    return fields


def answer_errors(app: Flask) -> None:
    """Let every error of the app be answered as a problem document."""
    app.register_error_handler(InputError, _input_error)
    app.register_error_handler(HTTPException, problem_for)
    app.register_error_handler(Exception, _unexpected)


def _input_error(error: InputError) -> Response:
    first = error.problems[0]
    return problem(422, first.sentence, error.problems)


def problem_for(error: HTTPException) -> Response:
    """The problem document of an error of the protocol."""
    status = error.code or 500
    response = problem(status, _detail(error, status))
    if isinstance(error, MethodNotAllowed) and error.valid_methods:
        response.headers["Allow"] = ", ".join(sorted(error.valid_methods))
    if isinstance(error, TooManyRequests) and error.retry_after is not None:
        response.headers["Retry-After"] = str(error.retry_after)
    if isinstance(error, Unauthorized):
        response.headers["WWW-Authenticate"] = "Bearer"
    return response


def _detail(error: HTTPException, status: int) -> str:
    """What our code said, or our own words where it was the library that spoke."""
    if error.description and error.description != type(error).description:
        return error.description
    return DETAILS.get(status) or HTTP_STATUS_CODES[status]


def _unexpected(error: Exception) -> Response:
    _log.error("unexpected error", exc_info=error)
    return problem(500, DETAILS[500])
