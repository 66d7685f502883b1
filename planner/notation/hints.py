"""What to say about a word that does not fit where it stands: the likely slip, and what would do."""

from __future__ import annotations

import re
from difflib import get_close_matches

from planner import limits

EFFORTS = ("PRESSURE", "SPLIT", "OFFSET", "CHANGE", "POWER", "CR10", "HEART")
LENGTHS = ("TIME", "METRES", "STROKES", "OPEN", "EACH")

_BELOW = ("focus", "call", "drill", "setting")
_HEADINGS = ("warm-up", "main", "cool-down")
_AT_START = (*_HEADINGS, *_BELOW, "gap", "title", "summary", "set-up", "rest", "open", "each side")
_PRESSURES = ("light", "half", "three-quarter", "full", "race")
_AFTER_LENGTH = {"REST": ("rest",), "PRESSURE": (*_PRESSURES, "effort"), "SWAP": ("swap",)}

_RATHER_METRES = 100
"""From here on a bare number is taken for metres first: nobody counts so many minutes [C]."""

# A word that begins like this cannot be read, for this reason.
_SLIPS = tuple(
    (re.compile(pattern, re.I | re.A), sentence)
    for pattern, sentence in (
        (r"@|at$", '"{}" is no split: write it as @1:55 or @1:55.5'),
        (r"(rate|r)\d", '"{}" is no rate: write one whole number, such as r20'),
        (r"(rate|r)$", '"{}" needs a number behind it: a rate is written r20'),
        (r"[+-]\d", '"{}" has no unit: a change of split is written -2" or +1.5"'),
        (r"\d+(\.\d+)?%", '"{}" of what? Write 65% power, hr 80% max or hr 70% reserve'),
        (r"effort", '"{}" needs a number from 0 to 10 behind it, such as effort 6.5'),
        (r"hr", '"{}" needs a heart rate: write hr 150, hr 80% max or hr 70% reserve'),
        (r"(focus|call|drill|setting)\b", '"{}" begins a line of its own, below the block'),
        (r"(title|summary|set-up|gap)\b", '"{}" begins a line of its own'),
    )
)
_AT_START_SLIPS = tuple(
    (re.compile(pattern, re.I | re.A), sentence)
    for pattern, sentence in (
        (
            r"(warm|cool|main)",
            '"{}" stands alone on its line: a heading is warm-up, main or cool-down',
        ),
        (r"each$", '"{}" begins a length by sides: write each side 20" or each side 20" swap 10"'),
    )
)


_LONGEST = (
    f"{limits.BLOCK_SECONDS.high // 3600} hours, {limits.BLOCK_METRES.high // 1000} km "
    f"or {limits.BLOCK_STROKES.high} strokes"
)
_OVERLONG = re.compile(r"\d{7}", re.A)
_SHOWN = 24


def too_long(word: str) -> str:
    """A sentence on a length that nobody rows."""
    shown = word if len(word) <= _SHOWN else word[:_SHOWN] + "…"
    return f"{shown} is too long: a block lasts {_LONGEST} at most"


def is_overlong(word: str) -> bool:
    """Whether a word begins with more digits than any length has."""
    return bool(_OVERLONG.match(word))


def hint(word: str, kind: str, before: list[str], accepted: set[str]) -> str | None:
    """A sentence on the slip, or None; `before` are the kinds of token of the same block before this one."""
    return _misplaced(word, kind, before, accepted) if kind else _unread(word, accepted)


def _misplaced(word: str, kind: str, before: list[str], accepted: set[str]) -> str | None:
    """On a word that can be read, but not here."""
    what = "rate" if kind == "RATE" else "effort" if kind in EFFORTS else "length" if kind in LENGTHS else ""
    match kind:
        case "RPAR" if "TIME" in accepted:
            return "a block is missing before this bracket"
        case "RPAR":
            return "this bracket closes nothing: open a repeat first, such as 3 x ("
        case "LPAR":
            return "a bracket follows a number of times: write 3 x ("
        case "COMMA":
            return "a comma stands only inside brackets: give each block a line of its own"
        case "SLASH":
            return "a slash follows a repeat, once: write 6 x 700m r28 / 3' rest"
        case "TIMES" if before == ["TIMES"]:
            return "a repeat inside a repeat needs brackets: write 2 x (3 x 1' r20)"
        case "REST" if before:
            return "a rest is a time and the word, nothing else: write 3' rest"
        case "SWAP":
            return 'a swap belongs to a length by sides: write each side 20" swap 10"'
    return _superfluous(word, what, before, accepted) if what else None


def _superfluous(word: str, what: str, before: list[str], accepted: set[str]) -> str | None:
    """On a rate, an effort or a length in the wrong place."""
    if "TIME" in accepted and "METRES" not in accepted:
        return f"only a time can stand here, such as 20\" or 5', not {word}"
    if before in ([], ["TIMES"]):
        return f"a block begins with its length: write it before {word}"
    if "REST" in before:
        return f"a rest has no {what}"
    if what != "length":
        return f"a second {what}, {word}: a block has one"
    if re.match(r"\d:\d\d", word):
        return f"a split is written @{word}"
    if "COMMA" in accepted:
        return f"a second length, {word}: put a comma between the blocks of a group"
    if "TIMES" in before and "EACH" not in before:
        return f"a second length, {word}: what comes between repetitions follows a slash"
    return f"a second length, {word}: give each block a line of its own"


def _unread(word: str, accepted: set[str]) -> str | None:
    """On a word that can be read nowhere, or only as the beginning of another."""
    at_start = "TIME" in accepted
    if at_start and is_overlong(word):
        return too_long(word)
    if (near := _near(word, accepted)) and near != word.lower():
        return f'cannot read "{word}" here: did you mean "{near}"?'
    for pattern, sentence in (*_SLIPS, *(_AT_START_SLIPS if at_start else ())):
        if pattern.match(word):
            return sentence.replace("{}", word)
    return _without_unit(word, accepted) if word.isdecimal() else None


def is_long(number: str) -> bool:
    """Whether a number without a unit is rather metres than minutes."""
    return number.isdecimal() and int(number) >= _RATHER_METRES


def _without_unit(number: str, accepted: set[str]) -> str | None:
    if "METRES" in accepted and is_long(number):
        return (
            f'"{number}" has no unit: write {number}m for metres, {number}" for seconds, or {number} strokes'
        )
    if "METRES" in accepted:
        return (
            f'"{number}" has no unit: write {number}\' for minutes, {number}" for seconds, '
            f"or {number} strokes"
        )
    if "TIME" in accepted:
        return f'"{number}" has no unit: a time is written {number}\' or {number} s'
    return f'"{number}" has no unit: a rate is written r{number}' if "RATE" in accepted else None


def _near(word: str, accepted: set[str]) -> str | None:
    if "TIME" in accepted:
        known: tuple[str, ...] = _AT_START if "TIMES" in accepted else ("rest", "open", "each side")
    else:
        known = tuple(w for kind, words in _AFTER_LENGTH.items() if kind in accepted for w in words)
    found = get_close_matches(word.lower().rstrip(":"), known, 1, 0.6)
    return found[0] if found else None
