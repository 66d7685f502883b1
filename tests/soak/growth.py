"""What a page held at several moments, and how much more it holds as hours go by."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import linear_regression


@dataclass(frozen=True, slots=True)
class Sample:
    """What is left after a collection of garbage, so many hours of the page's clock after the start."""

    hours: float
    heap_kb: float
    nodes: int
    listeners: int


@dataclass(frozen=True, slots=True)
class Growth:
    """How much more is held after so many hours, by the line that fits the samples best."""

    heap_kb: float
    nodes: float
    listeners: float


def growth(samples: Sequence[Sample], hours: float) -> Growth:
    """The growth over so many hours; three samples at least, or there is nothing to fit."""
    assert len(samples) >= 3, "a growth needs three samples"
    return Growth(
        heap_kb=_slope(samples, [sample.heap_kb for sample in samples]) * hours,
        nodes=_slope(samples, [sample.nodes for sample in samples]) * hours,
        listeners=_slope(samples, [sample.listeners for sample in samples]) * hours,
    )


def _slope(samples: Sequence[Sample], values: Sequence[float]) -> float:
    return linear_regression([sample.hours for sample in samples], values).slope
