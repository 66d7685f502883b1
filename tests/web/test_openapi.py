"""The API's description is valid, complete, and true of what is really answered."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

import pytest
from flask import Flask
from flask.testing import FlaskClient
from jsonschema import Draft202012Validator
from openapi_spec_validator import validate

from tests.planner.test_schemas import EVERYTHING
from tests.web.asking import post
from tests.web.every_answer import EVERY_ANSWER, Asked
from web.api.document import api_document

DOCUMENT = api_document()
COMPONENTS = DOCUMENT["components"]["schemas"]
NEEDED = {
    *("Plan", "Part", "Gap", "Block", "Rest", "Repeat", "Step", "Effort", "Setting", "Drill", "Call"),
    *("Athlete", "Timeline", "Segment", "Target", "PlacedCall", "Totals", "PartTotals", "Finding"),
    *(
        "PlanListing",
        "Library",
        "PlanSummary",
        "BuiltinPlan",
        "TechniqueLibrary",
        "ShorthandAnswer",
        "Problem",
        "ProblemDocument",
    ),
}
BY_CIRCUMSTANCE = {
    *(("/api/links", status) for status in ("201", "401", "403", "410", "429", "503")),
    *(("/api/links/{name}", status) for status in ("410", "503")),
    *(("/api/walls", status) for status in ("401", "403", "429", "503")),
    ("/api/walls/{name}", "503"),
    *((f"/api/{name}", "429") for name in ("timeline", "session", "holding", "shorthand", "athlete", "load")),
    *(("/api/walls/{name}/key", status) for status in ("200", "429", "503")),
}
"""What rests on settings, or on what was done before: had in test_links_api.py, test_walls_api.py and
test_computing.py."""
DESCRIBED = [
    asked for asked in EVERY_ANSWER if asked.rule.startswith(("/api/", "/healthz")) and asked.method != "HEAD"
]


def operations() -> Iterator[tuple[str, str, Any]]:
    for path, item in DOCUMENT["paths"].items():
        for method, operation in item.items():
            yield path, method.upper(), operation


def contents() -> Iterator[tuple[str, Any]]:
    for path, method, operation in operations():
        for kind, content in operation.get("requestBody", {}).get("content", {}).items():
            yield f"{method} {path} {kind}", content
        for status, response in operation["responses"].items():
            for kind, content in response.get("content", {}).items():
                yield f"{method} {path} {status} {kind}", content


def validator(schema: Any) -> Draft202012Validator:
    return Draft202012Validator({**schema, "components": DOCUMENT["components"]})


def documented(asked: Asked) -> Any:
    path = asked.rule.replace("<", "{").replace(">", "}")
    operation = DOCUMENT["paths"][path].get(asked.method.lower())
    # A method that a path does not have is refused in the words of those that it has.
    operation = operation or next(iter(DOCUMENT["paths"][path].values()))
    return operation["responses"][str(asked.status)]


def test_it_is_a_valid_description() -> None:
    validate(DOCUMENT)


def test_every_named_type_is_there() -> None:
    assert set(COMPONENTS) >= NEEDED


def test_every_route_of_the_api_is_described_and_no_other(app: Flask) -> None:
    routes = {
        (rule.rule.replace("<", "{").replace(">", "}"), method)
        for rule in app.url_map.iter_rules()
        for method in (rule.methods or set()) - {"HEAD", "OPTIONS"}
        if rule.rule.startswith(("/api/", "/healthz"))
    }
    assert {(path, method) for path, method, _ in operations()} == routes


@pytest.mark.parametrize("asked", DESCRIBED, ids=str)
def test_what_is_answered_is_described(client: FlaskClient, asked: Asked) -> None:
    response = documented(asked)
    answer = asked.ask(client)
    if asked.status == 304:
        assert "content" not in response
        return
    content = response["content"][answer.mimetype]
    is_json = str(answer.mimetype).endswith("json")
    validator(content["schema"]).validate(answer.get_json(force=True) if is_json else str(answer.data))


def test_every_refusal_that_is_described_can_be_had() -> None:
    had = {(asked.rule.replace("<", "{").replace(">", "}"), str(asked.status)) for asked in DESCRIBED}
    told = {(path, status) for path, _, operation in operations() for status in operation["responses"]}
    # A mistake of our own cannot be asked for; test_errors.py makes one.
    assert {pair for pair in told if pair[1] != "500"} == had | BY_CIRCUMSTANCE


@pytest.mark.parametrize(("place", "content"), list(contents()), ids=[place for place, _ in contents()])
def test_every_content_has_an_example_that_is_true(place: str, content: Any) -> None:
    if place.startswith("GET /api/openapi.json 200"):
        assert content["schema"] == {"type": "object"}
        return
    (example,) = content["examples"].values()
    validator(content["schema"]).validate(example["value"])


def test_the_document_that_holds_everything_is_described(client: FlaskClient) -> None:
    validator({"$ref": "#/components/schemas/Plan"}).validate(EVERYTHING)


@pytest.mark.parametrize(
    "field", [{"format": 2}, {"title": ""}, {"colour": "red"}, {"parts": [{"kind": "gap"}]}]
)
def test_what_the_schemas_refuse_is_not_described(field: Any) -> None:
    assert not validator({"$ref": "#/components/schemas/Plan"}).is_valid({**EVERYTHING, **field})


def test_every_field_of_a_timeline_occurs_in_some_answer(client: FlaskClient) -> None:
    """Nothing is described that is never sent."""
    athlete = {"results": [{"metres": 2000, "seconds": 462}], "heart_rate_rest": 50, "heart_rate_max": 190}
    athlete["mass_kg"] = 75
    seen: set[tuple[str, str]] = set()
    for plan in _plans_that_show_everything():
        answer = post(client, "/api/timeline", {"plan": plan, "athlete": athlete, "words_a_minute": 120})
        note({"$ref": "#/components/schemas/Timeline"}, answer.get_json(), seen)
    types = {name: COMPONENTS[name].get("properties", {}) for name in named_in("Timeline", set())}
    assert {(name, field) for name, fields in types.items() for field in fields} - seen == set()


def _plans_that_show_everything() -> Iterator[Any]:
    """One of each effort, a block too short for its rate, and one plan in which all the work is known."""
    efforts: list[Any] = [{"heart_rate": {unit: 70}} for unit in ("percent_max", "percent_reserve", "bpm")]
    for effort in efforts:
        plan = json.loads(json.dumps(EVERYTHING))
        plan["parts"][2]["blocks"][1]["effort"] = effort
        plan["parts"][2]["blocks"].append({"for": {"seconds": 7}, "rate": 20})
        yield plan
    known = {"for": {"seconds": 120}, "rate": 20, "effort": {"split": 120}}
    yield {**EVERYTHING, "parts": [{"kind": "main", "blocks": [known]}]}


def note(schema: Any, value: Any, seen: set[tuple[str, str]], name: str = "") -> None:
    """Note every (type, field) that a value has."""
    if "$ref" in schema:
        name = schema["$ref"].rpartition("/")[2]
        note(COMPONENTS[name], value, seen, name)
    elif "oneOf" in schema:
        note(next(kind for kind in schema["oneOf"] if validator(kind).is_valid(value)), value, seen, name)
    elif isinstance(value, list):
        for item in value:
            note(schema.get("items", {}), item, seen, name)
    elif isinstance(value, dict) and "properties" in schema:
        for field, inner in value.items():
            seen.add((name, field))
            note(schema["properties"][field], inner, seen, name)


def named_in(name: str, found: set[str]) -> set[str]:
    """The named types that stand in a named type."""
    if name not in found:
        found.add(name)
        for reference in json.dumps(COMPONENTS[name]).split("#/components/schemas/")[1:]:
            named_in(reference.partition('"')[0], found)
    return found
