"""What a session is for: test pieces, interval sets, steady rowing, technique; how long and how quick."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from planner.athlete import Athlete, Level, Result
from planner.critical_power import examine
from planner.intensity import RACE_RATE, WORK_PER_STROKE, split_at_fraction
from planner.limits import Bounds
from planner.pace import split_of
from planner.plan import Pressure
from planner.prediction import ASSUMED_TWO_K_SPLIT, TWO_K_METRES, predict, tenths_of, two_k_of
from planner.prediction import Piece as Length
from planner.units import clock

LONGEST_SECONDS = 14_400
"""No piece lasts longer than four hours: beyond that neither prediction nor readiness says anything."""
TEST_METRES = Bounds("length of the piece", 100, 42_195, "metres")
TEST_SECONDS = Bounds("length of the piece", 30, LONGEST_SECONDS, "seconds", 30)
RATE_CAP = Bounds("rate cap", 18, 32, "strokes a minute", 2)
REPETITIONS = Bounds("repetitions", 2, 40, "times")
REPETITION_METRES = Bounds("length of a repetition", 100, 10_000, "metres")
REPETITION_SECONDS = Bounds("length of a repetition", 10, 3_600, "seconds", 5)
BREAK_SECONDS = Bounds("rest between repetitions", 15, 1_200, "seconds", 5)
STEADY_SECONDS = Bounds("length of the row", 300, LONGEST_SECONDS, "seconds", 60)
TECHNIQUE_SECONDS = Bounds("length of the practice", 300, 3_600, "seconds", 60)


@dataclass(frozen=True, slots=True)
class TestPiece:
    """As far or as quick as it goes, over metres or on the clock; perhaps with a cap on the rate."""

    __test__ = False
    metres: int | None = None
    seconds: int | None = None
    rate_cap: int | None = None


LEFT_PERCENT = 40
"""Of the reserve after the last repetition when nothing else is asked for. The models of recovery come from
cycling and are kind to rests, and a training set is no test: with this share the targets come to those that
coaches give, about the 2 km split for 8 x 500 m with 2 min rest [C]."""


@dataclass(frozen=True, slots=True)
class IntervalSet:
    """So many repetitions over metres or on the clock, with rests of so many seconds between them.

    `leave_percent` of the reserve above critical power is to be left after the last one.
    """

    times: int
    metres: int | None = None
    seconds: int | None = None
    rest_seconds: int = 120
    leave_percent: int = LEFT_PERCENT


@dataclass(frozen=True, slots=True)
class SteadyRow:
    """Rowing at which one can talk."""

    seconds: int


@dataclass(frozen=True, slots=True)
class Technique:
    """Drills and easy rowing in turn."""

    seconds: int


Piece = TestPiece | IntervalSet | SteadyRow | Technique

STANDARD_METRES = (100, 500, 1000, 2000, 5000, 6000, 10_000, 21_097)
STANDARD_SECONDS = (60, 240, 1800, 3600)
STANDARD_PIECES: tuple[TestPiece, ...] = (
    *(TestPiece(metres=metres) for metres in STANDARD_METRES),
    *(TestPiece(seconds=seconds) for seconds in STANDARD_SECONDS),
)


class Character(StrEnum):
    """What a piece asks of a body, and so what has to stand before it."""

    EXPLOSIVE = "explosive"
    MIDDLE = "middle"
    LONG = "long"
    EASY = "easy"


# Where one character ends and the next begins, in expected seconds: judgement [C]. A 500 m piece is explosive
# at any level, a 1 km piece and four minutes are not; a 2 km piece is middle even for a slow beginner.
_EXPLOSIVE_BELOW = 165
_MIDDLE_BELOW = 780

# The rate at which a piece is rowed, by its expected seconds: common practice [C]. All of them are rates
# whose strokes a clock's hand can check, or at which half a minute holds whole strokes.
_RATES: tuple[tuple[int, dict[Level, int]], ...] = (
    (30, {Level.NOVICE: 32, Level.CLUB: 36, Level.TRAINED: 40}),
    (_EXPLOSIVE_BELOW, {Level.NOVICE: 30, Level.CLUB: 34, Level.TRAINED: 36}),
    (300, {Level.NOVICE: 28, Level.CLUB: 32, Level.TRAINED: 34}),
    (_MIDDLE_BELOW, RACE_RATE),
    (1700, {Level.NOVICE: 26, Level.CLUB: 26, Level.TRAINED: 28}),
    (3000, {Level.NOVICE: 24, Level.CLUB: 24, Level.TRAINED: 26}),
    (LONGEST_SECONDS + 1, {Level.NOVICE: 22, Level.CLUB: 22, Level.TRAINED: 24}),
)
EASY_RATE = 20
EASY_SHARE = Fraction(45, 100)
"""The share of 2 km power of easy rowing, between light and three-quarter at r20 (facts 6.6 [C])."""


@dataclass(frozen=True, slots=True)
class Expectation:
    """What to expect of a piece for one rower.

    Seconds and metres rowed, seconds per 500 m, share of 2 km power, strokes a minute. Where `known` is false
    they rest on the level alone.
    """

    character: Character
    seconds: Fraction
    metres: Fraction
    split: Fraction
    share: float
    rate: int
    known: bool


def name_of(piece: Piece) -> str:
    """What a coach calls the piece: 2 km, 30 min at r20, 6 x 500 m."""
    match piece:
        case TestPiece(metres, seconds, cap):
            return _length_name(metres, seconds) + (f" at r{cap}" if cap else "")
        case IntervalSet(times, metres, seconds, rest):
            return f"{times} x {_length_name(metres, seconds)} / {_time_name(rest)}"
        case SteadyRow(seconds):
            return f"{_time_name(seconds)} steady"
        case Technique(seconds):
            return f"{_time_name(seconds)} of technique"


def _length_name(metres: int | None, seconds: int | None) -> str:
    if metres is None:
        return _time_name(seconds or 0)
    if metres == 21_097:
        return "half marathon"
    return f"{metres // 1000} km" if metres >= 1000 and metres % 1000 == 0 else f"{metres} m"


def _time_name(seconds: int) -> str:
    if seconds >= 60:
        return f"{seconds // 60} min" if seconds % 60 == 0 else clock(seconds)
    return f"{seconds} s"


def expectation_of(piece: Piece, athlete: Athlete | None, level: Level) -> Expectation:
    """How long, how far and how quick the piece will be; for an interval set, one of its repetitions."""
    two_k = two_k_of(athlete)
    two_k_split = two_k.split if two_k else ASSUMED_TWO_K_SPLIT[level]
    results = athlete.results if athlete and athlete.results else (Result(TWO_K_METRES, two_k_split * 4),)
    known = two_k is not None
    match piece:
        case SteadyRow(seconds) | Technique(seconds):
            metres = Fraction(seconds) * 500 / split_at_fraction(two_k_split, EASY_SHARE)
            return _expectation(Fraction(seconds), metres, Character.EASY, EASY_RATE, two_k_split, known)
        case TestPiece(metres_asked, seconds_asked, cap):
            time, far = _best(results, metres_asked, seconds_asked)
            if cap:
                time, far = _capped(time, far, metres_asked, _capped_split(two_k_split, cap, level))
            free = free_rate(time, level)
            rate = min(free, cap) if cap else free
            return _expectation(time, far, character_of(time), rate, two_k_split, known)
        case IntervalSet(times, metres_asked, seconds_asked):
            like, far = _best(results, _half_of(times, metres_asked), _half_of(times, seconds_asked))
            share = Fraction(2, times)
            rate = free_rate(like, level)
            return _expectation(like * share, far * share, character_of(like), rate, two_k_split, known)


def whole_seconds(piece: Piece, expected: Expectation) -> float:
    """How long the main part is expected to take, rests of a set included."""
    if isinstance(piece, IntervalSet):
        return float(piece.times * expected.seconds + (piece.times - 1) * piece.rest_seconds)
    return float(expected.seconds)


def _half_of(times: int, length: int | None) -> int | None:
    """The piece that a set is like: half its work, rowed in one go. Judgement [C]."""
    return None if length is None else times * length // 2


def _best(results: Sequence[Result], metres: int | None, seconds: int | None) -> tuple[Fraction, Fraction]:
    """Seconds, to the tenth, and metres, to the whole one, of the best effort over a distance or a time."""
    likely = predict(Length("", metres, seconds), results, examine(results)).likely
    if metres is not None:
        return tenths_of(likely.seconds), Fraction(metres)
    return Fraction(seconds or 0), Fraction(round(likely.metres))


def _capped(
    seconds: Fraction, metres: Fraction, metres_asked: int | None, slowest: Fraction
) -> tuple[Fraction, Fraction]:
    """The same at no less than a split, in tenths and whole metres again."""
    if split_of(metres, seconds) >= slowest:
        return seconds, metres
    if metres_asked is not None:
        return tenths_of(float(metres * slowest / 500)), metres
    return seconds, Fraction(round(seconds * 500 / slowest))


def _expectation(
    seconds: Fraction,
    metres: Fraction,
    character: Character,
    rate: int,
    two_k_split: Fraction,
    known: bool,
) -> Expectation:
    split = split_of(metres, seconds)
    share = (float(two_k_split) / float(split)) ** 3
    return Expectation(character, seconds, metres, split, share, rate, known)


def free_rate(seconds: Fraction | int, level: Level) -> int:
    """The rate at which a piece of this many seconds is rowed when nothing caps it."""
    return next(rates[level] for below, rates in _RATES if seconds < below or below > LONGEST_SECONDS)


def character_of(seconds: Fraction | int) -> Character:
    """What an all-out piece of this many seconds asks of a body."""
    if seconds < _EXPLOSIVE_BELOW:
        return Character.EXPLOSIVE
    return Character.MIDDLE if seconds < _MIDDLE_BELOW else Character.LONG


def _capped_split(two_k_split: Fraction, cap: int, level: Level) -> Fraction:
    """The split of a full stroke at the cap: more cannot be got out of it for long (facts 6.6 [C])."""
    return split_at_fraction(two_k_split, WORK_PER_STROKE[Pressure.FULL] * cap / RACE_RATE[level])
