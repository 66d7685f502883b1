"""The words of one line turned into lengths, rates and efforts, each within its bounds."""

from __future__ import annotations

import re
from fractions import Fraction

from lark import Token

from planner import limits
from planner.limits import Bounds
from planner.notation.hints import too_long
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
_SIGNED = re.compile(r"([+-])\s*(\d+(?:\.\d+)?)")
_COUNT_AND_UNIT = re.compile(r"(\d+)\s*([^\d\s]?)")
_SECONDS_IN = {"h": 3600, "m": 60, "'": 60, "s": 1, '"': 1}
_PRESSURES = {
    "easy": Pressure.LIGHT,
    "1/2": Pressure.HALF,
    "½": Pressure.HALF,
    "three": Pressure.THREE_QUARTER,
    "3/4": Pressure.THREE_QUARTER,
    "¾": Pressure.THREE_QUARTER,
}


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


def not_too_long(token: Token, bounds: Bounds, value: Fraction | int) -> int:
    """The length within its bounds; one above them is told in the words it was written in."""
    if value > bounds.high:
        raise MistakeError(column_of(token), too_long(str(token)), str(token))
    return whole(token, bounds, value)


def seconds_of(token: Token) -> int:
    """Seconds of a time such as 3', 50", 1'30", 5'30, 1:30, 2 min, 90 s or 1 h 10 min."""
    text = str(token).lower().replace("''", '"')
    if ":" in text:
        counts = [int(count) for count in text.split(":")]
        units = [3600, 60, 1][-len(counts) :]
    else:
        pairs = _COUNT_AND_UNIT.findall(text)
        counts = [int(count) for count, _ in pairs]
        units = [_SECONDS_IN.get(unit, 0) for _, unit in pairs]
        # Only the second of two may stand without a unit, which is then the next smaller one: 5'30, 1h10.
        units = [unit or units[0] // 60 for unit in units]
    for count, unit in zip(counts[1:], units[1:], strict=True):
        if count > 59:
            name = "seconds" if unit == 1 else "minutes"
            raise MistakeError(column_of(token), f"{count} {name} are more than 59", str(token))
    return sum(count * unit for count, unit in zip(counts, units, strict=True))


def timed(token: Token, bounds: Bounds = limits.BLOCK_SECONDS) -> int:
    """Seconds of a time, within bounds."""
    seconds = seconds_of(token)
    if bounds is limits.BLOCK_SECONDS:
        return not_too_long(token, bounds, seconds)
    return whole(token, bounds, seconds)


def length_of(token: Token) -> Length:
    """The length a token stands for (that of a drill by sides is made in `drafts`)."""
    match token.type:
        case "TIME":
            return ForSeconds(timed(token))
        case "METRES":
            return ForMetres(_metres(token))
        case "STROKES":
            return ForStrokes(not_too_long(token, limits.BLOCK_STROKES, _number(token)))
    return Open()


def _metres(token: Token) -> int:
    """Metres; so few that minutes were meant are a mistake that says so."""
    metres = _number(token) * (1000 if "k" in str(token).lower() else 1)
    if 0 < metres < limits.BLOCK_METRES.low:
        least = limits.BLOCK_METRES.low
        sentence = f"{token} is {metres} metres, under {least}: minutes are written {metres}'"
        raise MistakeError(column_of(token), sentence, str(token))
    return not_too_long(token, limits.BLOCK_METRES, metres)


def effort_of(token: Token) -> Effort:
    """The effort a token stands for."""
    text = str(token).lower()
    match token.type:
        case "PRESSURE":
            return _pressure(text)
        case "SPLIT":
            return Split(_fraction(token, limits.SPLIT, _split(token, text)))
        case "OFFSET":
            return SplitOffset(_fraction(token, limits.SPLIT_OFFSET, _signed(text)))
        case "CHANGE":
            return Change(_fraction(token, limits.CHANGE, _signed(text)))
        case "POWER":
            return TwoKPower(_fraction(token, limits.TWO_K_POWER, _number(token) / 100))
        case "CR10":
            return Cr10(_fraction(token, limits.CR10, _number(token)))
    return _heart_rate(token, text)


def _pressure(text: str) -> Pressure:
    word = re.split(r"[\s-]", text)[0]
    return _PRESSURES.get(word) or Pressure(word)


def _split(token: Token, text: str) -> Fraction:
    minutes, seconds = _NUMBER.findall(text.partition("/")[0])
    if Fraction(seconds) >= 60:
        raise MistakeError(column_of(token), f"{seconds} seconds of a split are more than 59", str(token))
    return int(minutes) * 60 + Fraction(seconds)


def _heart_rate(token: Token, text: str) -> HeartRate:
    if "%" not in text:
        return HeartRate(HeartRateUnit.BPM, whole(token, limits.HEART_BPM, _number(token)))
    unit = HeartRateUnit.PERCENT_MAX if "max" in text else HeartRateUnit.PERCENT_RESERVE
    return HeartRate(unit, whole(token, limits.HEART_PERCENT, _number(token)))


def _number(token: Token) -> Fraction:
    found = _NUMBER.search(token.replace(",", "."))
    return Fraction(found[0]) if found else Fraction(0)


def _signed(text: str) -> Fraction:
    """The number behind a plus or minus, or 0 where there is none: 2k alone."""
    found = _SIGNED.search(text)
    return Fraction(found[1] + found[2]) if found else Fraction(0)


def _fraction(token: Token, bounds: Bounds, value: Fraction) -> Fraction:
    return Fraction(checked(token, bounds, value))
