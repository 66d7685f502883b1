"""Mends applied: the edits of a finding made to the plan's document, as the client makes them."""

from __future__ import annotations

from collections.abc import Iterable
from copy import deepcopy
from typing import Any

from planner.findings import Edit, Op
from planner.plan import Plan
from planner.schemas.finding_schema import dump_edits
from planner.schemas.plan_schema import dump_plan, load_plan


def apply(plan: Plan, edits: Iterable[Edit]) -> Plan:
    """The plan with the edits made to its document, one after the other.

    Raises InputError when what comes of them is not a plan, KeyError or IndexError when a place is not there.
    """
    return load_plan(patched(dump_plan(plan), dump_edits(edits)))


def patched(document: dict[str, object], operations: Iterable[dict[str, Any]]) -> dict[str, object]:
    """A copy of a document with add, remove and replace operations of RFC 6902 applied, all inside it."""
    result = deepcopy(document)
    for operation in operations:
        *path, last = (_unescaped(step) for step in operation["path"].split("/")[1:])
        here: Any = result
        for step in path:
            here = here[int(step)] if isinstance(here, list) else here[step]
        _operate(here, last, operation)
    return result


def _unescaped(step: str) -> str:
    return step.replace("~1", "/").replace("~0", "~")


def _operate(here: Any, last: str, operation: dict[str, Any]) -> None:
    key: Any = last
    if isinstance(here, list):
        key = len(here) if last == "-" else int(last)
    if operation["op"] != Op.ADD:
        del here[key]
    if operation["op"] == Op.REMOVE:
        return
    if isinstance(here, list):
        here.insert(key, deepcopy(operation["value"]))
    else:
        here[key] = deepcopy(operation["value"])
