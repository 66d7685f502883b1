"""The app with a small invented client and two small plans, so that these tests need no build."""

from __future__ import annotations

import json
import secrets
from datetime import UTC, datetime
from pathlib import Path

import pytest
from flask import Flask
from flask.testing import FlaskClient

from tests.web.asking import PLAN, WALL_KEY, post
from web.assets import MANIFEST
from web.exports.alone_page import composed
from web.factory import create_app
from web.phone.pages import Room
from web.settings import Settings

HERE = Path(__file__).parent
FEW_PLANS = HERE / "few_plans"

BUILT = {
    "main-AAAA.js": "console.log('main');" * 100,
    "shared-FFFF.js": "console.log('shared');",
    "later-GGGG.js": "console.log('later');",
    "app-BBBB.css": "body { margin: 0 }" * 100,
    "first-paint-HHHH.js": "console.log('first');",
    "ticker-worker-CCCC.js": "self.onmessage = () => {};",
    "a-font-DDDD.woff2": "not really a font",
    "figures-IIII.woff2": "nor is this",
    "a-font-mono-EEEE.woff2": "nor this",
}
LATER = ("later-GGGG.js", "a-font-mono-EEEE.woff2")
"""Of these, what is kept after all else."""
SERVICE_WORKER = "const kept = self.__SLIPWAY_PRECACHE;\nconst later = self.__SLIPWAY_LATER;"


ROOM = Room(
    secure_url="https://192.0.2.7:8443",
    plain_url="http://192.0.2.7:8080",
    authority=b"not really a certificate",
    fingerprint="AB:CD",
    ends=datetime(2031, 3, 5, tzinfo=UTC),
)


@pytest.fixture(scope="session")
def settings(tmp_path_factory: pytest.TempPathFactory) -> Settings:
    """Settings for an app whose client was built by hand."""
    return built_by_hand(tmp_path_factory.mktemp("dist"))


def built_by_hand(dist: Path) -> Settings:
    """Settings for a client that is put together in this folder."""
    for name, text in BUILT.items():
        (dist / name).write_text(text)
    (dist / "service-worker.js").write_text(SERVICE_WORKER)
    (dist / "alone.html").write_text(composed("body { margin: 0 }", "console.log('alone');"))
    entries = {
        "main.js": "main-AAAA.js",
        "app.css": "app-BBBB.css",
        "first-paint.js": "first-paint-HHHH.js",
        "ticker-worker.js": "ticker-worker-CCCC.js",
    }
    listed = {
        "entries": entries,
        "at_once": ["shared-FFFF.js"],
        "files": list(BUILT),
        "service_worker": "service-worker.js",
        "alone": "alone.html",
    }
    (dist / MANIFEST).write_text(json.dumps(listed))
    return Settings(dist=dist, plans=FEW_PLANS, data=dist.with_name(f"{dist.name}-data"))


@pytest.fixture(scope="session")
def app(settings: Settings) -> Flask:
    """The whole app, with a way for phones; one plan is published, and a wall is made under a known name."""
    app = create_app(settings, ROOM)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(secrets, "token_bytes", lambda count: bytes(count))
        patch.setattr(secrets, "token_urlsafe", lambda count: WALL_KEY)
        assert post(app.test_client(), "/api/walls", {}).status_code == 201
    assert post(app.test_client(), "/api/links", {"plan": PLAN}).status_code == 201
    return app


@pytest.fixture
def client(app: Flask) -> FlaskClient:
    """A client without a memory of its own."""
    return app.test_client(use_cookies=False)
