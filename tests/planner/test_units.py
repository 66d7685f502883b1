"""Reading and printing times, and rounding."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.units import clock, read_clock, round_half_up, split_clock, to_tenths


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("7:42.0", Fraction(462)),
        ("1:05:00", Fraction(3900)),
        ("90", Fraction(90)),
        ("90.5", Fraction(181, 2)),
        ("0:05", Fraction(5)),
    ],
)
def test_times_people_write_are_read(text: str, seconds: Fraction) -> None:
    assert read_clock(text) == seconds


@pytest.mark.parametrize("text", ["", "7:60", "7.42.0", "seven", "1:2", "-5", "٧:٤٢", "7:42.05"])
def test_other_texts_are_refused_with_what_would_do(text: str) -> None:
    with pytest.raises(ValueError, match=r"write it as 7:42\.0"):
        read_clock(text)


@given(st.integers(0, 86_400_0))
def test_what_is_printed_reads_back(tenths: int) -> None:
    seconds = Fraction(tenths, 10)
    assert read_clock(clock(seconds)) == seconds


@given(st.fractions(-1000, 1000))
def test_rounding_lands_within_a_half_and_ties_go_up(value: Fraction) -> None:
    assert -Fraction(1, 2) < round_half_up(value) - value <= Fraction(1, 2)


def test_a_split_is_printed_with_its_tenth() -> None:
    assert split_clock(Fraction(120)) == "2:00.0"
    assert to_tenths(Fraction(1155, 10) + Fraction(1, 20)) == Fraction(1156, 10)
