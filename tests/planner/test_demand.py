"""What a timeline asks, in shares of 2 km power: exact where it is known, marked where it is guessed."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.athlete import Athlete, Level
from planner.demand import (
    RESERVE_BY_HIGHEST,
    SHARE_BY_CR10,
    Run,
    holdable_share,
    in_seconds,
    interpolate,
    runs_of,
)
from planner.intensity import TALK_BY_CR10, TALK_BY_POWER_PERCENT
from planner.plan import (
    Block,
    Change,
    Cr10,
    Drill,
    Effort,
    ForSeconds,
    Gap,
    HeartRate,
    HeartRateUnit,
    Part,
    PartKind,
    Plan,
    Pressure,
    Rest,
    Split,
    SplitOffset,
    TwoKPower,
)
from planner.timeline import compile_timeline
from tests.builders import main_piece, open_row, rower_of_7_42, seconds


def asked(*steps: Block | Rest, athlete: Athlete | None = None, level: Level = Level.CLUB) -> tuple[Run, ...]:
    return tuple(runs_of(compile_timeline(main_piece(*steps), athlete).segments, athlete, level))


def share_of(effort: Effort | None, rate: int | None = 20, athlete: Athlete | None = None) -> Run:
    (run,) = asked(seconds(60, rate, effort), athlete=athlete)
    return run


def test_a_share_of_2_km_power_is_asked_as_it_stands() -> None:
    assert share_of(TwoKPower(Fraction(65, 100))) == Run(0.65, 60.0)


def test_pressure_and_rate_are_a_share() -> None:
    """Fact sheet 6.6 [C]: three-quarter pressure at r24 is 0.640 for a club rower."""
    assert share_of(Pressure.THREE_QUARTER, 24) == Run(0.64, 60.0)


def test_a_split_beside_a_result_is_a_share_and_no_guess() -> None:
    """Fact sheet 6.6 [=]: beside 7:42 over 2 km, 2:12.2 is 0.667 of 2 km power."""
    run = share_of(Split(Fraction(1322, 10)), athlete=rower_of_7_42())
    assert run.share == pytest.approx(0.667, abs=0.001)
    assert not run.guessed


def test_a_split_without_a_result_is_held_against_the_level() -> None:
    """2:00 is the club's assumed 2 km split."""
    assert share_of(Split(Fraction(120))) == Run(1.0, 60.0, guessed=True)


def test_an_offset_without_a_result_is_held_against_the_level() -> None:
    run = share_of(SplitOffset(Fraction(20)))
    assert run.share == pytest.approx((120 / 140) ** 3)
    assert run.guessed


def test_a_change_without_a_result_starts_from_the_share_before() -> None:
    first, second = asked(seconds(60, 20, TwoKPower(Fraction(1))), seconds(60, 20, Change(Fraction(10))))
    assert first.share == 1
    assert second.share == pytest.approx((120 / 130) ** 3)
    assert second.guessed


def test_repeated_changes_keep_to_splits_that_can_be_asked_for() -> None:
    runs = asked(seconds(60, 20, TwoKPower(Fraction(1))), *[seconds(60, 20, Change(Fraction(-40)))] * 5)
    assert max(run.share for run in runs) == pytest.approx((120 / 60) ** 3)


def test_efforts_and_shares_agree_on_what_can_still_be_said() -> None:
    """The two lists of `intensity` laid side by side: the same words end at the same place."""
    shares = dict(SHARE_BY_CR10)
    for (effort, words), (percent, same_words) in zip(TALK_BY_CR10, TALK_BY_POWER_PERCENT, strict=True):
        assert words == same_words
        assert shares[effort] == pytest.approx(percent / 100)


def test_an_effort_for_long_is_no_more_than_can_be_held_for_so_long() -> None:
    brief = asked(seconds(120, 28, Cr10(Fraction(9))))[0].share
    lengthy = asked(seconds(3600, 28, Cr10(Fraction(9))))[0].share
    assert brief == 0.97
    assert lengthy == pytest.approx(holdable_share(3600, 480))


def test_what_can_be_held_follows_the_power_law() -> None:
    """Exponent 1.06 with the cubic: twice the distance at 0.882703 of the power (fact sheet 3.1 [=])."""
    assert holdable_share(480 * 2**1.06, 480) == pytest.approx(0.882703, abs=1e-6)
    assert holdable_share(60, 480) == 1


# Edges of the ACSM bands (Garber 2011), %HRmax beside %HRR: fact sheet 6.1.
# The first and the last pair are judgement.
@pytest.mark.parametrize(
    ("highest", "reserve"), [(30, 0), (37, 0), (57, 30), (64, 40), (77, 60), (96, 90), (100, 100)]
)
def test_percent_of_the_highest_heart_rate_meets_percent_of_the_reserve(highest: int, reserve: int) -> None:
    assert interpolate(RESERVE_BY_HIGHEST, highest) == reserve


def heart(unit: HeartRateUnit, value: int) -> HeartRate:
    return HeartRate(unit, value)


def test_a_heart_rate_is_a_share_of_its_reserve() -> None:
    """Karvonen: rest 60, highest 190, 138 beats are 60 % of the reserve (fact sheet 6.4 [=])."""
    athlete = replace(rower_of_7_42(), heart_rate_rest=60, heart_rate_max=190)
    run = share_of(heart(HeartRateUnit.BPM, 138), athlete=athlete)
    assert run.share == pytest.approx(0.6)
    assert run.guessed


def test_percent_of_reserve_and_of_the_highest_need_no_numbers() -> None:
    assert share_of(heart(HeartRateUnit.PERCENT_RESERVE, 60)).share == pytest.approx(0.6)
    assert share_of(heart(HeartRateUnit.PERCENT_MAX, 77)).share == pytest.approx(0.6)


def test_beats_a_minute_of_an_unknown_heart_say_no_more_than_the_rate() -> None:
    assert share_of(heart(HeartRateUnit.BPM, 150)).share == share_of(None).share


def test_a_rate_alone_is_light_when_low_and_full_at_the_race_rate() -> None:
    assert share_of(None, 18).share == pytest.approx(0.5 * 18 / 30)
    assert share_of(None, 30).share == pytest.approx(1.0)
    assert share_of(None, None) == share_of(None, 18)


def test_a_drill_without_an_effort_is_light_at_any_rate() -> None:
    (run,) = asked(Block(ForSeconds(60), 30, drill=Drill("pause")))
    assert run == Run(0.5, 60.0, guessed=True)


def test_pressure_without_a_rate_is_taken_at_20() -> None:
    assert share_of(Pressure.HALF, None).share == pytest.approx(0.65 * 20 / 30)


def test_the_level_sets_what_a_guess_means() -> None:
    guesses = [asked(seconds(60, 24), level=level)[0].share for level in Level]
    assert guesses == sorted(guesses, reverse=True)


def test_rests_gaps_and_swaps_ask_nothing() -> None:
    plan = Plan(
        "Still",
        (Part(PartKind.WARM_UP, (seconds(60, 20), Rest(30))), Gap(90), Part(PartKind.MAIN, (open_row(20),))),
    )
    runs = tuple(runs_of(compile_timeline(plan).segments, None, Level.CLUB))
    assert runs[1:3] == (Run(0.0, 30.0), Run(0.0, 90.0))
    assert runs[3].seconds == 300
    (_, swap, _) = asked(Block(ForSeconds(50), 18, drill=Drill("one foot", 2, 20, 10)))
    assert swap == Run(0.0, 10.0)


RUNS = st.lists(st.builds(Run, st.floats(0, 2), st.floats(0.01, 90), st.booleans()), max_size=12)


@given(RUNS)
def test_cut_into_seconds_nothing_is_lost(runs: list[Run]) -> None:
    pieces = list(in_seconds(runs))
    assert all(0 < piece.seconds <= 1 for piece in pieces)
    assert sum(p.seconds for p in pieces) == pytest.approx(sum(r.seconds for r in runs))
    assert sum(p.share * p.seconds for p in pieces) == pytest.approx(sum(r.share * r.seconds for r in runs))
