"""Every kind of download by its name in addresses: what it is for, its ending, its type, what makes it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, datetime

from planner.athlete import Athlete
from planner.timeline import Timeline
from web.exports.alone_page import alone_page
from web.exports.calendar_entry import calendar_entry
from web.exports.calls_text import calls_text
from web.exports.calls_vtt import calls_vtt
from web.exports.click_track import check_length, click_track, track_bytes
from web.exports.plan_json import plan_json
from web.exports.print_sheet import print_sheet
from web.exports.segments_csv import segments_csv


@dataclass(frozen=True, slots=True)
class Asked:
    """What to make a file of: a plan's timeline, for an athlete and for anybody; when it is to start, or on
    which day, the time it is now, and the one-file page without a plan.
    """

    timeline: Timeline
    for_anybody: Timeline
    athlete: Athlete | None
    start: datetime | date
    now: datetime
    page: str


@dataclass(frozen=True, slots=True)
class InPieces:
    """A file too large to be held whole: its pieces, made as they are taken, and its length in bytes."""

    pieces: Iterator[bytes]
    length: int


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of file. Making it raises InputError where that cannot be."""

    about: str
    ending: str
    content_type: str
    make: Callable[[Asked], bytes | InPieces]

    @property
    def mimetype(self) -> str:
        """The type without its parameters."""
        return self.content_type.partition(";")[0]


def _click_track(timeline: Timeline) -> InPieces:
    check_length(timeline)
    return InPieces(click_track(timeline), track_bytes(timeline))


KINDS = {
    "print": Kind(
        "one page for the wall, to be printed (HTML)",
        "print.html",
        "text/html; charset=utf-8",
        lambda asked: print_sheet(asked.timeline, asked.athlete),
    ),
    "vtt": Kind(
        "calls and blocks as captions for a film (WebVTT)",
        "vtt",
        "text/vtt; charset=utf-8",
        lambda asked: calls_vtt(asked.timeline),
    ),
    "calls": Kind(
        "spoken calls with their times, as plain text",
        "txt",
        "text/plain; charset=utf-8",
        lambda asked: calls_text(asked.timeline),
    ),
    "offline": Kind(
        "one page that holds player and plan, and runs the session with no server and no network (HTML)",
        "one-file.html",
        "text/html; charset=utf-8",
        lambda asked: alone_page(asked.page, asked.for_anybody, asked.athlete),
    ),
    "ics": Kind(
        "an entry for a calendar with the plan in its text (iCalendar)",
        "ics",
        "text/calendar; charset=utf-8",
        lambda asked: calendar_entry(asked.timeline, asked.start, asked.now, asked.athlete),
    ),
    "csv": Kind(
        "a table of the segments (RFC 4180)",
        "csv",
        "text/csv; charset=utf-8; header=present",
        lambda asked: segments_csv(asked.timeline),
    ),
    "wav": Kind(
        "a click track: count-in, catches, finishes and changes, exact to the sample (WAV)",
        "wav",
        "audio/wav",
        lambda asked: _click_track(asked.timeline),
    ),
    "json": Kind(
        "the plan itself, which can be read back in",
        "json",
        "application/json",
        lambda asked: plan_json(asked.timeline.plan),
    ),
}
