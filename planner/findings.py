"""Advice about a plan: what was noticed, where, why it matters, and an edit that mends it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from planner.plan import Effort, Gap, Part, Step


class Severity(StrEnum):
    """How much a finding matters; none of them stops anybody."""

    NOTE = "note"
    ADVICE = "advice"
    WARNING = "warning"


HEAVIEST_FIRST = (Severity.WARNING, Severity.ADVICE, Severity.NOTE)


def is_heavier(one: Severity, other: Severity) -> bool:
    """Whether a severity outweighs another."""
    return HEAVIEST_FIRST.index(one) < HEAVIEST_FIRST.index(other)


class Op(StrEnum):
    """What an edit does at its place, as in JSON Patch (RFC 6902)."""

    ADD = "add"
    REMOVE = "remove"
    REPLACE = "replace"


@dataclass(frozen=True, slots=True)
class Edit:
    """One change of a plan's document. `place` is a JSON pointer (RFC 6901) into it.

    A number stands where the document has one: a rate, a lever, seconds, the stroke of a call. `value` is
    None only for a removal.
    """

    op: Op
    place: str
    value: Step | Part | Gap | Effort | int | None = None


@dataclass(frozen=True, slots=True)
class Mend:
    """What would mend a finding: a few words for a button, and the edits, made in this order."""

    label: str
    edits: tuple[Edit, ...]


@dataclass(frozen=True, slots=True)
class Finding:
    """Advice with a code for programs, a JSON pointer into the plan, and a sentence for people."""

    code: str
    severity: Severity
    place: str
    sentence: str
    reason: str | None = None
    mend: Mend | None = None
