"""Calls as captions for a filmed session: WebVTT (W3C, from memory [M]; facts 11.3).

At the top of the picture each block is named as it begins; at its foot stand the calls, for as long as they
are spoken.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from planner.timeline import Timeline
from web.exports.film import LEAD, film_time, stamp
from web.exports.words import segment_words

NAMED_FOR = Fraction(5)
"""Seconds for which a block's name stands: enough to read it twice (common practice [C])."""
TOP, FOOT = " line:0", ""


class _Cue(NamedTuple):
    start: Fraction
    end: Fraction
    place: str
    text: str


def calls_vtt(timeline: Timeline) -> bytes:
    """The whole file, in UTF-8."""
    cues = sorted(_cues(timeline), key=lambda cue: cue.start)
    blocks = [f"{stamp(cue.start)} --> {stamp(cue.end)}{cue.place}\n{_escaped(cue.text)}" for cue in cues]
    return ("WEBVTT\n\n" + "\n\n".join(blocks) + "\n").encode()


def _cues(timeline: Timeline) -> Iterator[_Cue]:
    yield _Cue(Fraction(0), LEAD, TOP, timeline.plan.title)
    for segment in timeline.segments:
        named_until = min(segment.start + NAMED_FOR, segment.end)
        yield _Cue(film_time(segment.start), film_time(named_until), TOP, segment_words(segment))
        for call in segment.stretch.calls:
            start = film_time(segment.start + call.at)
            yield _Cue(start, start + call.seconds, FOOT, call.text)


def _escaped(text: str) -> str:
    """As cue text, which knows three signs of markup; no arrow is left in it, and it is one line."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
