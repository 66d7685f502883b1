"""Where judgement draws a line, the last case on one side of it and the first on the other.

All of these are judgement or common practice, without a source; each is marked beside its constant.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from planner.advised_gap import AdvisedGap, Wait, judged
from planner.appraisal import Appraisal, appraise
from planner.athlete import Athlete, Level, Result, Room
from planner.cool_down import cool_down_stages
from planner.endurance import endurance_of
from planner.findings import Finding
from planner.notation.reader import read
from planner.pieces import Character, character_of
from planner.plan import Rest
from planner.timeline import compile_timeline
from planner.warm_up.choice import choose
from planner.warm_up.circumstances import Circumstances
from planner.warm_up.rules import Sharpening
from tests.planner.test_checks import GAP, WARM


def appraised(text: str, *results: Result) -> Appraisal:
    rower = Athlete(results)
    return appraise(compile_timeline(read(text), rower), rower, rower.level)


def found(text: str, *results: Result) -> dict[str, Finding]:
    return {finding.code: finding for finding in appraised(text, *results).findings}


@pytest.mark.parametrize(("low", "wait"), [(600, Wait.RIGHT), (630, Wait.OVERSPENT)])
def test_ten_minutes_are_the_longest_wait_that_a_warm_up_may_need(low: int, wait: Wait) -> None:
    assert judged(low, AdvisedGap(low, low, 900)) is wait


@pytest.mark.parametrize(("percent", "least"), [(62, 0), (64, 120)])
def test_strokes_of_95_percent_of_a_full_one_are_full(percent: int, least: int) -> None:
    """At r20 a club rower's full stroke comes to two thirds of 2 km power [=]."""
    ready = appraised(f"warm-up\n9' r20 half\ngap 5'\nmain\n30' r20 {percent}% power").readiness
    assert ready is not None
    assert ready.advised_gap.low == least


@pytest.mark.parametrize(("seconds", "severity"), [(190, "advice"), (200, "warning")])
def test_a_start_with_less_than_85_percent_of_the_reserve_is_worth_a_warning(
    seconds: int, severity: str
) -> None:
    text = f"warm-up\n5' r18 light\n{seconds}\" r32 race\ngap 2'\nmain\n2000m r30 race"
    ready = appraised(text).readiness
    assert ready is not None
    assert (ready.at_start.reserve.middle < 0.85) == (severity == "warning")
    assert ready.at_start.reserve.middle < 0.86
    assert found(text)["gap-too-short"].severity == severity


@pytest.mark.parametrize(
    ("piece", "before", "said"),
    [(100, 69, True), (100, 70, False), (130, 79, True), (130, 80, False), (120, 79, True), (120, 80, False)],
)
def test_a_warm_up_rises_to_70_percent_of_the_piece_but_need_not_go_above_80(
    piece: int, before: int, said: bool
) -> None:
    rise = f"9' r20 half\n20 strokes r28 {before}% power\n2' r18 light"
    text = f"warm-up\n{rise}\n{GAP}main\n1' r28 {piece}% power"
    assert ("no-rise" in found(text)) == said


@pytest.mark.parametrize(("percent", "whole"), [(62, False), (64, True)])
def test_a_long_row_with_full_strokes_is_not_broken_by_a_rest(percent: int, whole: bool) -> None:
    assert (found(f"main\n31' r20 {percent}% power")["sitting-too-long"].mend is None) == whole


@pytest.mark.parametrize(("percent", "hard"), [(84, False), (85, True)])
def test_from_85_percent_of_2_km_power_on_rowing_is_hard(percent: int, hard: bool) -> None:
    assert ("no-warm-up" in found(f"main\n4' r28 {percent}% power")) == hard


@pytest.mark.parametrize(("part", "said"), [(0.88, False), (0.92, True)])
def test_a_target_near_what_is_predicted_is_taken_to_come_from_the_prediction(
    part: float, said: bool
) -> None:
    result = Result(2000, Fraction(462))
    endurance = endurance_of(Athlete((result,)), Level.CLUB)
    predicted = endurance.piece(20, 100)
    assert not predicted.within_range
    percent = round(100 * part * endurance.share_at(predicted.split))
    assert percent > 100
    assert ("piece-out-of-range" in found(f"{WARM}{GAP}main\n100m r36 {percent}% power", result)) == said


def circumstances(minutes: int, piece_seconds: int, character: Character) -> Circumstances:
    return Circumstances(character, 24, piece_seconds, False, Level.CLUB, Room.NORMAL, minutes)


@pytest.mark.parametrize(("seconds", "sharpening"), [(2100, Sharpening.BURSTS), (2101, Sharpening.NONE)])
def test_before_more_than_35_minutes_nothing_is_sharpened(seconds: int, sharpening: Sharpening) -> None:
    assert choose(circumstances(15, seconds, Character.LONG)).sharpening is sharpening


@pytest.mark.parametrize(
    ("minutes", "tail"), [(5, 30), (7, 30), (8, 60), (20, 60), (21, 90), (25, 90), (26, 120), (30, 120)]
)
def test_the_longer_the_warm_up_the_longer_the_calm_at_its_end(minutes: int, tail: int) -> None:
    assert choose(circumstances(minutes, 480, Character.MIDDLE)).tail == tail


@pytest.mark.parametrize(
    ("seconds", "character"),
    [
        (164, Character.EXPLOSIVE),
        (165, Character.MIDDLE),
        (779, Character.MIDDLE),
        (780, Character.LONG),
    ],
)
def test_where_one_character_ends_and_the_next_begins(seconds: int, character: Character) -> None:
    assert character_of(seconds) is character


@pytest.mark.parametrize(("seconds", "stands"), [(1500, False), (1501, True)])
def test_after_more_than_25_minutes_one_stands_up_within_the_way_down(seconds: int, stands: bool) -> None:
    stages = cool_down_stages(Character.LONG, seconds, Room.NORMAL)
    assert any(isinstance(stage.step, Rest) for stage in stages) == stands
