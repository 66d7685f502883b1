"""What a session is for: test pieces, interval sets, steady rowing, technique; how long and how quick."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from planner.athlete import Athlete, Level
from planner.endurance import REPEATED_SLOWER, Endurance, endurance_of, repetitions_alike
from planner.intensity import RACE_RATE, WORK_PER_STROKE, split_at_fraction
from planner.limits import Bounds
from planner.pace import split_of
from planner.plan import Pressure
from planner.prediction import tenths_of
from planner.units import clock, told_metres

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
    they rest on the level alone. `alike_seconds` is how long the one piece lasts that it is
    rowed like: of all but sets, itself. `within_range` says that some custom reaches it from the result that
    it rests on; `flat_out` that it is the best there is in it, with no cap to slow it.
    """

    character: Character
    seconds: Fraction
    metres: Fraction
    split: Fraction
    share: float
    rate: int
    known: bool
    alike_seconds: Fraction
    within_range: bool = True
    flat_out: bool = False


def name_of(piece: Piece) -> str:
    """What a coach calls the piece: 2 km, 30 min at no more than r20, 6 × 500 m."""
    match piece:
        case TestPiece(metres, seconds, cap):
            return _length_name(metres, seconds) + (f" at no more than r{cap}" if cap else "")
        case IntervalSet(times, metres, seconds, rest):
            return f"{times} × {_length_name(metres, seconds)} / {_time_name(rest)}"
        case SteadyRow(seconds):
            return f"{_time_name(seconds)} steady"
        case Technique(seconds):
            return f"{_time_name(seconds)} of technique"


def _length_name(metres: int | None, seconds: int | None) -> str:
    if metres is None:
        return _time_name(seconds or 0)
    if metres in _LONG_NAMES:
        return _LONG_NAMES[metres]
    return f"{metres // 1000} km" if metres >= 1000 and metres % 1000 == 0 else told_metres(metres)


_LONG_NAMES = {21_097: "half marathon", 42_195: "marathon"}


def _time_name(seconds: int) -> str:
    if seconds >= 60:
        return f"{seconds // 60} min" if seconds % 60 == 0 else clock(seconds)
    return f"{seconds} s"


def expectation_of(piece: Piece, athlete: Athlete | None, level: Level) -> Expectation:
    """How long, how far and how quick the piece will be; of a set, one repetition at the quickest."""
    endurance = endurance_of(athlete, level)
    match piece:
        case SteadyRow(seconds) | Technique(seconds):
            metres = Fraction(seconds) * 500 / split_at_fraction(endurance.two_k_split, EASY_SHARE)
            return _expectation(endurance, Fraction(seconds), metres, Character.EASY, EASY_RATE)
        case TestPiece(metres_asked, seconds_asked, cap):
            best = _best(endurance, metres_asked, seconds_asked)
            time, far = best.seconds, best.metres
            if cap:
                slowest = _capped_split(endurance.two_k_split, cap, level)
                time, far = _no_quicker(best, metres_asked, slowest)
            free = free_rate(time, level)
            rate = min(free, cap) if cap else free
            found = _expectation(endurance, time, far, character_of(time), rate)
            capped = (time, far) != (best.seconds, best.metres)
            return replace(found, within_range=capped or best.within_range, flat_out=not capped)
        case IntervalSet():
            return _of_a_set(piece, endurance, level)


def _of_a_set(asked: IntervalSet, endurance: Endurance, level: Level) -> Expectation:
    """One repetition, as quick as the one piece that the set is like, and slower than one flat out."""
    once = _best(endurance, asked.metres, asked.seconds)
    alike = repetitions_alike(asked.times, float(once.seconds), asked.rest_seconds)
    whole = _best(
        endurance,
        None if asked.metres is None else round(asked.metres * alike),
        None if asked.seconds is None else round(asked.seconds * alike),
    )
    slowest = max(once.split * (1 + REPEATED_SLOWER), whole.split)
    time, far = _no_quicker(once, asked.metres, slowest)
    found = _expectation(endurance, time, far, character_of(whole.seconds), free_rate(whole.seconds, level))
    return replace(
        found,
        split=slowest,
        share=endurance.share_at(slowest),
        alike_seconds=whole.seconds,
        within_range=whole.within_range,
    )


def whole_seconds(piece: Piece, expected: Expectation) -> float:
    """How long the main part is expected to take, rests of a set included."""
    if isinstance(piece, IntervalSet):
        return float(piece.times * expected.seconds + (piece.times - 1) * piece.rest_seconds)
    return float(expected.seconds)


class _Best(NamedTuple):
    """Seconds, to the tenth, and metres, to the whole one, of the best effort; whether it is within range."""

    seconds: Fraction
    metres: Fraction
    within_range: bool

    @property
    def split(self) -> Fraction:
        return split_of(self.metres, self.seconds)


def _best(endurance: Endurance, metres: int | None, seconds: int | None) -> _Best:
    """The best effort over a distance or a time."""
    found = endurance.over(metres, seconds)
    if metres is not None:
        return _Best(tenths_of(found.likely.seconds), Fraction(metres), found.within_range)
    return _Best(Fraction(seconds or 0), Fraction(round(found.likely.metres)), found.within_range)


def _no_quicker(best: _Best, metres_asked: int | None, slowest: Fraction) -> tuple[Fraction, Fraction]:
    """Its seconds and metres at no less than a split, in tenths and whole metres again."""
    if best.split >= slowest:
        return best.seconds, best.metres
    if metres_asked is not None:
        return tenths_of(float(best.metres * slowest / 500)), best.metres
    return best.seconds, Fraction(round(best.seconds * 500 / slowest))


def _expectation(
    endurance: Endurance, seconds: Fraction, metres: Fraction, character: Character, rate: int
) -> Expectation:
    split = split_of(metres, seconds)
    share = endurance.share_at(split)
    return Expectation(character, seconds, metres, split, share, rate, endurance.known, seconds)


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
