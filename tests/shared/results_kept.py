"""Results at the edges of what the planner takes: read by TypeScript too, for a phone keeps no others.

`python -m tests.shared.results_kept` writes the file again after a wanted change.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from planner.errors import InputError
from planner.limits import RESULT_SECONDS
from planner.schemas.athlete_schema import load_athlete

FILE = Path(__file__).parent / "results" / "kept.json"

METRES = (
    99,
    100,
    200,
    249,
    250,
    251,
    500,
    1000,
    1999,
    2000,
    2001,
    5000,
    6000,
    7105,
    10_000,
    21_097,
    42_195,
    42_196,
)
"""Around both ends, around 250 m, where the quickest split of all gives way, and what people row."""


def is_kept(metres: int, tenths: int) -> bool:
    """Whether the planner takes a result over these metres in these tenths of a second."""
    try:
        load_athlete({"results": [{"metres": metres, "seconds": tenths / 10}]})
    except InputError:
        return False
    return True


def edges(metres: int) -> tuple[int, int]:
    """The quickest and the slowest time that is taken, in tenths; of a distance never taken, any two."""
    times = range(1, int(RESULT_SECONDS.high) * 10 + 2)
    middle = metres * 13 // 5
    if not is_kept(metres, middle):
        return middle, middle
    return _first(times[0], middle, metres), _last(middle, times[-1], metres)


def _first(low: int, high: int, metres: int) -> int:
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if is_kept(metres, middle) else (middle, high)
    return high


def _last(low: int, high: int, metres: int) -> int:
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if is_kept(metres, middle) else (low, middle)
    return low


def results() -> Iterator[dict[str, object]]:
    """On both sides of each edge; and 2000 m in 4:30, which was once kept and then refused."""
    yield {"metres": 2000, "seconds": 270, "kept": is_kept(2000, 2700)}
    for metres in METRES:
        quickest, slowest = edges(metres)
        for tenths in (quickest - 1, quickest, slowest, slowest + 1):
            yield {"metres": metres, "seconds": tenths / 10, "kept": is_kept(metres, tenths)}


def text() -> str:
    """The text of the file."""
    lines = ",\n".join(f" {json.dumps(result)}" for result in results())
    return f"[\n{lines}\n]\n"


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8")
