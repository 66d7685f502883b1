"""Short ways to ask the API something in tests."""

from __future__ import annotations

import json
from typing import Any

from flask.testing import FlaskClient
from werkzeug.test import TestResponse

WALL, WALL_KEY = "a" * 16, "k" * 43
"""A wall that the app of these tests holds, and its key."""
PLAN: dict[str, Any] = {
    "format": 1,
    "title": "A piece",
    "parts": [{"kind": "main", "blocks": [{"for": {"seconds": 120}, "rate": 24}]}],
}


def post(client: FlaskClient, path: str, document: object, **headers: str) -> TestResponse:
    """Send a document as JSON; a name such as Accept_Encoding stands for the header Accept-Encoding."""
    return post_raw(client, path, json.dumps(document).encode(), **headers)


def post_raw(client: FlaskClient, path: str, body: bytes, **headers: str) -> TestResponse:
    """Send these very bytes, as JSON unless the headers say otherwise."""
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    return client.post(path, data=body, headers={"Content-Type": "application/json", **named}, buffered=True)


def problem_of(answer: TestResponse) -> Any:
    """The problem document of an answer, which has to be one."""
    assert answer.content_type == "application/problem+json"
    document = answer.get_json(force=True)
    assert set(document) == {"type", "title", "status", "detail", "problems"}
    assert document["status"] == answer.status_code
    assert document["detail"]
    return document
