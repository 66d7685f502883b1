"""The clock that captions, call sheet and click track share, so that they lie under a film together.

It begins with a count-in: the first catch, second 0 of the session, is at `LEAD` on it. Where the session
would wait for a tap, it goes on by the plan.
"""

from __future__ import annotations

from fractions import Fraction

from planner.timeline import Timeline
from planner.units import round_half_up

LEAD = Fraction(5)
"""As long as the app counts in before a start by the clock."""


def film_time(session_seconds: Fraction) -> Fraction:
    """The moment on the film's clock, in seconds."""
    return LEAD + session_seconds


def whole_film(timeline: Timeline) -> Fraction:
    """When the session ends on the film's clock."""
    return film_time(timeline.totals.seconds)


def estimated_from(timeline: Timeline) -> Fraction | None:
    """From when on moments are estimates or wait for a tap, on the film's clock; None for never."""
    for segment in timeline.segments:
        if segment.estimated or segment.waits:
            return film_time(segment.start if segment.estimated else segment.end)
    return None


def stamp(seconds: Fraction) -> str:
    """hh:mm:ss.ttt, to the nearest thousandth."""
    whole, thousandths = divmod(round_half_up(seconds * 1000), 1000)
    minutes, second = divmod(whole, 60)
    hours, minute = divmod(minutes, 60)
    return f"{hours:02}:{minute:02}:{second:02}.{thousandths:03}"
