"""Advice about a plan: what was noticed, where, and why it matters."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """How much a finding matters; none of them stops anybody."""

    NOTE = "note"
    ADVICE = "advice"
    WARNING = "warning"


@dataclass(frozen=True, slots=True)
class Finding:
    """Advice with a code for programs, a JSON pointer into the plan, and a sentence for people."""

    code: str
    severity: Severity
    place: str
    sentence: str
    reason: str | None = None
