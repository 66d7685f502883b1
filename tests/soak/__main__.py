"""`python -m tests.soak` lets a wall run through eight hours of a quick clock; status 1 when it grows."""

from __future__ import annotations

import sys
from collections.abc import Iterator

from tests.bench.measuring import Row, at_most, table, verdict
from tests.soak.growth import Sample, growth
from tests.soak.wall import HOURS_OF_PLAN, TIMES, wall_samples

HOURS = 7.9
"""The last minutes are left out: the session must not end before it is looked at."""
COUNT = 24
SETTLED = 6
"""So many samples from the beginning do not count: code is still being compiled and caches filled."""
AIM_KB = 1024
AIM_NODES = 100
AIM_LISTENERS = 20


def main() -> int:
    """Measure, and say how it went."""
    print(f"- A wall with sixteen lanes, {HOURS} hours at {TIMES} times the pace.", file=sys.stderr)
    samples = wall_samples(HOURS, COUNT, lambda sample: print(_line(sample), file=sys.stderr))
    rows = list(_rows(samples))
    print(table(rows))
    print(verdict(rows))
    return 0 if all(row.held for row in rows) else 1


def _rows(samples: list[Sample]) -> Iterator[Row]:
    grown = growth(samples[SETTLED:], HOURS_OF_PLAN)
    first, last = samples[SETTLED], samples[-1]
    detail = f"{first.heap_kb:.0f} kB at {first.hours:.1f} h, {last.heap_kb:.0f} kB at {last.hours:.1f} h"
    yield at_most("wall, 8 h: growth of the heap", grown.heap_kb, AIM_KB, " kB", detail)
    yield at_most("wall, 8 h: more elements", grown.nodes, AIM_NODES, "", f"of {last.nodes}")
    yield at_most("wall, 8 h: more listeners", grown.listeners, AIM_LISTENERS, "", f"of {last.listeners}")


def _line(sample: Sample) -> str:
    held = f"{sample.heap_kb:8.0f} kB  {sample.nodes:6d} elements  {sample.listeners:4d} listeners"
    return f"  {sample.hours:5.2f} h  {held}"


if __name__ == "__main__":
    sys.exit(main())
