"""What an operation of the API's description is put together from: answers with examples, and refusals."""

from __future__ import annotations

from typing import Any

from marshmallow import Schema
from werkzeug.http import HTTP_STATUS_CODES

from web.api.answer_shapes import HealthShape, ProblemDocumentShape
from web.api.components import reference
from web.api.errors import DETAILS, PROBLEM_JSON
from web.api.exports import A_MINUTE
from web.api.links import AWAY, TAKEN_DOWN
from web.api.publishing import CLOSED, NO_KEY
from web.api.walls import CHANGED
from web.api.writing import JSON

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


def reading(name: str, summary: str, shape: type[Schema], example: object, *refusals: int) -> dict[str, Any]:
    """An operation that reads; beside what it answers, the refusals that it has of its own."""
    kept = {} if shape is HealthShape else KEPT
    good = {"200": described(reference(shape), example), **kept}
    return operation(name, summary, good, (*refusals, *READING))


def sending(
    name: str, summary: str, asks: type[Schema], asked: object, shape: type[Schema], example: object
) -> dict[str, Any]:
    """An operation that is sent JSON and works something out of it, for so many at an address."""
    body = {"required": True, "content": {JSON: {"schema": reference(asks), **in_examples(asked)}}}
    good = {"200": described(reference(shape), example)}
    return {**operation(name, summary, good, (*SENDING, 429)), "requestBody": body}


def operation(name: str, summary: str, good: dict[str, Any], refusals: tuple[int, ...]) -> dict[str, Any]:
    """An operation with its good answers and its refusals."""
    responses = {**good, **{str(status): refusal(status) for status in sorted(refusals)}}
    return {"operationId": name, "summary": summary, "responses": responses}


def described(schema: dict[str, Any], example: object = None) -> dict[str, Any]:
    """A good answer of this kind."""
    content = {"schema": schema, **(in_examples(example) if example is not None else {})}
    return {"description": "What was asked for.", "content": {JSON: content}}


def in_examples(value: object) -> dict[str, Any]:
    """An example, as the description holds it."""
    return {"examples": {"one": {"value": value}}}


def refusal(status: int) -> dict[str, Any]:
    """A problem document with this status."""
    description, detail = REFUSALS[status]
    problems = [{"pointer": "/plan/parts/0/blocks/0/rate", "sentence": detail}] if status == 422 else []
    document = {
        "type": "about:blank",
        "title": HTTP_STATUS_CODES[status],
        "status": status,
        "detail": detail,
        "problems": problems,
    }
    content = {PROBLEM_JSON: {"schema": reference(ProblemDocumentShape), **in_examples(document)}}
    return {"description": description, "content": content}
