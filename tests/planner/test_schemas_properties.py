"""The JSON border by property: documents come back as they were, and whatever is odd is refused."""

from __future__ import annotations

import copy
import json
from contextlib import suppress
from typing import Any

from hypothesis import assume, given
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from planner import limits
from planner.errors import InputError
from planner.limits import Bounds
from planner.plan import Plan, Pressure
from planner.schemas.athlete_schema import load_athlete
from planner.schemas.plan_schema import dump_plan, load_plan
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import compile_timeline
from web.api.document import api_document


def whole(bounds: Bounds) -> st.SearchStrategy[int]:
    steps = st.integers(int(bounds.low / bounds.step), int(bounds.high / bounds.step))
    return steps.map(lambda n: int(n * bounds.step))


def stepped(bounds: Bounds) -> st.SearchStrategy[int | float]:
    """Numbers as JSON writes them: whole ones without a point."""
    steps = st.integers(int(bounds.low / bounds.step), int(bounds.high / bounds.step))
    exact = steps.map(lambda n: n * bounds.step)
    return exact.map(lambda f: int(f) if f == int(f) else float(f))


def one(key: str, values: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    return values.map(lambda value: {key: value})


LINES = st.text(st.sampled_from("abc äß 漢字 '\",:;\\/"), min_size=1, max_size=20).filter(
    lambda text: text == " ".join(text.split()) and text != ""
)
SETTINGS = one("lever", whole(limits.LEVER)) | one("drag_factor", whole(limits.DRAG_FACTOR))
EFFORTS = st.one_of(
    one("pressure", st.sampled_from([pressure.value for pressure in Pressure])),
    one("split", stepped(limits.SPLIT)),
    one("split_offset", stepped(limits.SPLIT_OFFSET)),
    one("change", stepped(limits.CHANGE)),
    one("two_k_power_fraction", stepped(limits.TWO_K_POWER)),
    one("cr10", stepped(limits.CR10)),
    one("heart_rate", one("bpm", whole(limits.HEART_BPM)) | one("percent_max", whole(limits.HEART_PERCENT))),
)
CALLS = st.fixed_dictionaries({"text": LINES}, optional={"stroke": whole(limits.BLOCK_STROKES)})
ASKED = {
    "rate": whole(limits.RATE),
    "effort": EFFORTS,
    "drill": one("name", LINES),
    "focus": LINES,
    "calls": st.lists(CALLS, min_size=1, max_size=3),
    "setting": SETTINGS,
}
TIMED = one("seconds", whole(Bounds("", 1, 600))) | one("metres", whole(Bounds("", 1, 5000)))
COUNTED = one("strokes", whole(limits.BLOCK_STROKES))
BLOCKS = st.one_of(
    st.fixed_dictionaries({"for": TIMED}, optional=ASKED),
    st.fixed_dictionaries({"for": COUNTED, **ASKED}),
    st.fixed_dictionaries({"open": st.just(True)}, optional=ASKED),
    st.fixed_dictionaries({"rest": st.just(True), "for": one("seconds", whole(Bounds("", 1, 600)))}),
)
STEPS = st.recursive(
    BLOCKS,
    lambda steps: st.fixed_dictionaries(
        {"times": st.integers(1, 5), "blocks": st.lists(steps, min_size=1, max_size=3)},
        optional={"between": st.lists(steps, min_size=1, max_size=2)},
    ),
    max_leaves=6,
)
GAPS = one("seconds", whole(Bounds("", 1, 900))).map(lambda length: {"kind": "gap", "for": length})
PARTS = GAPS | st.fixed_dictionaries(
    {
        "kind": st.sampled_from(["warm-up", "main", "cool-down"]),
        "blocks": st.lists(STEPS, min_size=1, max_size=4),
    }
)
DOCUMENTS = st.fixed_dictionaries(
    {"format": st.just(1), "title": LINES, "parts": st.lists(PARTS, min_size=1, max_size=3)},
    optional={"summary": LINES, "setup": LINES, "setting": SETTINGS},
)
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
