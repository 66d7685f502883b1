"""POST /api/session: a plan that the other addresses take as it is, or what is wrong and where."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from tests.web.asking import post, problem_of

TWO_K = {"test": {"metres": 2000}}


def problems(client: FlaskClient, **asked: Any) -> list[tuple[str, str]]:
    answer = post(client, "/api/session", {"piece": TWO_K, **asked})
    assert answer.status_code == 422
    return [(problem["pointer"], problem["sentence"]) for problem in problem_of(answer)["problems"]]


@pytest.mark.parametrize(
    "piece",
    [
        TWO_K,
        {"test": {"seconds": 1800, "rate_cap": 20}},
        {"intervals": {"times": 6, "metres": 500, "rest_seconds": 120}},
        {"steady": {"seconds": 2400}},
        {"technique": {"seconds": 1800}},
    ],
)
def test_the_plan_can_be_compiled_and_written_as_it_is(client: FlaskClient, piece: dict[str, Any]) -> None:
    answer = post(client, "/api/session", {"piece": piece}).get_json()
    assert answer["reasons"]
    kinds = [part["kind"] for part in answer["plan"]["parts"]]
    assert kinds == ["warm-up", "gap", "main", "cool-down"]
    assert post(client, "/api/timeline", {"plan": answer["plan"]}).status_code == 200
    text = post(client, "/api/shorthand", {"plan": answer["plan"]}).get_json()["text"]
    assert post(client, "/api/shorthand", {"text": text}).get_json()["plan"] == answer["plan"]


def test_everything_that_can_be_asked_for_is_heeded(client: FlaskClient) -> None:
    asked = {
        "piece": TWO_K,
        "warmup_minutes": 20,
        "athlete": {"results": [{"metres": 2000, "seconds": 462}]},
        "level": "trained",
        "room": "cold",
        "gap_seconds": 240,
        "pacing": {"own": [-2, 1, 1.5, -0.5]},
        "goal_seconds": 460,
    }
    plan = post(client, "/api/session", asked).get_json()["plan"]
    assert plan["parts"][1]["for"]["seconds"] == 240
    splits = [block["effort"]["split"] for block in plan["parts"][2]["blocks"]]
    assert splits == [113, 116, 116.5, 114.5]
    assert sum(splits) == 460


def test_a_warm_up_alone_is_a_session(client: FlaskClient) -> None:
    plan = post(client, "/api/session", {"piece": TWO_K, "only_warm_up": True}).get_json()["plan"]
    assert [part["kind"] for part in plan["parts"]] == ["warm-up", "gap"]


@pytest.mark.parametrize(
    ("asked", "pointer"),
    [
        ({"warmup_minutes": 4}, "/warmup_minutes"),
        ({"goal_seconds": 180}, "/goal_seconds"),
        ({"goal_metres": 2000}, "/goal_metres"),
        ({"pacing": "flat out"}, "/pacing"),
        ({"pacing": {"own": [1, 1, 1, 1]}}, "/pacing/own"),
        ({"pacing": {"own": [1, -1]}}, "/pacing/own"),
        ({"pacing": {"own": [1, -1, "0", 0]}}, "/pacing/own/2"),
        ({"only_warm_up": 1}, "/only_warm_up"),
        ({"piece": {}}, "/piece"),
        ({"piece": {"test": {"metres": 2000, "seconds": 420}}}, "/piece/test"),
        ({"piece": {"test": {"seconds": 45}}}, "/piece/test/seconds"),
    ],
)
def test_each_mistake_is_named_at_its_place(client: FlaskClient, asked: dict[str, Any], pointer: str) -> None:
    assert [place for place, _ in problems(client, **asked)] == [pointer]


SLOW = {"results": [{"metres": 2000, "seconds": 1430}]}


@pytest.mark.parametrize(
    ("asked", "pointer"),
    [
        ({"athlete": SLOW, "pacing": {"own": [10, -10, 10, -10]}}, "/pacing"),
        ({"athlete": SLOW, "pacing": {"own": [10, -10, 10, -10]}, "goal_seconds": 1430}, "/pacing"),
        ({"athlete": SLOW, "pacing": {"own": [10, -10, 10, -10]}, "goal_seconds": 1450}, "/goal_seconds"),
        ({"athlete": SLOW, "piece": {"test": {"metres": 10_000}}}, "/piece"),
        ({"athlete": SLOW, "piece": {"test": {"seconds": 3600}}}, "/piece"),
        ({"piece": {"test": {"seconds": 60}}, "goal_metres": 600}, "/goal_metres"),
    ],
)
def test_a_split_that_nobody_rows_is_laid_to_what_was_sent(
    client: FlaskClient, asked: dict[str, Any], pointer: str
) -> None:
    ((place, sentence),) = problems(client, **asked)
    assert place == pointer
    assert "splits have to stay between 1:00.0 and 6:00.0 per 500 m" in sentence
    assert place.removeprefix("/") in {"piece", *asked}
