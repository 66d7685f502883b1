"""The technical calls: enough of them, short enough to say, and spread over a block so that one focus leads.

The bounds are common practice of coaches, without a published source, except where one is named.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner import limits
from planner.athlete import Level
from planner.calls import place_calls, spoken_seconds
from planner.drills import Phase
from planner.focus_points import (
    APART_SECONDS,
    CLOSING_SECONDS,
    FOCUSES,
    OPENING_SECONDS,
    POSITIONS,
    SLOW_RATE,
    Focus,
    TechnicalCall,
    calls_for,
)
from planner.strokes import Fit, strokes_at, strokes_in

CALLS = [call for focus in FOCUSES for call in focus.calls]
WORDS = 8
SECONDS_TO_SAY = Fraction(16, 5)
"""Eight words at 150 words a minute."""

every_focus = pytest.mark.parametrize("focus", FOCUSES, ids=lambda focus: focus.name)
every_call = pytest.mark.parametrize("call", CALLS, ids=lambda call: call.text)

focuses = st.sampled_from(FOCUSES)
levels = st.sampled_from(list(Level))
rates = st.integers(14, 36)
voices = st.integers(int(limits.WORDS_A_MINUTE.low), int(limits.WORDS_A_MINUTE.high))


def test_there_are_at_least_sixty_calls() -> None:
    assert len(CALLS) >= 60


def test_no_call_stands_twice_not_even_in_other_letters() -> None:
    counted = Counter("".join(c for c in call.text.lower() if c.isalpha()) for call in CALLS)
    assert [text for text, count in counted.items() if count > 1] == []


def test_every_phase_of_the_stroke_has_calls_and_a_focus() -> None:
    assert {call.phase for call in CALLS} == set(Phase)
    assert {focus.phase for focus in FOCUSES} == set(Phase)


def test_the_four_positions_are_told() -> None:
    assert [position.phase for position in POSITIONS] == [
        phase for phase in Phase if phase is not Phase.WHOLE
    ]


@every_call
def test_a_call_is_one_idea_in_a_few_words(call: TechnicalCall) -> None:
    assert 1 <= len(call.text.split()) <= WORDS
    assert not call.text.endswith((".", "!"))
    assert "." not in call.text


@every_call
def test_a_call_can_be_said_in_the_time_it_has_at_an_unhurried_voice(call: TechnicalCall) -> None:
    assert spoken_seconds(call.text, 150) <= SECONDS_TO_SAY


@every_call
def test_a_call_says_what_it_mends_and_is_not_it(call: TechnicalCall) -> None:
    assert call.mends
    assert call.mends.lower() != call.text.lower()


@every_call
def test_a_slow_recovery_is_never_asked_for_above_thirty(call: TechnicalCall) -> None:
    """Above about r30 the drive is the longer part in boats: Kleshnev 2021 (facts 2.2) [S]."""
    if any(word in call.text.lower() for word in ("slower", "rest while", "come to you")):
        assert call.highest_rate is not None
        assert call.highest_rate <= SLOW_RATE


@every_focus
def test_a_focus_has_several_calls_and_some_for_a_novice(focus: Focus) -> None:
    assert len(focus.calls) >= 4
    assert sum(call.level is Level.NOVICE for call in focus.calls) >= 2
    assert focus.calls[0].level is Level.NOVICE


@every_focus
def test_a_focus_may_stand_in_a_plan_under_a_name_of_its_own(focus: Focus) -> None:
    assert len(focus.name) <= limits.LINE_LENGTH
    assert [other.name for other in FOCUSES].count(focus.name) == 1


@every_focus
def test_the_calls_of_a_focus_belong_to_its_phase_or_lead_into_it(focus: Focus) -> None:
    if focus.phase is not Phase.WHOLE:
        assert {call.phase for call in focus.calls} == {focus.phase}


def test_a_short_burst_has_no_call_and_a_minute_has_one() -> None:
    focus = FOCUSES[0]
    assert calls_for(focus, strokes_at(8, 32)) == ()
    assert len(calls_for(focus, strokes_in(60, 20))) == 1
    assert len(calls_for(focus, strokes_in(180, 20))) == 3


def test_the_next_block_of_a_focus_says_something_else() -> None:
    focus, minute = FOCUSES[0], strokes_in(60, 20)
    said = [calls_for(focus, minute, turn=turn)[0].text for turn in range(len(focus.calls))]
    assert len(set(said)) == len(focus.calls)
    assert calls_for(focus, minute, turn=len(focus.calls)) == calls_for(focus, minute)


def test_a_novice_hears_only_the_calls_for_novices() -> None:
    for focus in FOCUSES:
        told = {call.text: call.level for call in focus.calls}
        for call in calls_for(focus, strokes_in(1200, 20), Level.NOVICE):
            assert told[call.text] is Level.NOVICE


def test_what_is_too_slow_for_a_rate_is_not_said_at_it() -> None:
    (patience,) = (focus for focus in FOCUSES if focus.name == "Patience on the slide")
    slow = {call.text for call in patience.calls if call.highest_rate}
    assert slow & {call.text for call in calls_for(patience, strokes_in(600, 20))}
    assert not slow & {call.text for call in calls_for(patience, strokes_in(600, 32))}


@given(focuses, st.integers(1, 3600), rates, levels, st.integers(0, 20), voices)
def test_every_call_can_be_spoken_where_it_is_put(
    focus: Focus, seconds: int, rate: int, level: Level, turn: int, voice: int
) -> None:
    strokes = strokes_in(seconds, rate, Fit.RATE)
    calls = calls_for(focus, strokes, level, turn=turn, words_a_minute=voice)
    placed, misfits = place_calls(calls, strokes, strokes.duration, length_known=True, words_a_minute=voice)
    assert misfits == ()
    assert [call.text for call in placed] == [call.text for call in calls]
    assert {call.text for call in placed} <= {call.text for call in focus.calls}
    assert len({call.text for call in placed}) == len(placed) <= limits.CALLS_IN_BLOCK
    for call in placed:
        assert call.at >= OPENING_SECONDS
        assert call.at + call.seconds <= strokes.duration - CLOSING_SECONDS
    for first, second in pairwise(placed):
        assert second.at - first.at >= APART_SECONDS - strokes.stroke
