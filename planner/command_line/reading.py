"""Reading what stands on a command line: results, lengths, times; each mistake says what would do."""

from __future__ import annotations

import argparse
import re

from planner.athlete import Result
from planner.limits import RESULT_METRES, RESULT_SECONDS
from planner.limits import WORDS_A_MINUTE as VOICE
from planner.units import read_clock

_METRES_FIRST = re.compile(r"(?P<metres>\d{1,6})\s*m=(?P<time>.+)", re.ASCII)
_TIME_FIRST = re.compile(r"(?P<time>[\d:.]+)=(?P<metres>\d{1,6})\s*m", re.ASCII)


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
