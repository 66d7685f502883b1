"""The table: read back by Python's csv module; RFC 4180, and no formula in it (ASVS 5.0, 1.2.10)."""

from __future__ import annotations

import csv
import re
from io import StringIO

import pytest

from planner.timeline import Timeline, compile_timeline
from tests.builders import main_piece, seconds
from tests.web.exports.odd_texts import odd_texts
from tests.web.exports.plans import everything, saying
from web.exports.segments_csv import COLUMNS, segments_csv

DANGEROUS = tuple("=+-@\t\r\0＝＋－＠")


def rows(timeline: Timeline) -> list[dict[str, str]]:
    text = segments_csv(timeline).decode()
    return list(csv.DictReader(StringIO(text, newline=""), strict=True))


def test_there_is_a_row_for_each_segment_under_one_line_of_headings() -> None:
    timeline = everything()
    table = rows(timeline)
    assert len(table) == len(timeline.segments)
    assert list(table[0]) == list(COLUMNS)
    assert [float(row["starts_s"]) for row in table] == pytest.approx(
        [float(s.start) for s in timeline.segments], abs=0.0006
    )


def test_numbers_stay_numbers_and_texts_are_quoted() -> None:
    first = segments_csv(everything()).decode().split("\r\n")[1]
    assert first.startswith('1,"warm-up","","","drill","0:00",0,"0:20",20,"no","time",18,6,3.333,"light",')


def test_a_negative_number_of_ours_stays_a_number() -> None:
    changes = [row["change_s"] for row in rows(everything()) if row["change_s"]]
    offsets = [row["offset_2k_s"] for row in rows(everything()) if row["offset_2k_s"]]
    assert (changes, offsets) == (["-2"], ["-1.5"])


def test_lines_end_as_the_standard_wants_and_there_is_no_mark_before_the_first() -> None:
    """RFC 4180, 2.1: CRLF after each record."""
    text = segments_csv(compile_timeline(main_piece(seconds(60, 20))))
    assert text.startswith(b'"number"')
    assert text.endswith(b"\r\n")
    assert text.count(b"\n") == text.count(b"\r\n") == 2


def test_no_text_is_a_formula_or_breaks_out_of_its_cell() -> None:
    for text in odd_texts():
        table = rows(compile_timeline(saying(text)))
        assert [row["number"] for row in table] == [str(n) for n in range(1, 8)], text
        for cell in (cell for row in table for cell in row.values()):
            assert not cell.startswith(DANGEROUS) or re.fullmatch(r"-\d+(\.\d+)?", cell), text
        assert table[0]["focus"] == (f"'{text}" if text.startswith(DANGEROUS) else text)
