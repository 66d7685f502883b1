"""How large the print sheet's letters may be, so that it fills one page of A4 or Letter and not a second.

The page that is common to both papers: as wide as A4, as high as Letter. Heights are worked out from the
style in templates/print/sheet.css, lines from the widths of letters, with some room left; a test prints it.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from math import ceil

from web.exports.sheet import Row, Sheet, SheetPart
from web.exports.words import held_together

WIDTH_MM, HEIGHT_MM = 190.0, 259.0
"""Inside margins of 10 mm: ISO 216 A4 is 210 x 297 mm, ANSI Letter 215.9 x 279.4 mm."""
MM_PER_POINT = 25.4 / 72
POINTS = range(30, 8, -1)
"""The largest first; at 30 the capitals are 7 mm high, for some 1.5 m (16 arcmin; facts 10.1)."""
COLUMN_GAP_MM = 8.0
ROOM = 0.94
"""Of the height, what is filled: letters are not all of a width."""
ROOM_IN_COLUMNS = 0.88
"""Two columns do not end at the same height."""
WORTH_TWO = 1.2
"""So much larger letters have to be in two columns, which break more lines, than in one: judgement [C]."""
NOTE = 0.66
"""The size of notes and strokes beside that of the rest."""
_LETTER, _WIDE_LETTER, _BOLD = 0.56, 1.05, 1.06
_IN_DIGITS = {" ": 0.5, ":": 0.6, ".": 0.6, "t": 0.6, "r": 0.75, "m": 1.6}
"""Letters that are not about as wide as a digit, by the tables of three families of letters."""


@dataclass(frozen=True, slots=True)
class Fit:
    """The size of the letters in points, in one column or two, and whether all of it is then on one page."""

    points: int
    columns: int
    one_page: bool


def fit_of(sheet: Sheet) -> Fit:
    """The largest letters with which the sheet fits; the smallest where it takes more than a page."""
    left_mm = HEIGHT_MM * ROOM - _fixed_mm(sheet)
    in_one = _largest(sheet, 1, left_mm)
    in_two = _largest(sheet, 2, 2 * left_mm * ROOM_IN_COLUMNS / ROOM)
    if in_one == in_two == 0:
        return Fit(POINTS[-1], 2, False)
    return Fit(in_two, 2, True) if in_two > in_one * WORTH_TWO else Fit(in_one, 1, True)


def _largest(sheet: Sheet, columns: int, room_mm: float) -> int:
    """The largest size that fits, or 0 where none does."""
    fitting = (points for points in POINTS if _parts_mm(sheet, points, columns) <= room_mm)
    return next(fitting, 0)


def _fixed_mm(sheet: Sheet) -> float:
    """Header and footer, whose letters do not change."""
    title = _lines(sheet.title, 22, WIDTH_MM) * 22 * 1.1
    about = sum(_lines(f"{name}: {text}", 10, WIDTH_MM) * 10 * 1.2 for name, text in sheet.about)
    footer = 4 * 8.5 * 1.25
    points = title + 13 * 1.2 + about + footer
    return points * MM_PER_POINT + 1 + 0.8 * len(sheet.about) + 2 + 2.5


def _parts_mm(sheet: Sheet, points: int, columns: int) -> float:
    width_mm = WIDTH_MM if columns == 1 else (WIDTH_MM - COLUMN_GAP_MM) / 2
    asked_mm = width_mm - _beside_mm(sheet, points)
    return sum(_part_points(part, points, asked_mm, width_mm) for part in sheet.parts) * MM_PER_POINT


def _part_points(part: SheetPart, points: int, asked_mm: float, width_mm: float) -> float:
    sums = _lines(f"{part.name}   {part.sums}", points * 0.8, width_mm)
    heading = points * (0.8 * 0.4 + 0.8 * 1.2 * sums)
    return heading + sum(
        _row_points(row, points, asked_mm if row.length else width_mm, width_mm) for row in part.rows
    )


def digits_wide(sheet: Sheet) -> dict[str, float]:
    """How many digits wide the columns beside the one in the middle have to be, in all parts alike."""
    rows = [row for part in sheet.parts for row in part.rows]
    return {
        "length": max(_digits(row.length) for row in rows),
        "rate": max(_digits(row.rate) for row in rows),
        "split": max(_digits(row.split) for row in rows),
        "strokes": max(_digits(row.strokes) for row in rows),
    }


def deepest(sheet: Sheet) -> int:
    """In how many repeats some row stands."""
    return max(row.depth for part in sheet.parts for row in part.rows)


def _digits(text: str) -> float:
    """As wide as so many digits of the same letters, of whatever family; on the wide side."""
    return 1.04 * sum(_IN_DIGITS.get(letter, 1.0) for letter in text)


def _beside_mm(sheet: Sheet, points: int) -> float:
    """What the columns beside the one in the middle take."""
    ems = sum(
        digits * _LETTER * (NOTE if name == "strokes" else _BOLD)
        for name, digits in digits_wide(sheet).items()
    )
    return (ems + 0.4 * deepest(sheet) + 1.7) * points * MM_PER_POINT


def _row_points(row: Row, points: int, asked_mm: float, width_mm: float) -> float:
    line = points * 1.15
    if row.heading:
        return line * 0.8 * _lines(row.heading, points * 0.8, width_mm) + points * 0.2
    if asked_mm < points:
        return float("inf")
    notes = (_em(word) * NOTE for note in row.notes for word in f"› {note}".split())
    asked = max(
        1,
        _broken(
            [*map(_em, held_together(row.effort).split(" ")), *notes], asked_mm / (points * MM_PER_POINT)
        ),
    )
    return line * asked + points * 0.26 + 0.5


def _lines(text: str, points: float, width_mm: float) -> int:
    """How many lines a text takes."""
    return _broken(map(_em, text.split()), width_mm / (points * MM_PER_POINT))


def _broken(widths: Iterable[float], room: float) -> int:
    """The lines of words of these widths, all in ems; a word longer than a line is torn."""
    return sum(1 for _ in _lines_of(widths, room))


def _lines_of(widths: Iterable[float], room: float) -> Iterator[None]:
    used = 0.0
    begun = False
    for width in widths:
        if begun and used + _LETTER + width > room:
            yield None
            used = 0.0
        used += width + (_LETTER if used else 0)
        begun = True
        for _ in range(ceil(used / room) - 1):
            yield None
            used -= room
    if begun:
        yield None


@cache
def _em(text: str) -> float:
    """The width of a text in ems, on the wide side."""
    return sum(map(_letter, text))


def _letter(character: str) -> float:
    if unicodedata.combining(character):
        return 0.0
    return _WIDE_LETTER if unicodedata.east_asian_width(character) in "WF" else _LETTER
