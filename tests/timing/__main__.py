"""`python -m tests.timing` rows and records for some 40 minutes, prints a table, and ends with the verdict.

Names of scenarios after it leave out the others.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator, Mapping

from tests.bench.measuring import Row, table, verdict
from tests.timing import disturbances, plans
from tests.timing.by_clock import by_clock_row
from tests.timing.judging import freeze_row, rows_of
from tests.timing.recording import Disturbance, Recording, record


def undisturbed(_: object) -> None:
    """Nothing happens to the page."""


def steady(subject: str, plan: str, disturb: Disturbance = undisturbed) -> Iterator[Row]:
    """A session whose sound must not suffer at all; once more if the machine lost some of it."""
    recording = record(plan, disturb)
    if recording.stumbles:
        recording = record(plan, disturb)
    yield from rows_of(subject, recording)


def frozen(subject: str, recording: Recording) -> Iterator[Row]:
    """A session that stood still for half a minute."""
    yield freeze_row(subject, recording)


SCENARIOS: Mapping[str, Callable[[], Iterator[Row]]] = {
    "idle": lambda: steady("idle", plans.CHANGING_RATES),
    "slowed": lambda: steady("processor 6x slower", plans.CHANGING_RATES, disturbances.slowed),
    "short-blocks": lambda: steady(
        "blocked 80 ms of every 100", plans.CHANGING_RATES, disturbances.blocked_again_and_again
    ),
    "long-blocks": lambda: steady(
        "blocked 400 ms now and then", plans.CHANGING_RATES, disturbances.blocked_now_and_then
    ),
    "rests": lambda: steady("rests of two minutes", plans.LONG_RESTS),
    "hidden": lambda: steady("hidden for seven minutes", plans.SEVEN_MINUTES, disturbances.hidden),
    "frozen": lambda: frozen("frozen for 30 s", record(plans.CHANGING_RATES, disturbances.frozen)),
    "by-clock": lambda: iter([by_clock_row("started by the clock")]),
}


def main(names: list[str]) -> int:
    """Run the scenarios of these names, or all; 1 when an aim was missed, 2 for a name that is none."""
    if unknown := [name for name in names if name not in SCENARIOS]:
        print(
            f"There is no scenario {', '.join(unknown)}. There are: {', '.join(SCENARIOS)}.", file=sys.stderr
        )
        return 2
    rows: list[Row] = []
    for name in names or SCENARIOS:
        print(f"- Recording: {name}.", file=sys.stderr)
        rows += SCENARIOS[name]()
    print(table(rows))
    print(verdict(rows))
    return 0 if all(row.held for row in rows) else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
