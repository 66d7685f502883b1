"""The line through all results of a rower: no step in it, and never a longer piece at a quicker split."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from planner.athlete import Athlete, Result
from planner.curve import curve_of
from planner.prediction import Piece, Prediction, examined_of, predict, predictions_of
from planner.trials import kept_of
from tests.rowers import ANY_RESULTS, BY_OWN_LAW

ENDS = ("quickest", "likely", "slowest")
LEAST = 1e-9
"""A share of a split or a time that is rounding."""


def rower(*pairs: tuple[int, float]) -> Athlete:
    return Athlete(tuple(Result(metres, Fraction(str(seconds))) for metres, seconds in pairs))


# --- Rows of predictions that once stood in the wrong order, or had a step

TURNED_ABOUT = [
    rower((2000, 393.9), (21_097, 4623.6)),
    rower((200, 33.2), (10_000, 1957.5)),
    rower((500, 103.3), (21_097, 5134.2)),
    rower((1000, 180), (2000, 380), (6000, 1236)),
]


def over(metres: int, athlete: Athlete) -> Prediction:
    return predict(Piece("", metres), athlete.results, examined_of(athlete.results))


def in_order(athlete: Athlete, metres: list[int]) -> None:
    """Each end of the predictions keeps its order, but where chance has turned two results about."""
    found = [over(each, athlete) for each in sorted(set(metres) - outdone(athlete))]
    for short, long in pairwise(found):
        for end in ENDS:
            less, more = getattr(short, end), getattr(long, end)
            assert less.seconds < more.seconds
            assert less.split <= more.split * (1 + LEAST)


def outdone(athlete: Athlete) -> set[int]:
    """Distances whose result a longer one beats by its split: less than chance explains."""
    kept = [athlete.results[i] for i in kept_of(athlete.results, examined_of(athlete.results).left_out)]
    return {one.metres for one in kept if any(o.metres > one.metres and o.split < one.split for o in kept)}


@pytest.mark.parametrize("athlete", TURNED_ABOUT)
def test_the_standard_pieces_stand_in_order(athlete: Athlete) -> None:
    in_order(athlete, [100, 500, 1000, 2000, 5000, 6000, 10_000, 21_097, 42_195])


DISTANCES = st.lists(st.integers(50, 45_000), min_size=2, max_size=12)
ROWERS = st.one_of(ANY_RESULTS, BY_OWN_LAW)


@given(ROWERS, DISTANCES)
def test_the_longer_of_two_pieces_takes_longer_and_has_no_quicker_split(
    athlete: Athlete, metres: list[int]
) -> None:
    in_order(athlete, [*metres, *(result.metres for result in athlete.results)])


@given(ROWERS, st.lists(st.integers(30, 14_400), min_size=2, max_size=8, unique=True))
def test_the_longer_of_two_times_goes_further_and_no_quicker(athlete: Athlete, seconds: list[int]) -> None:
    examined = examined_of(athlete.results)
    found = [predict(Piece("", seconds=each), athlete.results, examined) for each in sorted(seconds)]
    for short, long in pairwise(one for one in found if not one.measured):
        for end in ENDS:
            less, more = getattr(short, end), getattr(long, end)
            assert less.metres < more.metres
            assert less.split <= more.split * (1 + LEAST)


@given(ROWERS, st.floats(50, 20_000), st.floats(1.01, 3))
@example(TURNED_ABOUT[3], 4500.0, 1.1)
def test_there_is_no_step_in_it(athlete: Athlete, metres: float, ratio: float) -> None:
    """Going where the time rises most, half by half, ends at a steep place or at a step."""
    curve = curve_of(athlete.results, examined_of(athlete.results))
    for end in ENDS[1:]:
        seconds_for = getattr(curve, end)
        low, high = metres, metres * ratio
        while high - low > LEAST * high:
            middle = (low + high) / 2
            rises = seconds_for(middle) / seconds_for(low) > seconds_for(high) / seconds_for(middle)
            low, high = (low, middle) if rises else (middle, high)
        assert seconds_for(high) / seconds_for(low) < 1 + STEP


STEP = 1e-5
"""Results a metre apart whose times lie a chance apart rise by less over so short a way."""


@given(ROWERS)
def test_what_was_rowed_stays_as_it_was(athlete: Athlete) -> None:
    for index in kept_of(athlete.results, examined_of(athlete.results).left_out):
        result = athlete.results[index]
        found = over(result.metres, athlete)
        assert (found.likely.metres, found.likely.seconds) == (result.metres, float(result.seconds))


@given(ROWERS, st.integers(30, 14_400))
def test_a_time_and_its_distance_lie_on_one_line(athlete: Athlete, seconds: int) -> None:
    by_clock = predict(Piece("", seconds=seconds), athlete.results, examined_of(athlete.results))
    if by_clock.measured:
        return
    metres = by_clock.likely.metres
    below, above = (over(max(1, int(metres) + more), athlete) for more in (0, 1))
    if not (below.measured or above.measured):
        assert below.likely.seconds <= seconds * (1 + LEAST)
        assert above.likely.seconds >= seconds * (1 - LEAST)


@given(ROWERS)
def test_the_likely_lies_between_the_ends(athlete: Athlete) -> None:
    for found in predictions_of(athlete.results, examined_of(athlete.results)):
        assert found.quickest.seconds <= found.likely.seconds * (1 + LEAST)
        assert found.likely.seconds <= found.slowest.seconds * (1 + LEAST)
        assert found.quickest.metres >= found.likely.metres * (1 - LEAST)
        assert found.likely.metres >= found.slowest.metres * (1 - LEAST)


def test_between_two_results_it_follows_the_law_that_leads_from_one_to_the_other() -> None:
    """By hand: log(4623.6 / 393.9) / log(21097 / 2000) = 1.04545; 393.9 x 3^1.04545 = 1242.1."""
    assert over(6000, TURNED_ABOUT[0]).likely.seconds == pytest.approx(1242.1, abs=0.1)


def test_a_hyperbola_bent_through_two_results_never_passes_the_split_of_the_longer() -> None:
    in_order(rower((700, 162.1), (1500, 348.3), (3500, 840.1)), [1200, 1300, 1340, 1400, 1450, 1500])


def test_a_fit_of_results_outside_its_range_shapes_nothing() -> None:
    """By hand: log(1300.5 / 111.1) / log(10) = 1.06839; 111.1 x 2^1.06839 = 232.99."""
    athlete = rower((500, 111.1), (5000, 1300.5))
    fit = examined_of(athlete.results).fit
    assert fit is not None
    assert fit.stretched
    assert over(1000, athlete).likely.seconds == pytest.approx(232.99, abs=0.02)


def test_half_way_to_a_result_rowed_easily_the_hard_one_speaks() -> None:
    """60:00 over 10 km beside 7:42 over 2 km: 4 km by both customs from the 2 km alone."""
    athlete, alone = rower((2000, 462), (10_000, 3600)), rower((2000, 462))
    assert over(4000, athlete).likely == over(4000, alone).likely
    assert over(8000, alone).likely.seconds < over(8000, athlete).likely.seconds < 3600


def test_two_results_that_chance_turned_about_share_a_split() -> None:
    """121.0 over 5 km and 120.8 over 6 km: what was held for six can be held for 5.1."""
    assert over(5100, rower((5000, 1210), (6000, 1450))).split == pytest.approx(14500 / 120)
