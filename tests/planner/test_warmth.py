"""Warmth of the muscles: the rise while rowing, the loss while waiting."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.athlete import Room
from planner.demand import Run
from planner.warmth import COURSES, DEGREES_AT_REST, FULL_RISE, Course, course_in, degrees, steady_rise

_, MIDDLE, _ = COURSES


def after_waiting(minutes: float, course: Course = MIDDLE) -> float:
    """Degrees left of a warm-up that has reached 3.0."""
    warm = Run(share_for(FULL_RISE), 10 * 3600)
    reached, left = degrees([warm, Run(0, 60 * minutes)], course)
    assert reached == pytest.approx(FULL_RISE)
    return left


def share_for(rise: float) -> float:
    low, high = 0.0, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if steady_rise(middle) < rise else (low, middle)
    return low


# Fact sheet 5.3 [=], from Raccuglia 2016, Eur J Appl Physiol 116:395-404: 3.0 degrees, 52.8 min.
@pytest.mark.parametrize(("minutes", "left"), [(5, 2.73), (10, 2.48), (20, 2.05), (30, 1.70), (45, 1.28)])
def test_warmth_is_lost_as_tabled(minutes: float, left: float) -> None:
    assert after_waiting(minutes) == pytest.approx(left, abs=0.006)


def test_the_spread_of_the_loss_is_the_measured_one() -> None:
    """1.3 +- 0.3 degrees in 30 min: Raccuglia 2016, Eur J Appl Physiol 116:395-404."""
    slow, _, quick = COURSES
    assert after_waiting(30, slow) == pytest.approx(3.0 - 1.6, abs=0.01)
    assert after_waiting(30, quick) == pytest.approx(3.0 - 1.0, abs=0.01)


# Saltin & Hermansen 1966, J Appl Physiol 21:1757: oesophagus 37.29, 38.01, 38.49, quadriceps 0.70 above.
@pytest.mark.parametrize(("share", "quadriceps"), [(0.26, 37.99), (0.51, 38.71), (0.69, 39.19)])
def test_steady_work_leads_to_the_measured_temperatures(share: float, quadriceps: float) -> None:
    assert steady_rise(share) + DEGREES_AT_REST == pytest.approx(quadriceps, abs=0.03)


def test_a_quarter_of_an_hour_of_firm_rowing_is_about_three_degrees() -> None:
    """Raccuglia 2016: 15 min raise the thigh by about 3 degrees."""
    assert degrees([Run(0.65, 900)], MIDDLE)[-1] == pytest.approx(3.0, abs=0.2)


@pytest.mark.parametrize("course", COURSES)
def test_most_of_the_rise_comes_within_5_min_and_little_after_20(course: Course) -> None:
    """Rises within 3-5 min, level after 10-20 (Saltin 1968; Bishop 2003, Sports Med 33:439-454 [M])."""
    five, twenty, end = degrees([Run(0.6, 300), Run(0.6, 900), Run(0.6, 7200)], course)
    assert five > 0.5 * end
    assert twenty > 0.94 * end


def test_a_cold_room_warms_later_and_cools_sooner_than_a_hot_one() -> None:
    session = [Run(0.5, 600), Run(0, 600)]
    by_room = [degrees(session, course_in(room, MIDDLE)) for room in (Room.COLD, Room.NORMAL, Room.HOT)]
    for at in (0, 1):
        assert [course[at] for course in by_room] == sorted(course[at] for course in by_room)


@given(st.lists(st.builds(Run, st.floats(0, 3), st.floats(0.1, 900)), min_size=1, max_size=8))
def test_warmth_stays_between_rest_and_the_warmest_steady_rowing(runs: list[Run]) -> None:
    assert all(0 <= now <= steady_rise(1.0) for now in degrees(runs, MIDDLE))
