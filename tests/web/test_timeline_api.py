"""POST /api/timeline: the planner's answer, kept for the next one who asks, unless a person is in it."""

from __future__ import annotations

import json
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient

from planner.plan import Plan
from planner.timeline import Timeline, compile_timeline
from tests.web.asking import PLAN, post
from web.api.answer_cache import AnswerCache
from web.factory import create_app
from web.settings import Settings
from web.stored import Stored

ATHLETE = {"results": [{"metres": 2000, "seconds": 462}]}
PRESSED = {
    **PLAN,
    "parts": [{"kind": "main", "blocks": [{"for": {"seconds": 60}, "effort": {"split_offset": 0}}]}],
}


@pytest.fixture
def compiled(settings: Settings, monkeypatch: pytest.MonkeyPatch) -> tuple[FlaskClient, list[object]]:
    """A client of an app that notes whenever it really compiles."""
    noted: list[object] = []

    def noting(plan: Plan, *others: Any) -> Timeline:
        noted.append(plan)
        return compile_timeline(plan, *others)

    monkeypatch.setattr("web.api.timelines.compile_timeline", noting)
    app: Flask = create_app(settings)
    return app.test_client(), noted


def test_a_plan_alone_is_enough(client: FlaskClient) -> None:
    answer = post(client, "/api/timeline", {"plan": PLAN})
    assert answer.status_code == 200
    assert answer.get_json()["totals"]["strokes"] == 48


def test_an_athlete_brings_splits(client: FlaskClient) -> None:
    answer = post(client, "/api/timeline", {"plan": PRESSED, "athlete": ATHLETE})
    assert answer.get_json()["segments"][0]["target"]["split_s"] == 115.5


def test_the_rate_can_be_what_stays(client: FlaskClient) -> None:
    plan = {**PLAN, "parts": [{"kind": "main", "blocks": [{"for": {"seconds": 50}, "rate": 28}]}]}
    answer = post(client, "/api/timeline", {"plan": plan, "fit": "rate"}).get_json()
    assert answer["fit"] == "rate"
    assert answer["segments"][0]["stroke"] == [15, 7]


def test_the_rhythm_of_a_boat_can_be_asked_for(client: FlaskClient) -> None:
    machine, boat = (
        post(client, "/api/timeline", {"plan": PLAN, "rhythm": rhythm}).get_json()["segments"][0]["drive_s"]
        for rhythm in ("machine", "boat")
    )
    assert boat > machine


def test_the_answer_is_compact_and_not_kept_on_the_way(client: FlaskClient) -> None:
    answer = post(client, "/api/timeline", {"plan": PLAN})
    assert answer.data == json.dumps(answer.get_json(), separators=(",", ":")).encode()
    assert answer.headers["Cache-Control"] == "no-store"


def test_the_same_request_is_compiled_once(compiled: tuple[FlaskClient, list[object]]) -> None:
    client, noted = compiled
    first, again = (post(client, "/api/timeline", {"plan": PLAN}) for _ in range(2))
    assert first.data == again.data
    assert len(noted) == 1


def test_another_request_is_compiled_again(compiled: tuple[FlaskClient, list[object]]) -> None:
    client, noted = compiled
    post(client, "/api/timeline", {"plan": PLAN})
    post(client, "/api/timeline", {"plan": PLAN, "fit": "rate"})
    assert len(noted) == 2


def test_nothing_about_a_person_is_kept(compiled: tuple[FlaskClient, list[object]]) -> None:
    client, noted = compiled
    for _ in range(2):
        post(client, "/api/timeline", {"plan": PLAN, "athlete": ATHLETE})
    assert len(noted) == 2


def test_a_refusal_is_not_kept(compiled: tuple[FlaskClient, list[object]]) -> None:
    client, noted = compiled
    for _ in range(2):
        assert post(client, "/api/timeline", {"plan": {}}).status_code == 422
    assert noted == []


def test_a_kept_answer_does_not_let_a_compressed_request_in(client: FlaskClient) -> None:
    post(client, "/api/timeline", {"plan": PLAN})
    assert post(client, "/api/timeline", {"plan": PLAN}, Content_Encoding="gzip").status_code == 415


# --- The memory itself


def kept(text: str) -> Stored:
    return Stored(text.encode(), "text/plain")


def test_the_memory_gives_back_what_was_put_in() -> None:
    cache = AnswerCache()
    cache.put(b"question", kept("answer"))
    found = cache.get(b"question")
    assert found
    assert found.body == b"answer"
    assert cache.get(b"another question") is None


def test_the_memory_forgets_what_was_not_asked_for_longest() -> None:
    cache = AnswerCache(most=2)
    cache.put(b"a", kept("1"))
    cache.put(b"b", kept("2"))
    cache.get(b"a")
    cache.put(b"c", kept("3"))
    assert [cache.get(key) is None for key in (b"a", b"b", b"c")] == [False, True, False]


def test_the_memory_is_bounded_in_bytes() -> None:
    cache = AnswerCache(most_bytes=10)
    for number in range(5):
        cache.put(b"%d" % number, kept("four"))
    assert len(cache) == 2


def test_an_answer_larger_than_the_memory_is_not_kept() -> None:
    cache = AnswerCache(most_bytes=10)
    cache.put(b"a", kept("more than ten bytes"))
    assert len(cache) == 0
