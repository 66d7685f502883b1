"""Work of more than a quarter of an hour, held against what the same results predict."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from planner.appraisal import appraise
from planner.athlete import Athlete, Level, Result
from planner.capacity import capacity_of
from planner.demand import runs_of
from planner.endurance import endurance_of
from planner.errors import InputError
from planner.findings import Finding, Severity
from planner.notation.reader import read
from planner.pacing import Pacing
from planner.pieces import IntervalSet, TestPiece
from planner.plan import Block, ForMetres, ForSeconds, Plan, Repeat, Rest, Split, TwoKPower
from planner.prediction import Piece, examined_of, predict, tenths_of, two_k_of
from planner.reserve import by_every_model, medians, tau_for
from planner.session import SessionRequest, session_of
from planner.timeline import compile_timeline
from planner.units import split_clock
from tests.builders import main_piece, rower_of_7_42
from tests.mending import apply
from tests.pieces import PACINGS, TESTS, sets
from tests.rowers import ANYBODY, KNOWN, LEVELS

CODE = "cannot-be-held"


def found(plan: Plan, athlete: Athlete | None, level: Level = Level.CLUB) -> Finding | None:
    """The finding about what cannot be held, for one rower."""
    findings = appraise(compile_timeline(plan, athlete), athlete, level).findings
    return next((finding for finding in findings if finding.code == CODE), None)


def mended(plan: Plan, athlete: Athlete | None, level: Level = Level.CLUB) -> Plan:
    finding = found(plan, athlete, level)
    return apply(plan, finding.mend.edits) if finding and finding.mend else plan


@pytest.mark.parametrize(
    "text",
    [
        "main\n60' r24 @2:05",
        "main\n30' r24 89% power",
        "main\n3 x 20' r24 @2:05 / 15\" rest",
        "main\n2 x 5000m r26 @2:00 / 1' rest",
        "main\n20' r24 @2:05\n20' r26 @2:05\n20' r24 @2:05",
        "main\n10' r18 light\n40' r24 @2:04\n10' r18 light",
    ],
)
def test_what_is_quicker_than_predicted_is_said_and_mended_at_once(text: str) -> None:
    """Of a rower whose hour is predicted at about 2:09.6: below critical power no reserve is spent."""
    plan, athlete = read(text), rower_of_7_42()
    finding = found(plan, athlete)
    assert finding is not None
    assert "your results point" in finding.sentence
    assert found(mended(plan, athlete), athlete) is None


@pytest.mark.parametrize(
    "text",
    [
        "main\n60' r24 @2:09",
        "main\n30' r24 79% power",
        "main\n3 x 20' r24 @2:07 / 20' rest",
        "main\n14' r26 @2:01",
        "main\n12 x (4' r24 @2:04, 4' r18 light)",
        "warm-up\n60' r24 @2:05",
    ],
)
def test_the_nearest_neighbours_are_left_alone(text: str) -> None:
    assert found(read(text), rower_of_7_42()) is None


def test_beyond_the_kindest_prediction_it_is_a_warning() -> None:
    assert [
        found(read(f"main\n60' r24 @{split}"), rower_of_7_42()).severity  # type: ignore[union-attr]
        for split in ("2:05", "1:59")
    ] == [Severity.ADVICE, Severity.WARNING]


LONG = st.one_of(
    st.integers(901, 7200).map(ForSeconds),
    st.integers(6000, 30_000).map(ForMetres),
)


def quick_end(length: ForSeconds | ForMetres, athlete: Athlete) -> float:
    """The split of the quick end of what is predicted."""
    piece = (
        Piece("", seconds=length.seconds)
        if isinstance(length, ForSeconds)
        else Piece("", metres=length.metres)
    )
    quickest = predict(piece, athlete.results, examined_of(athlete.results)).quickest
    return quickest.seconds * 500 / quickest.metres


def split_in(plan: Plan, athlete: Athlete) -> float:
    """The first split that is shown, to the tenth."""
    (segment, *_) = compile_timeline(plan, athlete).segments
    target = segment.stretch.target
    assert target is not None
    assert target.split is not None
    return float(target.split)


@given(KNOWN, LEVELS, LONG, st.integers(900, 1900), st.booleans())
def test_after_the_mend_no_target_is_quicker_than_the_quick_end_of_the_prediction(
    athlete: Athlete, level: Level, length: ForSeconds | ForMetres, tenths: int, by_power: bool
) -> None:
    two_k = two_k_of(athlete)
    assert two_k is not None
    hundredths = round(100 * float(two_k.split / Fraction(tenths, 10)) ** 3)
    assume(10 <= hundredths <= 300)
    effort = TwoKPower(Fraction(hundredths, 100)) if by_power else Split(Fraction(tenths, 10))
    plan = main_piece(Block(length, 24, effort))
    finding = found(plan, athlete, level)
    seconds = compile_timeline(plan, athlete).segments[0].stretch.duration
    if finding is not None and seconds > 900:
        assert finding.mend is not None
        assert split_in(mended(plan, athlete, level), athlete) >= quick_end(length, athlete) - 0.05


@given(KNOWN, LEVELS, LONG, st.floats(1.03, 1.4))
def test_what_is_clearly_quicker_than_the_quick_end_is_never_passed_over(
    athlete: Athlete, level: Level, length: ForSeconds | ForMetres, quicker: float
) -> None:
    hard = endurance_of(athlete, level).without_easy()
    athlete = Athlete(tuple(hard.results))
    split = Fraction(round(10 * quick_end(length, athlete) / quicker), 10)
    assume(60 <= split <= 360)
    finding = found(main_piece(Block(length, 24, Split(split))), athlete, level)
    assert finding is not None
    assert finding.severity is Severity.WARNING


@settings(max_examples=200)
@given(ANYBODY, LEVELS, TESTS, PACINGS)
def test_a_test_piece_at_what_we_predict_is_never_said_to_be_too_much(
    athlete: Athlete | None, level: Level, piece: TestPiece, pacing: Pacing | None
) -> None:
    request = SessionRequest(piece, athlete=athlete, level=level, pacing=pacing)
    try:
        plan = session_of(request).plan
    except InputError:
        assume(False)
        raise
    assert found(plan, request.rower, level) is None


@pytest.mark.parametrize(
    ("level", "piece", "results"),
    [
        (Level.NOVICE, TestPiece(metres=1000), [(500, 111.1), (5000, 1300.5)]),
        (Level.TRAINED, TestPiece(metres=750), [(300, 70), (5000, 1537.6)]),
        (Level.NOVICE, TestPiece(metres=2000), [(500, 126.5), (6000, 1682.2), (100, 23.7)]),
        (Level.TRAINED, TestPiece(seconds=240), [(5000, 1174.6), (100, 15.8)]),
    ],
)
def test_pieces_that_once_were_too_much_at_our_own_prediction(
    level: Level, piece: TestPiece, results: list[tuple[int, float]]
) -> None:
    """The reserve came from a fit that the prediction does not trust, or from the level."""
    athlete = Athlete(tuple(Result(metres, Fraction(str(seconds))) for metres, seconds in results))
    request = SessionRequest(piece, athlete=athlete, level=level)
    assert found(session_of(request).plan, request.rower, level) is None


def test_what_is_predicted_is_too_much_after_work_that_spends_the_reserve() -> None:
    """A predicted kilometre by its first 500 m result, alone and after half a minute all out."""
    athlete = Athlete((Result(500, Fraction(1111, 10)), Result(5000, Fraction(13005, 10))))
    split = split_clock(tenths_of(endurance_of(athlete, Level.NOVICE).over(1000).split))
    assert found(read(f"main\n1000m r28 @{split}"), athlete, Level.NOVICE) is None
    spent = read(f"main\n1' r30 @1:55\n30\" rest\n1000m r28 @{split}")
    assert found(spent, athlete, Level.NOVICE) is not None


def test_a_little_quicker_than_predicted_is_too_much_where_the_reserve_says_so() -> None:
    athlete = Athlete((Result(500, Fraction(1111, 10)), Result(5000, Fraction(13005, 10))))
    split = endurance_of(athlete, Level.NOVICE).over(1000).split
    splits = [split_clock(tenths_of(split * quicker)) for quicker in (1, 0.99)]
    told = [found(read(f"main\n1000m r28 @{each}"), athlete, Level.NOVICE) is not None for each in splits]
    assert told == [False, True]


@settings(max_examples=200)
@given(ANYBODY, LEVELS, sets())
@example(
    Athlete((Result(1000, Fraction(180)), Result(2000, Fraction(380)), Result(6000, Fraction(1236)))),
    Level.NOVICE,
    IntervalSet(6, metres=1000, rest_seconds=60, leave_percent=0),
)
def test_a_set_at_our_own_target_is_never_said_to_be_too_much(
    athlete: Athlete | None, level: Level, piece: object
) -> None:
    request = SessionRequest(piece, athlete=athlete, level=level)  # type: ignore[arg-type]
    try:
        plan = session_of(request).plan
    except InputError:
        assume(False)
        raise
    assert found(plan, request.rower, level) is None


def test_a_set_counts_as_the_one_piece_that_it_is_like() -> None:
    """Common practice, no source: with hardly a rest the whole work, with rests as long half of it."""
    athlete = rower_of_7_42()

    def of(rest: int) -> Plan:
        return main_piece(Repeat(4, (Block(ForSeconds(900), 24, Split(Fraction(126))),), (Rest(rest),)))

    assert [found(of(rest), athlete) is not None for rest in (15, 120, 900, 1800)] == [
        True,
        True,
        False,
        False,
    ]


def test_without_a_result_the_level_says_what_is_usual() -> None:
    finding = found(read("main\n60' r24 85% power"), Athlete((), level=Level.CLUB))
    assert finding is not None
    assert "the level points to" in finding.sentence
    assert "% of 2 km power" in finding.sentence


def test_an_easy_result_makes_no_honest_work_too_much() -> None:
    """Results rowed easily say nothing of what can be held."""
    athlete = Athlete((Result(2000, Fraction(462)), Result(10_000, Fraction(3600))))
    assert found(read("main\n60' r20 @2:15"), athlete) is None


FITTED = Athlete((Result(1000, Fraction(205)), Result(2000, Fraction(428)), Result(3000, Fraction(657))))
ONE_RESULT = Athlete((Result(2000, Fraction(442)),))


@pytest.mark.parametrize(("athlete", "least_left"), [(FITTED, -0.05), (ONE_RESULT, -0.2), (None, -0.2)])
def test_the_better_a_reserve_is_known_the_sooner_an_overdraft_is_said(
    athlete: Athlete | None, least_left: float
) -> None:
    """The first second at which it is said leaves as much as is written, within a step of the search."""
    rowed = next(s for s in range(60, 900, 5) if found(hard_for(s), athlete))
    left = [reserve_after(hard_for(seconds), athlete) for seconds in (rowed - 5, rowed)]
    assert left[0] >= least_left > left[1]


def hard_for(seconds: int) -> Plan:
    return main_piece(Block(ForSeconds(seconds), 30, TwoKPower(Fraction(112, 100))))


def reserve_after(plan: Plan, athlete: Athlete | None) -> float:
    capacity = capacity_of(athlete, Level.CLUB)
    runs = [*runs_of(compile_timeline(plan, athlete).segments, athlete, Level.CLUB)]
    models = by_every_model(runs, capacity.middle, tau_for(runs, capacity.middle, capacity))
    return medians(models)[-1]
