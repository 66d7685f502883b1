"""`python -m tests.bench` measures, prints one table, and ends with a line that gives the verdict.

Every measure is a ratio within this run, or bytes, or a time under a slowed processor; a missed aim is
told, it does not stop anything.
"""

from __future__ import annotations

from tests.bench import compiling, first_load, offline_start, serving
from tests.bench.measuring import table, verdict


def main() -> None:
    """Measure everything."""
    rows = [row for measure in (compiling, serving, first_load, offline_start) for row in measure.rows()]
    print(table(rows))
    print(verdict(rows))


if __name__ == "__main__":
    main()
