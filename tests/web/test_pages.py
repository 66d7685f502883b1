"""The shell, the manifest, the service worker with its list, and the page for nothing."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from PIL import Image

from tests.web.conftest import BUILT, FEW_PLANS, LATER, ROOM
from web.factory import create_app
from web.settings import VERSION, Settings


class Tags(HTMLParser):
    """The start tags of a page, with their attributes."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, dict(attrs)))

    def named(self, tag: str) -> list[dict[str, str | None]]:
        """The attributes of every tag of that name."""
        return [attributes for name, attributes in self.found if name == tag]


def precached(client: FlaskClient) -> list[dict[str, Any]]:
    found = re.search(r"const kept = (\[.*\]);", client.get("/sw.js").text)
    assert found
    listed: list[dict[str, Any]] = json.loads(found[1])
    return listed


# --- The shell


@pytest.mark.parametrize(
    "path",
    [
        "/row",
        "/write",
        "/write?mine=abc",
        "/technique",
        "/athlete",
        "/settings",
        "/log",
        "/wall",
        "/prompter",
        "/mine/abc",
        "/plan/short-steady",
        "/plan/short-steady?utm_source=x",
    ],
)
def test_every_screen_is_the_same_shell(client: FlaskClient, path: str) -> None:
    answer = client.get(path)
    assert answer.status_code == 200
    assert answer.data == client.get("/").data


def test_an_unknown_plan_is_the_shell_too_but_not_found(client: FlaskClient) -> None:
    answer = client.get("/plan/nothing")
    assert answer.status_code == 404
    assert answer.data == client.get("/").data


def test_the_shell_is_asked_for_again_each_time_and_not_sent_again(client: FlaskClient) -> None:
    first = client.get("/")
    assert first.headers["Cache-Control"] == "no-cache"
    assert client.get("/", headers={"If-None-Match": first.headers["ETag"]}).status_code == 304


def test_everything_the_shell_asks_for_is_there(client: FlaskClient) -> None:
    tags = Tags(client.get("/").text)
    asked = [tag["href"] for tag in tags.named("link")] + [tag["src"] for tag in tags.named("script")]
    assert len(asked) >= 6
    assert {address: client.get(str(address)).status_code for address in asked} == dict.fromkeys(asked, 200)


def test_the_shell_has_no_inline_script_and_no_inline_style(client: FlaskClient) -> None:
    tags = Tags(client.get("/").text)
    assert all(tag.get("src") for tag in tags.named("script"))
    assert tags.named("style") == []
    assert not [
        tag
        for tag, attributes in tags.found
        if "style" in attributes or any(a.startswith("on") for a in attributes)
    ]


def test_the_shell_loads_early_the_fonts_that_every_screen_shows(client: FlaskClient) -> None:
    preloads = [tag for tag in Tags(client.get("/").text).named("link") if tag.get("rel") == "preload"]
    assert [tag["href"] for tag in preloads] == ["/static/dist/a-font-DDDD.woff2"]


def test_zooming_is_left_to_people(client: FlaskClient) -> None:
    viewport = next(tag for tag in Tags(client.get("/").text).named("meta") if tag.get("name") == "viewport")
    assert viewport["content"] == "width=device-width, initial-scale=1, viewport-fit=cover"


def test_without_javascript_there_is_a_line_that_says_so(client: FlaskClient) -> None:
    assert re.search(r"<noscript>[^<]+</noscript>", client.get("/").text)


# --- The page for nothing


def test_people_get_a_page_for_an_address_that_is_not_there(client: FlaskClient) -> None:
    answer = client.get("/nothing", headers={"Accept": "text/html,*/*;q=0.8"})
    assert answer.status_code == 404
    assert answer.mimetype == "text/html"
    assert "There is nothing at this address" in answer.text


def test_the_api_answers_browsers_with_a_problem_document_as_well(client: FlaskClient) -> None:
    answer = client.get("/api/nothing", headers={"Accept": "text/html"})
    assert answer.content_type == "application/problem+json"


# --- The service worker


def test_the_worker_is_asked_for_again_each_time(client: FlaskClient) -> None:
    answer = client.get("/sw.js")
    assert answer.headers["Cache-Control"] == "no-cache"
    assert answer.mimetype == "text/javascript"


def test_its_list_holds_all_that_a_phone_needs_and_no_more(client: FlaskClient) -> None:
    assert {entry["url"] for entry in precached(client)} == {
        "/",
        "/manifest.webmanifest",
        *(f"/static/dist/{name}" for name in BUILT if name not in LATER),
        "/static/icons/icon.svg",
        "/static/icons/apple-touch-180.png",
        "/api/library",
    }


def test_what_nobody_needs_to_row_is_on_a_list_of_its_own(client: FlaskClient) -> None:
    listed = ",".join(f'"/static/dist/{name}"' for name in LATER)
    assert f"const later = [{listed}];" in client.get("/sw.js").text


def test_everything_on_its_list_can_be_had(client: FlaskClient) -> None:
    answers = {entry["url"]: client.get(entry["url"]).status_code for entry in precached(client)}
    assert set(answers.values()) == {200}


def test_hashed_files_need_no_revision_and_all_others_have_one(client: FlaskClient) -> None:
    for entry in precached(client):
        assert (entry["revision"] is None) == entry["url"].startswith("/static/dist/")


def test_a_new_plan_makes_another_worker(settings: Settings, client: FlaskClient, tmp_path: Path) -> None:
    plan = FEW_PLANS / "short-steady.yaml"
    (tmp_path / plan.name).write_text(plan.read_text().replace("Five steady", "Five calm"))
    changed = create_app(replace(settings, plans=tmp_path)).test_client()
    before, after = (asked.get("/sw.js").text.splitlines()[0] for asked in (client, changed))
    assert re.fullmatch(rf"/\* Slipway {VERSION}, build [0-9a-f]{{16}} \*/", before)
    assert before != after


def test_the_same_files_make_the_same_worker(settings: Settings, client: FlaskClient) -> None:
    assert create_app(settings, ROOM).test_client().get("/sw.js").data == client.get("/sw.js").data


# --- The manifest, and the rest


def test_the_manifest_says_what_an_installed_app_needs(client: FlaskClient) -> None:
    answer = client.get("/manifest.webmanifest")
    manifest = answer.get_json(force=True)
    assert answer.mimetype == "application/manifest+json"
    assert (manifest["id"], manifest["start_url"], manifest["scope"]) == ("/", "/", "/")
    assert manifest["display"] == "standalone"
    assert manifest["shortcuts"]


def test_its_icons_are_there_in_the_sizes_it_says(client: FlaskClient) -> None:
    icons = client.get("/manifest.webmanifest").get_json(force=True)["icons"]
    assert {(icon["purpose"], icon["sizes"]) for icon in icons} >= {
        (purpose, size) for purpose in ("any", "maskable") for size in ("192x192", "512x512")
    }
    for icon in icons:
        answer = client.get(icon["src"])
        assert answer.mimetype == icon["type"]
        if icon["type"] == "image/png":
            width, height = Image.open(BytesIO(answer.data)).size
            assert f"{width}x{height}" == icon["sizes"]


def test_its_shortcuts_lead_somewhere(client: FlaskClient) -> None:
    shortcuts = client.get("/manifest.webmanifest").get_json(force=True)["shortcuts"]
    assert {client.get(shortcut["url"]).status_code for shortcut in shortcuts} == {200}


def test_health_says_the_version_and_how_the_store_is(client: FlaskClient) -> None:
    assert client.get("/healthz").get_json() == {"status": "ok", "version": VERSION, "database": "ready"}


def test_search_engines_are_kept_off_the_api_and_off_shared_plans(client: FlaskClient) -> None:
    assert client.get("/robots.txt").text == "User-agent: *\nDisallow: /api/\nDisallow: /p/\n"
