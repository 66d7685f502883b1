"""POST /api/exports/<kind>: a file under a name, for anybody or one athlete, and nothing kept of either."""

from __future__ import annotations

import gzip
import json
from typing import Any

import brotli
import pytest
from flask import Flask
from flask.testing import FlaskClient

from planner.schemas.plan_schema import load_plan
from planner.timeline import compile_timeline
from tests.planner.test_schemas import EVERYTHING
from tests.web.asking import PLAN, post, problem_of
from web.api.exports import A_MINUTE, LARGE_AT_ONCE
from web.exports.click_track import click_track
from web.exports.kinds import KINDS
from web.factory import create_app
from web.settings import Settings

ATHLETE = {"results": [{"metres": 2000, "seconds": 462}]}


@pytest.fixture
def asker(settings: Settings) -> FlaskClient:
    """A client of an app that has answered nobody yet."""
    app: Flask = create_app(settings)
    return app.test_client()


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_is_a_file_with_a_type_and_a_name(asker: FlaskClient, kind: str) -> None:
    answer = post(asker, f"/api/exports/{kind}", {"plan": {**PLAN, "title": "Été: 2 km"}})
    assert answer.status_code == 200
    assert answer.content_type == KINDS[kind].content_type
    assert answer.headers["Cache-Control"] == "no-store"
    ending = KINDS[kind].ending
    named = f"attachment; filename=\"ete-2-km.{ending}\"; filename*=UTF-8''%C3%89t%C3%A9%202%20km.{ending}"
    assert answer.headers["Content-Disposition"] == named


def test_no_two_kinds_have_one_name_in_a_folder() -> None:
    assert len({kind.ending for kind in KINDS.values()}) == len(KINDS)


def test_an_athlete_brings_splits(asker: FlaskClient) -> None:
    anybody = post(asker, "/api/exports/csv", {"plan": EVERYTHING}).text
    athlete = post(asker, "/api/exports/csv", {"plan": EVERYTHING, "athlete": ATHLETE}).text
    assert ',"1:54.0",114,' in athlete
    assert ',"1:54.0",114,' not in anybody


def test_the_rate_can_be_what_stays(asker: FlaskClient) -> None:
    plan = {**PLAN, "parts": [{"kind": "main", "blocks": [{"for": {"seconds": 50}, "rate": 28}]}]}
    assert ",49.286," in post(asker, "/api/exports/csv", {"plan": plan, "fit": "rate"}).text
    assert ",50," in post(asker, "/api/exports/csv", {"plan": plan}).text


def test_a_plan_comes_back_as_it_was_sent(asker: FlaskClient) -> None:
    answer = post(asker, "/api/exports/json", {"plan": EVERYTHING, "athlete": ATHLETE})
    assert answer.get_json() == EVERYTHING
    assert load_plan(json.loads(answer.text)) == load_plan(EVERYTHING)


def test_a_start_moves_the_calendar_entry(asker: FlaskClient) -> None:
    asked = {"plan": PLAN, "start": "2026-12-01T18:30"}
    assert "\r\nDTSTART:20261201T183000\r\n" in post(asker, "/api/exports/ics", asked).text


def test_without_a_start_the_calendar_entry_stands_on_the_day_it_is_where_it_is_asked(
    asker: FlaskClient,
) -> None:
    asked = {"plan": PLAN, "today": "2031-12-01"}
    assert "\r\nDTSTART;VALUE=DATE:20311201\r\n" in post(asker, "/api/exports/ics", asked).text
    assert "\r\nDTSTART;VALUE=DATE:20" in post(asker, "/api/exports/ics", {"plan": PLAN}).text
    for day, sentence in (
        ("2026-02-30", 'today "2026-02-30" is not in any calendar: check it'),
        ("2026-12-01T18:00", 'today is "2026-12-01T18:00": write a date as 2026-12-01'),
    ):
        refused = problem_of(post(asker, "/api/exports/ics", {"plan": PLAN, "today": day}))
        assert refused["problems"] == [{"pointer": "/today", "sentence": sentence}]


@pytest.mark.parametrize(
    ("start", "sentence"),
    [
        ("2026-02-30T10:00", 'start "2026-02-30T10:00" is not in any calendar: check it'),
        ("tomorrow", 'start is "tomorrow": write date and time as 2026-12-01T18:00'),
        ("2026-12-01T18:00Z", 'start is "2026-12-01T18:00Z": write date and time as 2026-12-01T18:00'),
        (7, "start is 7: write date and time as 2026-12-01T18:00"),
    ],
)
def test_a_start_that_is_none_is_refused(asker: FlaskClient, start: Any, sentence: str) -> None:
    (problem,) = problem_of(post(asker, "/api/exports/ics", {"plan": PLAN, "start": start}))["problems"]
    assert problem == {"pointer": "/start", "sentence": sentence}


def test_a_plan_that_is_too_large_is_refused_by_its_place(asker: FlaskClient) -> None:
    huge = {"times": 100, "blocks": [{"times": 100, "blocks": [{"for": {"seconds": 60}}]}]}
    plan = {**PLAN, "parts": [{"kind": "main", "blocks": [huge]}]}
    (problem,) = problem_of(post(asker, "/api/exports/csv", {"plan": plan}))["problems"]
    assert problem["pointer"] == "/plan/parts/0"


def test_a_large_file_is_the_same_in_every_coding(asker: FlaskClient) -> None:
    whole = post(asker, "/api/exports/wav", {"plan": PLAN})
    assert whole.data == b"".join(click_track(compile_timeline(load_plan(PLAN))))
    assert whole.content_length == len(whole.data)
    in_brotli = post(asker, "/api/exports/wav", {"plan": PLAN}, Accept_Encoding="gzip, br")
    assert in_brotli.headers["Content-Encoding"] == "br"
    assert brotli.decompress(in_brotli.data) == whole.data
    in_gzip = post(asker, "/api/exports/wav", {"plan": PLAN}, Accept_Encoding="gzip")
    assert gzip.decompress(in_gzip.data) == whole.data
    assert len(in_brotli.data) < len(in_gzip.data) < len(whole.data) / 10


def test_more_large_files_at_once_than_the_server_bears_are_refused(asker: FlaskClient) -> None:
    def ask() -> Any:
        return asker.post("/api/exports/wav", json={"plan": PLAN}, buffered=False)

    begun = [ask() for _ in range(LARGE_AT_ONCE)]
    refused = ask()
    assert (refused.status_code, refused.headers["Retry-After"]) == (429, "5")
    begun[0].close()
    assert ask().status_code == 200


def test_a_kind_that_there_is_not_is_told_those_that_there_are(asker: FlaskClient) -> None:
    refused = problem_of(post(asker, "/api/exports/pdf", {"plan": PLAN}))
    assert refused["status"] == 404
    assert refused["detail"].startswith("there is no such download; there are ")


def test_more_than_a_minute_holds_is_refused_for_one_address_only(asker: FlaskClient) -> None:
    def ask(address: str) -> Any:
        return asker.post("/api/exports/csv", json={"plan": PLAN}, environ_base={"REMOTE_ADDR": address})

    assert {ask("192.0.2.7").status_code for _ in range(A_MINUTE)} == {200}
    refused = ask("192.0.2.7")
    assert refused.status_code == 429
    assert 1 <= int(refused.headers["Retry-After"]) <= 60
    assert problem_of(refused)["detail"].startswith(
        f"more than {A_MINUTE} downloads were asked for in a minute"
    )
    assert ask("192.0.2.8").status_code == 200
