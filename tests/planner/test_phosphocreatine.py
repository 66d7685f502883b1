"""Phosphocreatine: the published points, two phases, and what steady rowing keeps."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.demand import Run
from planner.oxygen import Kinetics, uptake
from planner.phosphocreatine import ALL_OUT_SHARES, remaining

KINETICS = Kinetics(22.4, 106.8)
SHARES = st.sampled_from(ALL_OUT_SHARES)


def left(runs: list[Run], all_out: float = 1.8) -> list[float]:
    return remaining(runs, uptake(runs, KINETICS), KINETICS.rise, all_out)


@pytest.mark.parametrize("all_out", ALL_OUT_SHARES)
def test_30_s_all_out_leave_what_was_measured(all_out: float) -> None:
    """19.7 +- 1.2 % of rest: Bogdanis 1995, J Physiol 482:467-480."""
    assert left([Run(all_out, 30)], all_out)[-1] == pytest.approx(0.197)


@pytest.mark.parametrize(("seconds", "measured", "spread"), [(90, 65.0, 2.8), (360, 85.5, 3.5)])
def test_the_recovery_passes_through_the_measured_points(
    seconds: float, measured: float, spread: float
) -> None:
    """Bogdanis 1995, J Physiol 482:467-480: 65.0 +- 2.8 % at 1.5 min, 85.5 +- 3.5 % at 6 min."""
    assert 100 * left([Run(1.8, 30), Run(0, seconds)])[-1] == pytest.approx(measured, abs=0.1)
    assert abs(100 * left([Run(1.8, 30), Run(0, seconds)])[-1] - measured) < spread


# Fact sheet 5.1 [=]: the row of two exponentials, in percent.
@pytest.mark.parametrize(
    ("seconds", "percent"),
    [(30, 46.2), (60, 58.4), (90, 65.0), (120, 69.2), (180, 74.9), (240, 79.1), (360, 85.5), (600, 93.0)],
)
def test_the_recovery_is_the_tabled_one(seconds: float, percent: float) -> None:
    assert 100 * left([Run(1.8, 30), Run(0, seconds)])[-1] == pytest.approx(percent, abs=0.06)


def test_one_exponential_would_be_clearly_wrong() -> None:
    """Fact sheet 5.1 [=]: the printed half-time of 56.6 s alone would give 99.0 % at 6 min."""
    assert left([Run(1.8, 30), Run(0, 360)])[-1] < 0.9


def test_steady_rowing_holds_a_steady_level_and_harder_rowing_a_lower_one() -> None:
    after = left([Run(0.5, 300), Run(0.5, 300), Run(0.8, 300), Run(0.8, 300)])
    assert after[0] == pytest.approx(after[1], abs=1e-3)
    assert after[2] == pytest.approx(after[3], abs=1e-3)
    assert after[2] < after[0]


def test_easier_rowing_refills_only_to_its_own_level() -> None:
    easy_alone = left([Run(0.4, 3600)])[-1]
    assert left([Run(1.0, 120), Run(0.4, 3600)])[-1] == pytest.approx(easy_alone, abs=0.01)


def test_a_dearer_all_out_makes_the_same_work_cost_less() -> None:
    remaining_by_share = [left([Run(1.2, 40)], all_out)[-1] for all_out in ALL_OUT_SHARES]
    assert remaining_by_share == sorted(remaining_by_share)


RUNS = st.lists(st.builds(Run, st.floats(0, 2.5), st.floats(1, 600)), min_size=1, max_size=8)


@given(RUNS, SHARES)
def test_the_store_is_never_below_empty_nor_above_full(runs: list[Run], all_out: float) -> None:
    assert all(-1e-9 <= share <= 1 + 1e-9 for share in left(runs, all_out))


@given(RUNS, SHARES)
def test_rest_fills_the_store_again(runs: list[Run], all_out: float) -> None:
    after = left([*runs, *[Run(0, 120)] * 30], all_out)[len(runs) - 1 :]
    assert after == sorted(after)
    assert after[-1] > 0.99
