"""The coach's shorthand: read as chalked up, written back the same, refused in its place."""

from __future__ import annotations

from contextlib import suppress
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from planner.errors import InputError
from planner.notation.lines import read_line
from planner.notation.mistake import MistakeError, ShorthandError, ShorthandProblem
from planner.notation.mistakes import MISTAKES, Mistake
from planner.notation.reader import UNTITLED, read
from planner.notation.writer import write
from planner.plan import (
    Block,
    Call,
    Change,
    ForMetres,
    ForSeconds,
    ForStrokes,
    Part,
    PartKind,
    Plan,
    Pressure,
    Repeat,
    Rest,
    Setting,
    Split,
    SplitOffset,
    Step,
)
from planner.schemas.plan_schema import load_plan
from tests.strategies import DOCUMENTS


def read_blocks(text: str) -> tuple[Step, ...]:
    """The blocks of a text of one part."""
    (part,) = read(text).parts
    assert isinstance(part, Part)
    return part.blocks


def mistakes_in(text: str) -> tuple[ShorthandProblem, ...]:
    with pytest.raises(ShorthandError) as caught:
        read(text)
    return caught.value.problems


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
    ("text", "canonical"),
    [
        ("3’ r18 light", "3' r18 light"),
        ("3′ LIGHT R18", "3' r18 light"),
        ("3 min r18 easy", "3' r18 light"),
        ("180 s light pressure r18", "3' r18 light"),
        ("3:00 @ r18 light", "3' r18 light"),
        ("  3 minutes  at r18  light", "3' r18 light"),
        ("1’30” rate 18", "1'30\" r18"),
        ("1'30 r18", "1'30\" r18"),
        ("90'' r18", "1'30\" r18"),
        ("1h10 r18", "70' r18"),
        ("1 h 10 min r18", "70' r18"),
        ("1:10:00 r18", "70' r18"),
        ("2k r28", "2000m r28"),
        ("2.5 km r28", "2500m r28"),
        ("2,5km r28", "2500m r28"),
        ("500 metres r28", "500m r28"),
        ("1 strokes r28 ¾", "1 stroke r28 three-quarter"),
        ("5' r20 3/4 pressure", "5' r20 three-quarter"),
        ("5' r20 ½", "5' r20 half"),
        ("5' r30 race pace", "5' r30 race"),
        ("5' r20 at 1:55.5 / 500m", "5' r20 @1:55.5"),
        ("5' r20 2 km + 1.5\"", "5' r20 2k+1.5"),
        ("5' r20 2k", "5' r20 2k"),
        ("5' r20 −2″", "5' r20 -2\""),
        ("5' r20 +0s", "5' r20 +0\""),
        ("5' r20 65 % of 2k power", "5' r20 65% power"),
        ("5' r20 Effort 6.5", "5' r20 effort 6.5"),
        ("5' r20 HR150", "5' r20 hr 150"),
        ("5' r20 hr 80 % of max", "5' r20 hr 80% max"),
        ("rest 3'", "3' rest"),
        ("3' off", "3' rest"),
        ("3×3' r20/1' rest", "3 x 3' r20 / 1' rest"),
        ("3 times (3' r20) / (1' rest)", "3 x 3' r20 / 1' rest"),
        ("OPEN r20", "open r20"),
    ],
)
def test_other_ways_of_writing_the_same_are_read(text: str, canonical: str) -> None:
    assert write(read(text)) == f"title: {UNTITLED}\n\nmain\n{canonical}\n"


@pytest.mark.parametrize(
    ("text", "canonical"),
    [
        ("Warm up:\n3' r18\nMAIN PIECE\n3' r20", "warm-up\n3' r18\n\nmain\n3' r20"),
        ("warmup\n3' r18\nGap: 5 min\n3' r20", "warm-up\n3' r18\n\ngap 5'\n\nmain\n3' r20"),
        (
            "3' r18\nfocus long arms\nCALL last 5 strokes: Go",
            "main\n3' r18\n  focus: long arms\n  call last 5: Go",
        ),
        ("3' r18\ncall at stroke 10 Go\ncall now", "main\n3' r18\n  call at 10: Go\n  call: now"),
        ("3' r18\nlever 5", "main\n3' r18\n  setting: lever 5"),
        ("3' r18\ndrag 120", "main\n3' r18\n  setting: drag factor 120"),
        ("each side 1'30 r18\ndrill one foot", 'main\neach side 90" r18\n  drill: one foot'),
        (
            "each side 2x20 s, swap 10 sec r18\ndrill: one foot",
            'main\neach side 2 x 20" swap 10" r18\n  drill: one foot',
        ),
        (
            "2 x (\n3' r18\nfocus: a\n2' r20\n) / 1' rest",
            "main\n2 x (\n  3' r18\n    focus: a\n  2' r20\n) / (\n  1' rest\n)",
        ),
        ("6 x 700m r28\nfocus: a", "main\n6 x 700m r28\n  focus: a"),
    ],
)
def test_lines_around_the_blocks_are_read_however_they_are_chalked(text: str, canonical: str) -> None:
    assert write(read(text)) == f"title: {UNTITLED}\n\n{canonical}\n"


def test_the_header_is_read_with_and_without_its_colons() -> None:
    plan = read(
        "Title My piece\nsummary: Short.\nset up: Straps.\nsetting: lever 4\n3' r18\r\n2' r20\r1' r22"
    )
    assert (plan.title, plan.summary, plan.setup, plan.setting) == (
        "My piece",
        "Short.",
        "Straps.",
        Setting(4),
    )
    assert len(read_blocks("3' r18\r\n2' r20\r1' r22")) == 3


def test_signs_of_the_coach_s_own_text_stay_as_they_are() -> None:
    (block,) = read_blocks("3' r18\nfocus: “quick” – it’s 10′")
    assert isinstance(block, Block)
    assert block.focus == "“quick” – it’s 10′"


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
def test_each_wrong_example_gets_its_messages(mistake: Mistake) -> None:
    problems = mistakes_in(mistake.text)
    assert tuple(problem.sentence for problem in problems) == mistake.sentences
    for problem in problems:
        assert problem.sentence.startswith(f"line {problem.line}, column {problem.column}: ")


def test_there_are_enough_wrong_examples_and_none_twice() -> None:
    assert len({m.text for m in MISTAKES}) == len(MISTAKES) >= 60


# One text for each thing that can be offered: whatever is offered has to do, there and then.
EXAMPLES = {
    "a length of time": "3'",
    "a time": "3'",
    "a distance": "500m",
    "a number of strokes": "20 strokes",
    "open": "open",
    "each side": 'each side 20"',
    "a repeat": "6 x",
    "a rate": "r20",
    "a pressure": "half",
    "a split": "@1:55",
    "an offset": "2k+1",
    "a change": '-2"',
    "a share": "65% power",
    "an effort": "effort 6",
    "a heart rate": "hr 150",
    "the word rest": "rest",
    "a slash": "/ 3' rest",
    "a comma": ", 500m",
    "an opening bracket": "(",
    "a closing bracket": ")",
    "the end": "",
}


def column_of_mistake(line: str, start: str) -> int | None:
    try:
        read_line(line, start)
    except MistakeError as mistake:
        return mistake.column
    return None


@pytest.mark.parametrize("mistake", MISTAKES, ids=lambda m: repr(m.text[:30]))
def test_what_is_offered_would_do(mistake: Mistake) -> None:
    for problem in mistakes_in(mistake.text):
        line = mistake.text.split("\n")[problem.line - 1]
        start = "gap" if line.startswith("gap") else "line"
        before = line[: problem.column - 1].replace("gap", "   ")
        for offer in problem.accepted:
            (example,) = (text for name, text in EXAMPLES.items() if offer.startswith(name))
            wrong_at = column_of_mistake(f"{before} {example}", start)
            assert wrong_at is None or (example and wrong_at >= len(f"{before} {example}")), offer


def test_a_mistake_is_told_once_and_those_after_it_too() -> None:
    text = "3' r62 light\n  focus: a\n2' r20 light\n  focus: b\n4' r20 lite\n  focus: c\n  call at 0: d"
    assert [(p.line, p.column) for p in mistakes_in(text)] == [(1, 4), (5, 8), (7, 11)]


def test_no_more_mistakes_are_told_than_anybody_mends() -> None:
    assert len(mistakes_in("lite\n" * 500)) == 20


def test_a_mistake_says_what_was_read_and_what_would_do() -> None:
    (problem,) = mistakes_in("3' r18 lite")
    assert problem.received == "lite"
    assert "a pressure: light, half, three-quarter, full or race" in problem.accepted
    assert not any("a rate" in offer for offer in problem.accepted)


@pytest.mark.parametrize(("text", "first"), [("700 r28", "a distance"), ("3 r18", "a length of time")])
def test_a_number_without_a_unit_is_offered_the_likelier_one_first(text: str, first: str) -> None:
    assert mistakes_in(text)[0].accepted[0].startswith(first)


@given(st.text(st.characters(categories=["L", "N", "P", "S", "Z", "Cc", "Cs"]), max_size=80))
def test_no_text_raises_anything_but_its_own_error(text: str) -> None:
    with suppress(ShorthandError):
        read(text)


SOUND = """title: A
setting: lever 4
warm-up
3 x (
  10 strokes r28 full
    call last 3: Go
  each side 2 x 20" swap 10" r18 hr 80% max
    drill: one foot
) / (
  1'30" rest
)
gap 5'
main
6 x 700m r28 2k+1 / 3' rest
2.5km r30 @1:55.5
open r20 65% power
"""
JUNK = [
    "",
    "(",
    ")",
    "/",
    ",",
    "x",
    "9999999999",
    "'",
    '"',
    "\n",
    "\r",
    "r",
    "@",
    "%",
    ":",
    "-",
    "2k",
    "ſ",
    "ı",
    "K",
    "²",
    "٣",
    "\x1c",
]


@given(st.lists(st.tuples(st.integers(0, len(SOUND)), st.integers(0, 12), st.sampled_from(JUNK)), max_size=6))
def test_a_damaged_plan_raises_nothing_but_its_own_error(cuts: list[tuple[int, int, str]]) -> None:
    text = SOUND
    for at, length, junk in cuts:
        text = text[:at] + junk + text[at + length :]
    with suppress(ShorthandError):
        plan = read(text)
        assert read(write(plan)) == plan


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


def test_the_largest_plan_that_a_request_can_hold_is_written_and_read_back() -> None:
    calls = tuple(Call("Legs", stroke=number) for number in range(1, 15))
    block = Block(ForSeconds(60), rate=20, focus="Long arms", calls=calls)
    plan = Plan("As large as may be", (Part(PartKind.MAIN, (block,) * 100),) * 4)
    text = write(plan)
    assert text.count("\n") > 6000
    assert read(text) == plan
