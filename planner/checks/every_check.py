"""Every check there is. To add one: a function from a scene to findings, and its name here."""

from __future__ import annotations

from collections.abc import Iterator

from planner.checks.age import child_long, child_maximal, child_target, older_maximal, older_warm_up
from planner.checks.ease import easy_too_hard
from planner.checks.fitting import mended
from planner.checks.holding import cannot_be_held
from planner.checks.machine import heavy_setting, one_sided_drill
from planner.checks.person import heat, novice_maximal
from planner.checks.predicting import piece_out_of_range, prediction_out_of_range
from planner.checks.proof import Check, found_with_proved_mends
from planner.checks.rise import hard_too_early, no_rise, no_warm_up
from planner.checks.scene import Scene
from planner.checks.sitting import sitting_too_long
from planner.checks.steps import jump_too_steep
from planner.checks.waiting import burst_too_near, cool_at_start, gap_length
from planner.findings import Finding

CHECKS: tuple[Check, ...] = (
    mended,
    no_warm_up,
    hard_too_early,
    no_rise,
    gap_length,
    burst_too_near,
    cool_at_start,
    jump_too_steep,
    easy_too_hard,
    cannot_be_held,
    prediction_out_of_range,
    piece_out_of_range,
    novice_maximal,
    child_maximal,
    child_long,
    child_target,
    older_maximal,
    older_warm_up,
    sitting_too_long,
    heavy_setting,
    one_sided_drill,
    heat,
)


def everything_found(scene: Scene) -> Iterator[Finding]:
    """What all checks find, with such mends only as remove what was found."""
    return found_with_proved_mends(scene, CHECKS)
