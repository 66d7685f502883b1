"""What every mend has to keep to: it removes its finding, and brings nothing heavier."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from planner.appraisal import appraise
from planner.checks.every_check import CHECKS
from planner.checks.scene import scene_of
from planner.findings import Finding, Mend, Severity
from planner.plan import Plan
from planner.timeline import compile_timeline
from tests.mending import apply, stays
from tests.sweep.plans import Sketch

WEIGHTS = (Severity.NOTE, Severity.ADVICE, Severity.WARNING)
COLD_WORK = ("hard-too-early", "no-warm-up")
"""What no mend may bring: work asked of a body that is not warm."""


def broken_mends(sketch: Sketch) -> Iterator[str]:
    """Every mend that leaves its finding where it was, or brings something heavier, or cold hard work."""
    rower = sketch.athlete
    before = appraise(compile_timeline(sketch.plan, rower), rower, rower.level, sketch.room).findings
    for finding in before:
        if finding.mend is not None:
            yield from _broken(sketch, before, finding, finding.mend)


def _broken(sketch: Sketch, before: Sequence[Finding], finding: Finding, mend: Mend) -> Iterator[str]:
    after = _found(apply(sketch.plan, mend.edits), sketch)
    had, has = (Counter(f.code for f in found) for found in (before, after))
    if stays(finding, before, after):
        yield f"{finding.code} at {finding.place} stays after: {mend.label}"
    for new in after:
        heavier = WEIGHTS.index(new.severity) > WEIGHTS.index(finding.severity)
        worse = heavier or new.code in COLD_WORK
        if worse and has[new.code] > had[new.code]:
            yield f"{mend.label} for {finding.code} at {finding.place} brings {new.code} at {new.place}"


def _found(plan: Plan, sketch: Sketch) -> list[Finding]:
    """What is found in a plan for the same rower, whatever mends it."""
    rower = sketch.athlete
    scene = scene_of(compile_timeline(plan, rower), rower, rower.level, sketch.room)
    return [finding for check in CHECKS for finding in check(scene)]
