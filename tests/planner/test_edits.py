"""Edits made to a plan, held against a reference library of RFC 6902 on the plan's document."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings

from planner.appraisal import appraise
from planner.edits import edited, moved
from planner.errors import InputError
from planner.findings import Edit, Op
from planner.plan import Rest
from planner.schemas.plan_schema import load_plan
from planner.timeline import compile_timeline
from tests.mending import apply
from tests.strategies import DOCUMENTS


@settings(suppress_health_check=[HealthCheck.too_slow], deadline=None)
@given(DOCUMENTS)
def test_every_mend_makes_the_same_plan_here_and_there(document: Any) -> None:
    try:
        plan = load_plan(document)
    except InputError:
        assume(False)
        return
    for finding in appraise(compile_timeline(plan)).findings:
        if finding.mend:
            assert edited(plan, finding.mend.edits) == apply(plan, finding.mend.edits)


REST = Rest(60)


@pytest.mark.parametrize(
    ("edits", "place"),
    [
        ([Edit(Op.ADD, "/parts/0/blocks/1", REST)], "/parts/0/blocks/3/blocks/0"),
        ([Edit(Op.ADD, "/parts/0/blocks/2", REST)], "/parts/0/blocks/3/blocks/0"),
        ([Edit(Op.ADD, "/parts/0/blocks/3", REST)], "/parts/0/blocks/2/blocks/0"),
        ([Edit(Op.ADD, "/parts/0", REST), Edit(Op.ADD, "/parts/1", REST)], "/parts/2/blocks/2/blocks/0"),
        ([Edit(Op.ADD, "/parts/0/blocks/2/blocks/0", REST)], "/parts/0/blocks/2/blocks/1"),
        ([Edit(Op.REMOVE, "/parts/0/blocks/0")], "/parts/0/blocks/1/blocks/0"),
        ([Edit(Op.REPLACE, "/parts/0/blocks/0", REST)], "/parts/0/blocks/2/blocks/0"),
        ([Edit(Op.ADD, "/parts/0/blocks/2/effort", 1)], "/parts/0/blocks/2/blocks/0"),
    ],
)
def test_a_place_moves_by_what_is_put_in_front_of_it(edits: list[Edit], place: str) -> None:
    assert moved("/parts/0/blocks/2/blocks/0", edits) == place
