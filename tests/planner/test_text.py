"""Text of a plan: what is kept as written, what is made plain, what is refused."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.text import clean


@pytest.mark.parametrize(
    "text",
    ["Sit tall", "Schön lang", "漢字 かな", "कोशिश करो", "עברית", "العربية", "½ ¾ – …", "👍🏽", "🚣‍♀️", "1️⃣"],
)
def test_text_in_any_script_is_kept_as_written(text: str) -> None:
    assert clean(text, 60) == text


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("  Sit   tall ", "Sit tall"),
        ("Sit\ttall", "Sit tall"),
        ("Sit\u00a0tall", "Sit tall"),
        ("e\u0301", "é"),
    ],
)
def test_spaces_are_single_and_letters_composed(text: str, kept: str) -> None:
    assert clean(text, 60) == kept


# Controls, line separators, bidi controls, surrogates, noncharacters, tags, fillers, spaces without width.
HIDDEN = [
    *(0x00, 0x07, 0x1B, 0x7F, 0x85, 0x2028, 0x2029, 0xFEFF, 0x202A, 0x202E, 0x2066, 0x2069, 0xD800, 0xDFFF),
    *(0xFDD0, 0xFDEF, 0xFFFF, 0x1FFFE, 0x10FFFF, 0xE0001, 0xE0041, 0x115F, 0x1160, 0x3164, 0xFFA0),
    *(0x180E, 0x200B, 0x2060),
]


@pytest.mark.parametrize("hidden", [chr(code) for code in HIDDEN], ids=lambda c: f"U+{ord(c):04X}")
def test_what_shows_nothing_or_reorders_is_refused_by_its_name(hidden: str) -> None:
    with pytest.raises(ValueError, match=rf"U\+{ord(hidden):04X}"):
        clean(f"Sit{hidden}tall", 60)


@pytest.mark.parametrize("text", ["", "  ", "\u2800", "\u0301", "\u200d\ufe0f"])
def test_text_that_shows_nothing_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"empty|shows nothing"):
        clean(text, 60)


def test_text_is_one_line() -> None:
    with pytest.raises(ValueError, match="line break"):
        clean("Sit\ntall", 60)


def test_as_much_as_the_limit_is_kept_and_no_more() -> None:
    assert clean("x" * 60, 60) == "x" * 60
    with pytest.raises(ValueError, match="61 characters is longer than 60"):
        clean("x" * 61, 60)


def test_four_marks_on_a_letter_are_kept_and_five_refused() -> None:
    marks = "\u0323\u0331\u0330\u032d\u0324"
    assert clean("x" + marks[:4], 60)
    with pytest.raises(ValueError, match="piled"):
        clean("x" + marks, 60)


@given(st.text(st.characters(), max_size=30))
def test_clean_text_is_clean(text: str) -> None:
    try:
        once = clean(text, 30)
    except ValueError:
        return
    assert clean(once, 30) == once
