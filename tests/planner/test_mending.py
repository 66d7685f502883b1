"""Edits written as a JSON Patch and made to a plan by a reference library."""

from __future__ import annotations

import pytest

from planner.errors import InputError
from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.plan import Block, ForSeconds, Gap, Part, Plan, Pressure
from planner.schemas.finding_schema import dump_edits, dump_finding
from tests.builders import seconds, warm_up_then
from tests.mending import apply

PLAN = warm_up_then(300, seconds(600, 20, Pressure.LIGHT), seconds(360, 30, Pressure.FULL))


def test_edits_are_made_one_after_the_other() -> None:
    plan = apply(PLAN, [Edit(Op.REMOVE, "/parts/0"), Edit(Op.REPLACE, "/parts/0/for/seconds", 90)])
    assert plan.parts[0] == Gap(90)


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
