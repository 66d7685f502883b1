"""Captions: read back by webvtt-py, an independent parser, and held against the timeline."""

from __future__ import annotations

import html
from fractions import Fraction

import pytest
from webvtt import Caption, WebVTT

from planner.timeline import Timeline, compile_timeline
from tests.web.exports.odd_texts import OURS, odd_texts
from tests.web.exports.plans import everything, saying
from web.exports.calls_vtt import calls_vtt
from web.exports.film import LEAD, stamp


def read(timeline: Timeline) -> list[Caption]:
    return WebVTT.from_string(calls_vtt(timeline).decode(), strict=True).captions


def moments(caption: Caption) -> tuple[float, float]:
    """When it begins and ends, in seconds."""
    start, end = (caption.start.split(":"), caption.end.split(":"))
    return tuple(int(h) * 3600 + int(m) * 60 + float(s) for h, m, s in (start, end))  # type: ignore[return-value]


def test_every_call_stands_at_the_foot_for_as_long_as_it_is_spoken() -> None:
    timeline = everything()
    spoken = [
        (float(LEAD + s.start + c.at), float(LEAD + s.start + c.at + c.seconds), c.text)
        for s in timeline.segments
        for c in s.stretch.calls
    ]
    assert len(spoken) == 3
    captions = [c for c in read(timeline) if not str(c.settings)]
    shown = [(*moments(c), html.unescape(c.text)) for c in captions]
    for wanted, got in zip(spoken, shown, strict=True):
        assert got[2] == wanted[2]
        assert got[:2] == pytest.approx(wanted[:2], abs=0.0006)


def test_every_block_is_named_at_the_top_as_it_begins() -> None:
    timeline = everything()
    title, *named = [c for c in read(timeline) if str(c.settings) == "line:0"]
    assert (title.text, *moments(title)) == (timeline.plan.title, 0, 5)
    starts = [float(LEAD + s.start) for s in timeline.segments]
    assert [moments(c)[0] for c in named] == pytest.approx(starts, abs=0.0006)
    assert named[0].text == "Warm-up: r18 light, one foot, side 1 of 2, 0:20"


def test_captions_begin_in_order_and_end_after_they_begin() -> None:
    shown = [moments(caption) for caption in read(everything())]
    assert [start for start, _ in shown] == sorted(start for start, _ in shown)
    assert all(end > start for start, end in shown)


def test_a_moment_is_written_as_the_format_wants_it() -> None:
    """3725.5 s is 01:02:05.500 (facts 11.3); WebVTT wants hours of two digits or more, exactly 3 decimals."""
    assert stamp(Fraction(7451, 2)) == "01:02:05.500"
    assert stamp(Fraction(2, 3)) == "00:00:00.667"
    assert stamp(Fraction(59_999_999, 1_000_000)) == "00:01:00.000"


def test_no_text_breaks_out_of_its_cue() -> None:
    for text in odd_texts():
        timeline = compile_timeline(saying(text))
        captions = read(timeline)
        calls = sum(len(s.stretch.calls) for s in timeline.segments)
        assert len(captions) == 1 + len(timeline.segments) + calls, text
        assert html.unescape(captions[0].raw_text) == text
        assert not set(captions[0].raw_text) & {"<", ">", "\n"}


def test_the_texts_that_break_cues_are_among_them() -> None:
    assert {"-->", "00:00:01.000 --> 00:00:02.000", "<v Coach>Legs</v>"} <= set(OURS) & set(odd_texts())
