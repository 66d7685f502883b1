"""Reading what stands on a command line: words, numbers, results; each mistake says what would do."""

from __future__ import annotations

import argparse
import re
from collections.abc import Callable
from enum import StrEnum
from typing import TypeVar

from planner.athlete import Result
from planner.limits import RESULT_METRES, RESULT_SECONDS
from planner.limits import WORDS_A_MINUTE as VOICE
from planner.units import read_clock

Word = TypeVar("Word", bound=StrEnum)

_METRES_FIRST = re.compile(r"(?P<metres>\d{1,6})\s*m=(?P<time>.+)", re.ASCII)
_TIME_FIRST = re.compile(r"(?P<time>[\d:.]+)=(?P<metres>\d{1,6})\s*m", re.ASCII)


def one_of(words: type[Word]) -> Callable[[str], Word]:
    """A reader of one word out of a list; it raises ArgumentTypeError with the words that would do."""

    def read(text: str) -> Word:
        if text in set(words):
            return words(text)
        raise argparse.ArgumentTypeError(f'cannot read "{text}": write one of {", ".join(words)}')

    return read


def read_whole(text: str) -> int:
    """A whole number; raises ArgumentTypeError with what would do."""
    if re.fullmatch(r"-?\d{1,6}", text, re.ASCII):
        return int(text)
    raise argparse.ArgumentTypeError(f'cannot read "{text}": write a whole number, such as 20')


def read_number(text: str) -> int | float:
    """A number as JSON has it; raises ArgumentTypeError with what would do."""
    if re.fullmatch(r"[-+]?\d{1,6}(?:\.\d{1,6})?", text, re.ASCII):
        return float(text) if "." in text else int(text)
    raise argparse.ArgumentTypeError(f'cannot read "{text}": write a number, such as 75 or 75.5')


def read_result(text: str) -> Result:
    """A result such as 2000m=7:42.0 or 30:00=7500m; raises ArgumentTypeError with what would do."""
    found = _METRES_FIRST.fullmatch(text) or _TIME_FIRST.fullmatch(text)
    if not found:
        raise argparse.ArgumentTypeError(
            f'cannot read the result "{text}": write it as 2000m=7:42.0 or 30:00=7500m'
        )
    try:
        result = Result(int(found["metres"]), read_clock(found["time"]))
    except ValueError as error:
        raise argparse.ArgumentTypeError(str(error)) from None
    complaint = (
        RESULT_METRES.complaint(result.metres)
        or RESULT_SECONDS.complaint(result.seconds)
        or result.complaint()
    )
    if complaint:
        raise argparse.ArgumentTypeError(complaint)
    return result


def read_words(text: str) -> int:
    """The speed of a voice in words a minute; raises ArgumentTypeError with what would do."""
    if not re.fullmatch(r"\d{1,6}", text, re.ASCII):
        raise argparse.ArgumentTypeError(f'cannot read the speed "{text}": write words a minute, such as 150')
    if complaint := VOICE.complaint(int(text)):
        raise argparse.ArgumentTypeError(complaint)
    return int(text)
