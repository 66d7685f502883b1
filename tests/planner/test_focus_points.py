"""The technical calls: enough of them, and short enough to say.

The bounds are common practice of coaches, without a published source, except where one is named.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

import pytest

from planner import limits
from planner.athlete import Level
from planner.calls import spoken_seconds
from planner.drills import Phase
from planner.focus_points import FOCUSES, POSITIONS, SLOW_RATE, Focus, TechnicalCall, suited

CALLS = [call for focus in FOCUSES for call in focus.calls]
WORDS = 8
SECONDS_TO_SAY = Fraction(16, 5)
"""Eight words at 150 words a minute."""

every_focus = pytest.mark.parametrize("focus", FOCUSES, ids=lambda focus: focus.name)
every_call = pytest.mark.parametrize("call", CALLS, ids=lambda call: call.text)


def test_there_are_at_least_sixty_calls() -> None:
    assert len(CALLS) >= 60


def test_no_call_stands_twice_not_even_in_other_letters() -> None:
    counted = Counter("".join(c for c in call.text.lower() if c.isalpha()) for call in CALLS)
    assert [text for text, count in counted.items() if count > 1] == []


def test_no_two_calls_mend_the_same_fault() -> None:
    counted = Counter(call.mends for call in CALLS)
    assert [mends for mends, count in counted.items() if count > 1] == []


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


def test_a_novice_hears_only_the_calls_for_novices() -> None:
    for focus in FOCUSES:
        assert {call.level for call in suited(focus, Level.NOVICE, 20)} == {Level.NOVICE}


def test_what_is_too_slow_for_a_rate_is_not_said_at_it() -> None:
    (patience,) = (focus for focus in FOCUSES if focus.name == "Patience on the slide")
    assert any(call.highest_rate for call in suited(patience, Level.CLUB, 20))
    assert not any(call.highest_rate for call in suited(patience, Level.CLUB, 32))


def test_another_turn_begins_with_another_call_and_leaves_none_out() -> None:
    focus = FOCUSES[0]
    turns = [suited(focus, Level.CLUB, 20, turn) for turn in range(len(focus.calls))]
    assert len({calls[0] for calls in turns}) == len(focus.calls)
    assert all(set(calls) == set(focus.calls) for calls in turns)
    assert suited(focus, Level.CLUB, 20, len(focus.calls)) == turns[0]
