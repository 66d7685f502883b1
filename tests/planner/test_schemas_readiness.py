"""Readiness, energy and load as JSON: whole percent, named as agreed, and as their shapes describe them."""

from __future__ import annotations

import json
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from marshmallow import fields

from planner.athlete import Athlete, Level, Room
from planner.energy import energy_of
from planner.errors import InputError
from planner.load import week_of
from planner.plan import Pressure
from planner.readiness import readiness_of
from planner.schemas.fields import Inside, Strict
from planner.schemas.plan_schema import load_plan
from planner.schemas.readiness_schema import dump_energy, dump_readiness, dump_week
from planner.schemas.readiness_shape import EnergyShape, ReadinessShape, WeekShape
from planner.timeline import compile_timeline
from tests.builders import metres, rower_of_7_42, seconds, warm_up_then
from tests.strategies import DOCUMENTS

PLAN = warm_up_then(300, seconds(900, 24, Pressure.FULL), metres(2000, 30, Pressure.RACE))


def dumped(athlete: Athlete | None = None) -> Any:
    found = readiness_of(compile_timeline(PLAN, athlete), athlete, Level.CLUB)
    assert found is not None
    return dump_readiness(found)


def test_its_names_are_those_that_were_promised() -> None:
    answer = dumped(rower_of_7_42())
    assert set(answer) == {
        "basis",
        "start_s",
        "gap_s",
        "advised_gap",
        "at_start",
        "by_gap",
        "series",
        "sentence",
        "notes",
        "capacity",
    }
    states = {"reserve", "phosphocreatine", "oxygen", "warmth"}
    assert set(answer["at_start"]) == states
    assert set(answer["by_gap"][0]) == {"gap_s", *states}
    assert set(answer["advised_gap"]) == {"low_s", "best_s", "high_s"}
    assert set(answer["series"]) == {"step_s", "reserve", "reserve_low", "reserve_high", "oxygen", "warmth"}


def test_every_percentage_is_a_whole_number() -> None:
    answer = dumped()
    percentages = [
        value for row in answer["by_gap"] for key, r in row.items() if key != "gap_s" for value in r.values()
    ]
    percentages += [value for key, line in answer["series"].items() if key != "step_s" for value in line]
    assert {type(value) for value in percentages} == {int}


def test_the_row_of_the_plans_gap_is_the_state_at_the_start() -> None:
    answer = dumped()
    assert answer["gap_s"] == 300
    assert answer["start_s"] == 1200
    assert answer["by_gap"][5] == {"gap_s": 300, **answer["at_start"]}


def test_without_a_result_there_are_no_watts_and_no_kilojoules() -> None:
    assert "capacity" not in dumped()


def test_with_a_result_the_capacity_is_in_watts_and_kilojoules() -> None:
    """2 km in 7:42 is 227.2 W (fact sheet 6.6 [=]); a club rower's critical share is 0.87 by default."""
    capacity = dumped(rower_of_7_42())["capacity"]
    assert capacity["watts"] == round(0.87 * 227.2)
    assert capacity["reserve_kj"] == pytest.approx(0.13 * 462 * 0.2272, abs=0.06)
    assert capacity["watts_low"] < capacity["watts"] < capacity["watts_high"]


def test_a_plan_without_a_gap_says_null() -> None:
    plan = replace(PLAN, parts=(PLAN.parts[0], PLAN.parts[2]))
    found = readiness_of(compile_timeline(plan), None, Level.CLUB)
    assert found is not None
    assert dump_readiness(found)["gap_s"] is None


def test_energy_has_its_ranges_and_names_its_editions() -> None:
    athlete = replace(rower_of_7_42(), mass_kg=Fraction(75))
    energy = energy_of(compile_timeline(PLAN, athlete), athlete)
    assert energy is not None
    answer: Any = dump_energy(energy)
    assert answer["kcal"]["low"] < answer["kcal"]["high"]
    assert [cost["edition"] for cost in answer["by_table"]] == [2011, 2024]


def test_a_week_names_its_deviations() -> None:
    """Fact sheet 8 [=]."""
    answer = dump_week(week_of((270, 0, 180, 300, 0, 420, 150)))
    assert answer == {
        "total": 1320,
        "mean": 188.6,
        "evenness": [
            {"deviation": "sample", "monotony": 1.21, "strain": 1600},
            {"deviation": "population", "monotony": 1.31, "strain": 1728},
        ],
    }


def fits(value: Any, shape: type[Strict]) -> None:
    """Every key is described, every required one is there, and so on inside."""
    described = shape().fields
    assert set(value) <= set(described)
    assert {name for name, field in described.items() if field.required} <= set(value)
    for name, inner in value.items():
        field = described[name]
        one = field.inner if isinstance(field, fields.List) else field
        if isinstance(one, Inside):
            for each in inner if isinstance(inner, list) else [inner]:
                fits(each, one.kind)


def test_each_answer_is_as_its_shape_describes_it() -> None:
    athlete = replace(rower_of_7_42(), mass_kg=Fraction(75))
    energy = energy_of(compile_timeline(PLAN, athlete), athlete)
    assert energy is not None
    for answer, shape in (
        (dumped(athlete), ReadinessShape),
        (dumped(), ReadinessShape),
        (dump_energy(energy), EnergyShape),
        (dump_week(week_of((1, 2, 3, 4, 5, 6, 7))), WeekShape),
        (dump_week(week_of((1,) * 7)), WeekShape),
    ):
        fits(json.loads(json.dumps(answer, allow_nan=False)), shape)


@settings(max_examples=60)
@given(DOCUMENTS, st.sampled_from(list(Level)), st.sampled_from(list(Room)))
def test_whatever_the_plan_the_answer_holds_numbers_and_keeps_its_shape(
    document: dict[str, Any], level: Level, room: Room
) -> None:
    try:
        timeline = compile_timeline(load_plan(document))
    except InputError:
        return
    found = readiness_of(timeline, None, level, room)
    if found is not None:
        fits(json.loads(json.dumps(dump_readiness(found), allow_nan=False)), ReadinessShape)
