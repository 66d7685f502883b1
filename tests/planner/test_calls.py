"""Calls on their strokes, and those that cannot be said."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from planner.appraisal import appraise
from planner.calls import Misfit, PlacedCall, calls_of, place_calls, spoken_seconds
from planner.expansion import Repetition
from planner.plan import Call, Repeat, Rest
from planner.strokes import Strokes, strokes_in
from planner.timeline import compile_timeline
from tests.builders import main_piece, seconds
from tests.mending import apply

MINUTE_AT_20 = strokes_in(60, 20)


def placed(
    *calls: Call, strokes: Strokes | None = MINUTE_AT_20, known: bool = True, words_a_minute: int = 150
) -> tuple[tuple[PlacedCall, ...], tuple[Misfit, ...]]:
    return place_calls(calls, strokes, Fraction(60), length_known=known, words_a_minute=words_a_minute)


def test_a_call_without_a_stroke_opens_the_block() -> None:
    (call,), _ = placed(Call("Sit tall"))
    assert (call.at, call.stroke) == (0, 1)


def test_a_call_falls_on_the_catch_of_its_stroke() -> None:
    (call,), _ = placed(Call("Legs first", stroke=10))
    assert call.at == 27


def test_a_call_counted_back_falls_when_so_many_strokes_are_left() -> None:
    (call,), _ = placed(Call("Last five", strokes_left=5))
    assert (call.at, call.stroke) == (45, 16)


def test_calls_come_out_in_the_order_in_which_they_are_said() -> None:
    calls, _ = placed(Call("Second", stroke=10), Call("First"))
    assert [c.text for c in calls] == ["First", "Second"]


def test_a_call_over_another_is_left_out_and_named() -> None:
    calls, (misfit,) = placed(Call("one two three four five six seven eight nine ten"), Call("b", stroke=2))
    assert len(calls) == 1
    assert "still being said" in misfit.sentence


def test_a_call_past_the_last_stroke_is_left_out() -> None:
    _, (misfit,) = placed(Call("Too late", stroke=21))
    assert misfit.sentence == "the block has only 20 strokes"


def test_a_call_that_would_run_into_the_next_block_is_left_out() -> None:
    _, (misfit,) = placed(Call("a call of eight words takes three seconds", strokes_left=1))
    assert "when the block ends" in misfit.sentence


def test_without_a_rate_no_stroke_can_be_counted() -> None:
    calls, (misfit,) = placed(Call("Easy"), Call("Tenth", stroke=10), strokes=None)
    assert [c.text for c in calls] == ["Easy"]
    assert "no rate" in misfit.sentence


def test_an_unknown_length_has_no_last_strokes_but_is_never_too_short() -> None:
    calls, (misfit,) = placed(Call("Far on", stroke=400), Call("Last", strokes_left=5), known=False)
    assert calls[0].at == 399 * 3
    assert "last strokes cannot be counted" in misfit.sentence


def test_speech_takes_its_time_by_words() -> None:
    assert spoken_seconds("one two three four five") == 2
    assert spoken_seconds("Now") == 1


def test_a_slower_voice_takes_longer() -> None:
    assert spoken_seconds("one two three four five", 100) == 3
    assert spoken_seconds("one two three four five", 200) == Fraction(3, 2)


def test_a_voice_may_be_too_slow_for_a_call_that_another_can_say() -> None:
    last = Call("a call of eight words takes three seconds", strokes_left=2)
    (call,), _ = placed(last)
    assert call.seconds == Fraction(16, 5)
    _, (misfit,) = placed(last, words_a_minute=79)
    assert "when the block ends" in misfit.sentence


# --- Calls of a repeat that are written at the same stroke

A, B, C = (Call(text, stroke=5) for text in ("Legs first", "Sit tall", "Long arms"))
LATER = Call("Breathe out", stroke=12)


def said_in(calls: list[Call], times: int) -> list[list[str]]:
    return [[c.text for c in calls_of(calls, Repetition(n, times))] for n in range(1, times + 1)]


def test_calls_at_one_stroke_take_turns_from_repetition_to_repetition() -> None:
    assert said_in([A, LATER, B], 3) == [
        ["Legs first", "Breathe out"],
        ["Sit tall", "Breathe out"],
        ["Legs first", "Breathe out"],
    ]


def test_calls_counted_from_the_end_take_turns_among_themselves() -> None:
    ends = [Call(text, strokes_left=5) for text in ("Last five", "Hold on")]
    assert said_in([A, *ends], 2) == [["Legs first", "Last five"], ["Legs first", "Hold on"]]


def test_a_call_without_a_stroke_opens_the_block_as_one_at_its_first_does() -> None:
    assert said_in([Call("Now"), Call("Go", stroke=1)], 2) == [["Now"], ["Go"]]


def test_outside_a_repeat_nothing_takes_turns() -> None:
    assert calls_of([A, B], None) == (A, B)


def test_what_no_repetition_is_left_for_is_found_to_be_left_out() -> None:
    block = replace(seconds(60, 20), calls=(A, B, C))
    timeline = compile_timeline(main_piece(Repeat(2, (block,), (Rest(60),))))
    said = [[call.text for call in s.stretch.calls] for s in timeline.segments if s.stretch.strokes]
    assert said == [["Legs first"], ["Sit tall"]]
    assert [finding.sentence for finding in timeline.findings] == [
        'The call "Long arms" is left out: it would begin while "Legs first" is still being said.'
    ]


def test_the_mend_leaves_out_the_call_that_no_repetition_is_left_for() -> None:
    block = replace(seconds(60, 20), calls=(A, B, C))
    plan = main_piece(Repeat(2, (block,), (Rest(60),)))
    (finding,) = (f for f in appraise(compile_timeline(plan)).findings if f.code == "call-does-not-fit")
    assert finding.mend
    assert finding.mend.label == "Leave the call out"
    assert compile_timeline(apply(plan, finding.mend.edits)).findings == ()
