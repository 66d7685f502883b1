"""Segments as a table: comma-separated values by RFC 4180, in UTF-8, safe to open in a spreadsheet.

Texts are quoted, numbers are not. A text that a spreadsheet would take for a formula gets an apostrophe in
front (ASVS 5.0, 1.2.10); numbers come from our own fields only, so that a negative one stays a number.
"""

from __future__ import annotations

import csv
from collections.abc import Callable
from fractions import Fraction
from io import StringIO

from planner.intensity import HeartRateTarget, Target
from planner.timeline import Segment, Timeline
from planner.units import clock, round_half_up, split_clock
from web.exports.words import drill_words, effort_words, length_words, setting_words

_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\0", "＝", "＋", "－", "＠")

Cell = str | int | float
NONE = Target()
NO_RATE = HeartRateTarget()


def _target(segment: Segment) -> Target:
    return segment.stretch.target or NONE


def _number(value: Fraction | int | None, parts: int = 1000) -> Cell:
    """A number to the nearest of so many parts; an empty cell where there is none."""
    if value is None:
        return ""
    nearest = Fraction(round_half_up(Fraction(value) * parts), parts)
    return nearest.numerator if nearest.denominator == 1 else float(nearest)


def _tenth(value: Fraction | None) -> Cell:
    return _number(value, 10)


COLUMNS: dict[str, Callable[[Segment], Cell]] = {
    "number": lambda s: s.index + 1,
    "part": lambda s: s.part,
    "repetition": lambda s: s.repetition.number if s.repetition else "",
    "repetitions": lambda s: s.repetition.times if s.repetition else "",
    "kind": lambda s: s.stretch.kind.value,
    "starts": lambda s: clock(s.start),
    "starts_s": lambda s: _number(s.start),
    "length": lambda s: length_words(s.stretch),
    "lasts_s": lambda s: _number(s.stretch.duration),
    "estimated": lambda s: "yes" if s.estimated else "no",
    "ends_by": lambda s: s.stretch.ends.value,
    "rate": lambda s: _number(s.stretch.rate),
    "strokes": lambda s: _number(s.stretch.strokes.count) if s.stretch.strokes else "",
    "stroke_s": lambda s: _number(s.stretch.strokes.stroke) if s.stretch.strokes else "",
    "effort": lambda s: effort_words(s.stretch.target),
    "split": lambda s: split_clock(split) if (split := _target(s).split) else "",
    "split_s": lambda s: _number(_target(s).split),
    "watts": lambda s: _tenth(_target(s).watts),
    "metres": lambda s: _tenth(s.stretch.metres),
    "change_s": lambda s: _number(_target(s).change),
    "offset_2k_s": lambda s: _number(_target(s).split_offset),
    "talk": lambda s: _target(s).talk or "",
    "heart_rate": lambda s: _number((_target(s).heart_rate or NO_RATE).bpm),
    "focus": lambda s: s.stretch.focus or "",
    "drill": lambda s: drill_words(s.stretch.drill),
    "machine": lambda s: setting_words(s.setting),
    "calls": lambda s: " / ".join(call.text for call in s.stretch.calls),
}
"""The heading of each column and its cells; seconds to the thousandth, watts and metres to the tenth."""


def segments_csv(timeline: Timeline) -> bytes:
    """The whole table with its line of headings."""
    table = StringIO(newline="")
    writer = csv.writer(table, quoting=csv.QUOTE_NONNUMERIC, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    for segment in timeline.segments:
        writer.writerow([_harmless(cell(segment)) for cell in COLUMNS.values()])
    return table.getvalue().encode()


def _harmless(cell: Cell) -> Cell:
    return f"'{cell}" if isinstance(cell, str) and cell.startswith(_FORMULA) else cell
