"""Mends applied: the edits of a finding made to the plan's document, by a reference library of RFC 6902."""

from __future__ import annotations

from collections.abc import Iterable

import jsonpatch

from planner.findings import Edit
from planner.plan import Plan
from planner.schemas.finding_schema import dump_edits
from planner.schemas.plan_schema import dump_plan, load_plan


def apply(plan: Plan, edits: Iterable[Edit]) -> Plan:
    """The plan with the edits made to its document, one after the other.

    Raises InputError when what comes of them is not a plan, JsonPatchException when a place is not there.
    """
    return load_plan(jsonpatch.apply_patch(dump_plan(plan), dump_edits(edits)))
