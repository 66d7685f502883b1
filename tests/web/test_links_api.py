"""Short links: the same plan the same name, kept for ever by who has them; and all the ways to be refused."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from flask.testing import FlaskClient

from planner.schemas.plan_schema import load_plan
from tests.web.asking import PLAN, post, problem_of
from tests.web.codes import read_svg
from web.factory import create_app
from web.link_codec import decode
from web.qr import LARGEST_VERSION, code_of
from web.settings import CannotStart, Publishing, Settings
from web.store.connection import Database
from web.store.links import LinkShelf

KEY = "an operator's key"


@pytest.fixture
def own(settings: Settings, tmp_path: Path) -> Settings:
    """Settings of an app with a store of its own."""
    return replace(settings, data=tmp_path / "data")


@pytest.fixture
def asking(own: Settings) -> FlaskClient:
    """A client of an app with an empty store."""
    return create_app(own).test_client()


def plan(number: int = 0) -> dict[str, Any]:
    return {**PLAN, "title": f"Plan {number}"}


# --- Publishing


def test_a_new_plan_is_made_and_the_same_again_is_known(asking: FlaskClient) -> None:
    first, again = (post(asking, "/api/links", {"plan": plan()}) for _ in range(2))
    assert (first.status_code, again.status_code) == (201, 200)
    assert first.get_json() == again.get_json()
    assert first.get_json()["url"] == f"/p/{first.get_json()['id']}"
    assert first.headers["Cache-Control"] == "no-store"


def test_the_spelling_of_the_json_makes_no_other_plan(asking: FlaskClient) -> None:
    turned = dict(reversed(plan().items()))
    names = {post(asking, "/api/links", {"plan": each}).get_json()["id"] for each in (plan(), turned)}
    assert len(names) == 1


def test_the_address_is_whole_where_the_server_knows_how_it_is_reached(own: Settings) -> None:
    asking = create_app(replace(own, public_url="https://row.example")).test_client()
    told = post(asking, "/api/links", {"plan": plan()}, Host="elsewhere.example").get_json()
    assert told["url"] == f"https://row.example/p/{told['id']}"
    assert "row.example" in asking.get(f"/p/{told['id']}/qr.svg").text


def test_a_plan_that_is_none_is_refused_with_its_place(asking: FlaskClient) -> None:
    answer = post(asking, "/api/links", {"plan": {**plan(), "parts": []}})
    assert problem_of(answer)["problems"][0]["pointer"] == "/plan/parts"


def test_publishing_can_be_closed(own: Settings) -> None:
    asking = create_app(replace(own, publish=Publishing.CLOSED)).test_client()
    answer = post(asking, "/api/links", {"plan": plan()})
    assert answer.status_code == 403
    assert "a link that carries its plan needs no server" in problem_of(answer)["detail"]


def test_publishing_can_need_a_key(own: Settings) -> None:
    asking = create_app(replace(own, publish=Publishing.KEY, publish_key=KEY)).test_client()
    none, wrong, basic, right = (
        post(asking, "/api/links", {"plan": plan()}, **headers)
        for headers in (
            {},
            {"Authorization": "Bearer something else"},
            {"Authorization": f"Basic {KEY}"},
            {"Authorization": f"Bearer {KEY}"},
        )
    )
    assert [answer.status_code for answer in (none, wrong, basic, right)] == [401, 401, 401, 201]
    assert problem_of(none)["detail"] != problem_of(wrong)["detail"]
    assert none.headers["WWW-Authenticate"] == "Bearer"


def test_keys_cannot_be_guessed_by_the_dozen(own: Settings) -> None:
    asking = create_app(replace(own, publish=Publishing.KEY, publish_key=KEY)).test_client()
    guesses = [post(asking, "/api/links", {"plan": plan()}, Authorization=f"Bearer {n}") for n in range(12)]
    assert [answer.status_code for answer in guesses] == [401] * 10 + [429] * 2
    assert post(asking, "/api/links", {"plan": plan()}, Authorization=f"Bearer {KEY}").status_code == 429


def test_new_plans_are_counted_and_known_ones_are_not(asking: FlaskClient) -> None:
    def publish(number: int, address: str = "192.0.2.1") -> Any:
        body = json.dumps({"plan": plan(number)})
        return asking.post(
            "/api/links",
            data=body,
            content_type="application/json",
            environ_base={"REMOTE_ADDR": address},
        )

    assert {publish(number).status_code for number in range(20)} == {201}
    refused = publish(20)
    assert refused.status_code == 429
    assert 0 < int(refused.headers["Retry-After"]) <= 3600
    assert "more than 20 new plans were asked for in an hour" in problem_of(refused)["detail"]
    assert publish(7).status_code == 200
    assert publish(20, "192.0.2.2").status_code == 201


def test_a_store_that_is_full_says_so(own: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(LinkShelf.__init__, "__defaults__", (0, 0))
    answer = post(create_app(own).test_client(), "/api/links", {"plan": plan()})
    assert answer.status_code == 503
    assert "no room" in problem_of(answer)["detail"]


def test_without_its_store_the_app_does_everything_else(own: Settings, tmp_path: Path) -> None:
    (tmp_path / "data").write_text("in the way")
    asking = create_app(own).test_client()
    assert asking.get("/healthz").get_json()["database"] == "away"
    assert post(asking, "/api/links", {"plan": plan()}).status_code == 503
    assert asking.get(f"/api/links/{'a' * 16}").status_code == 503
    assert asking.get(f"/p/{'a' * 16}").status_code == 200
    assert post(asking, "/api/timeline", {"plan": plan()}).status_code == 200


@pytest.mark.parametrize(
    "wrong", [{"database_url": "nothing"}, {"rate_limits_url": "nothing"}, {"rate_limits_url": "carrier://x"}]
)
def test_a_place_that_is_none_stops_the_start(own: Settings, wrong: dict[str, str]) -> None:
    with pytest.raises(CannotStart, match=f"{next(iter(wrong)).upper()} is"):
        create_app(replace(own, **wrong))  # type: ignore[arg-type]


# --- Reading


@pytest.fixture
def name(asking: FlaskClient) -> str:
    """The name of a published plan."""
    return str(post(asking, "/api/links", {"plan": plan()}).get_json()["id"])


def test_a_published_plan_can_be_kept_for_ever(asking: FlaskClient, name: str) -> None:
    answer = asking.get(f"/api/links/{name}")
    assert answer.get_json() == {"id": name, "plan": plan()}
    assert answer.headers["Cache-Control"] == "public, max-age=31536000, immutable"
    assert answer.headers["ETag"] == f'"{name}"'
    kept = asking.get(f"/api/links/{name}", headers={"If-None-Match": answer.headers["ETag"]})
    assert (kept.status_code, kept.data) == (304, b"")


def test_a_published_plan_outlives_the_server(own: Settings, asking: FlaskClient, name: str) -> None:
    assert create_app(own).test_client().get(f"/api/links/{name}").get_json()["plan"] == plan()


@pytest.mark.parametrize(
    "wrong", ["a" * 16, "A" * 16, "short", "0" * 16, "a" * 53, "%2e%2e", "a%00b", "é" * 16]
)
def test_a_name_that_is_not_there_is_told_in_a_sentence(asking: FlaskClient, wrong: str) -> None:
    answer = asking.get(f"/api/links/{wrong}")
    assert answer.status_code == 404
    assert "look at the link again" in problem_of(answer)["detail"]
    assert answer.headers["Cache-Control"] == "no-store"


def test_names_cannot_be_guessed_by_the_dozen_but_a_gym_can_read(asking: FlaskClient, name: str) -> None:
    assert {asking.get(f"/api/links/{name}").status_code for _ in range(300)} == {200}
    misses = [asking.get(f"/api/links/{'a' * 15}{letter}").status_code for letter in "bcdefghijklm"]
    assert misses == [404] * 10 + [429] * 2
    assert asking.get(f"/p/{name}").status_code == 200


def test_what_was_taken_down_is_gone_on_every_address(own: Settings, asking: FlaskClient, name: str) -> None:
    LinkShelf(Database(own.database)).ban(name)
    answers = [asking.get(f"{place}{name}") for place in ("/api/links/", "/p/")]
    answers.append(post(asking, "/api/links", {"plan": plan()}))
    assert [answer.status_code for answer in answers] == [410] * 3
    assert "taken down" in problem_of(answers[0])["detail"]


def test_no_robot_is_to_keep_a_shared_plan(asking: FlaskClient, name: str) -> None:
    for path in ("/p", f"/p/{name}", f"/p/{name}/qr.svg", "/p/nothing"):
        assert asking.get(path).headers["X-Robots-Tag"] == "noindex, nofollow"
    assert "X-Robots-Tag" not in asking.get("/").headers


# --- Codes


def test_the_code_holds_the_whole_plan_where_it_is_short_enough(asking: FlaskClient, name: str) -> None:
    svg = asking.get(f"/p/{name}/qr.svg")
    assert svg.mimetype == "image/svg+xml"
    base, _, payload = read_svg(svg.data).partition("#")
    assert base == "http://localhost/p"
    assert decode(payload) == load_plan(plan())


def test_the_code_of_a_long_plan_holds_the_short_address_and_says_so(asking: FlaskClient) -> None:
    calls = [
        {"text": f"{n} {'abcdefghijklmnopqrstuvwxyz'[n:]}{n * 7919:x}", "stroke": n} for n in range(1, 20)
    ]
    blocks = [
        {
            "for": {"seconds": 60 + n},
            "rate": 20,
            "calls": [{**c, "text": f"{hash((n, c['stroke'])):x} {c['text']}"} for c in calls],
        }
        for n in range(8)
    ]
    long = {**plan(), "parts": [{"kind": "main", "blocks": blocks}]}
    name = post(asking, "/api/links", {"plan": long}).get_json()["id"]
    svg = asking.get(f"/p/{name}/qr.svg")
    assert read_svg(svg.data) == f"http://localhost/p/{name}"
    title = ElementTree.fromstring(svg.data).findtext("{http://www.w3.org/2000/svg}title")
    assert title == f"A code that leads to http://localhost/p/{name}"


def test_a_code_is_never_larger_than_a_phone_can_read() -> None:
    address = "http://localhost/p#" + "x" * 1254
    assert code_of(address, "short", about="{}").version == LARGEST_VERSION
    assert code_of(address + "x", "short", about="{}").holds == "short"


def test_no_text_of_an_address_can_break_out_of_the_picture() -> None:
    svg = code_of("https://x/<script>&\"'", about="{}").svg
    assert (
        ElementTree.fromstring(svg).findtext("{http://www.w3.org/2000/svg}title") == "https://x/<script>&\"'"
    )
