"""Readiness of an hour at 1 Hz, beside a bare loop of the same updates of state; and the interval solver."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import exp
from unittest.mock import patch

from planner import oxygen, phosphocreatine, reserve, warmth
from planner.athlete import Level, Room
from planner.capacity import Capacity, capacity_of
from planner.demand import Run, in_seconds, runs_of
from planner.intervals import Intervals, Solution, solve
from planner.plan import ForMetres, ForSeconds, Gap, Part, PartKind, Plan, Pressure, Repeat, Rest, TwoKPower
from planner.readiness import readiness_of
from planner.reserve import by_every_model
from planner.start_line import Circumstances, states_of
from planner.timeline import compile_timeline
from tests.bench.measuring import Row, at_most, median_seconds
from tests.builders import rower_of_7_42, seconds

AIM = 3.0
ROUNDS = 20
SIMULATIONS = 39
LEVEL = Level.CLUB


def rows() -> Iterator[Row]:
    """The whole answer, the simulation second by second, and the most simulations that the solver needs."""
    athlete = rower_of_7_42()
    timeline = compile_timeline(an_hour(), athlete)
    given = Circumstances(capacity_of(athlete, LEVEL), LEVEL, Room.NORMAL)
    each_second = tuple(in_seconds(runs_of(timeline.segments, athlete, LEVEL)))
    shares = [run.share for run in each_second]
    taken = median_seconds(
        {
            "answer": lambda: readiness_of(timeline, athlete, LEVEL),
            "simulation": lambda: states_of(each_second, each_second, given),
            "loop": lambda: bare_loop(shares, given),
        },
        ROUNDS,
    )
    beside = f"against {taken['loop'] * 1000:.2f} ms"
    for name, subject in (
        ("simulation", "simulate 60 min at 1 Hz"),
        ("answer", "readiness of 60 min, whole"),
    ):
        detail = f"{taken[name] * 1000:.2f} ms {beside}"
        yield at_most(f"{subject}, against a bare loop", taken[name] / taken["loop"], AIM, "x", detail)
    yield _solver(given)


def an_hour() -> Plan:
    """Sixty minutes: a warm-up with bursts, a gap, intervals, a way down."""
    hard, easy = seconds(20, 30, Pressure.RACE), seconds(40, 20, Pressure.LIGHT)
    warm_up = (seconds(600, 20, Pressure.HALF), Repeat(5, (hard, easy)))
    intervals = Repeat(6, (seconds(180, 28, TwoKPower(Fraction(105, 100))),), (Rest(120),))
    return Plan(
        "An hour",
        (
            Part(PartKind.WARM_UP, warm_up),
            Gap(300),
            Part(PartKind.MAIN, (intervals,)),
            Part(PartKind.COOL_DOWN, (seconds(720, 18, Pressure.LIGHT),)),
        ),
    )


def bare_loop(shares: list[float], given: Circumstances) -> list[list[float]]:
    """All states of `states_of` in one plain loop, a second at a time, every update written out."""
    capacity, readings = given.capacity, oxygen.READINGS[given.level]
    purses = (capacity.middle, *capacity.corners)
    runs = [Run(share, 1.0) for share in shares]
    taus = [reserve.tau_for(runs, purse, capacity) for purse in purses]
    keeps = [exp(-1 / tau) for tau in taus]
    spent, missing, fast, slow = ([0.0] * 3 for _ in range(4))
    breath = [0.0, 0.0]
    stores = [[0.0, 0.0] for _ in phosphocreatine.ALL_OUT_SHARES]
    costs = [phosphocreatine.cost_of_debt(s, readings.heavy.rise) for s in phosphocreatine.ALL_OUT_SHARES]
    quick, lasting = exp(-1 / phosphocreatine.FAST_TAU), exp(-1 / phosphocreatine.SLOW_TAU)
    courses = [warmth.course_in(given.room, course) for course in warmth.COURSES]
    heat = [0.0] * len(courses)
    told = []
    for share in shares:
        for i, (critical, size) in enumerate(purses):
            over = (share - critical) / size
            spent[i] *= keeps[i]
            if over > 0:
                spent[i] += over * taus[i] * (1 - keeps[i])
                missing[i] += over
                fast[i] += reserve.FAST_SHARE * over
                slow[i] += reserve.SLOW_SHARE * over
            else:
                missing[i] *= exp(over)
                ease = (critical - share) / critical
                fast[i] *= exp(-ease / reserve.FAST_TAU)
                slow[i] *= exp(-ease / reserve.SLOW_TAU)
        goal, before = min(share, 1.0), breath[1]
        for i, kinetics in enumerate((readings.moderate, readings.heavy)):
            tau = kinetics.rise if goal > breath[i] else kinetics.fall
            breath[i] = goal + (breath[i] - goal) * exp(-1 / tau)
        for store, cost in zip(stores, costs, strict=True):
            if share > before:
                debt = cost * (share - goal + readings.heavy.rise * (breath[1] - before))
                paid = min(debt, 1 - store[0] - store[1])
                store[0] += phosphocreatine.FAST_SHARE * paid
                store[1] += (1 - phosphocreatine.FAST_SHARE) * paid
            else:
                kept = cost * readings.heavy.rise * goal
                low, high = phosphocreatine.FAST_SHARE * kept, (1 - phosphocreatine.FAST_SHARE) * kept
                store[0] = low + (store[0] - low) * quick if store[0] > low else store[0]
                store[1] = high + (store[1] - high) * lasting if store[1] > high else store[1]
        for i, course in enumerate(courses):
            if share > 0:
                aim = warmth.steady_rise(share)
                heat[i] = aim + (heat[i] - aim) * exp(-1 / course.rise)
            else:
                heat[i] *= exp(-1 / course.loss)
        told.append([*spent, *missing, *fast, *slow, *breath, *(a + b for a, b in stores), *heat])
    return told


def _solver(given: Circumstances) -> Row:
    """The most simulations over sets such as coaches write."""
    lengths: list[ForMetres | ForSeconds] = [ForMetres(m) for m in (250, 500, 750, 1000, 1500, 2000)]
    lengths += [ForSeconds(whole) for whole in (30, 60, 90, 180, 240, 480)]
    found = [
        _simulations(Intervals(times, length, rest), given.capacity, leave)
        for length in lengths
        for times in (1, 2, 4, 8)
        for rest in (30, 60, 180, 300)
        for leave in (0, 10, 30)
    ]
    solved = [count for count in found if count is not None]
    detail = f"{len(solved)} sets solved, {len(found) - len(solved)} without a solution"
    return at_most("simulations to solve a set, at most", max(solved), SIMULATIONS, "", detail)


def _simulations(asked: Intervals, capacity: Capacity, leave: int) -> int | None:
    """How often the set is simulated until it is solved, or None where it has no solution."""
    with patch("planner.intervals.by_every_model", wraps=by_every_model) as simulate:
        solved = isinstance(solve(asked, capacity, leave), Solution)
    return simulate.call_count if solved else None
