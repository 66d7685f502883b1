"""Measuring two or more ways of doing something side by side, and telling how it went in one table."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from statistics import median
from time import perf_counter


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table. `held` is None where nothing is aimed at."""

    subject: str
    measured: str
    aim: str = ""
    held: bool | None = None


def median_seconds(ways: Mapping[str, Callable[[], object]], rounds: int) -> dict[str, float]:
    """The median time of each way; each round takes them in turn, so that a slow spell strikes all alike."""
    times: dict[str, list[float]] = {name: [] for name in ways}
    for turn in range(rounds + 1):
        for name, way in ways.items():
            started = perf_counter()
            way()
            elapsed = perf_counter() - started
            if turn:  # the first round only warms up
                times[name].append(elapsed)
    return {name: median(taken) for name, taken in times.items()}


def at_most(subject: str, value: float, aim: float, unit: str, detail: str) -> Row:
    """A row whose value should not be above its aim."""
    return Row(subject, f"{value:.2f}{unit}  ({detail})", f"at most {aim:g}{unit}", value <= aim)


def at_least(subject: str, value: float, aim: float, unit: str, detail: str) -> Row:
    """A row whose value should not be below its aim."""
    return Row(subject, f"{value:.2f}{unit}  ({detail})", f"at least {aim:g}{unit}", value >= aim)


def table(rows: Iterable[Row]) -> str:
    """The rows as plain columns, each as wide as its widest text."""
    lines = [("what", "aim", "measured", "")]
    lines += [(row.subject, row.aim, row.measured, _mark(row)) for row in rows]
    widths = [max(len(line[column]) for line in lines) for column in range(3)]
    return "\n".join(
        "  ".join([*(text.ljust(width) for text, width in zip(line, widths, strict=False)), line[3]]).rstrip()
        for line in lines
    )


def verdict(rows: Iterable[Row]) -> str:
    """How many aims were met, and the names of those that were not."""
    aimed = [row for row in rows if row.held is not None]
    missed = [row.subject for row in aimed if not row.held]
    if not missed:
        return f"verdict: all {len(aimed)} aims met"
    return f"verdict: {len(aimed) - len(missed)} of {len(aimed)} aims met; missed: {', '.join(missed)}"


def _mark(row: Row) -> str:
    return "" if row.held is None else "met" if row.held else "MISSED"
