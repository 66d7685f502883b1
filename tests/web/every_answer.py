"""One request for every route and every status it can answer with."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import count

from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from planner.schemas.plan_schema import load_plan
from tests.web.asking import PLAN, WALL, WALL_KEY
from web.api.exports import A_MINUTE
from web.api.reading import BODY_BYTES
from web.exports.kinds import KINDS
from web.link_codec import canonical
from web.store.links import digest_of

PUBLISHED = digest_of(canonical(load_plan(PLAN)))[:16]
"""The name of the plan that the app of these tests holds."""
JSON = {"Content-Type": "application/json"}


_ADDRESSES = (f"198.18.{number // 250 % 250}.{number % 250 + 1}" for number in count())
"""Of the range for testing networks (RFC 2544)."""


@dataclass(frozen=True)
class Asked:
    """A request; `rule` is the route as the app knows it, empty where there is none.

    It is asked as often as `times` from one `address`, each time another one where none is named, so that no
    limit is met unmeant; the last answer counts.
    """

    rule: str
    path: str
    status: int
    method: str = "GET"
    body: bytes | None = None
    headers: dict[str, str] = field(default_factory=dict)
    times: int = 1
    address: str = ""

    def __str__(self) -> str:
        return f"{self.method} {self.path} {self.status}"

    def ask(self, client: FlaskClient) -> TestResponse:
        """The answer, which has to have the status that was promised."""
        address = self.address or next(_ADDRESSES)
        for _ in range(self.times):
            answer = client.open(
                self.path,
                method=self.method,
                data=self.body,
                headers=self.headers,
                environ_base={"REMOTE_ADDR": address},
                buffered=True,
            )
        assert answer.status_code == self.status, str(self)
        return answer


def _reading(rule: str, path: str | None = None, keeps: bool = True) -> list[Asked]:
    at = path or rule
    asked = [Asked(rule, at, 200), Asked(rule, at, 200, "HEAD"), Asked(rule, at, 405, "DELETE")]
    return [*asked, Asked(rule, at, 304, headers={"If-None-Match": "*"})] if keeps else asked


def _sending(path: str, good: object, bad: object = None, rule: str | None = None) -> list[Asked]:
    def asked(status: int, body: bytes, headers: dict[str, str] = JSON) -> Asked:
        return Asked(rule or path, path, status, "POST", body, headers)

    return [
        asked(200, json.dumps(good).encode()),
        asked(400, b"{"),
        asked(413, b" " * (BODY_BYTES + 1)),
        asked(415, b"{}", {"Content-Type": "text/plain"}),
        asked(422, json.dumps(bad or {}).encode()),
        Asked(rule or path, path, 405),
    ]


def _exporting(rule: str, kinds: Iterable[str]) -> list[Asked]:
    good, path = json.dumps({"plan": PLAN}).encode(), rule.replace("<kind>", "{}").format
    return [
        *_sending(path("csv"), {"plan": PLAN}, rule=rule),
        *(Asked(rule, path(kind), 200, "POST", good, JSON) for kind in kinds if kind != "csv"),
        Asked(rule, path("nothing"), 404, "POST", good, JSON),
        Asked(rule, path("csv"), 429, "POST", b"{", JSON, A_MINUTE + 1, "192.0.2.1"),
    ]


_KEY = json.dumps({"key": WALL_KEY}).encode()
_WRONG = {**JSON, "Authorization": "Bearer wrong"}
_KEYED = {**JSON, "Authorization": f"Bearer {WALL_KEY}"}
_CHANGES: list[tuple[int, str, bytes, dict[str, str]]] = [
    (200, "PUT", b'{"plans":[]}', _KEYED),
    (400, "PUT", b"{", _KEYED),
    (401, "PUT", b'{"plans":[]}', JSON),
    (401, "GET", b"", _WRONG),
    (412, "PUT", b'{"plans":[]}', {**_KEYED, "If-Match": '"0"'}),
    (413, "PUT", b" " * (BODY_BYTES + 1), _KEYED),
    (415, "PUT", b"{}", {**_KEYED, "Content-Type": "text/plain"}),
    (422, "PUT", b"{}", _KEYED),
]

EVERY_ANSWER = [
    *_reading("/"),
    *_reading("/row"),
    *_reading("/technique"),
    *_reading("/athlete"),
    *_reading("/settings"),
    *_reading("/log"),
    *_reading("/write"),
    *_reading("/prompter"),
    *_reading("/mine/<name>", "/mine/whatever"),
    *_reading("/plan/<slug>", "/plan/short-steady"),
    Asked("/plan/<slug>", "/plan/nothing", 404),
    *_reading("/phone"),
    *_reading("/phone/code.svg"),
    *_reading("/phone/slipway-authority.crt"),
    *_reading("/manifest.webmanifest"),
    *_reading("/sw.js"),
    *_reading("/robots.txt"),
    *_reading("/healthz", keeps=False),
    *_reading("/static/dist/<name>", "/static/dist/main-AAAA.js", keeps=False),
    Asked("/static/dist/<name>", "/static/dist/nothing.js", 404),
    *_reading("/static/icons/<name>", "/static/icons/icon.svg"),
    Asked("/static/icons/<name>", "/static/icons/nothing.svg", 404),
    *_reading("/api/library"),
    *_reading("/api/plans"),
    *_reading("/api/plans/<slug>", "/api/plans/short-steady"),
    Asked("/api/plans/<slug>", "/api/plans/nothing", 404),
    *_reading("/api/technique"),
    *_reading("/api/openapi.json"),
    *_sending("/api/timeline", {"plan": PLAN}),
    *_sending("/api/session", {"piece": {"test": {"metres": 2000}}}),
    *_sending(
        "/api/holding",
        {"intervals": {"times": 8, "metres": 500, "rest_seconds": 180}, "target": {"split": 108}},
    ),
    *_sending("/api/shorthand", {"plan": PLAN}),
    *_sending("/api/load", {"days": [[{"cr10": 6, "minutes": 45}], *[[]] * 6]}, {"days": []}),
    *_sending("/api/athlete", {"results": [{"metres": 2000, "seconds": 462}]}, {"age": 2}),
    *_exporting("/api/exports/<kind>", KINDS),
    *_sending("/api/links", {"plan": PLAN}),
    *_reading("/api/links/<name>", f"/api/links/{PUBLISHED}"),
    Asked("/api/links/<name>", "/api/links/nothing", 404),
    Asked("/api/links/<name>", "/api/links/nothing", 429, times=11, address="192.0.2.2"),
    Asked("/api/walls", "/api/walls", 405),
    Asked("/api/walls", "/api/walls", 413, "POST", b" " * (BODY_BYTES + 1), JSON),
    Asked("/api/walls", "/api/walls", 415, "POST", b"{}"),
    Asked("/api/walls", "/api/walls", 201, "POST", b"{}", JSON, address="192.0.2.3"),
    *_reading("/api/walls/<name>", f"/api/walls/{WALL}"),
    Asked("/api/walls/<name>", "/api/walls/nothing", 404),
    Asked("/api/walls/<name>", f"/api/walls/{WALL}", 429, "GET", b"", _WRONG, 11, "192.0.2.4"),
    *(Asked("/api/walls/<name>", f"/api/walls/{WALL}", *asked) for asked in _CHANGES),
    Asked("/api/walls/<name>", "/api/walls/nothing", 404, "PUT", b'{"plans":[]}', _KEYED),
    Asked("/api/walls/<name>", f"/api/walls/{WALL}", 429, "PUT", b'{"plans":[]}', _WRONG, 11, "192.0.2.5"),
    Asked("/api/walls/<name>/key", f"/api/walls/{WALL}/key", 405),
    Asked("/api/walls/<name>/key", f"/api/walls/{WALL}/key", 401, "POST", _KEY, JSON),
    Asked("/api/walls/<name>/key", "/api/walls/nothing/key", 404, "POST", _KEY, _KEYED),
    *(
        asked
        for asked in _sending(f"/api/walls/{WALL}/key", {}, {}, "/api/walls/<name>/key")
        if asked.status not in (200, 405)
    ),
    *_reading("/wall"),
    *_reading("/walls"),
    *_reading("/wall/<name>", f"/wall/{WALL}"),
    *_reading("/p"),
    *_reading("/p/<name>", f"/p/{PUBLISHED}"),
    Asked("/p/<name>", "/p/nothing", 404),
    *_reading("/p/<name>/qr.svg", f"/p/{PUBLISHED}/qr.svg"),
    Asked("/p/<name>/qr.svg", "/p/nothing/qr.svg", 404),
    Asked("", "/api/nothing", 404),
    Asked("", "/nothing", 404),
    Asked("", "/nothing", 404, headers={"Accept": "text/html"}),
]
