"""The answer about a plan as JSON: its timeline, the readiness it leaves, and everything that was found."""

from __future__ import annotations

from planner.appraisal import Appraisal
from planner.schemas.block_schema import given
from planner.schemas.finding_schema import dump_finding
from planner.schemas.readiness_schema import dump_readiness
from planner.schemas.timeline_schema import dump_timeline
from planner.timeline import Timeline


def dump_appraised(timeline: Timeline, appraisal: Appraisal) -> dict[str, object]:
    """A timeline with what an appraisal says of it, as JSON."""
    return {**dump_timeline(timeline), **dump_appraisal(appraisal)}


def dump_appraisal(appraisal: Appraisal) -> dict[str, object]:
    """Findings, and the readiness where there is one, as JSON."""
    return given(
        readiness=dump_readiness(appraisal.readiness) if appraisal.readiness else None,
        findings=[dump_finding(finding) for finding in appraisal.findings],
    )
