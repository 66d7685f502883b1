"""The call sheet: every call with the moment at which it begins, on the clock of the click track."""

from __future__ import annotations

from planner.timeline import compile_timeline
from tests.builders import main_piece, metres, rower_of_7_42, seconds, warm_up_then
from tests.web.exports.odd_texts import odd_texts
from tests.web.exports.plans import everything, saying
from web.exports.calls_text import calls_text


def test_a_call_stands_with_its_moment_its_length_and_its_stroke() -> None:
    """Stroke 3 of 6 in 20 s begins at 2 x 20/6 s; the clock is 5 s ahead of the session."""
    text = calls_text(everything()).decode()
    assert "00:00:11.667  Say (1 s, stroke 3): Easy\r\n" in text
    assert (
        "00:00:05.000  Warm-up: r18 light, one foot, side 1 of 2, 0:20\r\n              Focus: long arms\r\n"
        in text
    )


def test_it_says_from_when_on_the_times_are_those_of_the_plan() -> None:
    waits = compile_timeline(warm_up_then(60, seconds(120, 20), seconds(60, 24)))
    assert "From 00:03:05.000 on the times are those of the plan" in calls_text(waits).decode()
    estimated = compile_timeline(main_piece(seconds(60, 20), metres(500, 24)), rower_of_7_42())
    assert "From 00:01:05.000 on" in calls_text(estimated).decode()
    exact = compile_timeline(main_piece(seconds(60, 20)))
    assert "those of the plan" not in calls_text(exact).decode()


def test_every_text_stands_in_it_unchanged() -> None:
    for text in odd_texts():
        lines = calls_text(compile_timeline(saying(text))).decode().split("\r\n")
        assert lines[0] == text
        assert f"{'':14}Focus: {text}" in lines
