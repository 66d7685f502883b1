"""A calendar entry with the plan in its text: iCalendar by RFC 5545."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator
from datetime import UTC, date, datetime
from math import ceil

from planner.athlete import Athlete
from planner.timeline import Timeline
from web.exports.sheet import sheet_of, sheet_text

FOLD_OCTETS = 75
PRODUCT = "-//Slipway//Slipway//EN"


def calendar_entry(
    timeline: Timeline, start: datetime | date, now: datetime, athlete: Athlete | None = None
) -> bytes:
    """The whole file. `start` is a time of day wherever the calendar is read (a floating time), or a day,
    over the whole of which the entry stands; `athlete` is whose splits it shows, if anybody's.
    """
    lines = _lines(timeline, sheet_text(sheet_of(timeline, athlete)), start, now.astimezone(UTC))
    return b"".join(_folded(line) for line in lines)


def _lines(timeline: Timeline, text: str, start: datetime | date, now: datetime) -> Iterator[str]:
    title = timeline.plan.title
    yield from ("BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{PRODUCT}", "BEGIN:VEVENT")
    yield f"UID:{_name(title, text, start, now)}"
    yield f"DTSTAMP:{now:%Y%m%dT%H%M%SZ}"
    if isinstance(start, datetime):
        yield f"DTSTART:{start:%Y%m%dT%H%M%S}"
        yield f"DURATION:PT{ceil(timeline.totals.seconds)}S"
    else:
        yield f"DTSTART;VALUE=DATE:{start:%Y%m%d}"
    yield f"SUMMARY:{_escaped(title)}"
    yield f"DESCRIPTION:{_escaped(text)}"
    yield from ("END:VEVENT", "END:VCALENDAR")


def _name(*parts: object) -> str:
    """A name that no other entry has: a digest of what it says and when."""
    return hashlib.sha256("\n".join(map(str, parts)).encode()).hexdigest()[:32]


def _escaped(text: str) -> str:
    """As a TEXT value (RFC 5545, 3.3.11)."""
    for sign, written in (("\\", "\\\\"), (";", "\\;"), (",", "\\,"), ("\n", "\\n")):
        text = text.replace(sign, written)
    return text


def _folded(line: str) -> bytes:
    """A content line of at most 75 octets a piece, no character torn apart (RFC 5545, 3.1)."""
    pieces: list[bytes] = []
    piece = b""
    for character in line:
        octets = character.encode()
        # Every piece but the first begins with the blank that says so.
        if len(piece) + len(octets) > FOLD_OCTETS - bool(pieces):
            pieces.append(piece)
            piece = b""
        piece += octets
    return b"\r\n ".join([*pieces, piece]) + b"\r\n"
