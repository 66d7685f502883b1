"""A session for the piece ahead: warm-up, gap, main piece and cool-down as a plan, and why it is so."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from planner.age_words import words_for_age
from planner.athlete import Athlete, Level, Room
from planner.capacity import capacity_of
from planner.coaching import with_words
from planner.cool_down import cool_down_reason, cool_down_stages
from planner.easy_piece import steady_reason, steady_stages, technique_reason, technique_stages
from planner.errors import InputError, Problem
from planner.limits import Bounds
from planner.main_piece import Goal, all_out, goal_of, interval_steps
from planner.pacing import PACING_PLACE, Pacing, Shape, lengths_in, lengths_over
from planner.pieces import (
    LONGEST_SECONDS,
    Character,
    Expectation,
    IntervalSet,
    Piece,
    SteadyRow,
    Technique,
    TestPiece,
    expectation_of,
    name_of,
    whole_seconds,
)
from planner.plan import Gap, Part, PartKind, Plan, Step
from planner.readiness import Readiness, readiness_of
from planner.session_words import guess_told, set_up_of, setting_of, summary_of, title_of
from planner.timeline import compile_timeline
from planner.units import told_time
from planner.warm_up.builder import WarmUp, warm_up_for
from planner.warm_up.circumstances import Circumstances
from planner.warm_up.rules import MINUTES

GAP_SECONDS = Bounds("gap", 0, 1_800, "seconds", 5)
DEFAULT_MINUTES = 15


@dataclass(frozen=True, slots=True)
class SessionRequest:
    """What is rowed today, by whom and where. Without a level the athlete's counts.

    `warmup_minutes` of rowing; `gap_seconds`, where given, instead of the advised gap; `pacing`,
    `goal_seconds` over metres and `goal_metres` on the clock are for test pieces only.
    """

    piece: Piece
    warmup_minutes: int = DEFAULT_MINUTES
    athlete: Athlete | None = None
    level: Level | None = None
    room: Room = Room.NORMAL
    gap_seconds: int | None = None
    pacing: Pacing | None = None
    goal_seconds: Fraction | None = None
    goal_metres: int | None = None
    only_warm_up: bool = False

    @property
    def rower(self) -> Athlete:
        """The athlete at the level that counts, or nobody in particular at that level."""
        athlete = self.athlete or Athlete()
        return replace(athlete, level=self.level) if self.level else athlete


@dataclass(frozen=True, slots=True)
class Session:
    """A plan, why it is as it is, and the choices behind its warm-up."""

    plan: Plan
    reasons: tuple[str, ...]
    warm_up: WarmUp
    expected: Expectation


def session_of(request: SessionRequest) -> Session:
    """The session for a request. Raises InputError, with place and remedy, for one that cannot be met."""
    rower = request.rower
    expected = expectation_of(request.piece, request.athlete, rower.level)
    _check(request, expected)
    warm_up = warm_up_for(_circumstances(request, expected))
    before = Part(PartKind.WARM_UP, with_words(warm_up.stages, rower.level))
    after, after_reasons = (
        ((), ()) if request.only_warm_up else _after(request, expected, warm_up.choice.peak)
    )
    readiness = _readiness(request, before, after)
    gap = request.gap_seconds if request.gap_seconds is not None else advised_gap(readiness)
    waits = (Gap(gap),) if gap else ()
    for_age = words_for_age(request.athlete, request.piece)
    summary = summary_of(
        request.piece,
        expected,
        _goal(request, expected),
        rower.level,
        request.room,
        only_warm_up=request.only_warm_up,
    )
    plan = Plan(
        title=title_of(request.piece, request.warmup_minutes, only_warm_up=request.only_warm_up),
        summary=" ".join((summary, *for_age)),
        setup=set_up_of(expected),
        setting=setting_of(expected, rower.level),
        parts=(before, *waits, *after),
    )
    reasons = (*for_age, *warm_up.reasons, _gap_reason(gap, readiness, request), *after_reasons)
    return Session(plan, reasons, warm_up, expected)


def _after(
    request: SessionRequest, expected: Expectation, peak: int
) -> tuple[tuple[Part, ...], tuple[str, ...]]:
    """The main part and the cool-down, and why they are so."""
    main, reasons = _main(request, expected, peak)
    done = expected.character, whole_seconds(request.piece, expected), request.room
    down = with_words(cool_down_stages(*done), request.rower.level)
    parts = Part(PartKind.MAIN, main), Part(PartKind.COOL_DOWN, down)
    return parts, (*reasons, *guess_told(expected), cool_down_reason(*done))


def advised_gap(readiness: Readiness) -> int:
    """Seconds from the warm-up to the piece that leave the rower warm and unspent."""
    return readiness.advised_gap.best


def _readiness(request: SessionRequest, before: Part, after: tuple[Part, ...]) -> Readiness:
    """The start line after the warm-up, for any gap: judged as the plan itself will be."""
    wait = (Gap(request.gap_seconds),) if request.gap_seconds else ()
    timeline = compile_timeline(Plan("Before the piece", (before, *wait, *after)), request.rower)
    readiness = readiness_of(timeline, request.athlete, request.rower.level, request.room)
    assert readiness is not None, "a warm-up always comes before the start line"
    return readiness


def _gap_reason(gap: int, readiness: Readiness, request: SessionRequest) -> str:
    if request.gap_seconds is not None:
        return readiness.sentence
    if isinstance(request.piece, SteadyRow | Technique):
        return f"{told_time(gap)} off the seat comes before the row: stand, drink, see to the straps."
    low, _, high = readiness.advised_gap
    if readiness.gap_is_cut_short:
        return (
            f"A gap of {told_time(gap)} is for breath and legs, and no longer: so short a warm-up, or so "
            "cold a room, leaves you not warm through, and waiting would cool you. Stand, drink, keep a "
            "layer on."
        )
    span = f"from {told_time(low)} to {told_time(high)}" if low else f"up to {told_time(high)}"
    return (
        f"A gap of {told_time(gap)} lets breath and legs come back while the warmth stays; anything {span} "
        "will do. Stand, drink, keep a layer on."
    )


def _circumstances(request: SessionRequest, expected: Expectation) -> Circumstances:
    cap = request.piece.rate_cap if isinstance(request.piece, TestPiece) else None
    return Circumstances(
        character=expected.character,
        rate=expected.rate,
        piece_seconds=whole_seconds(request.piece, expected),
        capped=cap is not None and cap <= expected.rate,
        level=request.rower.level,
        room=request.room,
        minutes=request.warmup_minutes,
        spared=request.rower.is_child or request.rower.is_older,
    )


def _main(
    request: SessionRequest, expected: Expectation, peak: int
) -> tuple[tuple[Step, ...], tuple[str, ...]]:
    """The steps of the main part, and what was decided for them."""
    level = request.rower.level
    match request.piece:
        case TestPiece() as piece:
            goal = _goal(request, expected)
            pacing = request.pacing or Pacing(_default_shape(piece, expected, goal))
            try:
                found = all_out(piece, expected, pacing, goal, peak)
            except InputError as error:
                raise InputError(_at_their_places(error.problems, request)) from None
            return with_words(found.stages, level), (found.reason,)
        case IntervalSet() as intervals:
            capacity = capacity_of(request.athlete, level)
            repeat, reason = interval_steps(intervals, expected, capacity, level)
            return (repeat,), (reason,)
        case SteadyRow() as row:
            asked = row, level, request.room
            return with_words(steady_stages(*asked), level), (steady_reason(*asked),)
        case Technique() as practice:
            reason = technique_reason(practice, level)
            return with_words(technique_stages(practice, level), level), (reason,)


def _goal(request: SessionRequest, expected: Expectation) -> Goal | None:
    if not isinstance(request.piece, TestPiece):
        return None
    return goal_of(request.piece, expected, request.goal_seconds, request.goal_metres)


def _at_their_places(problems: Iterable[Problem], request: SessionRequest) -> Iterator[Problem]:
    """Each at what was sent: the pacing where that is wrong, else the goal or what it follows from."""
    for problem in problems:
        of_pacing = problem.pointer == PACING_PLACE and request.pacing is not None
        yield problem if of_pacing else replace(problem, pointer=_goals_place(request))


def _goals_place(request: SessionRequest) -> str:
    if request.goal_seconds is not None:
        return "/goal_seconds"
    return "/goal_metres" if request.goal_metres is not None else "/piece"


def _default_shape(piece: TestPiece, expected: Expectation, goal: Goal | None) -> Shape:
    """A short piece is quick off the start, if it has room for one; a longer one is even and costs least."""
    quick = Shape.QUICK_START
    if expected.character is not Character.EXPLOSIVE:
        return Shape.EVEN
    if piece.metres is not None:
        return quick if goal is not None and lengths_over(piece.metres, quick) else Shape.EVEN
    return quick if lengths_in(int(expected.seconds), quick) else Shape.EVEN


def _check(request: SessionRequest, expected: Expectation) -> None:
    """Refuses what cannot be planned, each mistake at its place."""
    if problems := tuple(_problems(request, expected)):
        raise InputError(problems)


def _problems(request: SessionRequest, expected: Expectation) -> Iterator[Problem]:
    if complaint := MINUTES.complaint(request.warmup_minutes):
        yield Problem(
            "/warmup_minutes", f"{complaint}: a warm-up takes from {MINUTES.low} to {MINUTES.high} minutes"
        )
    if request.gap_seconds is not None and (complaint := GAP_SECONDS.complaint(request.gap_seconds)):
        yield Problem("/gap_seconds", complaint)
    whole = whole_seconds(request.piece, expected)
    if whole > LONGEST_SECONDS and not request.only_warm_up:
        yield Problem(
            "/piece",
            f"{name_of(request.piece)} would take about {told_time(round(whole))}, and a piece lasts at most "
            f"{told_time(LONGEST_SECONDS)}: choose a shorter one",
        )
    yield from _goal_problems(request)


def _goal_problems(request: SessionRequest) -> Iterator[Problem]:
    """Pacing and goals belong to test pieces, and each kind of length has its own kind of goal."""
    given = {
        "pacing": request.pacing,
        "goal_seconds": request.goal_seconds,
        "goal_metres": request.goal_metres,
    }
    match request.piece:
        case TestPiece(metres=None):
            wrong = {
                "goal_seconds": "a piece on the clock has its goal in metres: give metres instead of a time"
            }
        case TestPiece():
            wrong = {"goal_metres": "a piece over metres has its goal in time: give a time instead of metres"}
        case _:
            wrong = dict.fromkeys(given, "only a test piece has a goal and a pacing: leave it out here")
    yield from (Problem(f"/{name}", wrong[name]) for name in wrong if given[name] is not None)
