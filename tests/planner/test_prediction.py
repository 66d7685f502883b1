"""What results say of the standard pieces and of the 2 km split."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.athlete import Athlete, Result
from planner.critical_power import Fit, Refusal, examine
from planner.curve import own_law, rowed
from planner.customs import (
    Custom,
    Length,
    by_doubling,
    by_power_law,
    holds,
    metres_by_doubling,
    metres_by_power_law,
)
from planner.prediction import (
    STANDARD_PIECES,
    TWO_K,
    Prediction,
    examined_of,
    predict,
    predictions_of,
    two_k_of,
)

SEVEN_MINUTES = Result(2000, Fraction(420))
TABLED = Fit(250, 1, 15_000, 1, 0, 0.01, (0, 1))


def two_k(*results: tuple[int, float]) -> tuple[Fraction, Fraction, Fraction]:
    found = two_k_of(Athlete(tuple(Result(m, Fraction(str(s))) for m, s in results)))
    assert found is not None
    return found.low, found.split, found.high


def all_of(*results: Result) -> dict[str, Prediction]:
    return {p.piece.name: p for p in predictions_of(results, examine(results))}


# --- Fact sheet 3.1, from 2000 m in 7:00.0: Riegel's power law (exponent 1.06) and the 5-seconds custom


@pytest.mark.parametrize(("metres", "seconds"), [(5000, 1109.34), (10_000, 2312.90), (1000, 201.45)])
def test_the_power_law_gives_the_tabled_times(metres: int, seconds: float) -> None:
    assert by_power_law(SEVEN_MINUTES, metres) == pytest.approx(seconds, abs=0.006)


@pytest.mark.parametrize(
    ("metres", "seconds"), [(5000, 1116.10), (10_000, 2332.19), (1000, 200.0), (500, 95.0)]
)
def test_the_doubling_custom_gives_the_tabled_times(metres: int, seconds: float) -> None:
    assert by_doubling(SEVEN_MINUTES, metres) == pytest.approx(seconds, abs=0.006)


def test_the_law_of_the_records_gives_the_tabled_time() -> None:
    """The 9/8 law (Kennelly 1906): the slow end of the spread."""
    assert by_power_law(SEVEN_MINUTES, 5000, 9 / 8) == pytest.approx(1177.42, abs=0.006)


def test_a_doubling_costs_the_tabled_share() -> None:
    """2^1.06 = 2.084932."""
    assert by_power_law(SEVEN_MINUTES, 4000) / 420 == pytest.approx(2.084932, abs=1e-6)


@pytest.mark.parametrize(("split", "exponent"), [(90, 1.0780), (105, 1.0671), (120, 1.0589), (150, 1.0473)])
def test_the_custom_is_the_tabled_local_exponent(split: int, exponent: float) -> None:
    result = Result(2000, Fraction(4 * split))
    assert by_power_law(result, 4000, exponent) == pytest.approx(by_doubling(result, 4000), rel=1e-4)


def test_the_range_of_each_law_is_told() -> None:
    """3.5 to 230 min for the law; 500 m to 42 km for the custom (facts 3.1)."""
    to_500, to_5000 = Length(500, 95.0), Length(5000, 1110.0)
    assert not holds(Custom.POWER_LAW, SEVEN_MINUTES, to_500)
    assert holds(Custom.POWER_LAW, SEVEN_MINUTES, to_5000)
    assert holds(Custom.DOUBLING, SEVEN_MINUTES, to_500)
    assert not holds(Custom.DOUBLING, SEVEN_MINUTES, Length(100, 17.0))
    assert not holds(Custom.DOUBLING, Result(100, Fraction(17)), to_5000)


# --- The pieces


def test_one_result_says_something_of_every_standard_piece() -> None:
    found = all_of(SEVEN_MINUTES)
    assert list(found) == [piece.name for piece in STANDARD_PIECES]
    assert {"100 m", "21 097 m", "42 195 m", "1 min", "4 min", "30 min", "60 min"} < set(found)


def test_the_likely_is_the_mean_of_both_customs() -> None:
    """Facts 3.1: 1109.34 and 1116.10."""
    assert all_of(SEVEN_MINUTES)["5 km"].likely.seconds == pytest.approx(1112.72, abs=0.01)


def test_the_spread_is_that_of_the_exponents_rowers_have() -> None:
    """420 x 2.5^1.03 = 1079.3; by 9/8 1177.42 (facts 3.1)."""
    five = all_of(SEVEN_MINUTES)["5 km"]
    assert five.quickest.seconds == pytest.approx(1079.3, abs=0.1)
    assert five.slowest.seconds == pytest.approx(1177.42, abs=0.01)


def test_a_time_is_predicted_in_metres() -> None:
    half_hour = all_of(SEVEN_MINUTES)["30 min"]
    assert half_hour.likely.seconds == 1800
    assert half_hour.slowest.metres < half_hour.likely.metres < half_hour.quickest.metres
    assert half_hour.split == pytest.approx(1800 * 500 / half_hour.likely.metres)


def test_a_piece_that_was_rowed_is_not_predicted() -> None:
    two = all_of(SEVEN_MINUTES, Result(5000, Fraction(1150)))["2 km"]
    assert two.measured
    assert two.quickest == two.likely == two.slowest == Length(2000, 420.0)


def test_a_piece_by_the_clock_that_was_rowed_is_not_predicted() -> None:
    half_hour = all_of(SEVEN_MINUTES, Result(7600, Fraction(1800)))["30 min"]
    assert half_hour.measured
    assert half_hour.likely.metres == 7600


def test_the_customs_start_from_the_nearest_result() -> None:
    found = all_of(Result(500, Fraction(90)), Result(6000, Fraction(1400)))
    assert found["1 km"].source == 0
    assert found["10 km"].source == 1


def test_a_trusted_fit_is_the_likely_inside_its_range_only() -> None:
    some = [Result(d, Fraction(round(TABLED.seconds_for(d) * 10), 10)) for d in (700, 1500, 3000)]
    found = all_of(*some)
    assert found["2 km"].likely.seconds == pytest.approx(428.343, abs=0.1)  # facts 3.2
    assert found["2 km"].by[-1].within_range
    assert found["10 km"].by[-1].custom is Custom.CRITICAL_POWER
    assert not found["10 km"].by[-1].within_range
    assert found["10 km"].likely.seconds > found["10 km"].by[-1].predicted.seconds


def test_a_contradicted_result_predicts_nothing() -> None:
    found = all_of(Result(2000, Fraction(420)), Result(1000, Fraction(215)))
    assert found["1 km"].source == 0


def test_a_fit_that_is_not_sure_to_2_percent_is_not_trusted() -> None:
    """Three results about a line, further from it each time; all fits reach 2 km.

    Between two results the hyperbola lies above their power law: its local exponent falls with the distance.
    """
    for seconds_off, trusted in ((3, True), (6, True), (9, False)):
        some = tuple(
            Result(metres, Fraction(round(TABLED.seconds_for(metres) * 10), 10) + off)
            for metres, off in ((700, 0), (1200, seconds_off), (3000, 0))
        )
        examined = examine(some)
        assert examined.fit is not None
        assert (examined.fit.time_error(2000) <= 0.02) == trusted
        found = predict(TWO_K, some, examined)
        assert found.by[-1].within_range
        by_law = own_law(rowed(some[1]), rowed(some[2]), 2000)
        assert (found.likely.seconds > by_law) == trusted
        assert trusted or found.likely.seconds == by_law


@pytest.mark.parametrize(("share", "aside"), [(0.73, True), (0.77, False), (0.96, False), (0.98, True)])
def test_from_where_critical_power_is_set_aside(share: float, aside: bool) -> None:
    """Results of a fit whose critical power is so much of its 2 km power, 263 W: 2.8 x 2000^3 / 440^3."""
    watts = 2.8 * 2000**3 / 440**3
    fit = Fit(share * watts, 1, (1 - share) * watts * 440, 1, 0, 0.01, (0, 1))
    some = [Result(d, Fraction(round(fit.seconds_for(d) * 10), 10)) for d in (750, 2000, 4000)]
    examined = examined_of(some)
    assert (examined.fit is None) == aside
    assert (examined.refusal is Refusal.UNLIKELY) == aside


# --- The 2 km split


def test_a_2_km_result_is_its_own_2_km_split() -> None:
    assert two_k((2000, 462)) == (Fraction(1155, 10),) * 3


def test_a_2_km_result_wins_wherever_it_stands() -> None:
    assert two_k((5000, 1240), (1000, 221), (2000, 462)) == (Fraction(1155, 10),) * 3


def test_the_quicker_of_two_2_km_results_wins() -> None:
    assert two_k((2000, 470), (2000, 462))[1] == Fraction(1155, 10)


def test_a_good_fit_comes_next() -> None:
    """Critical power 250 W and W' 15 kJ row 2000 m at a split of 107.086 (facts 3.2)."""
    some = [(d, round(TABLED.seconds_for(d), 1)) for d in (700, 1500, 3000)]
    low, split, high = two_k(*some)
    assert split == Fraction(1071, 10)
    assert low < split < high


def test_else_the_line_between_the_results_beside_it_sets_it() -> None:
    """By hand: log(2500 / 100) / log(10000 / 500) = 1.07449; 100 x 4^0.07449 = 110.88."""
    assert two_k((10_000, 2500), (500, 100))[1] == Fraction(1109, 10)


def test_beyond_all_results_the_customs_from_the_last_one_set_it() -> None:
    assert two_k((1000, 205), (500, 98)) == two_k((1000, 205))


def test_another_distance_gives_a_split_between_the_ends_of_its_spread() -> None:
    low, split, high = two_k((5000, 1200))
    assert low < split < high


def test_without_a_result_there_is_no_2_km_split() -> None:
    assert two_k_of(None) is None
    assert two_k_of(Athlete()) is None


# --- Properties

SPLITS = st.fractions(100, 300, max_denominator=10)
RESULTS = st.builds(
    lambda metres, split: Result(metres, split * metres / 500), st.integers(100, 42_195), SPLITS
)


@given(RESULTS, st.fractions(Fraction(9, 10), Fraction(999, 1000)))
def test_a_faster_result_never_lengthens_a_prediction(slower: Result, share: Fraction) -> None:
    faster = Result(slower.metres, slower.seconds * share)
    for piece in STANDARD_PIECES:
        before, after = (predict(piece, [r], examine([r])) for r in (slower, faster))
        for name in ("quickest", "likely", "slowest"):
            was, now = getattr(before, name), getattr(after, name)
            if piece.metres is not None:
                assert now.seconds <= was.seconds * (1 + 1e-9)
            elif not (before.measured or after.measured):
                assert now.metres >= was.metres * (1 - 1e-9)


@given(RESULTS)
def test_the_likely_lies_between_the_ends(result: Result) -> None:
    for found in predictions_of([result], examine([result])):
        assert found.quickest.seconds <= found.likely.seconds <= found.slowest.seconds
        assert found.quickest.metres >= found.likely.metres >= found.slowest.metres


@given(RESULTS, st.floats(30, 20_000))
def test_time_and_distance_are_each_others_inverse(result: Result, seconds: float) -> None:
    assert by_power_law(result, metres_by_power_law(result, seconds)) == pytest.approx(seconds, rel=1e-9)
    assert by_doubling(result, metres_by_doubling(result, seconds)) == pytest.approx(seconds, rel=1e-9)


@given(RESULTS, st.integers(100, 42_195))
def test_there_and_back_is_the_result_again(result: Result, metres: int) -> None:
    for law in (by_power_law, by_doubling):
        there = Result(metres, Fraction(law(result, metres)))
        assert law(there, result.metres) == pytest.approx(float(result.seconds), rel=1e-9)


@given(RESULTS, st.integers(2, 5))
def test_the_power_law_scales(result: Result, scale: int) -> None:
    """So many times the seconds for the same metres give so many times every prediction."""
    slower = replace(result, seconds=result.seconds * scale)
    assert by_power_law(slower, 2000) == pytest.approx(scale * by_power_law(result, 2000), rel=1e-12)


@given(st.lists(RESULTS, min_size=1, max_size=6))
def test_any_results_give_a_2_km_split(results: list[Result]) -> None:
    found = predict(TWO_K, results, examine(results))
    assert 0 < found.quickest.seconds <= found.likely.seconds <= found.slowest.seconds < 20_000
