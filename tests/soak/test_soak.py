"""A wall does not grow: the short form of `make soak`, a quarter of an hour of a quick clock."""

from __future__ import annotations

import pytest

from tests.soak.growth import Sample, growth
from tests.soak.wall import wall_samples

HOURS = 0.24
COUNT = 4
MOST_KB = 400
MOST_NODES = 300
MOST_LISTENERS = 40


def test_a_growth_is_the_slope_of_what_is_held() -> None:
    samples = [Sample(hours, 5000 + 30 * hours, 7000 - 2 * int(hours), 270) for hours in range(8)]
    grown = growth(samples, 8)
    assert grown.heap_kb == pytest.approx(240)
    assert grown.nodes == pytest.approx(-16)
    assert grown.listeners == 0


def test_a_wall_with_sixteen_lanes_holds_no_more_after_a_while_than_before() -> None:
    first, *others = wall_samples(HOURS, COUNT)[1:]
    assert others[-1].heap_kb - first.heap_kb < MOST_KB
    assert others[-1].nodes - first.nodes < MOST_NODES
    assert others[-1].listeners - first.listeners < MOST_LISTENERS
