"""POST /api/athlete: what results say, answered and forgotten."""

from __future__ import annotations

import json
import logging
from itertools import product
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient

from planner.athlete import Athlete
from planner.standing import Standing, standing_of
from tests.web.asking import post, problem_of
from tests.web.test_openapi import COMPONENTS, named_in, note

TWO = {"metres": 2000, "seconds": 462}
THREE = {"results": [TWO, {"metres": 1000, "seconds": 217.5}, {"metres": 3000, "seconds": 717}]}


def ask(client: FlaskClient, athlete: object) -> Any:
    answer = post(client, "/api/athlete", athlete)
    assert answer.status_code == 200
    return answer.get_json()


def test_nobody_in_particular_has_bands_in_shares_and_words(client: FlaskClient) -> None:
    answer = ask(client, {})
    assert set(answer) == {"predictions", "bands", "findings"}
    assert answer["predictions"] == answer["findings"] == []
    assert {band["name"] for band in answer["bands"]} > {"UT2", "AN", "race pressure"}
    assert not any("split_slow_s" in band or "heart_rate_low" in band for band in answer["bands"])


def test_one_result_brings_predictions_and_splits(client: FlaskClient) -> None:
    answer = ask(client, {"results": [TWO]})
    assert answer["two_k"] == {"split_s": 115.5, "low_s": 115.5, "high_s": 115.5, "watts": 227.2}
    assert [p["name"] for p in answer["predictions"]][:4] == ["100 m", "500 m", "1 km", "2 km"]
    five = next(p for p in answer["predictions"] if p["name"] == "5 km")
    assert five["low_s"] < five["likely_s"] < five["high_s"]
    assert "critical_power" not in answer
    assert answer["bands"][0]["split_slow_s"] > answer["bands"][0]["split_quick_s"]


def test_a_piece_by_the_clock_is_told_in_metres(client: FlaskClient) -> None:
    half_hour = next(p for p in ask(client, {"results": [TWO]})["predictions"] if p["name"] == "30 min")
    assert half_hour["low_metres"] < half_hour["likely_metres"] < half_hour["high_metres"]
    assert all({"custom", "metres", "within_range"} == set(by) for by in half_hour["by"])


def test_more_results_bring_critical_power(client: FlaskClient) -> None:
    power = ask(client, THREE)["critical_power"]
    assert power["used"] == [0, 1, 2]
    assert power["left_out"] == []
    assert 0 < power["watts_error"] < power["watts"] < 227.2


def test_a_contradiction_is_a_finding_at_its_place(client: FlaskClient) -> None:
    answer = ask(client, {"results": [*THREE["results"], {"metres": 500, "seconds": 130}]})
    (finding,) = (f for f in answer["findings"] if f["severity"] == "warning")
    assert finding["place"] == "/results/3"
    assert answer["critical_power"]["left_out"] == [3]


@pytest.mark.parametrize(
    ("athlete", "place"),
    [
        ({"results": [TWO, {"metres": 2000, "seconds": 180}]}, "/results/1/seconds"),
        ({"heart_rate_rest": 20}, "/heart_rate_rest"),
        ({"heart_rate_max": 300}, "/heart_rate_max"),
        ({"mass_kg": 0}, "/mass_kg"),
    ],
)
def test_what_cannot_be_is_a_problem_with_its_place_and_remedy(
    client: FlaskClient, athlete: object, place: str
) -> None:
    answer = post(client, "/api/athlete", athlete)
    assert answer.status_code == 422
    (problem,) = problem_of(answer)["problems"]
    assert problem["pointer"] == place
    assert problem["sentence"]


def test_the_answer_is_not_kept_on_the_way(client: FlaskClient) -> None:
    answer = post(client, "/api/athlete", {"results": [TWO]})
    assert answer.headers["Cache-Control"] == "no-store"
    assert "ETag" not in answer.headers


def test_every_request_is_worked_out_anew(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[Athlete] = []

    def noting(athlete: Athlete) -> Standing:
        asked.append(athlete)
        return standing_of(athlete)

    monkeypatch.setattr("web.api.athletes.standing_of", noting)
    for _ in range(2):
        ask(client, {"results": [TWO]})
    assert len(asked) == 2


@pytest.mark.parametrize("seconds", [487.3, 180.3])
def test_nothing_is_logged_or_written(
    client: FlaskClient,
    caplog: pytest.LogCaptureFixture,
    capfd: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    seconds: float,
) -> None:
    """Whether the result is answered or refused."""

    def no_writing(path: Path, *_: object, **__: object) -> None:
        raise AssertionError(f"{path} is written")

    for name in ("write_text", "write_bytes", "mkdir"):
        monkeypatch.setattr(Path, name, no_writing)
    with caplog.at_level(logging.DEBUG):
        post(client, "/api/athlete", {"results": [{"metres": 2000, "seconds": seconds}], "age": 47})
    assert caplog.records == []
    assert capfd.readouterr() == ("", "")


def test_every_field_that_is_described_occurs_in_some_answer(client: FlaskClient) -> None:
    seen: set[tuple[str, str]] = set()
    facts: tuple[Any, ...] = ({}, {"age": 40}, {"heart_rate_max": 190, "heart_rate_rest": 50})
    slip: dict[str, Any] = {"results": [*THREE["results"], {"metres": 500, "seconds": 130}]}
    results: tuple[dict[str, Any], ...] = ({}, {"results": [TWO]}, THREE, slip)
    for some, more in product(results, facts):
        note({"$ref": "#/components/schemas/AthleteAnswer"}, ask(client, {**some, **more}), seen)
    types = {name: COMPONENTS[name].get("properties", {}) for name in named_in("AthleteAnswer", set())}
    described = {(name, field) for name, fields in types.items() for field in fields}
    mended = {pair for pair in described if pair[0] in {"Mend", "Edit"} or pair == ("Finding", "mend")}
    assert described - mended - seen == set()


def test_the_answer_is_plain_json(client: FlaskClient) -> None:
    answer = post(client, "/api/athlete", {**THREE, "age": 30})
    assert answer.data == json.dumps(answer.get_json(), separators=(",", ":")).encode()
