"""A plan written back in canonical shorthand: reading what this writes gives the same plan."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from planner.plan import (
    Block,
    Call,
    Change,
    Cr10,
    Effort,
    ForMetres,
    ForSeconds,
    ForStrokes,
    Gap,
    HeartRate,
    HeartRateUnit,
    Length,
    Open,
    Part,
    Plan,
    Pressure,
    Repeat,
    Rest,
    Setting,
    Split,
    SplitOffset,
    Step,
    TwoKPower,
)
from planner.units import split_clock

LONGEST_LINE = 100
INDENT = "  "


def write(plan: Plan) -> str:
    """The canonical text of a plan, ending in a line break."""
    return "\n".join([*_header(plan), *(line for part in plan.parts for line in _part(part))]) + "\n"


def write_step(step: Step) -> str:
    """One step in as few lines as it takes."""
    return "\n".join(_step(step))


def _header(plan: Plan) -> Iterator[str]:
    yield f"title: {plan.title}"
    if plan.summary:
        yield f"summary: {plan.summary}"
    if plan.setup:
        yield f"set-up: {plan.setup}"
    if plan.setting:
        yield f"setting: {_setting(plan.setting)}"


def _part(part: Part | Gap) -> Iterator[str]:
    yield ""
    if isinstance(part, Gap):
        yield f"gap {_time(part.seconds)}"
        return
    yield part.kind.value
    for step in part.blocks:
        yield from _step(step)


def _step(step: Step) -> Iterator[str]:
    if isinstance(step, Repeat):
        yield from _repeat(step)
        return
    yield _inline(step)
    if isinstance(step, Block):
        yield from (INDENT + line for line in _below(step))


def _repeat(repeat: Repeat) -> Iterator[str]:
    line = _inline(repeat)
    below = tuple(_below(repeat.blocks[0])) if _is_one_block(repeat) else ()
    hidden = _has_below(repeat.between) or (not _is_one_block(repeat) and _has_below(repeat.blocks))
    if not hidden and len(line) <= LONGEST_LINE:
        yield line
        yield from (INDENT + text for text in below)
        return
    yield f"{repeat.times} x ("
    yield from _indented(repeat.blocks)
    if repeat.between:
        yield ") / ("
        yield from _indented(repeat.between)
    yield ")"


def _is_one_block(repeat: Repeat) -> bool:
    return len(repeat.blocks) == 1 and isinstance(repeat.blocks[0], Block)


def _has_below(steps: tuple[Step, ...]) -> bool:
    return any(
        _has_below(step.blocks + step.between)
        if isinstance(step, Repeat)
        else isinstance(step, Block) and any(_below(step))
        for step in steps
    )


def _indented(steps: tuple[Step, ...]) -> Iterator[str]:
    for step in steps:
        yield from (INDENT + line for line in _step(step))


def _inline(step: Step) -> str:
    match step:
        case Rest(seconds):
            return f"{_time(seconds)} rest"
        case Repeat(times, blocks, between):
            text = f"{times} x {_item(blocks)}"
            return f"{text} / {_item(between)}" if between else text
        case Block():
            rate = f"r{step.rate}" if step.rate else ""
            effort = _effort(step.effort) if step.effort is not None else ""
            return " ".join(filter(None, (_block_length(step), rate, effort)))


def _item(steps: tuple[Step, ...]) -> str:
    if len(steps) == 1 and not isinstance(steps[0], Repeat):
        return _inline(steps[0])
    return f"({', '.join(map(_inline, steps))})"


def _below(step: Step) -> Iterator[str]:
    if not isinstance(step, Block):
        return
    if step.drill:
        yield f"drill: {step.drill.name}"
    if step.focus:
        yield f"focus: {step.focus}"
    if step.setting:
        yield f"setting: {_setting(step.setting)}"
    yield from map(_call, step.calls)


def _call(call: Call) -> str:
    if call.stroke is not None:
        return f"call at {call.stroke}: {call.text}"
    if call.strokes_left is not None:
        return f"call last {call.strokes_left}: {call.text}"
    return f"call: {call.text}"


def _setting(setting: Setting) -> str:
    return f"lever {setting.lever}" if setting.lever is not None else f"drag factor {setting.drag_factor}"


def _block_length(block: Block) -> str:
    drill = block.drill
    if drill is None or drill.sides is None or drill.side_seconds is None:
        return _length(block.length)
    pairs = f"{drill.sides // 2} x " if drill.sides > 2 else ""
    swap = f' swap {drill.swap_seconds}"' if drill.swap_seconds else ""
    return f'each side {pairs}{drill.side_seconds}"{swap}'


def _length(length: Length) -> str:
    match length:
        case ForSeconds(seconds):
            return _time(seconds)
        case ForMetres(metres):
            return f"{metres}m"
        case ForStrokes(strokes):
            return "1 stroke" if strokes == 1 else f"{strokes} strokes"
        case Open():
            return "open"


def _time(seconds: int) -> str:
    minutes, rest = divmod(seconds, 60)
    return (f"{minutes}'" if minutes else "") + (f'{rest}"' if rest or not minutes else "")


def _effort(effort: Effort) -> str:
    match effort:
        case Pressure():
            return effort.value
        case Split(seconds):
            return "@" + split_clock(seconds).removesuffix(".0")
        case SplitOffset(seconds):
            return f"2k{_signed(seconds)}" if seconds else "2k"
        case Change(seconds):
            return f'{_signed(seconds)}"'
        case TwoKPower(fraction):
            return f"{_plain(fraction * 100)}% power"
        case Cr10(value):
            return f"effort {_plain(value)}"
        case HeartRate(HeartRateUnit.BPM, value):
            return f"hr {value}"
        case HeartRate(HeartRateUnit.PERCENT_MAX, value):
            return f"hr {value}% max"
        case HeartRate(_, value):
            return f"hr {value}% reserve"


def _signed(value: Fraction) -> str:
    return f"{'-' if value < 0 else '+'}{_plain(abs(value))}"


def _plain(value: Fraction) -> str:
    return str(value.numerator) if value.denominator == 1 else f"{float(value):.1f}"
