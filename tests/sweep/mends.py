"""What every mend has to keep to: it removes its finding, and brings nothing heavier."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from planner.appraisal import Appraisal, appraise
from planner.athlete import Athlete, Room
from planner.findings import Finding, Mend, Severity
from planner.plan import Plan
from planner.timeline import compile_timeline
from tests.mending import apply
from tests.sweep.plans import Sketch

WEIGHTS = (Severity.NOTE, Severity.ADVICE, Severity.WARNING)
COLD_WORK = ("hard-too-early", "no-warm-up")
"""What no mend may bring: work asked of a body that is not warm."""


def appraised(plan: Plan, athlete: Athlete, room: Room) -> Appraisal:
    """The appraisal of a plan for its rower."""
    return appraise(compile_timeline(plan, athlete), athlete, athlete.level, room)


def broken_mends(sketch: Sketch) -> Iterator[str]:
    """Every mend that leaves its finding where it was, or brings something heavier or hard work on a cold body."""
    before = appraised(sketch.plan, sketch.athlete, sketch.room).findings
    for finding in before:
        if finding.mend is not None:
            yield from _broken(sketch, before, finding, finding.mend)


def _broken(sketch: Sketch, before: tuple[Finding, ...], finding: Finding, mend: Mend) -> Iterator[str]:
    after = appraised(apply(sketch.plan, mend.edits), sketch.athlete, sketch.room).findings
    here = finding.code, finding.place
    had, has = (Counter(f.code for f in found) for found in (before, after))
    stays = sum((f.code, f.place) == here for f in after) >= sum((f.code, f.place) == here for f in before)
    if stays and has[finding.code] >= had[finding.code]:
        yield f"{finding.code} at {finding.place} stays after: {mend.label}"
    for new in after:
        heavier = WEIGHTS.index(new.severity) > WEIGHTS.index(finding.severity)
        worse = heavier or new.code in COLD_WORK
        if worse and has[new.code] > had[new.code]:
            yield f"{mend.label} for {finding.code} at {finding.place} brings {new.code} at {new.place}"
