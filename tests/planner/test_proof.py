"""Mends are tried out: each that is offered removes its finding and asks nothing hard of a cold body."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import pytest

from planner import prediction
from planner.appraisal import appraise
from planner.athlete import Athlete, Level, Result, Room
from planner.checks import proof
from planner.checks.scene import Scene
from planner.critical_power import Examined, examine
from planner.findings import Edit, Finding, Severity
from planner.notation.reader import read
from planner.plan import Plan
from planner.schemas.plan_schema import load_plan
from planner.timeline import compile_timeline
from tests.mending import apply, stays
from tests.sweep.mends import broken_mends
from tests.sweep.plans import sketches

SAMPLE, SEED = 120, 20_261


def found(plan: Plan, level: Level = Level.CLUB, room: Room = Room.NORMAL) -> dict[str, Finding]:
    rower = Athlete(level=level)
    return {f.code: f for f in appraise(compile_timeline(plan, rower), rower, level, room).findings}


def mended(plan: Plan, code: str) -> Plan:
    mend = found(plan)[code].mend
    assert mend is not None
    return apply(plan, mend.edits)


@pytest.mark.parametrize(
    "text",
    [
        "main\n3 x (5' r18 light, 30\" r32 full)",
        "main\n3' r20 half\n30\" r26 111% power",
        "main\n4' r18 light\n2 x (500m r30 race, 2' r18 light)",
        "gap 5'\nmain\n2 x (4' r18 light, 1' r34 full)",
    ],
)
def test_without_a_warm_up_one_tap_leads_through_easy_rowing_and_steps_to_a_burst(text: str) -> None:
    after = found(mended(read(text), "no-rise"))
    assert not {"no-rise", "hard-too-early", "jump-too-steep", "no-warm-up"} & set(after)


@pytest.mark.parametrize(
    ("code", "text", "level", "results", "room"),
    [
        # Light pressure at a high rate, for long, is hard: taking the pressure down is not enough.
        (
            "novice-maximal",
            "main\n8 x 20' r30 light",
            Level.NOVICE,
            (6000, 1608.4, 2000, 471.5, 500, 100.2),
            None,
        ),
        (
            "warm-up-spends-too-much",
            "warm-up\n3 x 217 strokes r50 light",
            Level.NOVICE,
            (2000, 462),
            Room.HOT,
        ),
        ("warm-up-spends-too-much", "warm-up\n3 x 217 strokes r50 full", Level.NOVICE, (2000, 462), Room.HOT),
        # What names no effort is guessed, and guessed hard.
        (
            "warm-up-spends-too-much",
            "warm-up\n20' r30\n500m r36 full\n5' rest\nmain\n2000m r30 race",
            Level.CLUB,
            (),
            Room.HOT,
        ),
        # Eased blocks join the bout that they were too hard for.
        (
            "cannot-be-held",
            'main\n8 x (1000 strokes r44 full, 15 strokes r20, 30" rest)',
            Level.CLUB,
            (),
            None,
        ),
    ],
)
def test_one_tap_removes_what_easier_strokes_alone_would_leave(
    code: str, text: str, level: Level, results: tuple[float, ...], room: Room | None
) -> None:
    rower = Athlete(tuple(map(_result, results[::2], results[1::2])), level=level)
    where = room or Room.NORMAL

    def findings(plan: Plan) -> tuple[Finding, ...]:
        return appraise(compile_timeline(plan, rower), rower, level, where).findings

    plan = read(text)
    before = findings(plan)
    finding = next(f for f in before if f.code == code)
    assert finding.mend is not None
    assert not stays(finding, before, findings(apply(plan, finding.mend.edits)))


def _result(metres: float, seconds: float) -> Result:
    return Result(int(metres), Fraction(round(10 * seconds), 10))


@pytest.mark.parametrize(
    ("text", "severity"),
    [
        ("warm-up\n9' r30\nmain\n2000m r30 race", Severity.ADVICE),
        ("warm-up\n9' r30 full\nmain\n2000m r30 race", Severity.WARNING),
    ],
)
def test_nobody_is_warned_of_power_that_is_only_guessed(text: str, severity: Severity) -> None:
    gap = [f for c, f in found(read(text)).items() if c in ("warm-up-spends-too-much", "gap-too-short")]
    assert [f.severity for f in gap] == [severity]


def test_whatever_the_plan_no_mend_leaves_its_finding_or_brings_something_heavier() -> None:
    broken = [told for sketch in sketches(SEED, SAMPLE) for told in broken_mends(sketch)]
    assert broken == []


def test_the_longest_session_is_answered_after_a_bounded_number_of_trials_the_weightiest_mended_first(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Every block of it is found at fault; a stranger may send it again and again."""
    tried: list[int] = []

    def counting(scene: Scene, edits: Sequence[Edit]) -> Scene | None:
        tried.append(len(scene.timeline.segments))
        return after(scene, edits)

    after = proof._after
    monkeypatch.setattr(proof, "_after", counting)
    call = {"text": "long and easy " * 3}
    block = {"for": {"seconds": 86}, "rate": 30, "effort": {"pressure": "half"}}
    blocks = [{**block, "calls": [{**call, "stroke": stroke} for stroke in (1, 2)]} for _ in range(100)]
    main = {"kind": "main", "blocks": [{"times": 5, "blocks": blocks}]}
    findings = appraise(compile_timeline(load_plan({"format": 1, "title": "Long", "parts": [main]}))).findings
    assert len(findings) > 100
    assert 0 < sum(tried) <= proof.MOST_SEGMENTS
    assert 0 < len([f for f in findings if f.mend]) <= len(tried)
    assert findings[0].mend, "the weightiest first"


def test_results_are_examined_once_however_many_mends_are_tried(monkeypatch: pytest.MonkeyPatch) -> None:
    """Twenty take longer to examine than the rest of a trial; afterwards nothing of them is remembered."""
    examined: list[tuple[Result, ...]] = []

    def counting(results: Sequence[Result]) -> Examined:
        examined.append(tuple(results))
        return examine(results)

    monkeypatch.setattr(prediction, "examine", counting)
    rower = Athlete((_result(2000, 420), _result(5000, 1150)))
    timeline = compile_timeline(read("main\n4 x (1' r30 race, 1' r20 light)\n2' r34 full"), rower)
    examined.clear()
    first = appraise(timeline, rower)
    assert any(f.mend for f in first.findings)
    assert len(examined) == len(set(examined))
    examined.clear()
    assert appraise(timeline, rower) == first
    assert examined
