"""Edits made to a plan itself, as a JSON Patch (RFC 6902) makes them to its document."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import reduce
from typing import Any

from planner.findings import Edit, Op
from planner.plan import Block, ForMetres, ForSeconds, ForStrokes, Plan

_LENGTHS: dict[str, Any] = {"seconds": ForSeconds, "metres": ForMetres, "strokes": ForStrokes}


def edited(plan: Plan, edits: Iterable[Edit]) -> Plan:
    """The plan after the edits, made in order. Raises LookupError where one has no place in it."""
    return reduce(lambda before, edit: _within(before, _steps(edit.place), edit), edits, plan)


def moved(place: str, edits: Iterable[Edit]) -> str:
    """Where what stands at a place comes to stand by the edits: behind what was put in front of it."""
    steps = _steps(place)
    for edit in edits:
        *holder, last = _steps(edit.place)
        here = len(holder)
        if edit.op is Op.REPLACE or not last.isdigit() or steps[:here] != holder or len(steps) <= here:
            continue
        if int(last) <= int(steps[here]):
            steps[here] = str(int(steps[here]) + (1 if edit.op is Op.ADD else -1))
    return "/" + "/".join(steps)


def _steps(place: str) -> list[str]:
    return place.split("/")[1:]


def _within(node: Any, steps: Sequence[str], edit: Edit) -> Any:
    """The node with the edit made to what the steps lead to."""
    name, *further = steps
    if isinstance(node, tuple):
        index = int(name)
        if further:
            return (*node[:index], _within(node[index], further, edit), *node[index + 1 :])
        put_in = () if edit.op is Op.REMOVE else (edit.value,)
        return (*node[:index], *put_in, *node[index + (edit.op is not Op.ADD) :])
    if name == "for":
        if isinstance(node, Block):
            return replace(node, length=_length(node.length, further[0], edit))
        return _within(node, further, edit)
    value = _within(getattr(node, name), further, edit) if further else edit.value
    return replace(node, **{name: value})


def _length(before: Any, unit: str, edit: Edit) -> Any:
    """A length has one unit: the old one goes when the new one comes."""
    return before if edit.op is Op.REMOVE else _LENGTHS[unit](edit.value)
