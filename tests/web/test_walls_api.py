"""Walls: made with a key that is told once, changed only with it, asked again and again for little."""

from __future__ import annotations

import json
import sqlite3
import time
from contextlib import AbstractContextManager
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from sqlalchemy import Connection
from werkzeug.http import unquote_etag
from werkzeug.test import TestResponse

from tests.web.asking import PLAN, post, problem_of
from web.factory import create_app
from web.settings import Publishing, Settings
from web.store.connection import Database
from web.store.walls import WallShelf

Made = dict[str, str]


@pytest.fixture
def own(settings: Settings, tmp_path: Path) -> Settings:
    """Settings of an app with a store of its own."""
    return replace(settings, data=tmp_path / "data")


@pytest.fixture
def asking(own: Settings) -> FlaskClient:
    """A client of an app without walls."""
    return create_app(own).test_client()


@pytest.fixture
def wall(asking: FlaskClient) -> Made:
    """A wall that shows nothing yet."""
    answer = post(asking, "/api/walls", {})
    assert answer.status_code == 201
    made: Made = answer.get_json()
    return made


def plan(number: int = 0) -> dict[str, Any]:
    return {**PLAN, "title": f"Plan {number}"}


def put(
    asking: FlaskClient, wall: Made, document: Any, key: str | None = None, **headers: str
) -> TestResponse:
    given = {"Authorization": f"Bearer {wall['key'] if key is None else key}", **headers}
    return asking.put(
        f"/api/walls/{wall['id']}",
        data=json.dumps(document),
        headers={name.replace("_", "-"): value for name, value in given.items()},
        content_type="application/json",
    )


def look(asking: FlaskClient, wall: Made, **headers: str) -> TestResponse:
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    return asking.get(f"/api/walls/{wall['id']}", headers=named)


def renew(asking: FlaskClient, wall: Made, key: object) -> TestResponse:
    path = f"/api/walls/{wall['id']}/key"
    return post(asking, path, {"key": key}, Authorization=f"Bearer {wall['key']}")


def test_a_new_wall_shows_nothing_and_has_a_key_of_256_bits(asking: FlaskClient, wall: Made) -> None:
    assert look(asking, wall).get_json() == {
        "id": wall["id"],
        "version": 1,
        "plans": [],
        "starts_at_s": None,
    }
    assert len(wall["key"]) == 43
    assert wall["url"] == f"/wall/{wall['id']}"


def test_no_form_of_another_site_makes_a_wall(asking: FlaskClient) -> None:
    """Forms are sent without asking the server first, in these three types (HTML, form submission)."""
    for content_type in ("application/x-www-form-urlencoded", "multipart/form-data", "text/plain"):
        sent = asking.post("/api/walls", data="{}", content_type=content_type)
        assert (sent.status_code, problem_of(sent)["status"]) == (415, 415)


def test_no_key_is_stored(own: Settings, asking: FlaskClient, wall: Made) -> None:
    put(asking, wall, {"plans": [plan()]})
    stored = b"".join(path.read_bytes() for path in own.data.iterdir())
    assert wall["id"].encode() in stored
    assert wall["key"].encode() not in stored


def test_plans_are_put_on_it_in_order_and_cleared_again(asking: FlaskClient, wall: Made) -> None:
    told = put(asking, wall, {"plans": [plan(1), plan(2)]})
    assert look(asking, wall).get_json()["plans"] == [plan(1), plan(2)]
    assert told.get_json() == {**look(asking, wall).get_json(), "asked_s_ago": None}
    assert told.get_json()["version"] == 2
    put(asking, wall, {"plans": []})
    assert look(asking, wall).get_json()["plans"] == []


def test_a_start_in_some_seconds_becomes_a_moment_of_the_server_and_stays_one(
    asking: FlaskClient, wall: Made
) -> None:
    before = time.time()
    told = put(asking, wall, {"plans": [plan()], "start_in_seconds": 10}).get_json()
    assert before + 10 <= told["starts_at_s"] <= time.time() + 11
    kept = put(asking, wall, {"plans": [plan(), plan(2)], "starts_at_s": told["starts_at_s"]}).get_json()
    assert kept["starts_at_s"] == told["starts_at_s"]


def test_a_tablet_that_asks_again_is_answered_only_what_is_new(asking: FlaskClient, wall: Made) -> None:
    first = look(asking, wall)
    again = look(asking, wall, If_None_Match=first.headers["ETag"])
    assert (again.status_code, again.data) == (304, b"")
    put(asking, wall, {"plans": [plan()]})
    assert look(asking, wall, If_None_Match=first.headers["ETag"]).status_code == 200
    assert first.headers["Cache-Control"] == "no-cache"


def test_a_change_made_from_what_is_no_longer_shown_is_refused(asking: FlaskClient, wall: Made) -> None:
    seen = look(asking, wall).headers["ETag"]
    assert unquote_etag(seen)[0] == str(look(asking, wall).get_json()["version"])
    assert put(asking, wall, {"plans": [plan(1)]}, If_Match=seen).status_code == 200
    late = put(asking, wall, {"plans": [plan(2)]}, If_Match=seen)
    assert late.status_code == 412
    assert "somebody else" in problem_of(late)["detail"]
    assert put(asking, wall, {"plans": [plan(2)]}, If_Match='"nonsense"').status_code == 412
    assert look(asking, wall).get_json()["plans"] == [plan(1)]
    assert put(asking, wall, {"plans": [plan(3)]}, If_Match="*").status_code == 200, "RFC 9110, 13.1.1"


def test_only_the_key_changes_it_and_keys_cannot_be_guessed(asking: FlaskClient, wall: Made) -> None:
    none, wrong = put(asking, wall, {"plans": []}, key=""), put(asking, wall, {"plans": []}, key="x" * 43)
    assert (none.status_code, wrong.status_code) == (401, 401)
    assert problem_of(none)["detail"] != problem_of(wrong)["detail"]
    statuses = [put(asking, wall, {"plans": []}, key=str(n)).status_code for n in range(11)]
    assert statuses[-2:] == [429, 429]
    assert put(asking, wall, {"plans": []}).status_code == 429


def test_wrong_keys_and_lost_walls_keep_nobody_from_another_wall(asking: FlaskClient, wall: Made) -> None:
    lost = {"id": "a" * 16, "key": "x" * 43}
    for _ in range(20):
        assert look(asking, lost).status_code == 404
        assert put(asking, lost, {"plans": []}).status_code == 404
    other: Made = post(asking, "/api/walls", {}).get_json()
    for _ in range(12):
        put(asking, other, {"plans": []}, key="x" * 43)
    assert look(asking, wall).status_code == 200
    assert put(asking, wall, {"plans": [plan(1)]}).status_code == 200


def test_a_renewed_key_is_the_only_one(asking: FlaskClient, wall: Made) -> None:
    fresh = "f" * 43
    assert renew(asking, wall, fresh).get_json()["key"] == fresh
    assert put(asking, wall, {"plans": []}).status_code == 401
    assert put(asking, wall, {"plans": []}, key=fresh).status_code == 200
    assert renew(asking, {**wall, "key": fresh}, fresh).status_code == 200, "asked again, it is as it was"


@pytest.mark.parametrize(
    "key", [None, 5, "", "k" * 42, "k" * 44, "k" * 42 + "=", "k" * 42 + "+", "k" * 42 + "ä"]
)
def test_a_key_that_is_none_is_refused_and_not_told_back(
    asking: FlaskClient, wall: Made, key: object
) -> None:
    refused = problem_of(renew(asking, wall, key))
    assert (refused["status"], refused["problems"][0]["pointer"]) == (422, "/key")
    assert "kkkk" not in json.dumps(refused)
    assert put(asking, wall, {"plans": []}).status_code == 200


def test_a_key_can_be_looked_at_without_changing_anything(asking: FlaskClient, wall: Made) -> None:
    assert look(asking, wall, Authorization=f"Bearer {wall['key']}").get_json()["version"] == 1
    assert look(asking, wall, Authorization="Basic of:something-else").status_code == 200
    statuses = [look(asking, wall, Authorization=f"Bearer {n}").status_code for n in range(11)]
    assert statuses == [401] * 10 + [429]
    assert look(asking, wall).status_code == 200


def test_who_has_the_key_is_told_when_a_tablet_last_asked(
    own: Settings, asking: FlaskClient, wall: Made
) -> None:
    def asked_s_ago() -> object:
        return look(asking, wall, Authorization=f"Bearer {wall['key']}").get_json()["asked_s_ago"]

    assert asked_s_ago() is None, "who has the key is no tablet"
    tag = look(asking, wall).headers["ETag"]
    assert asked_s_ago() in (0, 1)
    shelf, now = WallShelf(Database(own.database)), int(time.time())
    shelf.asked(wall["id"], now - 10)
    assert look(asking, wall, If_None_Match=tag).status_code == 304, "the tag is that of what is shown"
    assert asked_s_ago() in range(10, 15), "noted not long ago: no write for each look"
    shelf.asked(wall["id"], now - 3000)
    assert asked_s_ago() in range(3000, 3005)
    assert "asked_s_ago" not in look(asking, wall).get_json(), "nobody else is told"
    assert asked_s_ago() in (0, 1)


def test_a_clock_that_was_put_back_tells_of_no_tablet_until_one_asks(
    own: Settings, asking: FlaskClient, wall: Made
) -> None:
    def told() -> dict[str, Any]:
        led: dict[str, Any] = look(asking, wall, Authorization=f"Bearer {wall['key']}").get_json()
        return led

    WallShelf(Database(own.database)).asked(wall["id"], int(time.time()) + 3600)
    assert "asked_s_ago" not in told()
    look(asking, wall)
    assert told()["asked_s_ago"] in (0, 1)


def test_no_tablet_waits_because_the_store_is_being_written(
    own: Settings, asking: FlaskClient, wall: Made, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another process holds the lock of SQLite."""
    tries: list[bool] = []
    write = Database.write

    def counted(database: Database, waits: bool = True) -> AbstractContextManager[Connection]:
        tries.append(waits)
        return write(database, waits)

    monkeypatch.setattr(Database, "write", counted)
    other = sqlite3.connect(own.data / "slipway.db", isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    statuses = [look(asking, wall).status_code for _ in range(20)]
    other.close()
    assert statuses == [200] * 20
    assert 0 < len(tries) < 20, "a try that failed is remembered"
    assert not any(tries), "none of them waits"


def test_what_the_key_shows_is_compared_by_no_tag(asking: FlaskClient, wall: Made) -> None:
    tag = look(asking, wall).headers["ETag"]
    led = look(asking, wall, Authorization=f"Bearer {wall['key']}", If_None_Match=tag)
    assert (led.status_code, led.headers["Cache-Control"], led.headers.get("ETag")) == (200, "no-store", None)


def test_a_wall_that_is_not_there_is_told(asking: FlaskClient, wall: Made) -> None:
    other = {**wall, "id": "a" * 16}
    assert [answer.status_code for answer in (look(asking, other), put(asking, other, {"plans": []}))] == [
        404,
        404,
    ]
    assert look(asking, {**wall, "id": "short"}).status_code == 404


@pytest.mark.parametrize(
    ("document", "pointer"),
    [
        ({}, "/plans"),
        ({"plans": [plan()] * 13}, "/plans"),
        ({"plans": [{**plan(), "title": ""}]}, "/plans/0/title"),
        ({"plans": [plan(), {**plan(), "parts": []}]}, "/plans/1/parts"),
        ({"plans": [], "start_in_seconds": 10}, "/start_in_seconds"),
        ({"plans": [plan()], "start_in_seconds": 2}, "/start_in_seconds"),
        ({"plans": [plan()], "start_in_seconds": 10, "starts_at_s": 5}, "/start_in_seconds"),
    ],
)
def test_what_makes_no_sense_is_refused_with_its_place(
    asking: FlaskClient, wall: Made, document: Any, pointer: str
) -> None:
    assert problem_of(put(asking, wall, document))["problems"][0]["pointer"] == pointer


def test_walls_are_made_by_the_rules_of_publishing(own: Settings) -> None:
    closed = create_app(replace(own, publish=Publishing.CLOSED)).test_client()
    assert post(closed, "/api/walls", {}).status_code == 403
    keyed = create_app(replace(own, publish=Publishing.KEY, publish_key="sixteen letters!")).test_client()
    assert post(keyed, "/api/walls", {}).status_code == 401
    assert post(keyed, "/api/walls", {}, Authorization="Bearer sixteen letters!").status_code == 201


def test_a_wall_outlives_the_server(own: Settings, asking: FlaskClient, wall: Made) -> None:
    put(asking, wall, {"plans": [plan()]})
    assert look(create_app(own).test_client(), wall).get_json()["plans"] == [plan()]


def test_walls_are_not_made_by_the_hundred(asking: FlaskClient) -> None:
    statuses = [post(asking, "/api/walls", {}).status_code for _ in range(21)]
    assert statuses == [201] * 20 + [429]


def test_without_its_store_a_wall_is_away(own: Settings, tmp_path: Path) -> None:
    (tmp_path / "data").write_text("in the way")
    asking = create_app(own).test_client()
    wall = {"id": "a" * 16, "key": "k" * 43}
    answers = [post(asking, "/api/walls", {}), look(asking, wall), put(asking, wall, {"plans": []})]
    answers.append(renew(asking, wall, "k" * 43))
    assert [answer.status_code for answer in answers] == [503] * 4


def test_the_key_that_renews_a_key_cannot_be_guessed_either(asking: FlaskClient, wall: Made) -> None:
    statuses = [renew(asking, {**wall, "key": str(n)}, "f" * 43).status_code for n in range(11)]
    assert statuses == [401] * 10 + [429]
