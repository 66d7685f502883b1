"""The JSON border by property: documents come back as they were, and whatever is odd is refused."""

from __future__ import annotations

import copy
import json
from contextlib import suppress
from typing import Any

from hypothesis import assume, given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from planner.errors import InputError
from planner.plan import Plan
from planner.schemas.athlete_schema import load_athlete
from planner.schemas.plan_schema import dump_plan, load_plan
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import compile_timeline
from tests.strategies import DOCUMENTS
from web.api.document import api_document

JSON_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(st.characters(), max_size=20),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=8), inner, max_size=4),
    max_leaves=10,
)


def loaded(document: object) -> Plan:
    """The plan of a document, which has to be good but may be too large as a whole: then another is tried."""
    try:
        return load_plan(document)
    except InputError as error:
        assume("more than" not in str(error))
        raise


@given(DOCUMENTS)
def test_a_document_comes_back_as_it_was(document: Any) -> None:
    assert dump_plan(loaded(document)) == document


@given(DOCUMENTS)
def test_a_plan_comes_back_as_it_was_through_the_text_of_its_json(document: Any) -> None:
    plan = loaded(document)
    assert load_plan(json.loads(json.dumps(dump_plan(plan)))) == plan


@given(DOCUMENTS)
def test_what_is_let_in_can_be_compiled_and_is_described(document: Any) -> None:
    timeline = compile_timeline(loaded(document))
    TIMELINE.validate(json.loads(json.dumps(dump_timeline(timeline), allow_nan=False)))
    PLAN.validate(document)


@given(JSON_VALUES)
def test_any_json_at_all_is_refused_or_read(value: Any) -> None:
    for read in (load_plan, load_athlete):
        with suppress(InputError):
            read(value)


@given(DOCUMENTS, JSON_VALUES, st.data())
def test_a_document_with_one_thing_wrong_is_refused_or_read(
    document: Any, odd: Any, data: st.DataObject
) -> None:
    document = copy.deepcopy(document)
    holder, key = data.draw(st.sampled_from(holders_in(document)))
    holder[key] = odd
    with suppress(InputError):
        compile_timeline(load_plan(document))


def holders_in(value: Any) -> list[tuple[Any, Any]]:
    """Every place in a document, as what holds it and the name or index there."""
    if isinstance(value, dict):
        return [place for key, inner in value.items() for place in [(value, key), *holders_in(inner)]]
    if isinstance(value, list):
        return [place for index, inner in enumerate(value) for place in [(value, index), *holders_in(inner)]]
    return []


def described(name: str) -> Draft202012Validator:
    components = api_document()["components"]
    return Draft202012Validator({"$ref": f"#/components/schemas/{name}", "components": components})


PLAN, TIMELINE = described("Plan"), described("Timeline")
