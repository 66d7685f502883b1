"""Findings as JSON, their mends as JSON Patch (RFC 6902) on the plan's document."""

from __future__ import annotations

from collections.abc import Iterable

from marshmallow import fields

from planner.findings import Edit, Finding, Mend, Op, Severity
from planner.plan import Block, Gap, Part, Repeat, Rest
from planner.schemas.block_schema import dump_step, given
from planner.schemas.effort_schema import dump_effort
from planner.schemas.fields import Inside, Strict, about, word
from planner.schemas.plan_schema import dump_part


class EditShape(Strict):
    """One operation of JSON Patch (RFC 6902) on the plan's document."""

    op = word(Op, "what to do at the place")
    path = fields.String(required=True, **about("JSON pointer (RFC 6901) into the plan"))
    value = fields.Raw(**about("what stands there afterwards; absent for a removal"))


class MendShape(Strict):
    """What would mend a finding: words for a button, and edits to make in this order."""

    label = fields.String(required=True)
    edits = fields.List(Inside("an edit", EditShape), required=True)


class FindingShape(Strict):
    """Advice about the plan."""

    code = fields.String(required=True)
    severity = word(Severity, "how much it matters; none of them stops anybody")
    place = fields.String(required=True, **about("JSON pointer into the plan"))
    sentence = fields.String(required=True)
    reason = fields.String()
    mend = Inside("a mend", MendShape)


def dump_finding(finding: Finding) -> dict[str, object]:
    """A finding as JSON."""
    return given(
        code=finding.code,
        severity=finding.severity.value,
        place=finding.place,
        sentence=finding.sentence,
        reason=finding.reason,
        mend=_dump_mend(finding.mend) if finding.mend else None,
    )


def _dump_mend(mend: Mend) -> dict[str, object]:
    return {"label": mend.label, "edits": dump_edits(mend.edits)}


def dump_edits(edits: Iterable[Edit]) -> list[dict[str, object]]:
    """Edits as a JSON Patch."""
    return [given(op=edit.op.value, path=edit.place, value=_dump_value(edit)) for edit in edits]


def _dump_value(edit: Edit) -> object:
    match edit.value:
        case None | int():
            return edit.value
        case Block() | Rest() | Repeat() as step:
            return dump_step(step)
        case Part() | Gap() as part:
            return dump_part(part)
        case effort:
            return dump_effort(effort)
