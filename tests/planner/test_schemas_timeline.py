"""The timeline as JSON: exact pairs, plain numbers beside them, and nothing where nothing is known."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

import pytest

from planner.plan import Block, Call, Drill, ForSeconds, Pressure, Rest, Setting, Split
from planner.schemas.timeline_schema import dump_timeline, pair, tenth
from planner.timeline import compile_timeline
from tests.builders import main_piece, metres, open_row, rower_of_7_42, seconds, warm_up_then


def dumped(*steps: Any, athlete: Any = None) -> Any:
    return dump_timeline(compile_timeline(main_piece(*steps), athlete))


def test_exact_times_are_pairs_in_lowest_terms() -> None:
    assert pair(Fraction(6, 4)) == [3, 2]


def test_a_pair_and_the_plain_number_beside_it_are_the_same() -> None:
    (segment,) = dumped(seconds(50, 28))["segments"]
    assert segment["stroke"] == [50, 23]
    assert segment["stroke_s"] == 50 / 23


def test_starts_add_up_exactly() -> None:
    segments = dumped(*[seconds(50, 28)] * 7)["segments"]
    starts = [Fraction(*segment["start"]) for segment in segments]
    assert starts == [50 * index for index in range(7)]


@pytest.mark.parametrize(
    ("value", "shown"), [(Fraction(5, 100), 0.1), (Fraction(4, 100), 0), (Fraction(230), 230), (None, None)]
)
def test_values_for_people_are_rounded_half_up_to_the_tenth(
    value: Fraction | None, shown: float | None
) -> None:
    assert tenth(value) == shown


def test_a_block_of_a_rate_and_a_pressure_says_all_that_is_known() -> None:
    (segment,) = dumped(seconds(120, 24, Pressure.LIGHT))["segments"]
    assert segment == {
        "index": 0,
        "part": "main",
        "part_index": 0,
        "place": "/parts/0/blocks/0",
        "kind": "row",
        "start": [0, 1],
        "start_s": 0.0,
        "duration": [120, 1],
        "duration_s": 120.0,
        "rate": 24,
        "paced_rate": 24.0,
        "strokes": 48,
        "stroke": [5, 2],
        "stroke_s": 2.5,
        "drive_s": pytest.approx(0.8819, abs=1e-4),
        "clock_mark": {"strokes": 2, "seconds": 5},
        "target": {"pressure": "light", "two_k_power_fraction": 0.4, "talk": "easy talk"},
        "calls": [],
        "ends": "time",
        "basis": "clock",
        "waits": False,
        "estimated": False,
    }


def test_a_block_without_a_rate_has_no_strokes() -> None:
    (segment,) = dumped(seconds(120))["segments"]
    assert not {"rate", "paced_rate", "strokes", "stroke", "stroke_s", "drive_s", "clock_mark"} & set(segment)


def test_a_split_brings_watts_metres_and_work() -> None:
    """1:55.0 per 500 m is 230.1 W by the cubic of air machines: 2.80 x (500 / 115)^3 = 230.136."""
    answer = dumped(seconds(115, 24, Split(Fraction(115))))
    assert answer["segments"][0]["target"] == {"split_s": 115, "watts": 230.1}
    assert answer["totals"]["metres"] == 500
    assert answer["totals"]["work_kj"] == 26.5
    assert answer["totals"]["split_s"] == 115


def test_metres_without_a_split_are_assumed_and_wait() -> None:
    (segment,) = dumped(metres(500, 24))["segments"]
    assert (segment["basis"], segment["waits"], segment["metres_asked"]) == ("assumed", True, 500)


def test_an_open_block_ends_by_a_tap() -> None:
    (segment,) = dumped(open_row(20))["segments"]
    assert (segment["ends"], segment["waits"]) == ("tap", True)


def test_the_athlete_comes_back_as_a_predicted_pace_only() -> None:
    answer = dumped(seconds(60, 20), athlete=rower_of_7_42())
    assert answer["athlete"]["two_k_split_s"] == 115.5
    assert set(answer["athlete"]) == {
        "two_k_split_s",
        "two_k_split_low_s",
        "two_k_split_high_s",
        "two_k_watts",
    }


def test_without_an_athlete_there_is_no_athlete() -> None:
    assert "athlete" not in dumped(seconds(60, 20))


def test_the_sides_of_a_drill_are_segments_and_so_is_the_swap() -> None:
    block = Block(ForSeconds(50), 18, drill=Drill("one foot", 2, 20, 10))
    drills = [(s["kind"], s["drill"]) for s in dumped(block)["segments"]]
    assert drills == [
        ("drill", {"name": "one foot", "side": 1, "sides": 2}),
        ("rest", {"name": "one foot", "side": 2, "sides": 2, "swap": True}),
        ("drill", {"name": "one foot", "side": 2, "sides": 2}),
    ]


def test_a_call_stands_at_its_stroke() -> None:
    (segment,) = dumped(Block(ForSeconds(60), 20, calls=(Call("Sit tall", stroke=4),)))["segments"]
    assert segment["calls"] == [{"stroke": 4, "at_s": 9.0, "text": "Sit tall", "seconds": 1.0, "rank": 2}]


def test_a_setting_stands_where_it_changes() -> None:
    changed = Block(ForSeconds(60), setting=Setting(lever=4))
    settings = [segment.get("setting") for segment in dumped(changed, Rest(30), changed)["segments"]]
    assert settings == [{"lever": 4}, None, None]


def test_a_gap_is_a_segment_of_its_own_part() -> None:
    plan = warm_up_then(300, seconds(60, 18), seconds(60, 28))
    gap: Any = dump_timeline(compile_timeline(plan))["segments"][1]  # type: ignore[index]
    assert (gap["part"], gap["kind"], gap["waits"]) == ("gap", "gap", True)


def test_the_sums_of_the_parts_stand_beside_the_sums_of_all() -> None:
    plan = warm_up_then(300, seconds(60, 18), seconds(60, 28))
    totals: Any = dump_timeline(compile_timeline(plan))["totals"]
    assert [part["seconds_s"] for part in totals["parts"]] == [60, 300, 60]
    assert totals["strokes"] == sum(part["strokes"] for part in totals["parts"]) == 46


def test_a_finding_says_where_and_why() -> None:
    (finding,) = dumped(seconds(60, 20, Pressure.LIGHT), seconds(1, 20))["findings"]
    assert finding["code"] == "paced-rate"
    assert finding["place"] == "/parts/0/blocks/1"
    assert finding["sentence"]
    assert finding["reason"]


def test_nothing_is_null_and_nothing_is_not_a_number() -> None:
    everything = dumped(seconds(60), metres(500, 24), open_row(), Rest(5), athlete=rower_of_7_42())
    assert "null" not in json.dumps(everything, allow_nan=False)
