"""Static files: hashed ones kept for ever, compressed as the client likes, and nothing else of the tree."""

from __future__ import annotations

import gzip
from dataclasses import replace
from pathlib import Path

import brotli
import pytest
from flask.testing import FlaskClient

from tests.web.conftest import BUILT
from web.assets import load_assets
from web.settings import CannotStart, Settings

BR, GZIP = {"Accept-Encoding": "br"}, {"Accept-Encoding": "gzip"}


@pytest.mark.parametrize(
    ("name", "content_type"),
    [
        ("main-AAAA.js", "text/javascript; charset=utf-8"),
        ("app-BBBB.css", "text/css; charset=utf-8"),
        ("a-font-DDDD.woff2", "font/woff2"),
    ],
)
def test_a_built_file_is_served_as_what_it_is(client: FlaskClient, name: str, content_type: str) -> None:
    answer = client.get(f"/static/dist/{name}")
    assert answer.text == BUILT[name]
    assert answer.content_type == content_type


def test_a_hashed_file_may_be_kept_for_ever(client: FlaskClient) -> None:
    answer = client.get("/static/dist/main-AAAA.js")
    assert answer.headers["Cache-Control"] == "public, max-age=31536000, immutable"


def test_an_icon_has_to_be_asked_for_again(client: FlaskClient) -> None:
    answer = client.get("/static/icons/icon.svg")
    assert answer.headers["Cache-Control"] == "no-cache"
    assert answer.headers["ETag"]


def test_text_is_compressed_and_says_that_it_varies(client: FlaskClient) -> None:
    brotlied = client.get("/static/dist/main-AAAA.js", headers=BR)
    gzipped = client.get("/static/dist/main-AAAA.js", headers=GZIP)
    assert brotli.decompress(brotlied.data).decode() == BUILT["main-AAAA.js"]
    assert gzip.decompress(gzipped.data).decode() == BUILT["main-AAAA.js"]
    assert brotlied.headers["Vary"] == gzipped.headers["Vary"] == "Accept-Encoding"


def test_a_font_is_not_compressed_again(client: FlaskClient) -> None:
    answer = client.get("/static/dist/a-font-DDDD.woff2", headers=BR)
    assert "Content-Encoding" not in answer.headers
    assert "Vary" not in answer.headers


def test_what_the_build_compressed_is_what_is_sent(settings: Settings, tmp_path: Path) -> None:
    for path in settings.dist.iterdir():
        (tmp_path / path.name).write_bytes(path.read_bytes())
    (tmp_path / "main-AAAA.js.br").write_bytes(b"made by the build")
    assert (
        load_assets(replace(settings, dist=tmp_path)).files["main-AAAA.js"].encode("br")
        == b"made by the build"
    )


@pytest.mark.parametrize(
    "name", ["service-worker.js", "assets.json", "main-AAAA.js.br", ".", "%2e%2e/app.css", "a\\b"]
)
def test_nothing_else_of_the_folder_is_served(client: FlaskClient, name: str) -> None:
    assert client.get(f"/static/dist/{name}").status_code == 404


@pytest.mark.parametrize(
    "path", ["/static/src/plan/wire.ts", "/static/styles/app.css", "/static/", "/app.py", "/plans/"]
)
def test_nothing_else_of_the_tree_is_served(client: FlaskClient, path: str) -> None:
    assert client.get(path).status_code == 404


def test_without_a_build_the_app_says_how_to_make_one(settings: Settings, tmp_path: Path) -> None:
    with pytest.raises(CannotStart, match="run make client"):
        load_assets(replace(settings, dist=tmp_path))
