"""POST /api/holding: whether a target for intervals holds, and where it breaks."""

from __future__ import annotations

from typing import Any

import pytest
from flask.testing import FlaskClient

from tests.web.asking import post, problem_of

SET = {"times": 8, "metres": 500, "rest_seconds": 180}
ASKED: dict[str, Any] = {
    "intervals": SET,
    "target": {"split": 105},
    "athlete": {"results": [{"metres": 2000, "seconds": 462}]},
}


def told(client: FlaskClient, **more: Any) -> Any:
    answer = post(client, "/api/holding", {**ASKED, **more})
    assert answer.status_code == 200
    return answer.get_json()


def test_a_target_that_is_too_hard_is_told_where_it_breaks_and_what_would_last(client: FlaskClient) -> None:
    answer = told(client)
    assert answer["holds"] is False
    assert answer["breaks"]["repetition"] < 8
    assert len(answer["after_each_percent"]) == 8
    assert answer["left"]["middle"] < 0
    lasting = answer["lasting"]["split_s"]
    assert lasting > 105
    again = told(client, target={"split": lasting})
    assert again["holds"] is True
    assert "breaks" not in again
    assert again["left"]["middle"] >= 0


def test_the_level_counts_where_no_result_is_known(client: FlaskClient) -> None:
    document = {"intervals": SET, "target": {"split": 120}}
    novice = post(client, "/api/holding", {**document, "level": "novice"}).get_json()
    trained = post(client, "/api/holding", {**document, "athlete": {"level": "trained"}}).get_json()
    assert (novice["basis"], novice["holds"], trained["holds"]) == ("level", False, True)


def test_nothing_of_it_is_kept(client: FlaskClient) -> None:
    assert post(client, "/api/holding", ASKED).headers["Cache-Control"] == "no-store"


@pytest.mark.parametrize(
    ("more", "pointer"),
    [
        ({"target": {"split": 80}}, "/target/split"),
        ({"target": {"two_k_power_fraction": 2.5}}, "/target/two_k_power_fraction"),
        ({"target": {}}, "/target"),
        ({"target": {"split": 110, "two_k_power_fraction": 1}}, "/target"),
        ({"intervals": {**SET, "times": 1}}, "/intervals/times"),
        ({"intervals": {**SET, "leave_percent": 5}}, "/intervals/leave_percent"),
        ({"intervals": {**SET, "metres": 10_000}}, "/intervals"),
        ({"level": "expert"}, "/level"),
    ],
)
def test_each_mistake_is_named_at_its_place(client: FlaskClient, more: Any, pointer: str) -> None:
    answer = post(client, "/api/holding", {**ASKED, **more})
    assert answer.status_code == 422
    assert [problem["pointer"] for problem in problem_of(answer)["problems"]] == [pointer]
