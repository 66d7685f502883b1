"""Text that people may put in a plan: one line, shown as written, with nothing hidden in it."""

from __future__ import annotations

import re
import unicodedata

_COMBINING_IN_A_ROW = 4
# Letters that show nothing at all, yet count as letters: Hangul fillers. Then spaces without any width.
_BLANK = "\u2800"
_FILLERS = "\u115f\u1160\u3164\uffa0"
_REFUSED = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ufeff\u202a-\u202e\u2066-\u2069"
    f"\ud800-\udfff\ufdd0-\ufdef\ufff9-\uffff\U000e0000-\U000e007f{_FILLERS}\u180e\u200b\u2060-\u2064\u206a-\u206f]"
)
_SPACE = re.compile(r"\s+")


def clean(text: str, limit: int) -> str:
    """The text in one line, composed (NFC), with single spaces; `limit` is in characters.

    Raises ValueError with a sentence for an empty or too long text and for characters that are refused
    because they show nothing or reorder what stands around them.
    """
    if len(text) > 4 * limit:
        raise ValueError(f"a text of {len(text)} characters is longer than {limit}")
    if "\n" in text or "\r" in text:
        raise ValueError("the text has a line break: write it in one line")
    if found := _REFUSED.search(text) or _noncharacter(text):
        raise ValueError(f"the text holds U+{ord(found[0]):04X}, which cannot be shown: leave it out")
    line = _SPACE.sub(" ", unicodedata.normalize("NFC", text)).strip()
    if not line:
        raise ValueError("the text is empty: write something or leave it out")
    if len(line) > limit:
        raise ValueError(f"a text of {len(line)} characters is longer than {limit}")
    if not any(unicodedata.category(c)[0] in "LNPS" and c != _BLANK for c in line):
        raise ValueError("the text shows nothing: write something or leave it out")
    if _piled_up(line):
        raise ValueError(f"more than {_COMBINING_IN_A_ROW} marks are piled on one letter")
    return line


def _noncharacter(text: str) -> str | None:
    return next((c for c in text if ord(c) & 0xFFFE == 0xFFFE), None)


def _piled_up(line: str) -> bool:
    run = 0
    for character in line:
        run = run + 1 if unicodedata.category(character)[0] == "M" else 0
        if run > _COMBINING_IN_A_ROW:
            return True
    return False
