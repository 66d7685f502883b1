"""Blocks, rests and repeats as JSON, and all that stands in them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from marshmallow import ValidationError, post_load, validates_schema

from planner import limits
from planner.plan import (
    Block,
    Call,
    Drill,
    ForMetres,
    ForSeconds,
    ForStrokes,
    Length,
    Open,
    Repeat,
    Rest,
    Setting,
    Step,
)
from planner.schemas.effort_schema import EffortSchema, dump_effort
from planner.schemas.fields import Choice, Exactly, Inside, Line, OneKey, Several, Strict, Whole


class SecondsSchema(Strict):
    """A length on the clock."""

    seconds = Whole(limits.BLOCK_SECONDS, required=True)


class LengthSchema(OneKey):
    """A length in seconds, metres or strokes."""

    seconds = Whole(limits.BLOCK_SECONDS)
    metres = Whole(limits.BLOCK_METRES)
    strokes = Whole(limits.BLOCK_STROKES)

    @post_load
    def _make(self, data: Mapping[str, int], **_: object) -> Length:
        ((unit, count),) = data.items()
        return _LENGTHS[unit](count)


_LENGTHS: dict[str, Callable[[int], Length]] = {
    "seconds": ForSeconds,
    "metres": ForMetres,
    "strokes": ForStrokes,
}


class SettingSchema(OneKey):
    """How the machine is set: the lever's number or the drag factor."""

    lever = Whole(limits.LEVER)
    drag_factor = Whole(limits.DRAG_FACTOR)

    @post_load
    def _make(self, data: Mapping[str, int], **_: object) -> Setting:
        return Setting(**data)


class DrillSchema(Strict):
    """A technical exercise, perhaps side after side."""

    name = Line("drill", limits.WORD_LENGTH, required=True)
    sides = Whole(limits.SIDES)
    side_seconds = Whole(limits.SIDE_SECONDS)
    swap_seconds = Whole(limits.SWAP_SECONDS)

    @validates_schema
    def _sides_are_whole(self, data: Mapping[str, Any], **_: object) -> None:
        if ("sides" in data) != ("side_seconds" in data):
            raise ValidationError("a drill with sides needs both sides and side_seconds, another has neither")
        if "swap_seconds" in data and "sides" not in data:
            raise ValidationError("only a drill with sides has a time to swap", "swap_seconds")

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Drill:
        return Drill(**data)


class CallSchema(Strict):
    """What the coach says: at a stroke, so many strokes before the end, or as the block opens.

    In a repeat, calls at the same place take turns from one repetition to the next.
    """

    text = Line("call", limits.LINE_LENGTH, required=True)
    stroke = Whole(limits.BLOCK_STROKES)
    strokes_left = Whole(limits.BLOCK_STROKES)

    @validates_schema
    def _one_place(self, data: Mapping[str, Any], **_: object) -> None:
        if "stroke" in data and "strokes_left" in data:
            raise ValidationError("a call stands at a stroke or so many strokes before the end, not both")

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Call:
        return Call(**data)


class BlockSchema(Strict):
    """A stretch of rowing. Exactly one of `for` and `open` is given; a length in strokes needs a rate."""

    length = Inside("length", LengthSchema, data_key="for")
    open_ended = Exactly("open", True, data_key="open")
    rate = Whole(limits.RATE)
    effort = Inside("effort", EffortSchema)
    drill = Inside("drill", DrillSchema)
    focus = Line("focus", limits.LINE_LENGTH)
    calls = Several("calls", Inside("a call", CallSchema), limits.CALLS_IN_BLOCK)
    setting = Inside("setting", SettingSchema)

    @validates_schema
    def _fits_together(self, data: Mapping[str, Any], **_: object) -> None:
        if ("length" in data) == ("open_ended" in data):
            raise ValidationError(
                'a block needs either a length, such as "for": {"seconds": 180}, or "open": true'
            )
        length = data.get("length", Open())
        if isinstance(length, ForStrokes) and "rate" not in data:
            raise ValidationError("a length in strokes needs a rate", "rate")
        _check_sides(data.get("drill"), length)
        _check_calls(data.get("calls", ()), length)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Block:
        rest = {key: value for key, value in data.items() if key not in ("length", "open_ended", "calls")}
        return Block(data.get("length", Open()), calls=tuple(data.get("calls", ())), **rest)


def _check_sides(drill: Drill | None, length: Length) -> None:
    total = drill.total_seconds if drill else None
    if total is not None and length != ForSeconds(total):
        raise ValidationError(
            f"the sides and swaps of the drill last {total} seconds: that has to be its length", "for"
        )


def _check_calls(calls: list[Call], length: Length) -> None:
    if isinstance(length, Open):
        for index, call in enumerate(calls):
            if call.strokes_left is not None:
                complaint = "an open block has no last strokes to count: use stroke, or neither"
                raise ValidationError({"calls": {index: {"strokes_left": [complaint]}}})


class RestSchema(Strict):
    """Sitting still."""

    rest = Exactly("rest", True, required=True)
    length = Inside("length", SecondsSchema, data_key="for", required=True)

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Rest:
        return Rest(data["length"]["seconds"])


def _kind_of_step(value: Mapping[str, object]) -> type[Strict]:
    if "rest" in value:
        return RestSchema
    return RepeatSchema if "times" in value or "blocks" in value else BlockSchema


def steps(name: str, **options: Any) -> Several[Step]:
    """A list of blocks, rests and repeats."""
    step = Choice("a block", "Step", lambda: (BlockSchema, RestSchema, RepeatSchema), _kind_of_step)
    return Several(name, step, limits.BLOCKS_IN_LIST, **options)


class RepeatSchema(Strict):
    """Blocks rowed several times; those `between` come between repetitions, not after the last."""

    times = Whole(limits.TIMES, required=True)
    blocks = steps("blocks", required=True)
    between = steps("blocks between")

    @post_load
    def _make(self, data: Mapping[str, Any], **_: object) -> Repeat:
        return Repeat(data["times"], tuple(data["blocks"]), tuple(data.get("between", ())))


def dump_steps(steps: Iterable[Step]) -> list[dict[str, object]]:
    """Blocks, rests and repeats as JSON."""
    return [dump_step(step) for step in steps]


def dump_step(step: Step) -> dict[str, object]:
    """A block, a rest or a repeat as JSON."""
    match step:
        case Rest(seconds):
            return {"rest": True, "for": {"seconds": seconds}}
        case Repeat(times, blocks, between):
            repeat: dict[str, object] = {"times": times, "blocks": dump_steps(blocks)}
            return {**repeat, "between": dump_steps(between)} if between else repeat
        case Block():
            return _dump_block(step)


def _dump_block(block: Block) -> dict[str, object]:
    fields: dict[str, object] = {**_dump_length(block.length), "rate": block.rate}
    if block.effort is not None:
        fields["effort"] = dump_effort(block.effort)
    if block.drill is not None:
        drill = block.drill
        fields["drill"] = given(
            name=drill.name,
            sides=drill.sides,
            side_seconds=drill.side_seconds,
            swap_seconds=drill.swap_seconds,
        )
    fields["focus"] = block.focus
    if block.calls:
        fields["calls"] = [
            given(text=c.text, stroke=c.stroke, strokes_left=c.strokes_left) for c in block.calls
        ]
    fields["setting"] = dump_setting(block.setting)
    return given(**fields)


def _dump_length(length: Length) -> dict[str, object]:
    match length:
        case ForSeconds(seconds):
            return {"for": {"seconds": seconds}}
        case ForMetres(metres):
            return {"for": {"metres": metres}}
        case ForStrokes(strokes):
            return {"for": {"strokes": strokes}}
        case Open():
            return {"open": True}


def dump_setting(setting: Setting | None) -> dict[str, object] | None:
    """A machine setting as JSON, or None."""
    return None if setting is None else given(lever=setting.lever, drag_factor=setting.drag_factor)


def given(**fields: object) -> dict[str, object]:
    """The fields that hold something: absent is absent, never null."""
    return {name: value for name, value in fields.items() if value is not None}
