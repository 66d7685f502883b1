"""The calendar entry: read back by icalendar, an independent parser of RFC 5545."""

from __future__ import annotations

from datetime import date, datetime, timedelta
from typing import Any

from icalendar import Calendar, Event

from planner.timeline import Timeline, compile_timeline
from tests.web.exports.odd_texts import odd_texts
from tests.web.exports.plans import NOW, START, everything, saying
from web.exports.calendar_entry import calendar_entry
from web.exports.sheet import sheet_of, sheet_text


def event_in(file: bytes) -> Any:
    calendar: Any = Calendar.from_ical(file)
    (event,) = calendar.subcomponents
    assert isinstance(event, Event)
    assert not event.errors
    return event


def entry(timeline: Timeline, start: datetime | date = START) -> bytes:
    return calendar_entry(timeline, start, NOW)


def test_it_has_what_the_standard_wants() -> None:
    """VERSION and PRODID, UID and DTSTAMP, and DTSTART where there is no METHOD (RFC 5545, 3.4 and 3.6.1)."""
    calendar: Any = Calendar.from_ical(entry(everything()))
    event = event_in(entry(everything()))
    assert (calendar["VERSION"], str(calendar["PRODID"])) == ("2.0", "-//Slipway//Slipway//EN")
    assert event["DTSTAMP"].dt == NOW
    assert event["DTSTART"].dt == START
    assert len(event["UID"]) == 32


def test_it_lasts_as_long_as_the_session() -> None:
    timeline = everything()
    lasts = event_in(entry(timeline))["DURATION"].dt
    assert timedelta(0) <= lasts - timedelta(seconds=float(timeline.totals.seconds)) < timedelta(seconds=1)


def test_the_plan_stands_in_its_text_with_the_splits() -> None:
    timeline = everything()
    text = str(event_in(entry(timeline))["DESCRIPTION"])
    assert text == sheet_text(sheet_of(timeline))
    assert "3 times\n  10 strokes r28 1:55.5 /500 m" in text


def test_without_a_time_of_day_it_stands_over_the_whole_day() -> None:
    event = event_in(entry(everything(), date(2026, 11, 30)))
    assert event["DTSTART"].dt == date(2026, 11, 30)
    assert type(event["DTSTART"].dt) is date
    assert "DURATION" not in event


def test_no_line_is_longer_than_75_octets_and_no_character_is_torn_apart() -> None:
    """RFC 5545, 3.1."""
    file = entry(compile_timeline(saying("漢字かな交じり文の題名" * 5)))
    lines = file.split(b"\r\n")
    assert lines.pop() == b""
    assert max(map(len, lines)) == 75
    assert all(line.decode() for line in lines)
    assert b"\n" not in b"".join(lines)


def test_the_signs_of_a_text_value_are_escaped() -> None:
    """The example of RFC 5545, 3.3.11, as in facts 11.2."""
    file = entry(compile_timeline(saying("a; b, c\\d")))
    assert b"\r\nSUMMARY:a\\; b\\, c\\\\d\r\n" in file


def test_no_text_breaks_out_of_its_property() -> None:
    for text in odd_texts():
        timeline = compile_timeline(saying(text))
        event = event_in(entry(timeline))
        assert set(event) == {"UID", "DTSTAMP", "DTSTART", "DURATION", "SUMMARY", "DESCRIPTION"}, text
        assert str(event["SUMMARY"]) == text
        assert str(event["DESCRIPTION"]) == sheet_text(sheet_of(timeline))
