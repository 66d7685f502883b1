"""What is said of pieces in prose: numbers as people say them, caps, and predictions out of their range."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from planner.appraisal import appraise
from planner.athlete import Athlete, Level, Result
from planner.errors import InputError
from planner.findings import Finding, Severity
from planner.pieces import IntervalSet, Piece, SteadyRow, TestPiece, expectation_of, name_of
from planner.session import Session, SessionRequest, session_of
from planner.standing import standing_of
from planner.timeline import compile_timeline
from planner.units import told_metres, told_time
from tests.pieces import PACINGS, TESTS, sets
from tests.rowers import ANYBODY, KNOWN, LEVELS

BELOW_A_MINUTE = re.compile(r"(?<![\d:])0:\d\d")
LONG_NUMBER = re.compile(r"\d{5,}")


def session(piece: Piece, athlete: Athlete | None, level: Level = Level.CLUB, **more: object) -> Session:
    try:
        return session_of(SessionRequest(piece, athlete=athlete, level=level, **more))  # type: ignore[arg-type]
    except InputError:
        assume(False)
        raise


def appraised(found: Session, athlete: Athlete | None, level: Level = Level.CLUB) -> tuple[Finding, ...]:
    rower = Athlete(athlete.results if athlete else (), level=level)
    return appraise(compile_timeline(found.plan, rower), rower, level).findings


def of_2_km(seconds: int = 462) -> Athlete:
    return Athlete((Result(2000, Fraction(seconds)),))


@pytest.mark.parametrize(
    ("seconds", "told"),
    [
        (Fraction(226, 10), "22.6 s"),
        (45, "45 s"),
        (59.9, "59.9 s"),
        (59.97, "1:00"),
        (60, "1:00"),
        (462, "7:42"),
    ],
)
def test_a_time_is_told_as_people_say_it(seconds: Fraction | float, told: str) -> None:
    assert told_time(seconds) == told


@pytest.mark.parametrize(
    ("metres", "told"), [(100, "100 m"), (2000, "2000 m"), (10_000, "10 000 m"), (42_195, "42 195 m")]
)
def test_metres_are_told_as_people_write_them(metres: int, told: str) -> None:
    assert told_metres(metres) == told


@settings(max_examples=150)
@given(st.one_of(TESTS, sets(), st.just(TestPiece(metres=42_195))), ANYBODY, LEVELS, PACINGS)
def test_no_sentence_about_a_piece_holds_a_number_that_nobody_says(
    piece: Piece, athlete: Athlete | None, level: Level, pacing: object
) -> None:
    more = {"pacing": pacing} if isinstance(piece, TestPiece) else {}
    found = session(piece, athlete, level, **more)
    told = [found.plan.title, found.plan.summary or "", *found.reasons]
    for finding in appraised(found, athlete, level):
        assert not BELOW_A_MINUTE.search(finding.sentence), finding.sentence
        told += [finding.reason or "", *([finding.mend.label] if finding.mend else [])]
    for sentence in told:
        assert not BELOW_A_MINUTE.search(sentence), sentence
        assert not LONG_NUMBER.search(sentence), sentence
        assert "about 0 %" not in sentence


@given(KNOWN)
def test_results_are_told_as_people_say_them(athlete: Athlete) -> None:
    more = (*athlete.results, Result(100, Fraction(171, 10)), Result(42_195, Fraction(14_000)))
    for finding in standing_of(Athlete(more)).findings:
        assert not BELOW_A_MINUTE.search(finding.sentence), finding.sentence
        assert not LONG_NUMBER.search(finding.sentence), finding.sentence


def test_a_set_that_leaves_nothing_says_so_plainly() -> None:
    easy = IntervalSet(6, metres=500, rest_seconds=600, leave_percent=0)
    reason = session(easy, of_2_km(), level=Level.TRAINED).reasons[-2]
    assert "about 0 %" not in reason


# --- Caps


def test_a_capped_piece_is_named_by_its_cap() -> None:
    assert name_of(TestPiece(seconds=1800, rate_cap=20)) == "30 min at no more than r20"
    assert name_of(TestPiece(metres=42_195)) == "marathon"


@pytest.mark.parametrize(("cap", "maximal"), [(20, False), (None, True), (32, True)])
def test_only_what_a_cap_does_not_slow_is_called_maximal(cap: int | None, maximal: bool) -> None:
    found = session(TestPiece(seconds=1800, rate_cap=cap), of_2_km())
    assert ("maximal" in (found.plan.summary or "")) == maximal


# --- Predictions out of their range


@pytest.mark.parametrize("piece", [TestPiece(metres=100), TestPiece(seconds=30), TestPiece(seconds=60)])
def test_a_piece_that_no_custom_reaches_is_called_a_guess(piece: TestPiece) -> None:
    """Neither custom holds under 500 m and 3.5 min: Riegel 1981, American Scientist 69:285-290, from memory,
    and club custom."""
    athlete = of_2_km()
    found = session(piece, athlete)
    assert not found.expected.within_range
    assert "guess" in (found.plan.summary or "")
    assert any("guess" in reason for reason in found.reasons)
    (note,) = [f for f in appraised(found, athlete) if f.code == "piece-out-of-range"]
    assert note.severity is Severity.NOTE
    assert note.place == "/parts/2"
    assert "2000 m in 7:42" in note.sentence


@pytest.mark.parametrize(
    ("piece", "athlete"),
    [
        (TestPiece(metres=500), of_2_km()),
        (TestPiece(metres=5000), of_2_km()),
        (TestPiece(metres=100), Athlete((Result(100, Fraction(18)), Result(2000, Fraction(462))))),
        (SteadyRow(1800), of_2_km()),
        (IntervalSet(8, metres=500, rest_seconds=120), of_2_km()),
        (TestPiece(metres=100), None),
    ],
)
def test_what_a_custom_reaches_or_what_was_rowed_is_no_guess(piece: Piece, athlete: Athlete | None) -> None:
    found = session(piece, athlete)
    codes = {finding.code for finding in appraised(found, athlete)}
    assert "piece-out-of-range" not in codes
    if athlete is not None:
        assert found.expected.within_range
        assert "guess" not in (found.plan.summary or "")


@given(KNOWN, LEVELS, TESTS)
def test_the_session_and_its_findings_agree_on_what_is_a_guess(
    athlete: Athlete, level: Level, piece: TestPiece
) -> None:
    assume(piece.rate_cap is None)
    found = session(piece, athlete, level)
    noted = "piece-out-of-range" in {finding.code for finding in appraised(found, athlete, level)}
    assert noted == (not expectation_of(piece, athlete, level).within_range)
