"""Making a click track and sending it, beside the time that it takes to listen to it."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from functools import partial

from planner.notation.reader import read
from planner.timeline import Timeline, compile_timeline
from tests.bench.measuring import Row, at_least, median_seconds
from web.exports.click_track import click_track, track_bytes
from web.streamed import CODERS

AIM = 200.0
ROUNDS = 5
HOUR = "title: An hour\nmain\n60' r20 light"


def rows() -> Iterator[Row]:
    """How many times quicker than real time an hour is rendered, alone and in each coding it is sent in."""
    timeline = compile_timeline(read(HOUR))
    ways = {"plain": partial(_made, timeline), **{c: partial(_made, timeline, c) for c in CODERS}}
    taken = median_seconds(ways, ROUNDS)
    seconds = float(timeline.totals.seconds)
    sizes = {coding: sum(map(len, code(click_track(timeline)))) for coding, code in CODERS.items()}
    detail = f"an hour, {track_bytes(timeline) / 1e6:.0f} MB, in {taken['plain'] * 1000:.0f} ms"
    yield at_least("click track, against real time", seconds / taken["plain"], AIM, "x", detail)
    for coding, size in sizes.items():
        detail = f"{size / 1e6:.2f} MB over the wire, in {taken[coding] * 1000:.0f} ms"
        yield at_least(f"click track in {coding}", seconds / taken[coding], AIM, "x", detail)


def _made(timeline: Timeline, coding: str | None = None) -> None:
    pieces = click_track(timeline)
    deque(CODERS[coding](pieces) if coding else pieces, 0)
