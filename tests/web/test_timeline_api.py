"""POST /api/timeline: the planner's answer, kept for the next one who asks, unless a person is in it."""

from __future__ import annotations

import json
from typing import Any

import jsonpatch
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


GETTING_READY = {
    "format": 1,
    "title": "A way up and a piece",
    "parts": [
        {
            "kind": "warm-up",
            "blocks": [
                {"for": {"seconds": 600}, "rate": 20, "effort": {"pressure": "half"}},
                {"for": {"strokes": 15}, "rate": 26, "effort": {"pressure": "full"}},
                {"for": {"seconds": 120}, "rate": 18, "effort": {"pressure": "light"}},
            ],
        },
        {"kind": "gap", "for": {"seconds": 60}},
        {
            "kind": "main",
            "blocks": [{"for": {"metres": 2000}, "rate": 28, "effort": {"split_offset": 0}}],
        },
    ],
}


def test_readiness_comes_with_a_plan_in_which_a_piece_is_got_ready_for(client: FlaskClient) -> None:
    readiness = post(client, "/api/timeline", {"plan": GETTING_READY}).get_json()["readiness"]
    assert readiness["basis"] == "level"
    assert readiness["gap_s"] == 60
    assert len(readiness["by_gap"]) == 31
    assert "capacity" not in readiness


def test_a_result_brings_watts_and_kilojoules_to_it(client: FlaskClient) -> None:
    asked = {"plan": GETTING_READY, "athlete": ATHLETE}
    readiness = post(client, "/api/timeline", asked).get_json()["readiness"]
    assert readiness["basis"] == "result"
    assert readiness["capacity"]["watts"] > 0


def test_readiness_is_absent_where_nothing_comes_before_the_piece(client: FlaskClient) -> None:
    assert "readiness" not in post(client, "/api/timeline", {"plan": PLAN}).get_json()


def test_a_finding_brings_its_mend_as_a_json_patch_that_mends_the_plan(client: FlaskClient) -> None:
    """The patch is applied here by a reference library, as RFC 6902 has it."""
    (finding,) = post(client, "/api/timeline", {"plan": GETTING_READY}).get_json()["findings"]
    assert finding["code"] == "gap-too-short"
    assert finding["place"] == "/parts/1"
    assert finding["mend"] == {
        "label": "Wait 5:00",
        "edits": [{"op": "replace", "path": "/parts/1/for/seconds", "value": 300}],
    }
    mended = jsonpatch.apply_patch(GETTING_READY, finding["mend"]["edits"])
    assert post(client, "/api/timeline", {"plan": mended}).get_json()["findings"] == []


def test_the_room_counts(client: FlaskClient) -> None:
    hot = post(client, "/api/timeline", {"plan": GETTING_READY, "room": "hot"}).get_json()
    assert "heat" in {finding["code"] for finding in hot["findings"]}


def test_a_room_that_is_none_is_refused(client: FlaskClient) -> None:
    answer = post(client, "/api/timeline", {"plan": PLAN, "room": "tepid"})
    assert answer.status_code == 422
    (problem,) = answer.get_json()["problems"]
    assert problem == {
        "pointer": "/room",
        "sentence": 'room is "tepid": write one of cold, normal, hot',
    }


def test_the_level_of_the_athlete_counts(client: FlaskClient) -> None:
    asked = {"plan": GETTING_READY, "athlete": {"level": "novice"}}
    codes = {finding["code"] for finding in post(client, "/api/timeline", asked).get_json()["findings"]}
    assert "novice-maximal" in codes
