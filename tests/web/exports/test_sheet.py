"""A plan laid out as it was written, with the splits of whoever rows it."""

from __future__ import annotations

from planner.notation.reader import read
from planner.timeline import compile_timeline
from tests.builders import rower_of_7_42
from tests.web.exports.plans import everything
from web.exports.sheet import Row, sheet_of, sheet_text

SET = "title: A set\nmain\n2 x (3 x (10 strokes r28 full, 50\" r20 light), 1' rest) / 4' rest"


def test_a_repeat_stands_once_with_how_often_it_is_rowed() -> None:
    (part,) = sheet_of(compile_timeline(read(SET), rower_of_7_42())).parts
    headings = [(row.depth, row.heading) for row in part.rows if row.heading]
    assert headings == [(0, "2 times"), (1, "3 times"), (0, "and between them")]
    assert part.rows[2] == Row(2, "10 strokes", "r28", "full", "1:58.2")
    assert part.rows[-1] == Row(1, "4:00", effort="Rest, time to stand up")


def test_what_comes_between_the_repetitions_of_one_is_left_out() -> None:
    text = sheet_text(sheet_of(compile_timeline(read("title: x\nmain\n1 x 2' r20 / 4' rest"))))
    assert "Rest" not in text


def test_a_sided_drill_has_its_whole_length_and_says_how_it_goes() -> None:
    first = sheet_of(everything()).parts[0].rows[0]
    assert (first.length, first.strokes) == ("0:50", "")
    assert first.notes == ("one foot: 2 sides, 20 s each, 10 s to swap", "long arms", "Set lever 4")


def test_a_share_of_power_stays_one_where_its_split_is_known() -> None:
    piece = sheet_of(everything()).parts[2].rows[0]
    assert (piece.length, piece.effort, piece.split) == ("2000 m", "65 % of 2 km power", "2:13.3")


def test_the_sums_say_what_is_about() -> None:
    sheet = sheet_of(everything())
    assert sheet.sums == "about 26:17 · 162 strokes"
    assert [(part.name, part.sums) for part in sheet.parts][:2] == [
        ("Warm-up", "4:24 · 42 strokes"),
        ("Gap", "5:00"),
    ]
