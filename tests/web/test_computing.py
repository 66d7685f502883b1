"""Nobody holds the server up alone: what computes has an allowance, and long plans one of their own."""

from __future__ import annotations

from typing import Any

import pytest
from limits.storage import MemoryStorage

from tests.web.asking import PLAN, post, problem_of
from web.api import timelines
from web.api.timelines import LONG_A_MINUTE, LONG_AT_ONCE, LONG_SEGMENTS
from web.factory import create_app
from web.settings import Settings
from web.stored import Stored

COMPUTING = ("timeline", "session", "holding", "shorthand", "athlete", "load")
BLOCK = {"for": {"seconds": 60}, "rate": 24}


def long(number: int) -> dict[str, Any]:
    """A plan that is just long, under a title of its own."""
    main = {"kind": "main", "blocks": [{"times": 2, "blocks": [BLOCK] * (LONG_SEGMENTS // 2)}, BLOCK]}
    return {"plan": {"format": 1, "title": f"Long {number}", "parts": [main]}}


def test_all_that_computes_shares_one_allowance_for_each_address(
    settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("web.factory.COMPUTATIONS_A_MINUTE", len(COMPUTING))
    client = create_app(settings).test_client()

    def ask(path: str, address: str = "192.0.2.1") -> Any:
        answer = client.post(
            f"/api/{path}", json={"plan": PLAN}, environ_base={"REMOTE_ADDR": address}, buffered=True
        )
        return answer.status_code

    assert 429 not in [ask(path) for path in COMPUTING]
    assert ask("timeline") == 200, "what was asked before costs nothing"
    assert {ask(path) for path in COMPUTING[1:]} == {429}
    assert ask("shorthand", "192.0.2.2") == 200


def test_a_long_plan_has_an_allowance_of_its_own(settings: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(timelines, "LONG_A_MINUTE", 2)
    monkeypatch.setattr(timelines, "_appraised", lambda *_: Stored(b"{}", "application/json"))
    client = create_app(settings).test_client()
    assert [post(client, "/api/timeline", long(number)).status_code for number in range(3)] == [200, 200, 429]
    assert post(client, "/api/timeline", {"plan": PLAN}).status_code == 200


def test_more_long_plans_at_once_than_leave_threads_for_others_are_refused(
    settings: Settings, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[Any] = []

    def meanwhile(*_: object) -> Stored:
        """While one is looked at, the next comes."""
        if len(asked) <= LONG_AT_ONCE:
            asked.append(post(client, "/api/timeline", long(len(asked) + 1)))
        return Stored(b"{}", "application/json")

    monkeypatch.setattr(timelines, "_appraised", meanwhile)
    client = create_app(settings).test_client()
    assert post(client, "/api/timeline", long(0)).status_code == 200
    refused = asked[0]
    assert (refused.status_code, refused.headers["Retry-After"]) == (429, "5")
    assert problem_of(refused)["detail"].startswith(f"{LONG_AT_ONCE} long plans are being looked at already")
    assert [answer.status_code for answer in asked[1:]] == [200] * (len(asked) - 1)
    assert LONG_AT_ONCE < LONG_A_MINUTE


def test_downloads_are_counted_where_all_else_is(settings: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    """Two machines that share one place share one allowance."""
    monkeypatch.setattr("web.api.exports.A_MINUTE", 1)
    counts = MemoryStorage()
    monkeypatch.setattr("web.factory.counts_at", lambda _: counts)
    first, second = (create_app(settings).test_client() for _ in range(2))
    assert [post(each, "/api/exports/csv", {"plan": PLAN}).status_code for each in (first, second)] == [
        200,
        429,
    ]
