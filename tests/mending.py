"""Mends applied: the edits of a finding made to the plan's document, by a reference library of RFC 6902."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import jsonpatch

from planner.findings import Edit, Finding
from planner.plan import Plan
from planner.schemas.finding_schema import dump_edits
from planner.schemas.plan_schema import dump_plan, load_plan


def apply(plan: Plan, edits: Iterable[Edit]) -> Plan:
    """The plan with the edits made to its document, one after the other.

    Raises InputError when what comes of them is not a plan, JsonPatchException when a place is not there.
    """
    return load_plan(jsonpatch.apply_patch(dump_plan(plan), dump_edits(edits)))


def stays(finding: Finding, before: Sequence[Finding], after: Sequence[Finding]) -> bool:
    """Whether a finding is still there after its mend: by code and place, whatever it says now.

    Where its place holds another block by then, one less of its kind shows that it is gone.
    """

    def here(found: Sequence[Finding]) -> int:
        return sum((f.code, f.place) == (finding.code, finding.place) for f in found)

    def of_its_kind(found: Sequence[Finding]) -> int:
        return sum(f.code == finding.code for f in found)

    return here(after) >= here(before) and of_its_kind(after) >= of_its_kind(before)
