"""POST /api/shorthand: both ways."""

from __future__ import annotations

from flask.testing import FlaskClient

from tests.web.asking import PLAN, post, problem_of

TEXT = "title: A piece\n\nmain\n2' r24\n"


def test_text_becomes_a_plan_and_canonical_text(client: FlaskClient) -> None:
    answer = post(client, "/api/shorthand", {"text": "title: A piece\nMAIN:\n  2 min r24"}).get_json()
    assert answer == {"plan": PLAN, "text": TEXT}


def test_a_plan_becomes_text(client: FlaskClient) -> None:
    assert post(client, "/api/shorthand", {"plan": PLAN}).get_json() == {"text": TEXT}


def test_text_and_a_plan_at_once_are_refused(client: FlaskClient) -> None:
    document = problem_of(post(client, "/api/shorthand", {"text": TEXT, "plan": PLAN}))
    assert document["problems"][0]["sentence"] == "exactly one of text, plan is needed here, not text, plan"


def test_a_plan_too_large_to_expand_is_refused_by_its_place(client: FlaskClient) -> None:
    document = problem_of(post(client, "/api/shorthand", {"plan": {**PLAN, "parts": []}}))
    assert document["problems"][0]["pointer"] == "/plan/parts"


def test_very_long_text_is_refused(client: FlaskClient) -> None:
    document = problem_of(post(client, "/api/shorthand", {"text": "\n" * 15_000}))
    assert document["problems"][0]["sentence"] == (
        "line 1, column 1: the text is longer than 15000 lines or 262144 characters: shorten it"
    )
