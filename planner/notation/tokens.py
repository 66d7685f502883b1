"""The words of one line turned into lengths, rates and efforts, each within its bounds."""

from __future__ import annotations

import re
from fractions import Fraction

from lark import Token

from planner import limits
from planner.limits import Bounds
from planner.notation.mistake import MistakeError
from planner.plan import (
    Change,
    Cr10,
    Effort,
    ForMetres,
    ForSeconds,
    ForStrokes,
    HeartRate,
    HeartRateUnit,
    Length,
    Open,
    Pressure,
    Split,
    SplitOffset,
    TwoKPower,
)

_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_UNIT_SECONDS = {"h": 3600, "m": 60, "s": 1}


def column_of(token: Token) -> int:
    """Where a token begins on its line, counted from 0."""
    return (token.column or 1) - 1


def checked(token: Token, bounds: Bounds, value: Fraction | int) -> Fraction | int:
    """The value, or a mistake at the token when it is out of bounds."""
    if complaint := bounds.complaint(value):
        raise MistakeError(column_of(token), complaint, str(token))
    return value


def whole(token: Token, bounds: Bounds, value: Fraction | int) -> int:
    """A whole number within bounds."""
    return int(checked(token, bounds, value))


def seconds_of(token: Token) -> int:
    """Seconds of a time such as 3', 50", 1'30", 1:30, 2 min or 90 s."""
    text = str(token).lower().replace(" ", "")
    numbers = [int(n) for n in re.findall(r"\d+", text)]
    if "'" in text or ":" in text:
        if len(numbers) > 1 and numbers[1] > 59:
            raise MistakeError(column_of(token), f"{numbers[1]} seconds are more than 59", str(token))
        return numbers[0] * 60 + (numbers[1] if len(numbers) > 1 else 0)
    unit = text.lstrip("0123456789")[0]
    return numbers[0] * _UNIT_SECONDS.get(unit, 1)


def length_of(token: Token) -> Length:
    """The length a token stands for (a sided drill's length is made in `blocks`)."""
    match token.type:
        case "TIME":
            return ForSeconds(whole(token, limits.BLOCK_SECONDS, seconds_of(token)))
        case "METRES":
            metres = _number(token) * (1000 if "k" in str(token).lower() else 1)
            return ForMetres(whole(token, limits.BLOCK_METRES, metres))
        case "STROKES":
            return ForStrokes(whole(token, limits.BLOCK_STROKES, _number(token)))
    return Open()


def effort_of(token: Token) -> Effort:
    """The effort a token stands for."""
    text = str(token).lower()
    match token.type:
        case "PRESSURE":
            return Pressure(re.sub(r"three quarter|3/4", "three-quarter", text))
        case "SPLIT":
            minutes, seconds = text.lstrip("@ ").split(":")
            return Split(_fraction(token, limits.SPLIT, int(minutes) * 60 + Fraction(seconds)))
        case "OFFSET":
            return SplitOffset(_fraction(token, limits.SPLIT_OFFSET, _signed(text[2:])))
        case "CHANGE":
            return Change(_fraction(token, limits.CHANGE, _signed(text)))
        case "POWER":
            return TwoKPower(_fraction(token, limits.TWO_K_POWER, _number(token) / 100))
        case "CR10":
            return Cr10(_fraction(token, limits.CR10, _number(token)))
    return _heart_rate(token, text)


def _heart_rate(token: Token, text: str) -> HeartRate:
    if "%" not in text:
        return HeartRate(HeartRateUnit.BPM, whole(token, limits.HEART_BPM, _number(token)))
    unit = HeartRateUnit.PERCENT_MAX if "max" in text else HeartRateUnit.PERCENT_RESERVE
    return HeartRate(unit, whole(token, limits.HEART_PERCENT, _number(token)))


def _number(token: Token) -> Fraction:
    found = _NUMBER.search(str(token))
    return Fraction(found[0]) if found else Fraction(0)


def _signed(text: str) -> Fraction:
    bare = text.replace(" ", "").replace('"', "")
    return Fraction(bare) if bare else Fraction(0)


def _fraction(token: Token, bounds: Bounds, value: Fraction) -> Fraction:
    return Fraction(checked(token, bounds, value))
