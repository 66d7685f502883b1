"""The spoken calls with their times, for whoever speaks or cuts them: plain text, one line a call."""

from __future__ import annotations

from collections.abc import Iterator

from planner.timeline import Segment, Timeline
from planner.units import told_time
from web.exports.film import LEAD, estimated_from, stamp, whole_film
from web.exports.film import film_time as at
from web.exports.words import segment_words


def calls_text(timeline: Timeline) -> bytes:
    """The whole file, in UTF-8; lines end as every system reads them."""
    return ("\r\n".join(_lines(timeline)) + "\r\n").encode()


def _lines(timeline: Timeline) -> Iterator[str]:
    yield timeline.plan.title
    yield ""
    yield "Spoken calls, with the time at which each begins and how long it takes to say."
    yield (
        f"00:00:00.000 is where the click track begins: the first catch is {told_time(LEAD)} later, "
        "after the count-in."
    )
    yield f"At {timeline.words_a_minute} words a minute. A call ends before its block does."
    if (moment := estimated_from(timeline)) is not None:
        yield f"From {stamp(moment)} on the times are those of the plan: there the session goes by taps."
    for segment in timeline.segments:
        yield from _segment(segment)
    yield ""
    yield f"{stamp(whole_film(timeline))}  The end"


def _segment(segment: Segment) -> Iterator[str]:
    yield ""
    yield f"{stamp(at(segment.start))}  {segment_words(segment)}"
    if segment.stretch.focus:
        yield f"{'':14}Focus: {segment.stretch.focus}"
    for call in segment.stretch.calls:
        stroke = f", stroke {call.stroke}" if call.stroke else ""
        yield f"{stamp(at(segment.start + call.at))}  Say ({told_time(call.seconds)}{stroke}): {call.text}"
