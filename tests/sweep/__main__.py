"""`python -m tests.sweep` makes every session of the sweep and mends plans by chance: a table, a verdict."""

from __future__ import annotations

import os
import sys
from dataclasses import dataclass
from itertools import groupby
from multiprocessing import Pool

from planner.errors import InputError
from planner.pieces import name_of
from tests.sweep.cases import Case, every_case
from tests.sweep.mends import broken_mends
from tests.sweep.plans import sketches
from tests.sweep.promises import outcome_of

SHOWN = 20
PLANS, PLANS_AT_ONCE = 3000, 50


@dataclass(frozen=True)
class Line:
    """What the table needs of one session; small, because it crosses from one process to another."""

    case: Case
    peak: int
    hard_share: float
    reserve: float
    gap_seconds: int
    broken: tuple[str, ...]


def main() -> int:
    """Makes and checks everything; 1 when a promise is broken."""
    with Pool(os.cpu_count()) as workers:
        lines = workers.map(_line, every_case(), chunksize=50)
    print(_table(lines))
    broken = [line for line in lines if line.broken]
    for line in broken[:SHOWN]:
        print(f"{line.case}: {'; '.join(line.broken)}")
    with Pool(os.cpu_count()) as workers:
        bad = [told for broken in workers.imap(_mends, range(PLANS // PLANS_AT_ONCE)) for told in broken]
    print("\n".join(bad[:SHOWN]) or f"each mend of {PLANS} plans drawn by chance removes its finding")
    print(
        f"verdict: {len(lines) - len(broken)} of {len(lines)} sessions keep every promise, "
        f"{len(bad)} mends of {PLANS} plans break one"
    )
    return 1 if broken or bad else 0


def _mends(seed: int) -> list[str]:
    return [told for sketch in sketches(seed, PLANS_AT_ONCE) for told in broken_mends(sketch)]


def _line(case: Case) -> Line:
    try:
        out = outcome_of(case)
    except (InputError, ValueError) as error:
        return Line(case, 0, 0.0, 0.0, 0, (f"no session: {error}",))
    gap = sum(segment.stretch.duration for segment in out.timeline.segments if segment.part == "gap")
    return Line(case, out.peak, float(out.hard_share), out.reserve, int(gap), out.broken)


def _table(lines: list[Line]) -> str:
    rows = [("piece", "level", "sessions", "peak rate", "hard share", "gap", "reserve at start", "broken")]
    ordered = sorted(lines, key=_kind)
    for (piece, level), same in groupby(ordered, key=_kind):
        group = list(same)
        rows.append(
            (
                piece,
                level,
                str(len(group)),
                _span([f"r{line.peak}" for line in group]),
                f"{100 * max(line.hard_share for line in group):.1f} %",
                _span([f"{line.gap_seconds} s" for line in sorted(group, key=lambda line: line.gap_seconds)]),
                f"{100 * min(line.reserve for line in group):.1f} %",
                str(sum(1 for line in group if line.broken)),
            )
        )
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))]
    return "\n".join(
        "  ".join(text.ljust(width) for text, width in zip(row, widths, strict=True)).rstrip() for row in rows
    )


def _kind(line: Line) -> tuple[str, str]:
    return name_of(line.case.piece), line.case.level


def _span(values: list[str]) -> str:
    low, high = min(values), max(values)
    return low if low == high else f"{low} to {high}"


if __name__ == "__main__":
    sys.exit(main())
