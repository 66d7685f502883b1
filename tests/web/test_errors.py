"""Every error is a problem document (RFC 9457) that says where, what was received and what would do."""

from __future__ import annotations

from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient

from tests.web.asking import PLAN, post, post_raw, problem_of
from web.api import timelines
from web.factory import create_app
from web.settings import Settings


@pytest.mark.parametrize(
    ("method", "path", "status"),
    [
        ("GET", "/api/nothing", 404),
        ("GET", "/api/plans/nothing", 404),
        ("GET", "/static/dist/nothing.js", 404),
        ("GET", "/static/dist/../app.py", 404),
        ("GET", "/static/dist/%2e%2e%2fapp.py", 404),
        ("GET", "/static/icons/nothing.png", 404),
        ("GET", "/static/src/main.ts", 404),
        ("GET", "/nothing", 404),
        ("DELETE", "/api/plans", 405),
        ("GET", "/api/timeline", 405),
        ("POST", "/", 405),
        ("POST", "/api/timeline", 415),
    ],
)
def test_an_error_of_the_protocol_is_a_problem_document(
    client: FlaskClient, method: str, path: str, status: int
) -> None:
    answer = client.open(path, method=method)
    assert answer.status_code == status
    assert problem_of(answer)["problems"] == []


def test_a_method_that_is_refused_comes_with_those_that_are_not(client: FlaskClient) -> None:
    assert client.get("/api/timeline").headers["Allow"] == "OPTIONS, POST"


def test_mistakes_in_the_input_are_listed_with_their_places(client: FlaskClient) -> None:
    plan: dict[str, Any] = {**PLAN, "title": "", "parts": [{"kind": "gap"}]}
    document = problem_of(post(client, "/api/timeline", {"plan": plan}))
    assert document["title"] == "Unprocessable Entity"
    assert [problem["pointer"] for problem in document["problems"]] == ["/plan/title", "/plan/parts/0/for"]
    assert document["detail"] == document["problems"][0]["sentence"]


def test_a_mistake_in_shorthand_has_a_line_and_a_column(client: FlaskClient) -> None:
    (problem,) = problem_of(post(client, "/api/shorthand", {"text": "main\n3' r18 gently"}))["problems"]
    assert problem["pointer"] == "/text"
    assert (problem["line"], problem["column"], problem["received"]) == (2, 8, "gently")
    assert any("pressure" in accepted for accepted in problem["accepted"])


def test_an_error_is_not_to_be_kept(client: FlaskClient) -> None:
    assert client.get("/api/nothing").headers["Cache-Control"] == "no-store"


def test_a_mistake_of_our_own_says_nothing_about_itself(
    settings: Settings, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def broken(_: object) -> None:
        raise RuntimeError("the secret of the house")

    monkeypatch.setattr(timelines, "load_timeline_request", broken)
    app: Flask = create_app(settings)
    answer = post(app.test_client(), "/api/timeline", {"plan": PLAN})
    assert answer.status_code == 500
    problem_of(answer)
    assert b"secret" not in answer.data
    assert "the secret of the house" in caplog.text


def test_what_a_person_sent_is_not_logged(client: FlaskClient, caplog: pytest.LogCaptureFixture) -> None:
    post_raw(client, "/api/timeline", b'{"plan": "my private plan"}')
    assert "private" not in caplog.text
