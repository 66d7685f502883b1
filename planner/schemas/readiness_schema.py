"""Readiness, energy and a week's load as JSON. Its fields are described in `readiness_shape`.

Shares become whole percent, a tie going up; a rounded range still holds its middle.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import floor

from planner.capacity import Capacity, Range
from planner.energy import Energy
from planner.load import Evenness, Week
from planner.readiness import AtGap, Readiness, Series
from planner.schemas.block_schema import given
from planner.start_line import State


def dump_readiness(readiness: Readiness) -> dict[str, object]:
    """The readiness of a session as JSON."""
    capacity = readiness.capacity
    gap = readiness.gap_seconds
    return given(
        basis=readiness.basis.value,
        start_s=readiness.start_seconds,
        advised_gap={f"{name}_s": seconds for name, seconds in readiness.advised_gap._asdict().items()},
        at_start=_dump_state(readiness.at_start),
        by_gap=[_dump_gap(row) for row in readiness.by_gap],
        series=_dump_series(readiness.series),
        sentence=readiness.sentence,
        notes=list(readiness.notes),
        capacity=_dump_capacity(capacity, capacity.two_k_watts) if capacity.two_k_watts else None,
    ) | {"gap_s": int(gap) if gap is not None and gap == int(gap) else gap}


def dump_energy(energy: Energy) -> dict[str, object]:
    """The energy of a session as JSON."""
    return {
        "work_kj": _tenth(energy.work_kj),
        "kcal": {"low": _whole(energy.by_efficiency.low), "high": _whole(energy.by_efficiency.high)},
        "by_table": [{"edition": int(c.edition), "kcal": _whole(c.kcal)} for c in energy.by_table],
    }


def dump_week(week: Week) -> dict[str, object]:
    """The load of a week as JSON."""
    return {
        "total": _whole(week.total),
        "mean": _tenth(week.mean),
        "evenness": [_dump_evenness(each) for each in week.evenness],
    }


def _dump_evenness(evenness: Evenness) -> dict[str, object]:
    monotony, strain = evenness.monotony, evenness.strain
    return given(
        deviation=evenness.deviation.value,
        monotony=floor(monotony * 100 + 0.5) / 100 if monotony is not None else None,
        strain=_whole(strain) if strain is not None else None,
    )


def _dump_state(state: State) -> dict[str, object]:
    return {name: dump_range(each) for name, each in state._asdict().items()}


def _dump_gap(row: AtGap) -> dict[str, object]:
    return {"gap_s": row.gap_seconds, **_dump_state(row.state)}


def dump_range(shares: Range) -> dict[str, int]:
    """Shares as whole percent."""
    return {name: percent(share) for name, share in shares._asdict().items()}


def _dump_series(series: Series) -> dict[str, object]:
    return {
        "step_s": series.step_seconds,
        "reserve": _percents(series.reserve),
        "reserve_low": _percents(series.reserve_low),
        "reserve_high": _percents(series.reserve_high),
        "oxygen": _percents(series.oxygen),
        "warmth": _percents(series.warmth),
    }


def _dump_capacity(capacity: Capacity, watts: float) -> dict[str, object]:
    """In watts and kilojoules of the rower's own 2 km power."""
    return {
        "watts": _whole(capacity.critical * watts),
        "watts_low": _whole(capacity.critical_low * watts),
        "watts_high": _whole(capacity.critical_high * watts),
        "reserve_kj": _tenth(capacity.reserve_seconds * watts / 1000),
        "reserve_kj_low": _tenth(capacity.reserve_seconds_low * watts / 1000),
        "reserve_kj_high": _tenth(capacity.reserve_seconds_high * watts / 1000),
    }


def _percents(shares: Iterable[float]) -> list[int]:
    return [percent(share) for share in shares]


def percent(share: float) -> int:
    """A share as whole percent."""
    return _whole(100 * share)


def _whole(value: float) -> int:
    return floor(value + 0.5)


def _tenth(value: float) -> float:
    return floor(value * 10 + 0.5) / 10
