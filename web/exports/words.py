"""A segment in the words of the trade, as the app's screens say it: "r26 three-quarter"."""

from __future__ import annotations

import re
from fractions import Fraction

from planner.intensity import HeartRateTarget, Target
from planner.plan import Setting
from planner.stretches import Ends, Kind, Stretch, Turn
from planner.timeline import Segment
from planner.units import clock, split_clock

PART_NAMES = {"warm-up": "Warm-up", "main": "Main piece", "cool-down": "Cool-down", "gap": "Gap"}
STANDING_SECONDS = 45
"""Seconds of rest in which one can stand up and sit down again, as on the screens [C]."""


def length_words(stretch: Stretch) -> str:
    """How long it is, as it was asked: "0:30", "700 m", "20 strokes", "open"."""
    if stretch.ends is Ends.TAP:
        return "open"
    if stretch.metres_asked is not None:
        return f"{stretch.metres_asked} m"
    if stretch.ends is Ends.STROKES and stretch.strokes:
        return strokes_words(stretch.strokes.count)
    return clock(stretch.duration)


def what_words(stretch: Stretch) -> str:
    """What is done: "r26 three-quarter, one foot", "Rest", "Swap sides"."""
    if stretch.drill and stretch.drill.swap:
        return "Swap sides"
    if stretch.kind is Kind.REST:
        return rest_words(stretch.duration)
    if stretch.kind is Kind.GAP:
        return "Gap, off the machine"
    rate = f"r{stretch.rate}" if stretch.rate else ""
    asked = " ".join(filter(None, (rate, effort_words(stretch.target))))
    return ", ".join(filter(None, (asked, drill_words(stretch.drill)))) or "Row"


def segment_words(segment: Segment) -> str:
    """The whole of it in one line: "Warm-up: r18 light, 3:00"."""
    return f"{PART_NAMES[segment.part]}: {what_words(segment.stretch)}, {length_words(segment.stretch)}"


def rest_words(seconds: Fraction | int) -> str:
    """ "Rest", and whether it is long enough to stand up."""
    return "Rest, time to stand up" if seconds >= STANDING_SECONDS else "Rest"


def drill_words(turn: Turn | None) -> str:
    """A drill, with its side where it has any."""
    if turn is None or turn.swap:
        return ""
    return f"{turn.name}, side {turn.side} of {turn.sides}" if turn.side else turn.name


def effort_words(target: Target | None) -> str:
    """The effort as the plan asks for it, in its shortest form."""
    match target:
        case None:
            return ""
        case Target(pressure=pressure) if pressure:
            return pressure.value
        case Target(split_offset=offset) if offset is not None:
            return _offset(offset)
        case Target(change=change) if change is not None:
            return _change(change)
        case Target(cr10=effort) if effort is not None:
            return f"effort {plain(effort)} of 10"
        case Target(heart_rate=rate) if rate:
            return _heart_rate(rate)
        case Target(split=split) if split:
            return f"at {split_clock(split)}"
        case Target(two_k_power_fraction=fraction) if fraction is not None:
            return power_words(fraction)
    return ""


def power_words(fraction: Fraction) -> str:
    """A share of 2 km power."""
    return f"{plain(fraction * 100)} % of 2 km power"


def setting_words(setting: Setting | None) -> str:
    """How the machine is set."""
    if setting is None:
        return ""
    return f"lever {setting.lever}" if setting.lever is not None else f"drag factor {setting.drag_factor}"


def strokes_words(count: int) -> str:
    """So many strokes."""
    return "1 stroke" if count == 1 else f"{count} strokes"


def plain(value: Fraction) -> str:
    """A number as short as it can be, to the hundredth."""
    return f"{float(value):.2f}".rstrip("0").rstrip(".")


_BEFORE_A_UNIT = re.compile(r"(?<=\d) (?=(?:s|m|km|%)(?: |$))|(?<=[−+]) (?=\d)")


def held_together(words: str) -> str:
    """The same words, with no line broken between a number and its unit or sign."""
    return _BEFORE_A_UNIT.sub("\N{NO-BREAK SPACE}", words)


def _offset(seconds: Fraction) -> str:
    return (
        f"at 2 km split {'−' if seconds < 0 else '+'} {plain(abs(seconds))} s" if seconds else "at 2 km split"
    )


def _change(seconds: Fraction) -> str:
    if not seconds:
        return "same split as before"
    return f"{plain(abs(seconds))} s {'quicker' if seconds < 0 else 'slower'}"


def _heart_rate(rate: HeartRateTarget) -> str:
    if rate.percent_max is not None:
        return f"heart rate {rate.percent_max} % of highest"
    if rate.percent_reserve is not None:
        return f"heart rate {rate.percent_reserve} % of reserve"
    return f"heart rate {rate.bpm}"
