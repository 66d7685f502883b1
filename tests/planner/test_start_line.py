"""The session simulated up to its start line: the same as a plain loop of its updates, second by second."""

from __future__ import annotations

import random

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from planner import oxygen, phosphocreatine, warmth
from planner.athlete import Level, Room
from planner.capacity import capacity_of
from planner.demand import Run, in_seconds, runs_of
from planner.plan import Gap, Part, PartKind, Plan, Pressure, Rest
from planner.start_line import Circumstances, Course, course_of, states_of
from planner.timeline import compile_timeline
from tests.bench.readiness import an_hour, bare_loop
from tests.builders import rower_of_7_42, seconds

EASY = seconds(60, 20, Pressure.LIGHT)
HARD = seconds(60, 30, Pressure.RACE)


def cut(*parts: Part | Gap) -> Course | None:
    return course_of(compile_timeline(Plan("Parts", parts)), None, Level.CLUB)


def warm_up(*steps: object) -> Part:
    return Part(PartKind.WARM_UP, steps or (EASY,))  # type: ignore[arg-type]


MAIN = Part(PartKind.MAIN, (HARD, EASY))
COOL_DOWN = Part(PartKind.COOL_DOWN, (EASY,))


@pytest.mark.parametrize("room", list(Room))
def test_an_hour_is_what_a_plain_loop_over_its_seconds_gives(room: Room) -> None:
    """The loop of the bench: every update written out, nothing taken over from the models' own loops."""
    athlete = rower_of_7_42()
    runs = tuple(runs_of(compile_timeline(an_hour(), athlete).segments, athlete, Level.CLUB))
    given = Circumstances(capacity_of(athlete, Level.CLUB), Level.CLUB, room)
    by_run = states_of(runs, runs, given)
    second = 0.0
    told = bare_loop([run.share for run in in_seconds(runs)], given)
    for run, state in zip(runs, by_run, strict=True):
        second += run.seconds
        row = told[int(second) - 1]
        spent, missing, two = row[0:3], row[3:6], [a + b for a, b in zip(row[6:9], row[9:12], strict=True)]
        left = [1 - each for each in (*spent, *missing, *two)]
        assert state.reserve.low == pytest.approx(min(left), abs=1e-9)
        assert state.reserve.high == pytest.approx(max(left), abs=1e-9)
        assert state.reserve.middle == pytest.approx(sorted((left[0], left[3], left[6]))[1], abs=1e-9)
        breath, stores, heat = row[12:14], row[14:17], row[17:20]
        assert state.oxygen == pytest.approx((min(breath), sum(breath) / 2, max(breath)), abs=1e-9)
        full = [1 - each for each in stores]
        assert state.phosphocreatine == pytest.approx((min(full), full[1], max(full)), abs=1e-9)
        assert state.warmth == pytest.approx((min(heat) / 3, heat[1] / 3, max(heat) / 3), abs=1e-9)


def test_the_start_line_is_the_start_of_the_first_main_block() -> None:
    course = cut(warm_up(), Gap(120), MAIN, COOL_DOWN)
    assert course is not None
    assert sum(run.seconds for run in course.before) == 60
    assert course.gap_seconds == 120
    assert [run.share for run in course.main] == [1.0, pytest.approx(0.333)]


def test_without_a_main_part_it_is_the_end_of_the_gap() -> None:
    course = cut(warm_up(), Gap(90))
    assert course is not None
    assert (course.gap_seconds, course.main) == (90, ())


def test_without_a_main_part_a_cool_down_is_not_rowed_before_it() -> None:
    course = cut(warm_up(), COOL_DOWN)
    assert course is not None
    assert len(course.before) == 1


def test_a_gap_before_the_warm_up_is_not_the_gap() -> None:
    course = cut(Gap(60), warm_up(), MAIN)
    assert course is not None
    assert course.gap_seconds is None


def test_a_rest_at_the_end_of_the_warm_up_belongs_to_it() -> None:
    course = cut(warm_up(EASY, Rest(30)), Gap(60), MAIN)
    assert course is not None
    assert course.gap_seconds == 60
    assert course.before[-1].share == 0


def test_two_gaps_in_a_row_are_one_wait() -> None:
    course = cut(warm_up(), Gap(60), Gap(90), MAIN)
    assert course is not None
    assert course.gap_seconds == 150


def test_two_hundred_random_sessions_breathe_refill_and_warm_as_an_outside_integrator_says() -> None:
    """scipy.integrate.solve_ivp (LSODA, relative 1e-9, absolute 1e-11): uptake, phosphocreatine and warmth to
    1e-6 of their unit after every run, as long as the store is not empty."""
    draw = random.Random(20)
    for case in range(200):
        kinetics = draw.choice([reading.heavy for reading in oxygen.READINGS.values()])
        course = draw.choice(warmth.COURSES)
        runs = [
            Run(draw.choice([0.0, draw.uniform(0.2, 1.1)]), draw.uniform(1, 200))
            for _ in range(draw.randint(1, 6))
        ]
        uptakes = oxygen.uptake(runs, kinetics)
        stores = phosphocreatine.remaining(runs, uptakes, kinetics.rise, 1.8)
        heats = warmth.degrees(runs, course)
        state = np.zeros(4)
        for run, *ours in zip(runs, uptakes, stores, heats, strict=True):
            rising = run.share > state[0]
            solved = solve_ivp(
                _change, (0, run.seconds), state, "LSODA", rtol=1e-9, atol=1e-11,
                args=(run.share, rising, kinetics, course),
            )  # fmt: skip
            state = solved.y[:, -1]
            if state[1] + state[2] > 1 - 1e-9:
                break
            breath, fast, slow, heat = state
            assert ours == pytest.approx([breath, 1 - fast - slow, heat], abs=1e-6), f"case {case}"


def _change(
    _: float, y: np.ndarray, share: float, rising: bool, kinetics: oxygen.Kinetics, course: warmth.Course
) -> list[float]:
    breath, fast, slow, heat = y
    cost = phosphocreatine.cost_of_debt(1.8, kinetics.rise)
    goal = min(share, 1.0)
    parts = (phosphocreatine.FAST_SHARE, 1 - phosphocreatine.FAST_SHARE)
    if rising:
        pools = [part * cost * (share - breath) for part in parts]
    else:
        kept = [part * cost * kinetics.rise * goal for part in parts]
        taus = (phosphocreatine.FAST_TAU, phosphocreatine.SLOW_TAU)
        pools = [-max(0.0, y - k) / tau for y, k, tau in zip((fast, slow), kept, taus, strict=True)]
    warming = (warmth.steady_rise(share) - heat) / course.rise if share else -heat / course.loss
    return [(goal - breath) / (kinetics.rise if rising else kinetics.fall), *pools, warming]
