"""Edits made to a plan, held against the examples of RFC 6902 and against a reference library."""

from __future__ import annotations

import jsonpatch
import pytest

from planner.errors import InputError
from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.plan import Block, ForSeconds, Gap, Part, PartKind, Plan, Pressure, Rest
from planner.schemas.finding_schema import dump_edits, dump_finding
from planner.schemas.mending import apply, patched
from planner.schemas.plan_schema import dump_plan
from tests.builders import seconds, warm_up_then

PLAN = warm_up_then(300, seconds(600, 20, Pressure.LIGHT), seconds(360, 30, Pressure.FULL))

# RFC 6902, appendix A: its number, document, patch, outcome.
RFC_6902 = [
    ("A.1", {"foo": "bar"}, {"op": "add", "path": "/baz", "value": "qux"}, {"baz": "qux", "foo": "bar"}),
    (
        "A.2",
        {"foo": ["bar", "baz"]},
        {"op": "add", "path": "/foo/1", "value": "qux"},
        {"foo": ["bar", "qux", "baz"]},
    ),
    ("A.3", {"baz": "qux", "foo": "bar"}, {"op": "remove", "path": "/baz"}, {"foo": "bar"}),
    ("A.4", {"foo": ["bar", "qux", "baz"]}, {"op": "remove", "path": "/foo/1"}, {"foo": ["bar", "baz"]}),
    (
        "A.5",
        {"baz": "qux", "foo": "bar"},
        {"op": "replace", "path": "/baz", "value": "boo"},
        {"baz": "boo", "foo": "bar"},
    ),
    (
        "A.16",
        {"foo": ["bar"]},
        {"op": "add", "path": "/foo/-", "value": ["abc", "def"]},
        {"foo": ["bar", ["abc", "def"]]},
    ),
]

EDITS = [
    Edit(Op.REPLACE, "/parts/1/for/seconds", 240),
    Edit(Op.REPLACE, "/parts/2/blocks/0/effort", Pressure.HALF),
    Edit(Op.ADD, "/parts/0/blocks/1", Rest(60)),
    Edit(Op.ADD, "/parts/0/blocks/0", seconds(60, 18, Pressure.LIGHT)),
    Edit(Op.REMOVE, "/parts/1"),
    Edit(Op.ADD, "/parts/3", Part(PartKind.COOL_DOWN, (seconds(180, 18, Pressure.LIGHT),))),
    Edit(Op.REPLACE, "/parts/1", Gap(120)),
    Edit(Op.REMOVE, "/parts/0/blocks/0/rate"),
]


@pytest.mark.parametrize(("document", "operation", "outcome"), [case[1:] for case in RFC_6902])
def test_the_examples_of_the_standard(
    document: dict[str, object], operation: dict[str, object], outcome: dict[str, object]
) -> None:
    assert patched(document, [operation]) == outcome


@pytest.mark.parametrize("edit", EDITS, ids=lambda edit: f"{edit.op} {edit.place}")
def test_an_edit_does_what_a_reference_library_does(edit: Edit) -> None:
    operations = dump_edits([edit])
    expected = jsonpatch.apply_patch(dump_plan(PLAN), operations)
    assert dump_plan(apply(PLAN, [edit])) == expected


def test_edits_are_made_one_after_the_other() -> None:
    plan = apply(PLAN, [Edit(Op.REMOVE, "/parts/0"), Edit(Op.REPLACE, "/parts/0/for/seconds", 90)])
    assert plan.parts[0] == Gap(90)


def test_the_plan_itself_stays_as_it_was() -> None:
    before = dump_plan(PLAN)
    apply(PLAN, EDITS[:2])
    assert dump_plan(PLAN) == before


def test_an_edit_that_leaves_no_plan_says_what_is_wrong() -> None:
    with pytest.raises(InputError, match="rate 62 is above 50 strokes a minute"):
        apply(PLAN, [Edit(Op.REPLACE, "/parts/0/blocks/0/rate", 62)])


def test_a_finding_carries_its_mend_as_a_json_patch() -> None:
    mend = Mend("Wait 5 minutes", (Edit(Op.REPLACE, "/parts/1/for/seconds", 300),))
    finding = Finding("gap-too-short", Severity.ADVICE, "/parts/1", "The gap is 1:00.", "Too short.", mend)
    assert dump_finding(finding)["mend"] == {
        "label": "Wait 5 minutes",
        "edits": [{"op": "replace", "path": "/parts/1/for/seconds", "value": 300}],
    }


def test_a_removal_has_no_value() -> None:
    assert dump_edits([Edit(Op.REMOVE, "/parts/0")]) == [{"op": "remove", "path": "/parts/0"}]


def test_a_block_added_reads_back_as_the_same_block() -> None:
    block = Block(ForSeconds(90), 24, Pressure.HALF, focus="long arms")
    plan = apply(Plan("One", PLAN.parts[:1]), [Edit(Op.ADD, "/parts/0/blocks/1", block)])
    part = plan.parts[0]
    assert isinstance(part, Part)
    assert part.blocks[1] == block
