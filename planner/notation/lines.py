"""One line of shorthand read by the grammar: its tree, or where it goes wrong and what would do there."""

from __future__ import annotations

import re
from difflib import get_close_matches
from functools import cache
from pathlib import Path

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from planner.limits import DEPTH
from planner.notation.mistake import MistakeError

WORDS = ("light", "half", "three-quarter", "full", "race", "rest", "open", "strokes", "each side", "swap")
HEADINGS = ("warm-up", "main", "cool-down", "gap", "title", "summary", "set-up", "focus", "call", "drill")

# What a coach would call each token, in the order in which it is offered.
_OFFERS = {
    "TIME": "a length of time such as 3', 50\" or 1'30\"",
    "METRES": "a distance such as 500m or 2 km",
    "STROKES": "a number of strokes such as 20 strokes",
    "OPEN": "open, for a block that a tap ends",
    "SIDES": 'each side 20" swap 10", for a drill done on both sides',
    "TIMES": 'a repeat such as 3 x (10 strokes r28 full, 50" r20 light)',
    "RATE": "a rate such as r20",
    "PRESSURE": "a pressure: light, half, three-quarter, full or race",
    "SPLIT": "a split such as @1:55",
    "OFFSET": "an offset from the 2 km split such as 2k+1",
    "CHANGE": 'a change of split such as -2"',
    "POWER": "a share of 2 km power such as 65% power",
    "CR10": "an effort from 0 to 10 such as effort 6",
    "HEART": "a heart rate such as hr 150 or hr 80% max",
    "REST": "rest",
    "SLASH": "/ and what comes between repetitions",
    "COMMA": "a comma and the next block of the group",
    "LPAR": "an opening bracket",
    "RPAR": "a closing bracket",
    "$END": "the end of the line",
}
_SENTENCE_OFFERS = 4
_WORD = re.compile(r"[^\s,()/]+|\S")


@cache
def _grammar() -> Lark:
    source = (Path(__file__).parent / "grammar.lark").read_text(encoding="utf-8")
    return Lark(source, parser="lalr", start="line", propagate_positions=True, maybe_placeholders=False)


def read_line(text: str) -> Tree[Token]:
    """The tree of a line; raises MistakeError with its column."""
    _hold_depth(text)
    try:
        return _grammar().parse(text)
    except UnexpectedInput as trouble:
        raise _explained(text, trouble) from None


def _hold_depth(text: str) -> None:
    """Refuses deep brackets before anything walks into them."""
    depth = 0
    for column, character in enumerate(text):
        depth += (character == "(") - (character == ")")
        if depth > DEPTH:
            raise MistakeError(column, f"repeats stand more than {DEPTH} deep: write the inner ones out", "(")


def _explained(text: str, trouble: UnexpectedInput) -> MistakeError:
    allowed = _allowed(trouble)
    accepted = tuple(words for name, words in _OFFERS.items() if name in allowed)
    column = _column(text, trouble)
    word = _WORD.match(text, column)
    received = word[0] if word else ""
    if not received:
        what = "the line ends too early"
    elif near := _near(received.lower(), at_start=not text[:column].strip()):
        what = f'cannot read "{received}": did you mean "{near[0]}"?'
    else:
        what = f'cannot read "{received}" here'
    return MistakeError(column, f"{what}{_what_would_do(accepted)}", received, accepted)


def _near(word: str, *, at_start: bool) -> list[str]:
    known = WORDS + HEADINGS if at_start else WORDS
    return [] if word in known else get_close_matches(word, known, 1, 0.6)


def _what_would_do(accepted: tuple[str, ...]) -> str:
    offered = [words for words in accepted if words != _OFFERS["$END"]][:_SENTENCE_OFFERS]
    return f" (it could be: {'; '.join(offered)})" if offered else " (nothing more fits on this line)"


def _allowed(trouble: UnexpectedInput) -> set[str]:
    if isinstance(trouble, UnexpectedCharacters):
        return set(trouble.allowed or ())
    if isinstance(trouble, UnexpectedToken):
        return set(trouble.accepts or trouble.expected or ())
    return set()


def _column(text: str, trouble: UnexpectedInput) -> int:
    if isinstance(trouble, UnexpectedToken) and trouble.token.type == "$END":
        return len(text.rstrip())
    return trouble.pos_in_stream if trouble.pos_in_stream is not None else 0
