"""What an athlete's results say of every standard piece, and of the 2 km split that sets all other splits."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, replace
from fractions import Fraction

from planner.athlete import Athlete, Level, Result
from planner.critical_power import MODEL_SECONDS, Examined, Fit, Refusal, examine
from planner.curve import curve_of, metres_in, rowed
from planner.customs import (
    Custom,
    Length,
    by_doubling,
    by_power_law,
    holds,
    metres_by_doubling,
    metres_by_power_law,
)
from planner.pace import power_of_split
from planner.trials import kept_of

TWO_K_METRES = 2000

ASSUMED_TWO_K_SPLIT = {
    Level.NOVICE: Fraction(135),
    Level.CLUB: Fraction(120),
    Level.TRAINED: Fraction(105),
}
"""Only for a rough length of metre blocks when there is no result: judgement [C]."""

LEAST_CRITICAL, MOST_CRITICAL = 0.75, 0.97
"""Critical power as a share of 2 km power in rowers of all kinds: outside it, some result was not flat out.
Judgement [C], wide around the shares that known rowers come to (facts 3.2: 0.88 to 0.92 [=])."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece that people test themselves on: so many metres, or so many seconds."""

    name: str
    metres: int | None = None
    seconds: int | None = None


TWO_K = Piece("2 km", metres=TWO_K_METRES)
STANDARD_PIECES = (
    Piece("100 m", metres=100),
    Piece("500 m", metres=500),
    Piece("1 km", metres=1000),
    TWO_K,
    Piece("5 km", metres=5000),
    Piece("6 km", metres=6000),
    Piece("10 km", metres=10_000),
    Piece("21 097 m", metres=21_097),
    Piece("42 195 m", metres=42_195),
    Piece("1 min", seconds=60),
    Piece("4 min", seconds=240),
    Piece("30 min", seconds=1800),
    Piece("60 min", seconds=3600),
)


@dataclass(frozen=True, slots=True)
class Said:
    """What one custom says of a piece, and whether its range holds for it."""

    custom: Custom
    predicted: Length
    within_range: bool


@dataclass(frozen=True, slots=True)
class Prediction:
    """A piece as it will likely go, between the quickest and the slowest that is said of it.

    `source` is the index of the result that the customs start from. `measured` says that this result is the
    piece itself, so that nothing had to be predicted.
    """

    piece: Piece
    quickest: Length
    likely: Length
    slowest: Length
    by: tuple[Said, ...]
    source: int
    measured: bool

    @property
    def split(self) -> float:
        """Seconds per 500 m of the likely."""
        return self.likely.seconds * 500 / self.likely.metres

    @property
    def within_range(self) -> bool:
        """Whether it was rowed, or some custom reaches it from its result; else it is a guess."""
        return self.measured or any(said.within_range for said in self.by)


@dataclass(frozen=True, slots=True)
class TwoK:
    """A 2 km split in seconds per 500 m, to the tenth, between the quickest and the slowest it may be."""

    split: Fraction
    low: Fraction
    high: Fraction


def tenths_of(value: float) -> Fraction:
    """The nearest tenth of a computed number of seconds, a tie going up."""
    return Fraction(math.floor(value * 10 + 0.5), 10)


def two_k_of(athlete: Athlete | None) -> TwoK | None:
    """The 2 km split of an athlete, or None without a result.

    A 2000 m result is it; else the line through all results says it (`curve`).
    """
    if athlete is None or not athlete.results:
        return None
    first, *others = athlete.results
    if first.metres == TWO_K.metres and not others:
        split = tenths_of(float(first.split))
        return TwoK(split, split, split)
    return two_k_by(athlete.results, examined_of(athlete.results))


_examined: ContextVar[dict[tuple[Result, ...], Examined] | None] = ContextVar("_examined", default=None)


@contextmanager
def results_examined_once() -> Iterator[None]:
    """Until its end the same results are examined once; then nothing about anybody is remembered."""
    before = _examined.set({})
    try:
        yield
    finally:
        _examined.reset(before)


def examined_of(results: Sequence[Result]) -> Examined:
    """The results examined; a fit whose critical power cannot go with the 2 km of the same results is set
    aside, so that nothing rests on it."""
    remembered, key = _examined.get(), tuple(results)
    if remembered is None:
        return _examine(results)
    if key not in remembered:
        remembered[key] = _examine(results)
    return remembered[key]


def _examine(results: Sequence[Result]) -> Examined:
    examined = examine(results)
    if examined.fit is None:
        return examined
    share = examined.fit.watts / float(power_of_split(two_k_by(results, examined).split))
    if LEAST_CRITICAL <= share <= MOST_CRITICAL:
        return examined
    return replace(examined, fit=None, refusal=Refusal.UNLIKELY, unlikely_share=share)


def two_k_by(results: Sequence[Result], examined: Examined) -> TwoK:
    """The same from results, at least one, that have been examined already."""
    found = predict(TWO_K, results, examined)
    split, low, high = (
        tenths_of(length.seconds / 4) for length in (found.likely, found.quickest, found.slowest)
    )
    return TwoK(split, low, high)


def predictions_of(results: Sequence[Result], examined: Examined) -> tuple[Prediction, ...]:
    """Every standard piece; none without a result."""
    return tuple(predict(piece, results, examined) for piece in STANDARD_PIECES) if results else ()


def predict(piece: Piece, results: Sequence[Result], examined: Examined) -> Prediction:
    """One piece from results, at least one, of which those that were left out as wrong have no say.

    The likely is the result itself, else what the line through all results says; of a piece on the clock the
    distance on that line. The ends come from the laws that rowers have. What each custom says is told beside
    it, from the nearest result.
    """
    source = min(kept_of(results, examined.left_out), key=lambda index: _away(piece, results[index]))
    result, fit = results[source], examined.fit
    said = [_by_custom(custom, piece, result) for custom in (Custom.POWER_LAW, Custom.DOUBLING)]
    said += [_by_fit(fit, piece)] if fit else []
    near = rowed(result)
    if _away(piece, result) == 0:
        return Prediction(piece, near, near, near, tuple(said), source, measured=True)
    curve = curve_of(results, examined)
    ends = (curve.quickest, curve.likely, curve.slowest)
    quickest, likely, slowest = (_on_the_line(piece, seconds_for, near) for seconds_for in ends)
    return Prediction(piece, quickest, likely, slowest, tuple(said), source, measured=False)


def _on_the_line(piece: Piece, seconds_for: Callable[[float], float], near: Length) -> Length:
    if piece.metres is not None:
        return Length(piece.metres, seconds_for(piece.metres))
    return Length(metres_in(_seconds(piece), seconds_for, near), _seconds(piece))


def _away(piece: Piece, result: Result) -> float:
    """How far a result is from a piece, as a ratio (logarithm) of distances or of times."""
    if piece.metres is not None:
        return abs(math.log(result.metres / piece.metres))
    return abs(math.log(float(result.seconds) / _seconds(piece)))


def _by_custom(custom: Custom, piece: Piece, result: Result) -> Said:
    predicted = (_by_law if custom is Custom.POWER_LAW else _by_doubling)(piece, result)
    return Said(custom, predicted, holds(custom, result, predicted))


def _by_law(piece: Piece, result: Result) -> Length:
    if piece.metres is not None:
        return Length(piece.metres, by_power_law(result, piece.metres))
    return Length(metres_by_power_law(result, _seconds(piece)), _seconds(piece))


def _by_doubling(piece: Piece, result: Result) -> Length:
    if piece.metres is not None:
        return Length(piece.metres, by_doubling(result, piece.metres))
    return Length(metres_by_doubling(result, _seconds(piece)), _seconds(piece))


def _by_fit(fit: Fit, piece: Piece) -> Said:
    if piece.metres is not None:
        predicted = Length(piece.metres, fit.seconds_for(piece.metres))
    else:
        predicted = Length(fit.metres_in(_seconds(piece)), _seconds(piece))
    low, high = MODEL_SECONDS
    return Said(Custom.CRITICAL_POWER, predicted, low <= predicted.seconds <= high and not fit.stretched)


def _seconds(piece: Piece) -> float:
    assert piece.seconds is not None, "a piece has metres or seconds"
    return piece.seconds
