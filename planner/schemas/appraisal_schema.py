"""The answer about a plan as JSON: its timeline, the readiness it leaves, and everything that was found."""

from __future__ import annotations

from planner.appraisal import Appraisal
from planner.schemas.finding_schema import dump_finding
from planner.schemas.readiness_schema import dump_readiness
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import Timeline


def dump_appraised(timeline: Timeline, appraisal: Appraisal) -> dict[str, object]:
    """A timeline with what an appraisal says of it, as JSON; without a readiness there is no such field."""
    findings = [dump_finding(finding) for finding in appraisal.findings]
    answer = {**dump_timeline(timeline), "findings": findings}
    return {**answer, "readiness": dump_readiness(appraisal.readiness)} if appraisal.readiness else answer
