"""The border of JSON: what is let in, what is refused and in which words; nothing changes between."""

from __future__ import annotations

import copy
import json
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from marshmallow import RAISE

from planner.athlete import Athlete, Level, Result
from planner.errors import InputError
from planner.plan import (
    Block,
    Call,
    Cr10,
    Drill,
    ForMetres,
    ForSeconds,
    ForStrokes,
    Gap,
    HeartRate,
    HeartRateUnit,
    Open,
    Part,
    PartKind,
    Plan,
    Pressure,
    Repeat,
    Rest,
    Setting,
    Split,
    TwoKPower,
)
from planner.schemas.athlete_schema import load_athlete
from planner.schemas.fields import PROBLEMS, OneKey, Strict
from planner.schemas.plan_schema import dump_plan, load_plan
from planner.schemas.request_schema import load_timeline_request

EVERYTHING: dict[str, Any] = {
    "format": 1,
    "title": "Everything a plan can hold",
    "summary": "One of each.",
    "setup": "Straps over the widest part of the foot.",
    "setting": {"drag_factor": 120},
    "parts": [
        {
            "kind": "warm-up",
            "blocks": [
                {
                    "for": {"seconds": 50},
                    "rate": 18,
                    "effort": {"pressure": "light"},
                    "drill": {"name": "one foot", "sides": 2, "side_seconds": 20, "swap_seconds": 10},
                    "focus": "long arms",
                    "calls": [{"text": "Sit tall"}, {"text": "Easy", "stroke": 3}],
                    "setting": {"lever": 4},
                },
                {"rest": True, "for": {"seconds": 30}},
                {
                    "times": 3,
                    "blocks": [{"for": {"strokes": 10}, "rate": 28, "effort": {"split": 115.5}}],
                    "between": [{"for": {"seconds": 60}, "effort": {"cr10": 2}}],
                },
            ],
        },
        {"kind": "gap", "for": {"seconds": 300}},
        {
            "kind": "main",
            "blocks": [
                {"for": {"metres": 2000}, "effort": {"two_k_power_fraction": 0.65}},
                {"open": True, "rate": 20, "effort": {"heart_rate": {"percent_max": 80}}},
                {"for": {"seconds": 60}, "effort": {"split_offset": -1.5}},
                {
                    "for": {"seconds": 60},
                    "rate": 20,
                    "effort": {"change": -2},
                    "calls": [{"text": "Last five", "strokes_left": 5}],
                },
            ],
        },
        {"kind": "cool-down", "blocks": [{"for": {"seconds": 60}, "drill": {"name": "arms only"}}]},
    ],
}


def plan_of(*blocks: Any) -> dict[str, Any]:
    return {"format": 1, "title": "A piece", "parts": [{"kind": "main", "blocks": list(blocks)}]}


def sentences(document: object) -> dict[str, str]:
    with pytest.raises(InputError) as caught:
        load_plan(document)
    return {problem.pointer: problem.sentence for problem in caught.value.problems}


def nested_repeats(deep: int) -> dict[str, Any]:
    step: dict[str, Any] = {"for": {"seconds": 60}}
    for _ in range(deep):
        step = {"times": 2, "blocks": [step]}
    return step


# --- What is let in


def test_a_canonical_document_comes_back_as_it_was() -> None:
    assert dump_plan(load_plan(EVERYTHING)) == EVERYTHING


def test_a_canonical_document_comes_back_byte_for_byte() -> None:
    again = dump_plan(load_plan(EVERYTHING))
    assert json.dumps(again, sort_keys=True) == json.dumps(EVERYTHING, sort_keys=True)


def test_loading_leaves_the_document_alone() -> None:
    document = copy.deepcopy(EVERYTHING)
    load_plan(document)
    assert document == EVERYTHING


def test_a_document_means_these_values() -> None:
    document = plan_of(
        {"for": {"seconds": 180}, "rate": 18, "effort": {"pressure": "light"}, "focus": "long arms"},
        {"for": {"metres": 500}, "effort": {"split": 115.5}},
        {"rest": True, "for": {"seconds": 30}},
        {"times": 2, "blocks": [{"for": {"strokes": 10}, "rate": 20}], "between": [{"open": True}]},
    )
    blocks = (
        Block(ForSeconds(180), 18, Pressure.LIGHT, focus="long arms"),
        Block(ForMetres(500), effort=Split(Fraction(231, 2))),
        Rest(30),
        Repeat(2, (Block(ForStrokes(10), 20),), (Block(Open()),)),
    )
    assert load_plan(document) == Plan("A piece", (Part(PartKind.MAIN, blocks),))


@pytest.mark.parametrize(
    ("effort", "value"),
    [
        ({"split": 115.1}, Split(Fraction(1151, 10))),
        ({"split": 115}, Split(Fraction(115))),
        ({"two_k_power_fraction": 0.29}, TwoKPower(Fraction(29, 100))),
        ({"cr10": 6.5}, Cr10(Fraction(13, 2))),
        ({"heart_rate": {"bpm": 150}}, HeartRate(HeartRateUnit.BPM, 150)),
    ],
)
def test_numbers_in_steps_are_kept_exactly(effort: object, value: object) -> None:
    (part,) = load_plan(plan_of({"for": {"seconds": 60}, "effort": effort})).parts
    assert isinstance(part, Part)
    assert part.blocks == (Block(ForSeconds(60), effort=value),)  # type: ignore[arg-type]


def test_text_is_cleaned() -> None:
    document = {**plan_of({"open": True}), "title": "  Before   a\t2 km  "}
    assert load_plan(document).title == "Before a 2 km"


def test_repeats_four_deep_are_let_in() -> None:
    assert load_plan(plan_of(nested_repeats(4)))


def test_whole_values_are_written_as_whole_numbers() -> None:
    plan = Plan("x", (Part(PartKind.MAIN, (Block(ForSeconds(60), effort=Split(Fraction(120))),)),))
    assert '"split": 120}' in json.dumps(dump_plan(plan))


def test_fields_without_a_value_are_absent() -> None:
    block = Block(Open(), calls=(Call("Go"),), drill=Drill("pause"))
    plan = Plan("x", (Part(PartKind.MAIN, (block,)), Gap(5)))
    assert "null" not in json.dumps(dump_plan(plan))


def test_a_setting_comes_back() -> None:
    plan = Plan("x", (Part(PartKind.MAIN, (Block(Open()),)),), setting=Setting(lever=3))
    assert load_plan(dump_plan(plan)) == plan


# --- What is refused, where, and in which words

BLOCK = "/parts/0/blocks/0"

REFUSED: list[tuple[Any, str, str]] = [
    ({"for": {"seconds": "180"}}, "/for/seconds", 'length is "180": write a whole number'),
    ({"for": {"seconds": 1.0}}, "/for/seconds", "length is 1.0: write a whole"),
    ({"for": {"seconds": True}}, "/for/seconds", "length is true: write a whole number"),
    ({"for": {"seconds": 0}}, "/for/seconds", "length 0 is below 1 second"),
    ({"for": {"seconds": -5}}, "/for/seconds", "length -5 is below 1 second"),
    ({"for": {"seconds": 14_401}}, "/for/seconds", "length 14401 is above 14400 seconds"),
    ({"for": {"seconds": 2**63}}, "/for/seconds", "length is an outsized number"),
    ({"for": {"seconds": 10**999}}, "/for/seconds", "length is an outsized number"),
    ({"for": {"metres": float("inf")}}, "/for/metres", "distance is Infinity: write a whole number"),
    ({}, "", 'a block needs either a length, such as "for"'),
    ({"for": {"seconds": 60}, "open": True}, "", "a block needs either a length"),
    ({"for": {"seconds": 60, "metres": 900}}, "/for", "exactly one of seconds, metres, strokes"),
    ({"for": {}}, "/for", "exactly one of seconds, metres, strokes is needed here, not none"),
    ({"open": False}, "/open", "open is false: only true will do"),
    ({"open": 1}, "/open", "open is 1: only true will do"),
    ({"for": {"seconds": 60}, "rate": None}, "/rate", "rate is null: leave it out instead"),
    ({"open": True, "rate": 62}, "/rate", "rate 62 is above 50 strokes a minute"),
    ({"for": {"strokes": 10}}, "/rate", "a length in strokes needs a rate"),
    ({"open": True, "speed": 3}, "/speed", "there is no such field here; those that may"),
    ({"open": True, "__proto__": {}}, "/__proto__", "there is no such field here"),
    ([], "", "a block is a list: write an object"),
    (None, "", "a block is null"),
    ({"open": True, "effort": {"pressure": "hard"}}, "/effort/pressure", 'pressure is "hard"'),
    ({"open": True, "effort": {"split": 120, "cr10": 3}}, "/effort", "exactly one of pressure"),
    ({"open": True, "effort": {"split": "2:00"}}, "/effort/split", 'split is "2:00": write a'),
    ({"open": True, "effort": {"split": float("nan")}}, "/effort/split", "split is NaN: write"),
    ({"open": True, "effort": {"split": 115.55}}, "/effort/split", "split 115.55 is not in step"),
    ({"open": True, "effort": {"cr10": 1e-300}}, "/effort/cr10", "effort on the 0 to 10"),
    ({"times": 10**9, "blocks": [{"open": True}]}, "/times", "repetitions 1000000000 is above"),
    ({"times": 0, "blocks": [{"open": True}]}, "/times", "repetitions 0 is below 1 time"),
    ({"times": 2, "blocks": []}, "/blocks", "there is nothing to row here"),
    ({"times": 2}, "/blocks", "blocks are missing"),
    ({"rest": True}, "/for", "length is missing"),
    ({"rest": True, "for": {"seconds": 9, "metres": 5}}, "/for/metres", "there is no such field here"),
    ({"open": True, "focus": " "}, "/focus", "focus: the text is empty"),
    ({"open": True, "focus": "\ud800"}, "/focus", "focus: the text holds U+D800"),
    ({"open": True, "focus": "a\u202eb"}, "/focus", "focus: the text holds U+202E"),
    ({"open": True, "focus": "a\x00b"}, "/focus", "focus: the text holds U+0000"),
    ({"open": True, "focus": "a\nb"}, "/focus", "focus: the text has a line break"),
    ({"open": True, "focus": "a" * 121}, "/focus", "focus: a text of 121 characters is longer"),
    ({"open": True, "focus": 5}, "/focus", "focus is 5: write a line of text"),
    ({"open": True, "calls": [{"text": "a"}] * 21}, "/calls", "21 calls are more than 20"),
    ({"open": True, "calls": [{"text": "a", "stroke": 1, "strokes_left": 1}]},
     "/calls/0", "a call stands at a stroke or so many"),
    ({"open": True, "calls": [{"text": "a", "strokes_left": 1}]},
     "/calls/0/strokes_left", "an open block has no last strokes"),
    ({"for": {"seconds": 60}, "drill": {"name": "a", "sides": 2, "side_seconds": 20}},
     "/for", "the sides and swaps of the drill last 40 seconds"),
    ({"open": True, "drill": {"name": "a", "sides": 2}}, "/drill", "a drill with sides"),
    ({"open": True, "drill": {"name": "a", "swap_seconds": 5}},
     "/drill/swap_seconds", "only a drill with sides has a time to swap"),
    ({"open": True, "drill": {"name": "a", "sides": 3, "side_seconds": 20}},
     "/drill/sides", "sides 3 is not in steps of 2 sides"),
    ({"open": True, "setting": {"lever": 3, "drag_factor": 120}}, "/setting", "exactly one of lever"),
]  # fmt: skip


@pytest.mark.parametrize(("block", "place", "begins"), REFUSED)
def test_a_block_is_refused_by_its_place(block: Any, place: str, begins: str) -> None:
    found = sentences(plan_of(block))
    assert list(found) == [BLOCK + place]
    assert found[BLOCK + place].startswith(begins)


@pytest.mark.parametrize(
    ("document", "place", "sentence"),
    [
        (None, "", "the document is null: write an object, {...}"),
        ([], "", "the document is a list: write an object, {...}"),
        ("plan", "", 'the document is "plan": write an object, {...}'),
        ({**plan_of({"open": True}), "format": 2}, "/format", "format is 2: only 1 will do"),
        ({**plan_of({"open": True}), "format": True}, "/format", "format is true: only 1 will do"),
        ({**plan_of({"open": True}), "parts": []}, "/parts", "a plan has no parts: it needs at least"),
        ({**plan_of({"open": True}), "parts": {}}, "/parts", "parts are an object: write a list, [...]"),
        ({**plan_of({"open": True}), "parts": [{"kind": "gap"}]}, "/parts/0/for", "length is missing"),
        (plan_of(), "/parts/0/blocks", "there is nothing to row here"),
        (plan_of(*[{"open": True}] * 101), "/parts/0/blocks", "101 blocks are more than 100"),
        ({**plan_of(), "parts": [{"kind": "gap", "for": {"seconds": 1}}] * 13}, "/parts", "13 parts"),
        (plan_of(nested_repeats(5)), BLOCK + "/blocks/0" * 4, "repeats stand more than 4 deep"),
        (plan_of({"for": {"seconds": 14_400}}, {"for": {"seconds": 14_400}}, {"for": {"seconds": 14_401}}),
         "/parts/0/blocks/2/for/seconds", "length 14401 is above"),
    ],
)  # fmt: skip
def test_a_document_is_refused_by_its_place(document: object, place: str, sentence: str) -> None:
    found = sentences(document)
    assert list(found) == [place]
    assert found[place].startswith(sentence)


def test_a_small_document_that_would_grow_huge_is_refused_before_it_grows() -> None:
    bomb: dict[str, Any] = {"for": {"seconds": 1}}
    for _ in range(4):
        bomb = {"times": 100, "blocks": [bomb]}
    (sentence,) = sentences(plan_of(bomb)).values()
    assert "100000000 blocks when its repeats are rolled out, more than 500" in sentence


def test_a_plan_of_more_than_twelve_hours_is_refused() -> None:
    (sentence,) = sentences(plan_of({"times": 4, "blocks": [{"for": {"seconds": 14_400}}]})).values()
    assert sentence.startswith("the plan lasts about 16:00:00, more than 12:00:00")


def test_every_mistake_is_told_at_once() -> None:
    found = sentences(plan_of({"open": True, "rate": 5}, {"for": {"seconds": 60}, "rate": 99}))
    assert list(found) == ["/parts/0/blocks/0/rate", "/parts/0/blocks/1/rate"]


def test_of_very_many_mistakes_the_first_are_told() -> None:
    with pytest.raises(InputError) as caught:
        load_plan(plan_of(*[{"open": True, "rate": 5}] * 100))
    assert len(caught.value.problems) == PROBLEMS + 1
    assert caught.value.problems[-1].sentence == "80 more mistakes are not listed: mend these first"


def test_a_place_with_odd_names_is_escaped_as_json_pointers_are() -> None:
    """RFC 6901, section 3: ~ is ~0 and / is ~1."""
    assert list(sentences(plan_of({"open": True, "a/b~c": 1}))) == [BLOCK + "/a~1b~0c"]


def test_what_was_received_is_shown_short_and_printable() -> None:
    found = sentences(plan_of({"open": True, "rate": "\u202e\ud800" + "x" * 500}))
    assert found[BLOCK + "/rate"].startswith('rate is "\\u202e\\ud800xxxx')
    assert len(found[BLOCK + "/rate"]) < 120


# --- The athlete


def test_an_athlete_means_these_values() -> None:
    document = {"results": [{"metres": 2000, "seconds": 462.5}], "mass_kg": 71.5, "level": "trained"}
    expected = Athlete((Result(2000, Fraction(925, 2)),), mass_kg=Fraction(143, 2), level=Level.TRAINED)
    assert load_athlete(document) == expected


def test_nothing_about_an_athlete_is_needed() -> None:
    assert load_athlete({}) == Athlete()


@pytest.mark.parametrize(
    ("document", "place", "begins"),
    [
        (
            {"results": [{"metres": 2000, "seconds": 420}, {"metres": 2000, "seconds": 180}]},
            "/results/1/seconds",
            "2000 m in 3:00 is a split of 0:45.0, quicker than anybody rows that far (about 1:15.0): check",
        ),
        (
            {"results": [{"metres": 500, "seconds": 400}]},
            "/results/0/seconds",
            "500 m in 6:40 is a split of 6:40.0, slower than 6:00.0",
        ),
        ({"results": [{"metres": 2000}]}, "/results/0/seconds", "time of the result is missing"),
        ({"results": [{"metres": 2000, "seconds": 462}] * 21}, "/results", "21 results are more than 20"),
        ({"age": 7}, "/age", "age 7 is below 8 years"),
        ({"name": "A"}, "/name", "there is no such field here"),
        ({"level": "elite"}, "/level", 'level is "elite": write one of novice, club, trained'),
        ({"heart_rate_rest": 100, "heart_rate_max": 95}, "/heart_rate_rest", "resting heart rate 100 is"),
        ({"heart_rate_rest": 119, "heart_rate_max": 120}, "/heart_rate_rest", "resting heart rate 119 is 1 "),
        ({"heart_rate_rest": 71, "heart_rate_max": 100}, "/heart_rate_rest", "resting heart rate 71 is 29 "),
    ],
)
def test_an_athlete_is_refused_by_its_place(document: object, place: str, begins: str) -> None:
    with pytest.raises(InputError) as caught:
        load_athlete(document)
    (problem,) = caught.value.problems
    assert problem.pointer == place
    assert problem.sentence.startswith(begins)


@given(st.integers(25, 120), st.integers(90, 230))
def test_heart_rates_stand_at_least_thirty_beats_apart(rest: int, most: int) -> None:
    """Common practice, no source."""
    document = {"heart_rate_rest": rest, "heart_rate_max": most}
    if most - rest >= 30:
        assert load_athlete(document).heart_rate_rest == rest
        return
    with pytest.raises(InputError) as caught:
        load_athlete(document)
    assert "at least 30 beats below" in caught.value.problems[0].sentence


def test_a_request_is_refused_by_its_place_in_the_request() -> None:
    with pytest.raises(InputError) as caught:
        load_timeline_request({"plan": {**plan_of({"open": True}), "parts": []}})
    assert [problem.pointer for problem in caught.value.problems] == ["/plan/parts"]


# --- Contracts


def every_schema(base: type[Strict] = Strict) -> list[type[Strict]]:
    children = [child for child in base.__subclasses__() if child is not OneKey]
    below = [found for child in base.__subclasses__() for found in every_schema(child)]
    return [*children, *below]


@pytest.mark.parametrize("schema", every_schema(), ids=lambda s: s.__name__)
def test_every_schema_refuses_what_it_does_not_know(schema: type[Strict]) -> None:
    assert schema().unknown == RAISE
    assert "there is no such field here" in schema().validate({"no-such-field": 1})["no-such-field"][0]
