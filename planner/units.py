"""Exact seconds and metres: reading and printing "7:42.0", "2 km", "90 s"."""

from __future__ import annotations

import re
from fractions import Fraction

HALF = Fraction(1, 2)

_CLOCK = re.compile(r"(?:(\d{1,2}):)?(\d{1,4}):([0-5]\d)(?:\.(\d))?", re.ASCII)
_SECONDS = re.compile(r"(\d{1,6})(?:\.(\d))?", re.ASCII)


def round_half_up(value: Fraction) -> int:
    """The nearest whole number, a tie going up."""
    return (2 * value.numerator + value.denominator) // (2 * value.denominator)


def to_tenths(value: Fraction) -> Fraction:
    """The nearest tenth, a tie going up: the step in which machines show a split."""
    return Fraction(round_half_up(value * 10), 10)


def read_clock(text: str) -> Fraction:
    """Seconds from "h:mm:ss", "m:ss" or plain seconds, each with at most one decimal.

    Raises ValueError, saying what would do, for anything else.
    """
    if match := _CLOCK.fullmatch(text):
        hours, minutes, seconds, tenth = match.groups()
        whole = int(hours or 0) * 3600 + int(minutes) * 60 + int(seconds)
        return whole + Fraction(int(tenth or 0), 10)
    if match := _SECONDS.fullmatch(text):
        return int(match[1]) + Fraction(int(match[2] or 0), 10)
    raise ValueError(f'cannot read the time "{text}": write it as 7:42.0, 1:05:00 or 90')


def clock(seconds: Fraction | int) -> str:
    """A length of time as people write it: 7:42, 7:42.5, 1:05:00 (tenths only where there are any)."""
    tenths = round_half_up(Fraction(seconds) * 10)
    whole, tenth = divmod(tenths, 10)
    minutes, second = divmod(whole, 60)
    hours, minute = divmod(minutes, 60)
    text = f"{hours}:{minute:02}:{second:02}" if hours else f"{minutes}:{second:02}"
    return f"{text}.{tenth}" if tenth else text


def told_time(seconds: Fraction | float) -> str:
    """A length of time in a sentence: 22.6 s below a minute, and as a clock shows it from there on."""
    tenths = round_half_up(Fraction(seconds) * 10)
    if tenths >= 600:
        return clock(Fraction(tenths, 10))
    return f"{tenths // 10}.{tenths % 10} s" if tenths % 10 else f"{tenths // 10} s"


def told_metres(metres: int) -> str:
    """A distance in a sentence, long ones in groups of three digits: 2000 m, 42 195 m."""
    return f"{metres:,} m".replace(",", " ") if metres >= 10_000 else f"{metres} m"


def split_clock(seconds: Fraction) -> str:
    """A split as machines show it, always with its tenth: 1:55.5."""
    text = clock(to_tenths(seconds))
    return text if "." in text else f"{text}.0"
