"""Age changes what is said and built: children and older adults, by facts that hold for them (9.3)."""

from __future__ import annotations

from fractions import Fraction

import pytest

from planner.age_words import words_for_age
from planner.appraisal import appraise
from planner.athlete import Athlete, Level, Result, Room
from planner.findings import Finding, Severity
from planner.limits import NOTE_LENGTH
from planner.notation.reader import read
from planner.pieces import IntervalSet, Piece, SteadyRow, TestPiece
from planner.plan import Plan
from planner.session import Session, SessionRequest, session_of
from planner.timeline import compile_timeline
from planner.warm_up.rules import Sharpening
from tests.mending import apply
from tests.planner.test_checks import GAP, WARM

RESULTS = (Result(2000, Fraction(600)),)
HARD = (
    TestPiece(metres=100),
    TestPiece(metres=2000),
    TestPiece(metres=21_097),
    TestPiece(seconds=60),
    IntervalSet(20, seconds=30, rest_seconds=30),
)
AGE_CODES = (
    "child-maximal",
    "child-long",
    "child-target",
    "older-maximal",
    "older-warm-up",
    "novice-maximal",
)


def found(plan: Plan, age: int | None, level: Level = Level.CLUB) -> dict[str, Finding]:
    rower = Athlete(RESULTS, age=age, level=level)
    findings = appraise(compile_timeline(plan, rower), rower, level).findings
    return {f.code: f for f in findings if f.code in AGE_CODES}


def session(piece: Piece, age: int | None, level: Level = Level.CLUB) -> Session:
    return session_of(SessionRequest(piece, athlete=Athlete(RESULTS, age=age), level=level))


@pytest.mark.parametrize("piece", HARD, ids=str)
@pytest.mark.parametrize("level", Level)
@pytest.mark.parametrize("age", [8, 15])
def test_no_maximal_piece_is_made_for_a_child_without_a_word(piece: Piece, level: Level, age: int) -> None:
    made = session(piece, age, level)
    assert "with a coach at your side" in (made.plan.summary or "")
    assert made.reasons[0] in (made.plan.summary or "")
    child = found(made.plan, age, level)["child-maximal"]
    assert child.severity is Severity.WARNING
    assert "a coach at their side" in (child.reason or "")
    assert "a doctor's word" in (child.reason or "")
    assert child.mend is not None
    assert "child-maximal" not in found(apply(made.plan, child.mend.edits), age, level)


@pytest.mark.parametrize("age", [None, 16, 40, 64])
def test_from_16_on_and_up_to_64_nothing_is_said_of_age(age: int | None) -> None:
    made = session(TestPiece(metres=2000), age)
    assert made == session(TestPiece(metres=2000), None)
    assert found(made.plan, age) == {}


@pytest.mark.parametrize("piece", HARD[:4], ids=str)
def test_an_older_adult_is_told_to_go_by_effort_and_to_ask_a_doctor_in_doubt(piece: Piece) -> None:
    made = session(piece, 65)
    assert "go by effort, 7 to 8 of 10" in (made.plan.summary or "")
    older = found(made.plan, 65)["older-maximal"]
    assert older.severity is Severity.ADVICE
    assert "a doctor" in (older.reason or "")
    assert older.mend is not None
    assert "older-maximal" not in found(apply(made.plan, older.mend.edits), 65)


@pytest.mark.parametrize("age", [8, 15, 65, 90])
def test_no_practice_starts_for_the_young_and_the_old_and_fewer_bursts(age: int) -> None:
    """Lighter on the back: judgement."""
    piece = TestPiece(metres=100)
    spared, other = (session(piece, each).warm_up.choice for each in (age, 40))
    assert (spared.sharpening, other.sharpening) == (Sharpening.BURSTS, Sharpening.STARTS)
    assert len(spared.sharp_rates) == len(other.sharp_rates) - 1


def test_an_older_adult_is_given_ten_minutes_before_hard_work() -> None:
    text = (
        "warm-up\n{}' r18 light\n6 strokes r24 half\n10 strokes r28 full\n1' r18 light\n"
        + GAP
        + "main\n4' r28 full"
    )
    short, long = read(text.format(7)), read(text.format(9))
    finding = found(short, 65)["older-warm-up"]
    assert finding.mend is not None
    assert "older-warm-up" not in found(apply(short, finding.mend.edits), 65)
    assert "older-warm-up" not in found(long, 65)
    assert "older-warm-up" not in found(short, 64)


def test_maximal_rowing_in_a_warm_up_is_said_too_where_it_is_longer_than_a_burst() -> None:
    text = "warm-up\n5' r18 light\n{}\" r30 race\n5' r18 light"
    assert "child-maximal" in found(read(text.format(45)), 12)
    assert "child-maximal" not in found(read(text.format(30)), 12)


def test_ten_minutes_in_one_go_are_enough_for_a_child() -> None:
    assert "child-long" in found(read("main\n11' r20 light"), 15)
    assert "child-long" not in found(read("main\n10' r20 light"), 15)
    assert "child-long" not in found(read("main\n11' r20 light"), 16)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("main\n4' r20 60% power", True),
        ("main\n4' r20 2k+20", True),
        ("main\n4' r20 hr 130", True),
        ("main\n4' r20 effort 4", False),
    ],
)
def test_targets_of_grown_ups_are_no_targets_for_a_child(text: str, said: bool) -> None:
    assert ("child-target" in found(read(text), 12)) == said


def test_a_child_who_is_new_to_rowing_is_told_once() -> None:
    plan = read(WARM + GAP + "main\n2000m r28 race")
    assert "novice-maximal" not in found(plan, 12, Level.NOVICE)
    assert "novice-maximal" in found(plan, 16, Level.NOVICE)


@pytest.mark.parametrize(("age", "words"), [(15, "Under 16"), (65, "From 65 on"), (64, None), (None, None)])
def test_an_easy_row_has_its_word_too(age: int | None, words: str | None) -> None:
    told = words_for_age(Athlete(age=age), SteadyRow(1800))
    assert [each.startswith(words or "-") for each in told] == ([True] if words else [])


@pytest.mark.parametrize("age", [10, 65])
def test_the_longest_summary_with_a_word_for_age_is_still_a_summary(age: int) -> None:
    rower = Athlete((Result(100, Fraction(24)),), age=age)
    asked = SessionRequest(
        TestPiece(metres=21_097), 15, rower, Level.NOVICE, Room.HOT, goal_seconds=Fraction(71_999, 10)
    )
    assert len(session_of(asked).plan.summary or "") <= NOTE_LENGTH - 20
