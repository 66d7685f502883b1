"""The answer about a plan as JSON: its timeline, and everything that was found."""

from __future__ import annotations

from planner.appraisal import Appraisal
from planner.schemas.finding_schema import dump_finding
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import Timeline


def dump_appraised(timeline: Timeline, appraisal: Appraisal) -> dict[str, object]:
    """A timeline with what an appraisal says of it, as JSON."""
    return {**dump_timeline(timeline), "findings": [dump_finding(f) for f in appraisal.findings]}
