"""The same security headers on every answer: every route, every status.

The list is that of the OWASP Secure Headers Project, less what an app that works offline needs: no
Clear-Site-Data, no no-store on the shell, and the features of a session left on.
"""

from __future__ import annotations

import pytest
from flask import Flask
from flask.testing import FlaskClient

from tests.web.asking import PLAN, post
from tests.web.every_answer import EVERY_ANSWER, Asked
from web.api import timelines
from web.factory import create_app
from web.security_headers import security_headers
from web.settings import Settings

EXPECTED = {
    "Content-Security-Policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; "
        "font-src 'self'; media-src 'self' blob:; connect-src 'self'; worker-src 'self'; "
        "manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; "
        "object-src 'none'; "
        "require-trusted-types-for 'script'; trusted-types lit-html slipway"
    ),
    "Permissions-Policy": (
        "screen-wake-lock=(self), autoplay=(self), fullscreen=(self), "
        "accelerometer=(), camera=(), "
        "display-capture=(), encrypted-media=(), geolocation=(), gyroscope=(), hid=(), magnetometer=(), "
        "microphone=(), midi=(), payment=(), publickey-credentials-get=(), serial=(), usb=(), "
        "xr-spatial-tracking=()"
    ),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Frame-Options": "DENY",
}
# Files made of what people wrote may never act as this site, wherever they are shown.
SANDBOXED = {**EXPECTED, "Content-Security-Policy": f"{EXPECTED['Content-Security-Policy']}; sandbox"}
# What an answer may carry besides, because it is about that answer.
OF_THE_ANSWER = {
    "Allow",
    "Cache-Control",
    "Content-Disposition",
    "Content-Encoding",
    "Content-Length",
    "Content-Type",
    "ETag",
    "Retry-After",
    "WWW-Authenticate",
    "X-Robots-Tag",
    "Vary",
    "Date",
}


@pytest.mark.parametrize("asked", EVERY_ANSWER, ids=str)
def test_every_answer_carries_exactly_these_headers(client: FlaskClient, asked: Asked) -> None:
    headers = asked.ask(client).headers
    about_security = {name: value for name, value in headers if name not in OF_THE_ANSWER}
    assert about_security == (SANDBOXED if asked.path.startswith("/api/exports/") else EXPECTED)
    assert len(headers.getlist("Content-Security-Policy")) == 1


def test_every_route_stands_in_the_table(app: Flask) -> None:
    routes = {rule.rule for rule in app.url_map.iter_rules()}
    assert routes == {asked.rule for asked in EVERY_ANSWER} - {""}


def test_a_mistake_of_our_own_carries_them_too(settings: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(timelines, "load_timeline_request", lambda _: 1 / 0)
    answer = post(create_app(settings).test_client(), "/api/timeline", {"plan": PLAN})
    assert answer.status_code == 500
    assert {name: answer.headers[name] for name in EXPECTED} == EXPECTED


def test_only_an_install_behind_https_insists_on_it() -> None:
    assert "Strict-Transport-Security" not in security_headers(https=False)
    assert security_headers(https=True)["Strict-Transport-Security"] == "max-age=63072000"


@pytest.mark.parametrize("asked", EVERY_ANSWER, ids=str)
def test_no_answer_sets_a_cookie_or_names_the_server(client: FlaskClient, asked: Asked) -> None:
    headers = asked.ask(client).headers
    assert not {"Set-Cookie", "Server", "X-Powered-By"} & set(headers.keys())


@pytest.mark.parametrize("asked", EVERY_ANSWER, ids=str)
def test_every_answer_says_how_long_to_keep_it(client: FlaskClient, asked: Asked) -> None:
    assert asked.ask(client).headers["Cache-Control"] in {
        "no-cache",
        "no-store",
        "public, max-age=31536000, immutable",
    }
