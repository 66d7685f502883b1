"""The built-in plans over HTTP."""

from __future__ import annotations

import gzip

import brotli
import pytest
from flask.testing import FlaskClient

from planner.schemas.appraisal_schema import dump_appraised
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import compile_timeline
from tests.shared import links
from tests.web.asking import post
from web.builtin_plans import load_library
from web.settings import Settings

BUILT_IN = load_library(Settings().plans).plans


def test_the_listing_says_what_there_is_to_choose_from(client: FlaskClient) -> None:
    answer = client.get("/api/plans")
    assert answer.get_json() == {
        "plans": [
            {
                "slug": "short-steady",
                "title": "Five steady minutes",
                "summary": "Enough to try something out.",
                "kind": "steady",
                "seconds_s": 300.0,
                "strokes": 100,
                "estimated": False,
            },
            {
                "slug": "up-and-a-piece",
                "title": "A way up and a piece",
                "summary": "A summary that is folded over two lines.",
                "kind": "test",
                "seconds_s": 870.0,
                "strokes": 214,
                "estimated": True,
            },
        ]
    }


def test_a_plan_comes_with_its_timeline_for_anybody(client: FlaskClient) -> None:
    document = client.get("/api/plans/short-steady").get_json()
    assert set(document) == {"slug", "kind", "level", "plan", "timeline"}
    assert document["timeline"]["plan"] == document["plan"]
    assert document["timeline"]["fit"] == "clock"
    assert "athlete" not in document["timeline"]


def test_its_timeline_is_what_the_planner_answers_for_the_same_plan(client: FlaskClient) -> None:
    document = client.get("/api/plans/up-and-a-piece").get_json()
    assert post(client, "/api/timeline", {"plan": document["plan"]}).get_json() == document["timeline"]


def test_the_library_holds_every_plan_its_length_and_what_there_is_to_say(client: FlaskClient) -> None:
    listed = client.get("/api/plans").get_json()["plans"]
    wanted = []
    for summary in listed:
        alone = client.get(f"/api/plans/{summary['slug']}").get_json()
        known = {name: summary[name] for name in ("slug", "kind", "seconds_s", "estimated")}
        said = {"level": alone["level"], "plan": alone["plan"], "findings": alone["timeline"]["findings"]}
        wanted.append({**known, **said})
    assert client.get("/api/library").get_json() == {"plans": wanted}


def test_phones_compile_of_every_built_in_plan_the_timeline_that_the_planner_answers() -> None:
    """The corpus is what the phone's own compiler is held to (link-codec.test.ts, by the same digests).

    When this fails: python -m tests.shared.links.
    """
    held = {digest for _, digest in links.read(links.OPENED)}
    assert {slug for slug, built in BUILT_IN.items() if links.digest_of(built.plan) not in held} == set()
    for built in BUILT_IN.values():
        answered = dump_appraised(built.timeline, built.appraisal)
        own = {name: value for name, value in answered.items() if name not in ("readiness", "findings")}
        compiled = dump_timeline(compile_timeline(built.plan))
        assert own == {name: value for name, value in compiled.items() if name != "findings"}


@pytest.mark.parametrize(
    "path", ["/api/plans", "/api/library", "/api/plans/short-steady", "/api/openapi.json"]
)
def test_what_has_not_changed_is_not_sent_again(client: FlaskClient, path: str) -> None:
    first = client.get(path)
    assert first.headers["Cache-Control"] == "no-cache"
    again = client.get(path, headers={"If-None-Match": first.headers["ETag"]})
    assert (again.status_code, again.data) == (304, b"")
    assert client.get(path, headers={"If-None-Match": '"another"'}).status_code == 200


@pytest.mark.parametrize(
    ("accepted", "coding"),
    [("br, gzip", "br"), ("gzip", "gzip"), ("br;q=0, gzip", "gzip"), ("identity", None)],
)
def test_it_is_compressed_as_the_client_likes(client: FlaskClient, accepted: str, coding: str | None) -> None:
    plain = client.get("/api/plans/short-steady", headers={"Accept-Encoding": "identity"}).data
    answer = client.get("/api/plans/short-steady", headers={"Accept-Encoding": accepted})
    assert answer.headers.get("Content-Encoding") == coding
    assert answer.headers["Vary"] == "Accept-Encoding"
    unpack = {"br": brotli.decompress, "gzip": gzip.decompress, None: bytes}[coding]
    assert unpack(answer.data) == plain


def test_its_timeline_tells_the_readiness_it_leaves(client: FlaskClient) -> None:
    timeline = client.get("/api/plans/up-and-a-piece").get_json()["timeline"]
    assert timeline["readiness"]["gap_s"] == 300
