"""One line of shorthand read by the grammar: its tree, or where it goes wrong and what would do there."""

from __future__ import annotations

import re
from collections.abc import Iterable
from contextlib import suppress
from functools import cache
from pathlib import Path

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedInput, UnexpectedToken

from planner.limits import DEPTH
from planner.notation.hints import EFFORTS, LENGTHS, hint, is_long, is_overlong, too_long
from planner.notation.mistake import MistakeError

# What a coach would call each token, in the order in which it is offered.
_OFFERS = {
    "TIME": "a length of time such as 3', 50\" or 1'30\"",
    "METRES": "a distance such as 500m or 2 km",
    "STROKES": "a number of strokes such as 20 strokes",
    "OPEN": "open, for a block that a tap ends",
    "EACH": 'each side 20" swap 10", for a drill done on both sides',
    "TIMES": 'a repeat such as 3 x (10 strokes r28 full, 50" r20 light)',
    "RATE": "a rate such as r20",
    "PRESSURE": "a pressure: light, half, three-quarter, full or race",
    "SPLIT": "a split such as @1:55",
    "OFFSET": "an offset from the 2 km split such as 2k+1",
    "CHANGE": 'a change of split such as -2"',
    "POWER": "a share of 2 km power such as 65% power",
    "CR10": "an effort from 0 to 10 such as effort 6",
    "HEART": "a heart rate such as hr 150 or hr 80% max",
    "REST": "the word rest",
    "SWAP": 'a time to swap such as swap 10"',
    "SLASH": "a slash and what comes between repetitions, such as / 3' rest",
    "COMMA": "a comma and the next block of the group",
    "LPAR": "an opening bracket",
    "RPAR": "a closing bracket",
    "$END": "the end of the line",
}
# The same in a sentence: the first of a kind speaks for all of its kind.
_IN_SHORT = {
    **dict.fromkeys(LENGTHS, "a length such as 3', 500m or 20 strokes"),
    **dict.fromkeys(EFFORTS, "an effort such as light, @1:55, 2k+1, 65% power, effort 6 or hr 150"),
    "TIMES": "a repeat such as 6 x",
}
_BOUNDARIES = {"COMMA", "LPAR", "RPAR", "SLASH"}
_WORD = re.compile(r"[^\s,()/]+|.", re.S)
_SHOWN = 40
_GAP = "a gap needs a length of time and nothing else, such as gap 5'"


@cache
def _grammar() -> Lark:
    source = (Path(__file__).parent / "grammar.lark").read_text(encoding="utf-8")
    return Lark(
        source, parser="lalr", start=["line", "gap"], maybe_placeholders=False, g_regex_flags=int(re.ASCII)
    )


def read_line(text: str, start: str = "line") -> Tree[Token]:
    """The tree of a line, or of what follows the word `gap`; raises MistakeError with its column."""
    _hold_depth(text)
    try:
        return _grammar().parse(text, start=start)
    except UnexpectedInput as trouble:
        raise _explained(text, start, trouble) from None


def _hold_depth(text: str) -> None:
    """Refuses deep brackets before anything walks into them."""
    depth = 0
    for column, character in enumerate(text):
        depth += (character == "(") - (character == ")")
        if depth > DEPTH:
            raise MistakeError(column, f"repeats stand more than {DEPTH} deep: write the inner ones out", "(")


def _explained(text: str, start: str, trouble: UnexpectedInput) -> MistakeError:
    token = trouble.token if isinstance(trouble, UnexpectedToken) else None
    ended = token is not None and token.type == "$END"
    column = (len(text.rstrip()) or len(text)) if ended else (trouble.pos_in_stream or 0)
    read = _read_before(text, start, column)
    accepted = _accepted_after(read, start)
    received = "" if ended else _shown(token or _word_at(text, column))
    first = "METRES" if is_long(received) else ""
    offers = tuple(_OFFERS[name] for name in sorted(_OFFERS, key=first.__ne__) if name in accepted)
    if start == "gap" and is_overlong(received):
        return MistakeError(column, too_long(received), received, offers)
    if start == "gap" and (ended or token or not received.isdecimal()):
        return MistakeError(column, _GAP, received, offers)
    if ended:
        sentence = f"the line ends too early: {_in_short(accepted)} is missing"
        return MistakeError(column, sentence, received, offers)
    hinted = hint(received, token.type if token else "", _of_this_block(read), accepted)
    return MistakeError(column, hinted or _plainly(received, accepted), received, offers)


def _read_before(text: str, start: str, column: int) -> list[Token]:
    """The tokens that could be read before this column."""
    read: list[Token] = []
    with suppress(UnexpectedInput):
        for token in _grammar().parse_interactive(text, start=start).iter_parse():
            read.append(token)
    return [token for token in read if (token.start_pos or 0) < column]


def _word_at(text: str, column: int) -> str:
    found = _WORD.match(text, column)
    return found[0] if found else ""


def _accepted_after(read: list[Token], start: str) -> set[str]:
    """The kinds of token that can come next."""
    parser = _grammar().parse_interactive("", start=start)
    for token in read:
        parser.feed_token(token)
    accepted = set(parser.accepts())  # type: ignore[no-untyped-call]  # lark leaves this one untyped
    # Where a block begins, "rest 3'" or a closing bracket would do too, but nobody looks for them.
    return accepted - {"RPAR", "REST"} if "METRES" in accepted else accepted


def _of_this_block(read: Iterable[Token]) -> list[str]:
    kinds: list[str] = []
    for token in read:
        kinds = [] if token.type in _BOUNDARIES else [*kinds, token.type]
    return kinds


def _plainly(received: str, accepted: set[str]) -> str:
    what = f'cannot read "{received}" here'
    if accepted == {"$END"}:
        return f"{what}: nothing more fits on this line"
    return f"{what}: it could be {_in_short(accepted)}"


def _in_short(accepted: set[str]) -> str:
    """What would do, for a sentence: "a length such as 3' or a rate such as r20"."""
    if "TIME" in accepted and "METRES" not in accepted:
        return "a time such as 3', 50\" or 1'30\""
    words = list(
        dict.fromkeys(_IN_SHORT.get(name, text) for name, text in _OFFERS.items() if name in accepted)
    )
    return ", ".join(words[:-1]) + (" or " if words[1:] else "") + words[-1]


def _shown(what: str) -> str:
    """Some of what was read, as it can stand in a sentence."""
    text = "".join(c if c.isprintable() else f"U+{ord(c):04X}" for c in what.strip(" "))
    return text if len(text) <= _SHOWN else text[:_SHOWN] + "…"
