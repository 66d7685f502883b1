"""A plan laid out as it was written, with the splits of whoever rows it."""

from __future__ import annotations

import re
from fractions import Fraction

from planner.athlete import Athlete, Result
from planner.notation.reader import read
from planner.timeline import compile_timeline
from tests.builders import rower_of_7_42
from tests.web.exports.plans import everything
from web.exports.sheet import Row, legend_of, sheet_of, sheet_text
from web.exports.words import held_together

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


def legend(text: str, rower: Athlete | None = None) -> tuple[str, ...]:
    plan = read(text)
    return legend_of(sheet_of(compile_timeline(plan, rower) if rower else compile_timeline(plan)))


def test_the_legend_explains_what_the_sheet_shows_and_nothing_else() -> None:
    assert legend("title: x\nmain\n5' light") == ()
    assert legend("title: x\nmain\n5' r18 light") == ("r18: 18 strokes a minute.",)
    assert legend("title: x\nmain\n5' r18 2k-1.8") == ("r18: 18 strokes a minute.",)
    assert legend("title: x\nmain\n500m r26 light") == (
        "r26: 26 strokes a minute.",
        "Distances and times marked “about” are estimates.",
    )
    assert legend("title: x\nmain\n500m r26 2k-1.8\n5' r20 2k+9", rower_of_7_42()) == (
        "r26: 26 strokes a minute.",
        "1:53.7: the split, per 500 m.",
        "Splits, distances and times marked “about” are estimates.",
    )


def test_it_says_from_whose_result_its_splits_are_where_they_are_from_one() -> None:
    def about(text: str, *results: Result) -> dict[str, str]:
        rower = Athlete(results)
        return dict(sheet_of(compile_timeline(read(text), rower), rower).about)

    relative, outright = "title: x\nmain\n3 x (5' r18 light, 1' rest)", "title: x\nmain\n5' r18 @2:10"
    two_k, five_k = Result(2000, Fraction("462.3")), Result(5000, Fraction(1215))
    assert about(relative, two_k)["Splits"] == "from 2000 m in 7:42.3"
    assert re.fullmatch(r"from 2000 m in about 7:\d\d\.\d", about(relative, five_k)["Splits"])
    assert "Splits" not in about(outright, two_k)
    assert "Splits" not in dict(sheet_of(compile_timeline(read(relative))).about)
    text = sheet_text(sheet_of(compile_timeline(read(relative), Athlete((two_k,))), Athlete((two_k,))))
    assert "Splits: from 2000 m in 7:42.3" in text.splitlines()


def test_a_number_stays_with_its_unit_and_its_sign() -> None:
    held = held_together("at 2 km split − 1.8 s").replace("\N{NO-BREAK SPACE}", "~")
    assert held == "at 2~km split −~1.8~s"
    assert held_together("65 % of 2 km power").split(" ")[0].startswith("65")
    assert held_together("Rest, time to stand up") == "Rest, time to stand up"
