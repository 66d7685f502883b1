"""A session appraised: everything there is to say about it, the weightiest first."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from planner.athlete import Athlete, Level, Room
from planner.checks.every_check import everything_found
from planner.checks.scene import scene_of
from planner.energy import Energy, energy_of
from planner.findings import HEAVIEST_FIRST, Finding
from planner.prediction import results_examined_once
from planner.readiness import Readiness
from planner.timeline import Timeline


@dataclass(frozen=True, slots=True)
class Appraisal:
    """The readiness, None where nothing is rowed before the start; the energy, None where the power of
    some of the rowing is not known; and the findings, weightiest first."""

    readiness: Readiness | None
    energy: Energy | None
    findings: tuple[Finding, ...]


def appraise(
    timeline: Timeline,
    athlete: Athlete | None = None,
    level: Level = Level.CLUB,
    room: Room = Room.NORMAL,
) -> Appraisal:
    """What a coach would say about a session, for this athlete or anybody of the level.

    The athlete and the level are those that the timeline was compiled for.
    """
    with results_examined_once():
        scene = scene_of(timeline, athlete, level, room)
        findings = sorted(_once(everything_found(scene)), key=_weight)
        return Appraisal(scene.readiness, energy_of(timeline, athlete), tuple(findings))


def _once(findings: Iterable[Finding]) -> Iterable[Finding]:
    """Each thing said once for each place."""
    return {(f.code, f.place, f.sentence): f for f in findings}.values()


def _weight(finding: Finding) -> tuple[int, list[tuple[int, str]]]:
    """Heavier first; then as the plan is read, so that block 10 comes after block 9."""
    steps = [(int(step), "") if step.isdigit() else (-1, step) for step in finding.place.split("/")]
    return HEAVIEST_FIRST.index(finding.severity), steps
