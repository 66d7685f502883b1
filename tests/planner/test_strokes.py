"""Strokes, stroke times, clock marks and rhythm."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.plan import Pressure
from planner.strokes import ClockMark, Fit, Rhythm, clock_mark, drive_share, strokes_at, strokes_in

RATES = st.integers(10, 50)
LENGTHS = st.integers(1, 14_400)


# Common practice, no source: what a coach calls out beside the clock.
@pytest.mark.parametrize(("rate", "seconds"), [(24, Fraction(5, 2)), (30, Fraction(2)), (20, Fraction(3))])
def test_a_stroke_lasts_what_coaches_say_it_lasts(rate: int, seconds: Fraction) -> None:
    assert strokes_at(1, rate).stroke == seconds


# Arithmetic of the fact sheet, section 2.1 (cycle = 60/R), to the three decimals printed there.
@pytest.mark.parametrize(
    ("rate", "cycle"),
    [(18, "3.333"), (20, "3.000"), (24, "2.500"), (28, "2.143"), (32, "1.875"), (36, "1.667")],
)
def test_the_cycle_times_of_the_fact_sheet_hold(rate: int, cycle: str) -> None:
    assert f"{float(strokes_at(1, rate).stroke):.3f}" == cycle


@given(LENGTHS, RATES)
def test_whole_strokes_agree_with_an_independent_decimal_computation(length: int, rate: int) -> None:
    exact = Decimal(length * rate) / Decimal(60)
    rounded = int(exact.quantize(Decimal(1), rounding=ROUND_HALF_UP))
    assert strokes_in(length, rate).count == max(1, rounded)


def test_a_tie_goes_up() -> None:
    assert strokes_in(15, 26).count == 7


def test_a_block_never_holds_less_than_one_stroke() -> None:
    assert strokes_in(1, 10).count == 1


@given(LENGTHS, RATES)
def test_by_the_clock_the_length_stays(length: int, rate: int) -> None:
    assert strokes_in(length, rate, Fit.CLOCK).duration == length


@given(LENGTHS, RATES)
def test_by_the_rate_the_stroke_stays(length: int, rate: int) -> None:
    strokes = strokes_in(length, rate, Fit.RATE)
    assert strokes.stroke == Fraction(60, rate)
    assert strokes.duration == strokes.count * Fraction(60, rate)


@pytest.mark.parametrize(
    ("rate", "mark"),
    [
        (24, ClockMark(2, 5)),
        (28, ClockMark(7, 15)),
        (20, ClockMark(1, 3)),
        (18, ClockMark(3, 10)),
        (30, ClockMark(1, 2)),
    ],
)
def test_clock_marks_of_common_rates(rate: int, mark: ClockMark) -> None:
    assert clock_mark(Fraction(60, rate)) == mark


@given(RATES)
def test_a_clock_mark_is_the_first_whole_second_that_a_catch_meets(rate: int) -> None:
    whole = next(k for k in range(1, 61) if (k * 60) % rate == 0)
    expected = ClockMark(whole, whole * 60 // rate) if whole <= 8 else None
    assert clock_mark(Fraction(60, rate)) == expected


# Common practice (fact sheet 6.6, no source): a third of the stroke up to r22, 0.45 at r34.
@pytest.mark.parametrize(
    ("rate", "share"), [(18, Fraction(1, 3)), (22, Fraction(1, 3)), (34, Fraction(45, 100))]
)
def test_the_machine_rhythm_runs_from_a_third_to_nine_twentieths(rate: int, share: Fraction) -> None:
    assert drive_share(rate) == share


@given(RATES, st.sampled_from(Pressure))
def test_more_pressure_never_makes_the_drive_longer(rate: int, pressure: Pressure) -> None:
    assert drive_share(rate, pressure) <= drive_share(rate, Pressure.LIGHT)


# Kleshnev, Rowing Biomechanics Newsletter, early 2021, as tabled in the fact sheet 2.2 (single sculls).
@pytest.mark.parametrize(
    ("rate", "percent"), [(18, 35.4), (20, 38.3), (24, 43.6), (28, 48.1), (30, 50.0), (36, 54.6), (44, 57.9)]
)
def test_the_boat_rhythm_is_the_published_one(rate: int, percent: float) -> None:
    assert float(drive_share(rate, rhythm=Rhythm.BOAT)) * 100 == pytest.approx(percent, abs=0.06)


@given(st.fractions(5, 100), st.sampled_from(Pressure), st.sampled_from(Rhythm))
def test_drive_and_recovery_both_have_room(rate: Fraction, pressure: Pressure, rhythm: Rhythm) -> None:
    assert 0 < drive_share(rate, pressure, rhythm) < 1
