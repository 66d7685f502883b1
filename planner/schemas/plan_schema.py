"""The plan document: JSON to Plan and back, exactly. Sizes are held before anything is expanded."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from marshmallow import post_load

from planner import limits
from planner.errors import InputError
from planner.expansion import check
from planner.plan import Gap, Part, PartKind, Plan
from planner.schemas.block_schema import SecondsSchema, SettingSchema, dump_setting, dump_steps, given, steps
from planner.schemas.fields import Choice, Exactly, Inside, Line, OneOf, Several, Strict, load

FORMAT = 1


class GapSchema(Strict):
    """The wait before a piece."""

    kind = Exactly("kind", "gap", required=True)
    length = Inside("length", SecondsSchema, data_key="for", required=True)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Gap:
        return Gap(data["length"]["seconds"])


class RowedPartSchema(Strict):
    """A rowed part of a session."""

    kind = OneOf("kind", PartKind, required=True)
    blocks = steps("blocks", required=True)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Part:
        return Part(data["kind"], tuple(data["blocks"]))


def _kind_of_part(value: Mapping[str, object]) -> type[Strict]:
    return GapSchema if value.get("kind") == "gap" else RowedPartSchema


class PlanSchema(Strict):
    """A whole session as a person writes it."""

    format = Exactly("format", FORMAT, required=True)
    title = Line("title", limits.TITLE_LENGTH, required=True)
    summary = Line("summary", limits.NOTE_LENGTH)
    setup = Line("setup", limits.NOTE_LENGTH)
    setting = Inside("setting", SettingSchema)
    parts = Several(
        "parts",
        Choice("a part", "Part", lambda: (RowedPartSchema, GapSchema), _kind_of_part),
        limits.PARTS,
        required=True,
    )

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Plan:
        fields = {name: value for name, value in data.items() if name != "format"}
        return Plan(**{**fields, "parts": tuple(data["parts"])})


def load_plan(document: object) -> Plan:
    """The plan in a JSON document. Raises InputError with a JSON pointer to each mistake."""
    plan: Plan = load(PlanSchema, document)
    if problems := check(plan):
        raise InputError(problems)
    return plan


def dump_plan(plan: Plan) -> dict[str, object]:
    """A plan as its JSON document; `load_plan` gives back an equal plan."""
    return given(
        format=FORMAT,
        title=plan.title,
        summary=plan.summary,
        setup=plan.setup,
        setting=dump_setting(plan.setting),
        parts=[dump_part(part) for part in plan.parts],
    )


def dump_part(part: Part | Gap) -> dict[str, object]:
    """A part of a plan as JSON."""
    if isinstance(part, Gap):
        return {"kind": "gap", "for": {"seconds": part.seconds}}
    return {"kind": part.kind.value, "blocks": dump_steps(part.blocks)}
