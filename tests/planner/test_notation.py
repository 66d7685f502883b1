"""The coach's shorthand: read as chalked up, written back the same, refused in its place."""

from __future__ import annotations

from contextlib import suppress
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from planner.errors import InputError
from planner.notation.mistake import ShorthandError
from planner.notation.mistakes import MISTAKES, Mistake
from planner.notation.reader import read, read_blocks
from planner.notation.writer import write
from planner.plan import (
    Block,
    Change,
    ForMetres,
    ForSeconds,
    ForStrokes,
    Pressure,
    Repeat,
    Rest,
    Split,
    SplitOffset,
    Step,
)
from planner.schemas.plan_schema import load_plan
from tests.strategies import DOCUMENTS


# What a coach would chalk up, as the owner of the project wrote it.
@pytest.mark.parametrize(
    ("text", "step"),
    [
        ("3' r18 light", Block(ForSeconds(180), 18, Pressure.LIGHT)),
        ("20 strokes r22 half", Block(ForStrokes(20), 22, Pressure.HALF)),
        ("2000m r30 @1:55", Block(ForMetres(2000), 30, Split(Fraction(115)))),
        ("6' r20 -2\"", Block(ForSeconds(360), 20, Change(Fraction(-2)))),
        (
            "6 x 700m r28 2k+1 / 3' rest",
            Repeat(6, (Block(ForMetres(700), 28, SplitOffset(Fraction(1))),), (Rest(180),)),
        ),
        (
            '3 x (10 strokes r28 full, 50" r20 light)',
            Repeat(
                3,
                (Block(ForStrokes(10), 28, Pressure.FULL), Block(ForSeconds(50), 20, Pressure.LIGHT)),
            ),
        ),
    ],
)
def test_what_a_coach_chalks_up_is_read(text: str, step: Step) -> None:
    assert read_blocks(text) == (step,)


@pytest.mark.parametrize(
    "text", ["3’ r18 light", "3 min r18 light", "180 s LIGHT r18", "3:00 R18 Light", "  3′  r18  light "]
)
def test_other_ways_of_writing_the_same_are_read(text: str) -> None:
    assert read_blocks(text) == (Block(ForSeconds(180), 18, Pressure.LIGHT),)


@given(DOCUMENTS)
def test_a_plan_written_and_read_is_the_same_plan(document: dict[str, Any]) -> None:
    try:
        plan = load_plan(document)
    except InputError:
        assume(False)
        return
    text = write(plan)
    assert read(text) == plan
    assert write(read(text)) == text


@pytest.mark.parametrize("mistake", MISTAKES, ids=lambda m: repr(m.text[:30]))
def test_each_wrong_example_gets_its_message(mistake: Mistake) -> None:
    with pytest.raises(ShorthandError) as caught:
        read(mistake.text)
    assert caught.value.problems[0].sentence == mistake.sentence


def test_there_are_enough_wrong_examples_and_none_twice() -> None:
    assert len({m.text for m in MISTAKES}) == len(MISTAKES) >= 60


def test_every_mistake_is_named_not_only_the_first() -> None:
    with pytest.raises(ShorthandError) as caught:
        read("3' r62 light\n2' r20 light\n4' r20 lite")
    assert [(p.line, p.column) for p in caught.value.problems] == [(1, 4), (3, 8)]


def test_a_mistake_says_what_was_read_and_what_would_do() -> None:
    with pytest.raises(ShorthandError) as caught:
        read("3' r18 lite")
    (problem,) = caught.value.problems
    assert problem.received == "lite"
    assert "a pressure: light, half, three-quarter, full or race" in problem.accepted


@given(st.text(st.characters(categories=["L", "N", "P", "S", "Z", "Cc", "Cs"]), max_size=80))
def test_no_text_raises_anything_but_its_own_error(text: str) -> None:
    with suppress(ShorthandError):
        read(text)


@given(st.data())
def test_a_damaged_plan_raises_nothing_but_its_own_error(data: st.DataObject) -> None:
    text = (
        "title: A\nwarm-up\n3 x (\n  10 strokes r28 full\n    call last 3: Go\n) / (\n  1' rest\n)\ngap 5'\n"
    )
    at = data.draw(st.integers(0, len(text) - 1))
    junk = data.draw(st.sampled_from(["", "(", ")", "/", "x", "9999999999", "'", "\n", "r", ","]))
    with suppress(ShorthandError):
        read(text[:at] + junk + text[at + 1 :])


@pytest.mark.parametrize(
    "text",
    [
        "2 x (" * 2000 + "3' r18" + ")" * 2000,
        "2 x (" * 150 + "3' r18" + ")" * 150,
        "2 x (\n" * 290 + "3' r18\n" + ")\n" * 290,
        "main" + " " * 19_000 + "x",
        "setting" + " " * 19_000 + "x",
        'each side 20"' + " " * 19_000 + "x",
        "1" * 19_000,
    ],
    ids=lambda text: text[:16],
)
def test_text_made_to_be_slow_or_deep_is_refused(text: str) -> None:
    with pytest.raises(ShorthandError):
        read(text)


def test_spaces_as_phones_and_word_processors_write_them_are_read() -> None:
    assert read_blocks("\ufeff3'\u00a0r18\u202flight\t") == read_blocks("3' r18 light")
