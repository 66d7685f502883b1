"""How a piece is paced, in a sentence made from the very legs that are rowed."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction

from planner.pacing import Leg, Pacing, Shape, lengths_in, lengths_over, stretches

EVEN = "The pace is even, which costs least."
TOO_SHORT = "It is too short to be paced: push from the first stroke; the target is the average of the piece."


def spread_told(legs: Sequence[Leg], pacing: Pacing, *, by_metres: bool, target: Callable[[Leg], str]) -> str:
    """How the pace goes over the legs; `target` says what a stretch of them is rowed at."""
    told = [target(stretch) for stretch in rowed_over(legs, pacing, by_metres=by_metres)]
    match pacing.shape:
        case Shape.EVEN:
            lengths = lengths_over if by_metres else lengths_in
            whole = int(sum(leg.metres if by_metres else leg.seconds for leg in legs))
            return EVEN if lengths(whole, Shape.QUICK_START) else TOO_SHORT
        case Shape.QUICK_START:
            start, middle, end = told
            left = ", which takes what is left" if end != middle else ""
            return f"It starts at {start}, settles at {middle} and ends at {end}{left}."
        case Shape.NEGATIVE:
            return f"{_quarters(told)}, so that nothing is spent too early."
        case Shape.OWN:
            return f"{_quarters(told)}, by your own offsets."


def missed_told(legs: Sequence[Leg], seconds: Fraction, metres: int, *, by_metres: bool) -> str:
    """By how much the legs miss a goal of so many seconds or metres, or nothing where they come to it."""
    if by_metres:
        off, unit = abs(sum((leg.seconds for leg in legs), Fraction(0)) - seconds), "s"
    else:
        off, unit = abs(sum((leg.metres for leg in legs), Fraction(0)) - metres), "m"
    if not off:
        return ""
    amount = f"{float(off):.2f}" if off >= Fraction(1, 100) else "less than 0.01"
    return f"Splits go in tenths, so together the legs miss it by {amount} {unit}."


def rowed_over(legs: Sequence[Leg], pacing: Pacing, *, by_metres: bool) -> tuple[Leg, ...]:
    """What the legs come to over each stretch of the shape: all of it; start, middle and end; or quarters.

    The stretches are shares of the metres or of the seconds of the piece.
    """
    lengths = [leg.metres if by_metres else leg.seconds for leg in legs]
    parts, begins = [], Fraction(0)
    for share, _ in stretches(pacing, len(legs)):
        ends = begins + share * sum(lengths)
        parts.append(_between(legs, lengths, begins, ends))
        begins = ends
    return tuple(parts)


def _between(legs: Sequence[Leg], lengths: Sequence[Fraction], begins: Fraction, ends: Fraction) -> Leg:
    metres = seconds = at = Fraction(0)
    for leg, length in zip(legs, lengths, strict=True):
        share = max(min(ends, at + length) - max(begins, at), Fraction(0)) / length
        metres, seconds, at = metres + share * leg.metres, seconds + share * leg.seconds, at + length
    return Leg(metres, seconds)


def _quarters(told: Sequence[str]) -> str:
    *most, last = told
    return f"The quarters come to {', '.join(most)} and {last}"
