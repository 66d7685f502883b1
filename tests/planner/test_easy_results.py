"""A long result that was rowed easily: it must not rule what others say of critical power."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.appraisal import appraise
from planner.athlete import Athlete, Level, Result, Room
from planner.capacity import CapacityBasis, capacity_of
from planner.critical_power import examine
from planner.findings import Severity
from planner.pieces import SteadyRow
from planner.prediction import LEAST_CRITICAL, MOST_CRITICAL
from planner.session import SessionRequest, session_of
from planner.standing import standing_of
from planner.timeline import compile_timeline
from planner.trials import Doubt
from tests.rowers import LEVELS, ONE_EASY


@given(ONE_EASY)
def test_critical_power_does_not_come_from_an_easy_result(athlete: Athlete) -> None:
    examined = examine(athlete.results)
    assert examined.fit is None
    (left_out,) = examined.left_out
    assert left_out.index == 1
    assert left_out.doubt in (Doubt.EASY, Doubt.CONTRADICTED)
    assert capacity_of(athlete, Level.CLUB).basis is CapacityBasis.RESULT


@given(ONE_EASY)
def test_it_is_said_once_and_nothing_is_said_of_its_length(athlete: Athlete) -> None:
    (about,) = [f for f in standing_of(athlete).findings if f.place == "/results/1"]
    assert about.code in ("result-looks-easy", "result-contradicted")
    assert about.code == "result-contradicted" or "no say in critical power" in about.sentence


@given(ONE_EASY, st.integers(5, 60), LEVELS, st.sampled_from(list(Room)))
def test_an_easy_session_carries_no_warning_because_of_it(
    athlete: Athlete, minutes: int, level: Level, room: Room
) -> None:
    request = SessionRequest(SteadyRow(60 * minutes), athlete=athlete, level=level, room=room)
    timeline = compile_timeline(session_of(request).plan, request.rower)
    found = appraise(timeline, athlete, level, room).findings
    assert [f for f in found if f.severity is Severity.WARNING] == []


@given(
    st.floats(95, 140),
    st.lists(st.tuples(st.integers(600, 4000), st.floats(-0.02, 0.5)), min_size=1, max_size=4),
    LEVELS,
)
def test_a_critical_power_that_no_rower_has_is_set_aside(
    split: float, others: list[tuple[int, float]], level: Level
) -> None:
    """Of 2 km power it is 75 to 97 %: common practice, no source."""
    results = tuple(
        Result(metres, Fraction(round(10 * 4 * split * (metres / 2000) ** 1.06 * (1 + slower)), 10))
        for metres, slower in ((2000, 0.0), *others)
    )
    athlete = Athlete(results)
    capacity = capacity_of(athlete, level)
    if capacity.basis is CapacityBasis.FIT:
        assert LEAST_CRITICAL <= capacity.critical <= MOST_CRITICAL
    codes = {finding.code for finding in standing_of(athlete).findings}
    assert capacity.fit_set_aside == ("critical-power-set-aside" in codes)
    assert standing_of(athlete).examined.fit is None or capacity.basis is CapacityBasis.FIT


@pytest.mark.parametrize("slow", [750, 900])
def test_a_fit_that_is_set_aside_says_what_it_came_to(slow: int) -> None:
    """1000 m is too short for the law of times, so nothing is said of the easy 3 km beside it but this."""
    athlete = Athlete((Result(1000, Fraction(200)), Result(3000, Fraction(slow))))
    (finding,) = [f for f in standing_of(athlete).findings if f.code == "critical-power-set-aside"]
    assert finding.severity is Severity.ADVICE
    assert finding.place == "/results"
    assert "% of 2 km power" in finding.sentence
