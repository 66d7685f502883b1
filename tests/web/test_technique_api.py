"""The technique library over HTTP: all of it, true to the planner, and not part of the first load."""

from __future__ import annotations

import json
import re

import pytest
from flask import Flask
from flask.testing import FlaskClient

from planner.drills import DRILLS, drill_named
from planner.focus_points import FOCUSES, POSITIONS
from tests.web.every_answer import EVERY_ANSWER

COMPRESSED_BYTES = 8000


def test_it_holds_every_position_drill_and_focus_in_order(client: FlaskClient) -> None:
    document = client.get("/api/technique").get_json()
    assert set(document) == {"positions", "drills", "focuses"}
    assert [each["looks"] for each in document["positions"]] == [each.looks for each in POSITIONS]
    assert [each["name"] for each in document["drills"]] == [each.name for each in DRILLS]
    assert [each["name"] for each in document["focuses"]] == [each.name for each in FOCUSES]


def test_a_drill_comes_with_all_that_is_known_about_it(client: FlaskClient) -> None:
    for document in client.get("/api/technique").get_json()["drills"]:
        drill = drill_named(document["name"])
        assert drill
        assert document["how"] == drill.how
        assert document["caution"] == drill.caution
        assert (document["rate_low"], document["rate_high"]) == drill.rates
        assert document["other_names"] == list(drill.other_names)
        assert ("sides" in document) == (drill.sides is not None)


def test_one_foot_is_for_fifteen_to_twenty_seconds_a_side(client: FlaskClient) -> None:
    """Common practice [C]."""
    drills = {each["name"]: each for each in client.get("/api/technique").get_json()["drills"]}
    assert drills["single foot"]["sides"] == {"count": 2, "least_seconds": 15, "most_seconds": 20}


def test_a_call_says_nothing_where_there_is_nothing_to_say(client: FlaskClient) -> None:
    documents = client.get("/api/technique").get_json()["focuses"]
    for document, focus in zip(documents, FOCUSES, strict=True):
        for told, call in zip(document["calls"], focus.calls, strict=True):
            assert told["text"] == call.text
            assert told.get("caution") == call.caution
            assert told.get("highest_rate") == call.highest_rate
            assert None not in told.values()


def test_a_phone_fetches_it_after_the_first_load(client: FlaskClient) -> None:
    worker = client.get("/sw.js").text
    assert "/api/technique" not in worker
    assert re.search(r"/api/library", worker)


def test_it_is_small_over_the_wire(client: FlaskClient) -> None:
    body = client.get("/api/technique", headers={"Accept-Encoding": "br"}).data
    assert len(body) < COMPRESSED_BYTES


@pytest.mark.parametrize("path", ["/technique", "/api/technique"])
def test_it_is_among_the_answers_that_every_contract_is_held_to(app: Flask, path: str) -> None:
    assert {asked.status for asked in EVERY_ANSWER if asked.rule == path} >= {200, 304, 405}


def test_it_is_plain_json_in_ascii(client: FlaskClient) -> None:
    body = client.get("/api/technique").data
    assert json.loads(body.decode("ascii"))
