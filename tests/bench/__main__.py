"""`python -m tests.bench` measures, prints one table, and ends with a line that gives the verdict.

Every measure is a ratio within this run, or bytes, or a time under a slowed processor; a missed aim is
told, it does not stop anything.
"""

from __future__ import annotations

import os

from tests.bench import (
    building,
    click_track,
    compiling,
    composing,
    first_load,
    links,
    offline_start,
    readiness,
    rowing,
    serving,
)
from tests.bench.measuring import Row, table, verdict


def main() -> None:
    """Measure everything."""
    rows = [_machine()]
    rows += [
        row
        for measure in (
            compiling,
            readiness,
            building,
            click_track,
            serving,
            links,
            first_load,
            composing,
            offline_start,
            rowing,
        )
        for row in measure.rows()
    ]
    print(table(rows))
    print(verdict(rows))


def _machine() -> Row:
    """What else was going on: times mean little on a machine that is busy."""
    waiting = os.getloadavg()[0]
    return Row("this machine at the start", f"{os.cpu_count()} processors, load {waiting:.1f}")


if __name__ == "__main__":
    main()
